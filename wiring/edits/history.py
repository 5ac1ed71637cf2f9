"""Past, present and future of a plan: undo is the older value, redo the newer one. Without limit."""

from typing import NamedTuple

from wiring.plan.plan import Plan


class Step(NamedTuple):
    """One state of the plan and the name of the edit that led to it."""

    label: str
    plan: Plan


class History(NamedTuple):
    """Steps done, the present one, and steps undone; all values are shared, none is copied."""

    past: tuple[Step, ...]
    now: Step
    future: tuple[Step, ...]

    @property
    def undo_label(self) -> str | None:
        """Name of the step Undo would take back; None when there is none."""
        return self.now.label if self.past else None

    @property
    def redo_label(self) -> str | None:
        """Name of the step Redo would do again; None when there is none."""
        return self.future[-1].label if self.future else None


def begun(plan: Plan) -> History:
    """Return a history that starts at a plan."""
    return History((), Step("", plan), ())


def recorded(history: History, step: Step) -> History:
    """Return the history with one more step; what was undone is gone."""
    return History((*history.past, history.now), step, ())


def amended(history: History, step: Step) -> History:
    """Return the history with its present step replaced, for nudges and typing that belong together."""
    return History(history.past, step, ())


def undone(history: History) -> History:
    """Return the history one step back; the same one when there is nothing to undo."""
    if not history.past:
        return history
    return History(history.past[:-1], history.past[-1], (*history.future, history.now))


def redone(history: History) -> History:
    """Return the history one step forward; the same one when there is nothing to redo."""
    if not history.future:
        return history
    return History((*history.past, history.now), history.future[-1], history.future[:-1])
