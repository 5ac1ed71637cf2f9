"""Opening and saving plans, and the one question that must be asked before work would be lost."""

from collections.abc import Callable
from enum import Enum
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from app.disk_watch import DiskWatch
from app.notices import Notice, Notices
from app.plan_lock import PlanLock
from app.proposed_file import proposed_file
from app.session import Session
from app.settings import Remembered, state_folder
from wiring.edits.set_plan import set_plan
from wiring.files.refusals import NotReadable, NotSaved
from wiring.files.store import load, save
from wiring.plan.plan import UNTITLED, Plan

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
        self.ask_over: Callable[[Path], Choice] = self._ask_over
        self._told: Notice | None = None  # that the plan could not be saved
        self.lock = PlanLock(lambda: state_folder() / "open")
        self.watch = DiskWatch(self)
        self.watch.differs.connect(self._changed_on_disk)

    def new(self) -> None:
        """Begin an empty plan."""
        if self.may_leave():
            self._take_file(None)
            self._show(Plan(), None)

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
        if path is not None and not self._take_file(path):
            path = None
        self._show(plan, path, unsaved=True)

    def reopen(self) -> bool:
        """Open the plan's file as it is now."""
        path = self._session.path
        return path is not None and self.may_leave() and self._read(path, own=True)

    def close(self) -> None:
        """Let other windows have the plan."""
        self._take_file(None)

    def save(self) -> bool:
        """Save to the plan's file, asking for a name if it has none."""
        path = self._session.path
        return self.save_as() if path is None else self._write(path)

    def save_as(self) -> bool:
        """Ask for a name and save there."""
        session = self._session
        proposed = session.path or proposed_file(None, session.plan.title, SUFFIX, self._remembered.folder)
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

    def _show(self, plan: Plan, path: Path | None, *, unsaved: bool = False) -> None:
        self._notices.plan_left()
        self._session.open(plan, path, unsaved=unsaved)

    def _read(self, path: Path, *, own: bool) -> bool:
        try:
            plan = load(path)
        except NotReadable as refusal:
            self._notices.refuse(str(refusal))
            return False
        held = self._take_file(path if own else None)
        self._show(plan, path if own and held else None)
        if own:
            self._remembered.remember_plan(path)
        if not held:
            self._notices.say(
                f"{path.name} is open in another window, so this is a copy; saving asks for another name.",
                "weak",
            )
        return True

    def _take_file(self, path: Path | None) -> bool:
        """Hold and watch a plan's file; False when another window holds it."""
        held = path is None or self.lock.take(path)
        if path is None or not held:
            self.lock.let_go()
        self.watch.follow(path if held else None)
        return held

    def _changed_on_disk(self, there: bool) -> None:
        path = self._session.path
        if path is None:
            return
        if not there:
            self._notices.say(f"{path.name} is no longer in its folder; save to write it again.", "weak")
            return
        mine = " Your unsaved changes are not in it." if self._session.unsaved else ""
        words = f"{path.name} was changed by somebody else since you opened it.{mine}"
        self._notices.offer(Notice(words, "weak", "Open it again", self.reopen))

    def _write(self, path: Path) -> bool:
        if path == self._session.path and self.watch.foreign:
            choice = self.ask_over(path)
            if choice is not Choice.SAVE:
                return choice is Choice.LEAVE and self.save_as()
        if not self.lock.take(path):
            self._notices.say(
                f"{path.name} is open in another window and was not written over; save under another name.",
                "weak",
            )
            return False
        if self._session.plan.title == UNTITLED and self._session.redo_label is None:
            self._session.do(set_plan(title=_title(path)))
        try:
            save(self._session.plan, path)
        except NotSaved as refusal:
            self._told = Notice(str(refusal), "danger", "Save elsewhere…", self.save_as)
            self._notices.offer(self._told)
            if self._session.path is not None:
                self.lock.take(self._session.path)
            return False
        if self._told is not None:
            self._notices.take_back(self._told)
        self.watch.follow(path)
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

    def _ask_over(self, path: Path) -> Choice:
        box = QMessageBox(self._window)
        box.setWindowTitle("The file was changed")
        box.setText(f"{path.name} was changed by somebody else since you opened it.")
        box.setInformativeText("Saving over it loses what they changed.")
        over = box.addButton("Save over it", QMessageBox.ButtonRole.DestructiveRole)
        other = box.addButton("Save under another name…", QMessageBox.ButtonRole.AcceptRole)
        stay = box.addButton("Stay here", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(other)
        box.setEscapeButton(stay)
        box.exec()
        clicked = box.clickedButton()
        return Choice.SAVE if clicked is over else Choice.LEAVE if clicked is other else Choice.STAY


def _title(path: Path) -> str:
    words = path.stem.replace("_", " ").strip()
    return words[:1].upper() + words[1:]
