"""An edit: a named step from one plan to the next."""

from collections.abc import Callable
from typing import NamedTuple

from wiring.plan.plan import Plan
from wiring.plan.sentences import one_line


class EditRefused(Exception):  # noqa: N818 - a refusal is an answer to the user, not an error
    """The edit cannot be done; the message is one plain sentence for the user."""

    def __init__(self, sentence: str) -> None:
        super().__init__(one_line(sentence))


class Edit(NamedTuple):
    """A step with the name the user sees in Undo; `apply` returns the same plan when nothing would change."""

    label: str
    apply: Callable[[Plan], Plan]
