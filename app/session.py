"""The open plan: its history, its live switch positions, and the one signal that says it changed."""

from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import QObject, Signal

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.history import History, Step, amended, begun, recorded, redone, undone
from wiring.plan.changes import Changes, changes_between
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use


class PlanChanged(NamedTuple):
    """One change of the open plan, whatever brought it."""

    revision: int
    old: Plan
    new: Plan
    changes: Changes
    cause: str  # "edit", "undo", "redo" or "open"


class Session(QObject):
    """Holds the plan as a value; every change of it passes here and is told exactly once."""

    changed = Signal(object)  # PlanChanged
    thrown = Signal(object)  # the positions after a switch was thrown
    foreseen = Signal(object)  # the positions there will be once a switch that is pressed is let go
    refused = Signal(str)  # one plain sentence: why an act was not done
    faulted = Signal(str)  # one plain sentence: what is wrong until somebody mends it
    saved_state = Signal(bool)  # whether there is unsaved work

    def __init__(self, plan: Plan, kinds: Mapping[str, Kind], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.kinds = kinds
        self.path: Path | None = None
        self.revision = 0
        self._history: History = begun(plan)
        self._saved: Plan = plan
        self._thrown: dict[PartId, str] = {}
        self._telling = False

    @property
    def plan(self) -> Plan:
        """The plan as it is now."""
        return self._history.now.plan

    @property
    def positions(self) -> dict[PartId, str]:
        """Positions as the builder has thrown them; what was not thrown stands as in use."""
        positions = in_use(self.plan, self.kinds)
        positions.update((k, v) for k, v in self._thrown.items() if k in positions)
        return positions

    @property
    def thrown_apart(self) -> dict[PartId, str]:
        """What stands otherwise than in use, and how."""
        usual = in_use(self.plan, self.kinds)
        return {part: stand for part, stand in self.positions.items() if usual.get(part) != stand}

    @property
    def unsaved(self) -> bool:
        """Whether the plan differs from what was last saved or opened."""
        return self.plan is not self._saved

    @property
    def telling(self) -> bool:
        """Whether a change is being told at this moment: the plan cannot be changed meanwhile."""
        return self._telling

    @property
    def undo_label(self) -> str | None:
        """Name of the step Undo takes back."""
        return self._history.undo_label

    @property
    def redo_label(self) -> str | None:
        """Name of the step Redo does again."""
        return self._history.redo_label

    def do(self, edit: Edit, *, joins_last: bool = False) -> bool:
        """Apply an edit; False when it was refused or changed nothing.

        With `joins_last` the step replaces the one before it when that has the same label (nudges, typing).
        """
        try:
            new = edit.apply(self.plan)
        except EditRefused as refusal:
            self.refused.emit(str(refusal))
            return False
        if new is self.plan:
            return False
        step = Step(edit.label, new)
        may_join = joins_last and self._history.undo_label == edit.label and self.plan is not self._saved
        history = amended(self._history, step) if may_join else recorded(self._history, step)
        self._move_to(history, "edit")
        return True

    def undo(self) -> None:
        """Go one step back."""
        self._move_to(undone(self._history), "undo")

    def redo(self) -> None:
        """Go one step forward again."""
        self._move_to(redone(self._history), "redo")

    def open(self, plan: Plan, path: Path | None, *, unsaved: bool = False) -> None:
        """Start anew with another plan; a rescued one is `unsaved` from the start."""
        self.path = path
        self._saved = Plan() if unsaved else plan
        self._thrown = {}
        self._move_to(begun(plan), "open", always=True)

    def mark_saved(self, path: Path) -> None:
        """Remember that the plan as it is now lies at that path."""
        self.path = path
        self._saved = self.plan
        self.saved_state.emit(False)

    def throw(self, part: PartId, position: str) -> None:
        """Put a switch or motor into a position, live; the plan and its history are not touched."""
        self._thrown[part] = position
        self.thrown.emit(self.positions)

    def foresee(self, part: PartId, position: str) -> None:
        """Tell that a switch will most likely be thrown: the hand is on it."""
        self.foreseen.emit({**self.positions, part: position})

    def stand_as_in_use(self) -> None:
        """Put everything back as it stands while a session runs."""
        self._thrown = {}
        self.thrown.emit(self.positions)

    def _move_to(self, history: History, cause: str, *, always: bool = False) -> None:
        if self._telling:
            raise RuntimeError("the plan was changed while a change was being told")
        old, new = self.plan, history.now.plan
        if new is old and not always:
            return
        self._history = history
        self.revision += 1
        self._telling = True
        try:
            self.changed.emit(PlanChanged(self.revision, old, new, changes_between(old, new), cause))
        finally:
            self._telling = False
        self.saved_state.emit(self.unsaved)
