"""Takes the ticks of a carry sheet back into the plan as the wires that are built, as one step to undo."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from wiring.edits.edit import Edit
from wiring.edits.set_built import set_built
from wiring.files.refusals import NotReadable

if TYPE_CHECKING:
    from app.window.main_window import MainWindow
    from wiring.plan.plan import Plan
    from wiring.sheets.carry.tick_file import Told


def ask_for_ticks(window: "MainWindow") -> None:
    """Let the person choose the file that the carry sheet saved."""
    folder = str(window.remembered.folder)
    name, _ = QFileDialog.getOpenFileName(window, "Take ticks from a carry sheet", folder, "Ticks (*.json)")
    if name:
        take_ticks(window, Path(name))


def take_ticks(window: "MainWindow", path: Path) -> None:
    """Mark the wires as ticked, and say what was done and what was left as it is."""
    from wiring.findings.words import wire_names
    from wiring.sheets.carry.tick_file import read_ticks, told_by

    session = window.session
    try:
        ticks = read_ticks(path)
    except NotReadable as reason:
        window.notices.refuse(str(reason))
        return
    told = told_by(ticks, session.plan)
    if not (told.built or told.undone):
        window.notices.refuse(
            "None of the ticked wires stands in this plan as it was ticked; open the plan that the carry "
            f"sheet “{ticks.plan[:80]}” was made from."
            if told.changed or told.gone
            else f"No wire is ticked in {path.name}; tick wires on the carry sheet and save its ticks again."
        )
        return
    session.do(_edit(told))
    plan = session.plan
    built = sum(wire.built for wire in plan.wires.values())
    said = [f"{built} of {len(plan.wires)} wires are built."]
    if told.changed:
        said.append(f"{wire_names(plan, told.changed)} changed since; they stay as they were.")
    if told.gone:
        count = f"{len(told.gone)} ticked {'wire is' if len(told.gone) == 1 else 'wires are'}"
        said.append(f"{count} no longer in the plan.")
    window.notices.say(" ".join(said))


def _edit(told: "Told") -> Edit:
    def apply(plan: "Plan") -> "Plan":
        return set_built(told.undone, False).apply(set_built(told.built, True).apply(plan))

    return Edit("Take ticks from a carry sheet", apply)
