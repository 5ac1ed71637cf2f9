"""What is wrong with one kind of a catalogue file, and in which place of it."""


class BadKind(ValueError):  # noqa: N818 - a finding about data, named for what it says
    """A kind that cannot be used; the message is plain words, `table` and `key` say where in the kind."""

    def __init__(self, reason: str, table: str = "", key: str = "") -> None:
        super().__init__(reason)
        self.reason = reason
        self.table = table
        self.key = key
