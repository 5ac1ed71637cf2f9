"""The one door for words to the user: a calm bar in the window, never a box in the way."""

from collections.abc import Callable
from typing import NamedTuple

from PySide6.QtCore import QObject, Signal


class Notice(NamedTuple):
    """One plain sentence, how much it matters ("note", "weak" or "danger"), and what can be done about it."""

    text: str
    rank: str = "note"
    act_text: str = ""
    act: Callable[[], object] | None = None
    put_away: Callable[[], object] | None = None  # told when the reader puts it away unanswered


class Notices(QObject):
    """Passes notices to whoever shows them."""

    said = Signal(object)  # Notice
    outdated = Signal()  # what was said is about a plan that is put away

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.last: Notice | None = None

    def say(self, text: str, rank: str = "note") -> None:
        """Tell the user one sentence."""
        self.offer(Notice(text, rank))

    def refuse(self, text: str) -> None:
        """Tell the user what could not be done, and why."""
        self.offer(Notice(text, "weak"))

    def offer(self, notice: Notice) -> None:
        """Tell the user something that can be answered with one click."""
        self.last = notice
        self.said.emit(notice)
