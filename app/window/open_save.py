"""Opening and saving plans, and the one question that must be asked before work would be lost."""

from collections.abc import Callable
from enum import Enum
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from app.notices import Notices
from app.session import Session
from app.settings import Remembered
from wiring.files.refusals import NotReadable, NotSaved
from wiring.files.store import load, save
from wiring.plan.plan import Plan

SUFFIX = ".underboard"
FILTER = f"Underboard plans (*{SUFFIX})"


class Choice(Enum):
    """What to do with unsaved work."""

    SAVE = "save"
    LEAVE = "leave"
    STAY = "stay"


class Documents(QObject):
    """Moves plans between the session and the disk."""

    def __init__(self, session: Session, notices: Notices, remembered: Remembered, window: QWidget) -> None:
        super().__init__(window)
        self._session = session
        self._notices = notices
        self._remembered = remembered
        self._window = window
        self.ask: Callable[[], Choice] = self._ask  # tests answer in the person's place

    def new(self) -> None:
        """Begin an empty plan."""
        if self.may_leave():
            self._session.open(Plan(), None)

    def open(self) -> None:
        """Let the person choose a plan, and open it."""
        if not self.may_leave():
            return
        name, _ = QFileDialog.getOpenFileName(
            self._window, "Open a plan", str(self._remembered.folder), FILTER
        )
        if name:
            self._read(Path(name), own=True)

    def open_path(self, path: Path) -> bool:
        """Open a plan by its path; False when it could not be read or the person would rather stay."""
        return self.may_leave() and self._read(path, own=True)

    def open_example(self, path: Path) -> bool:
        """Open an example as a plan of its own, so that saving never writes over the example."""
        return self.may_leave() and self._read(path, own=False)

    def take_up(self, plan: Plan, path: Path | None) -> None:
        """Go on with a rescued plan; it counts as unsaved."""
        self._session.open(plan, path, unsaved=True)

    def save(self) -> bool:
        """Save to the plan's file, asking for a name if it has none."""
        path = self._session.path
        return self.save_as() if path is None else self._write(path)

    def save_as(self) -> bool:
        """Ask for a name and save there."""
        proposed = self._session.path or self._remembered.folder / (
            _file_name(self._session.plan.title) + SUFFIX
        )
        name, _ = QFileDialog.getSaveFileName(self._window, "Save the plan", str(proposed), FILTER)
        if not name:
            return False
        path = Path(name)
        return self._write(path if path.suffix == SUFFIX else path.with_name(path.name + SUFFIX))

    def may_leave(self) -> bool:
        """Whether the present plan may be put away: it is saved, or the person said what to do."""
        if not self._session.unsaved:
            return True
        choice = self.ask()
        return choice is Choice.LEAVE or (choice is Choice.SAVE and self.save())

    def _read(self, path: Path, *, own: bool) -> bool:
        try:
            plan = load(path)
        except NotReadable as refusal:
            self._notices.refuse(str(refusal))
            return False
        self._session.open(plan, path if own else None)
        if own:
            self._remembered.remember_plan(path)
        return True

    def _write(self, path: Path) -> bool:
        try:
            save(self._session.plan, path)
        except NotSaved as refusal:
            self._notices.say(str(refusal), "danger")
            return False
        self._session.mark_saved(path)
        self._remembered.remember_plan(path)
        return True

    def _ask(self) -> Choice:
        box = QMessageBox(self._window)
        box.setWindowTitle("Unsaved changes")
        box.setText(f"“{self._session.plan.title}” has changes that are in no file yet.")
        box.setInformativeText("Save them before going on?")
        save_button = box.addButton("Save", QMessageBox.ButtonRole.AcceptRole)
        leave = box.addButton("Go on without saving", QMessageBox.ButtonRole.DestructiveRole)
        stay = box.addButton("Stay here", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(save_button)
        box.setEscapeButton(stay)
        box.exec()
        clicked = box.clickedButton()
        return Choice.SAVE if clicked is save_button else Choice.LEAVE if clicked is leave else Choice.STAY


def _file_name(title: str) -> str:
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in title)
    return " ".join(kept.split()) or "plan"
