"""What a name or a size typed on the plan changes: of a part, a wire, an area, a wireway or a joist."""

from collections.abc import Callable
from typing import NamedTuple

from app.canvas.hits.area_hit import areas_of
from app.ground_keys import joist_index
from app.inspector.committing import committed
from app.session import Session
from wiring.edits.edit import Edit
from wiring.edits.joists import change_joist
from wiring.edits.panels import change_panel
from wiring.edits.scenes import change_scene
from wiring.edits.set_value import set_field
from wiring.edits.set_wire import set_wire
from wiring.edits.wireways import set_wireway
from wiring.plan.designations import part_label
from wiring.quantities.not_understood import NotUnderstood
from wiring.quantities.reading import read
from wiring.quantities.wording import worded

WAY_SIZES = {
    "hole_mm": "Diameter of the narrowest hole it goes through",
    "drop_mm": "From the wireway up to a terminal on the board",
    "fascia_drop_mm": "From the wireway to a terminal on a panel",
}
JOIST_SIZES = {"width_mm": "Thickness of the joist, seen from above", "depth_mm": "How far it reaches down"}


class Question(NamedTuple):
    """A line to be typed: its caption, the text it begins with, what is done with it."""

    caption: str
    text: str
    commit: Callable[[str], str]


def name_of(session: Session, one: str) -> Question | None:
    """Return the question for the name of anything that has one; None for what has none."""
    plan = session.plan
    if one in plan.parts:
        words = f"Your own words for {part_label(plan, one)}"
        return _text(session, words, plan.parts[one].label, lambda t: set_field((one,), label=t))
    if one in plan.wires:
        return _text(session, "Label of the wire", plan.wires[one].label, lambda t: set_wire((one,), label=t))
    if one in plan.wireways:
        return _text(
            session, "Name of the wireway", plan.wireways[one].name, lambda t: set_wireway(one, name=t)
        )
    area = areas_of(plan).get(one)
    if area is None:
        return None
    change = change_scene if one in plan.scenes else change_panel
    word = "scene" if one in plan.scenes else "panel"
    return _text(session, f"Name of the {word}", area.name, lambda t: change(one, name=t))


def way_size(session: Session, way_id: str, name: str) -> Question:
    """Return the question for the hole or a drop of a wireway, in any unit of length."""
    way = session.plan.wireways[way_id]
    value = getattr(way, name)
    now_mm = way.drop_mm if value is None else value
    return _length(session, WAY_SIZES[name], now_mm, lambda v: set_wireway(way_id, **{name: v}))


def joist_size(session: Session, joist: str, name: str) -> Question:
    """Return the question for the width or depth of a joist."""
    index = joist_index(joist)
    now_mm = getattr(session.plan.joists[index], name)
    return _length(session, JOIST_SIZES[name], now_mm, lambda v: change_joist(index, **{name: v}))


def _text(session: Session, caption: str, now: str, edit: Callable[[str], Edit]) -> Question:
    return Question(caption, now, lambda typed: committed(session, edit(typed.strip())))


def _length(session: Session, caption: str, now_mm: float, edit: Callable[[float], Edit]) -> Question:
    units = session.plan.habits.units

    def commit(typed: str) -> str:
        try:
            value_m = read(typed, "length", "foot" if units == "us" else "")
        except NotUnderstood as why:
            return str(why)
        return committed(session, edit(round(value_m * 1000.0, 3)))

    return Question(caption, worded(now_mm / 1000.0, "length", units), commit)
