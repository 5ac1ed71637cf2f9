"""The one door for words to the user: a calm bar in the window, never a box in the way."""

from collections.abc import Callable
from typing import NamedTuple

from PySide6.QtCore import QObject, Signal

from app.session import Session


class Notice(NamedTuple):
    """One plain sentence, how much it matters ("note", "weak" or "danger"), and what can be done about it."""

    text: str
    rank: str = "note"
    act_text: str = ""
    act: Callable[[], object] | None = None
    put_away: Callable[[], object] | None = None  # told when the reader puts it away unanswered
    about_act: bool = False  # says why one act was not done: nobody needs it once another one was


class Notices(QObject):
    """Passes notices to whoever shows them."""

    said = Signal(object)  # Notice
    taken_back = Signal(object)  # a Notice whose fault is mended
    outdated = Signal(bool)  # what was said no longer holds: only what is about an act, or all about the plan

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.last: Notice | None = None

    def listen_to(self, session: Session) -> None:
        """Pass on what a session says; to be called before anybody else listens to it.

        So a change is heard of here first, and what is refused in answer to it is not outdated by it.
        """
        session.changed.connect(self.acted)
        session.refused.connect(self.refuse)
        session.faulted.connect(lambda words: self.say(words, "weak"))

    def say(self, text: str, rank: str = "note") -> None:
        """Tell the user one sentence."""
        self.offer(Notice(text, rank))

    def refuse(self, text: str) -> None:
        """Tell the user what could not be done, and why; a fault that lasts is said, not refused."""
        self.offer(Notice(text, "weak", about_act=True))

    def acted(self) -> None:
        """Something was done or another page is shown: what was refused before is outdated."""
        self.outdated.emit(True)

    def take_back(self, notice: Notice) -> None:
        """The fault a notice told of is mended."""
        self.taken_back.emit(notice)

    def plan_left(self) -> None:
        """The plan is put away, and what was said about it too."""
        self.outdated.emit(False)

    def offer(self, notice: Notice) -> None:
        """Tell the user something that can be answered with one click."""
        self.last = notice
        self.said.emit(notice)
