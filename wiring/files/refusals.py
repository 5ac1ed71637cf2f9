"""What the user is told when a file cannot be read or written."""

from wiring.plan.sentences import one_line


class NotReadable(Exception):  # noqa: N818 - an answer to the user
    """A file holds no plan that can be opened; the message is one plain sentence."""

    def __init__(self, sentence: str) -> None:
        super().__init__(one_line(sentence))


class NotSaved(Exception):  # noqa: N818 - an answer to the user
    """A plan could not be written; what stood at its path before still stands there."""

    def __init__(self, sentence: str) -> None:
        super().__init__(one_line(sentence))
