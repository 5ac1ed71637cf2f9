"""Remembers the set that was printed last: beside the plan, or until it is closed where it has no file."""

from typing import TYPE_CHECKING

from app.session import Session
from wiring.files.refusals import NotSaved
from wiring.plan.sentences import after_colon
from wiring.sheets.printed_file import read_printed, write_printed

if TYPE_CHECKING:
    from wiring.sheets.printed_set import PrintedSet
    from wiring.sheets.sheet_set import MadeSet

NOT_WHOLE = "Only a whole set can be remembered as printed; tick all documents and choose the whole layout."


class PrintedRecord:
    """The last printed set of the open plan."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._unsaved: PrintedSet | None = None  # of a plan without a file
        self.fault = ""  # why the record beside the plan cannot be read
        session.changed.connect(self._plan_changed)

    @property
    def last(self) -> "PrintedSet | None":
        """The last printed set; None when none is remembered."""
        path = self._session.path
        self.fault = ""
        if path is None:
            return self._unsaved
        try:
            return read_printed(path) or self._unsaved
        except ValueError as fault:
            self.fault = str(fault)
            return None

    def remember(self, made: "MadeSet") -> tuple[bool, str]:
        """Remember a set as printed; return whether that was done, and a sentence to show."""
        if not made.whole:
            return False, NOT_WHOLE
        printed, path = made.printed(), self._session.path
        self._unsaved = printed
        said = f"Remembered as set {printed.letter} of {printed.day}"
        if path is None:
            return True, f"{said}, until this plan is closed; save the plan first to keep it longer."
        try:
            write_printed(printed, path)
        except NotSaved as refusal:
            return False, f"What was printed is not remembered: {after_colon(str(refusal))}"
        return True, f"{said}."

    def _plan_changed(self, change: object) -> None:
        if getattr(change, "cause", "") == "open":
            self._unsaved = None
