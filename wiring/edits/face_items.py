"""Draw track lines and legends on the face of a panel, change them and shift them."""

from collections.abc import Callable, Collection, Iterable
from types import MappingProxyType
from typing import Any, Literal, TypeVar

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.panels import panel_of
from wiring.edits.tables import counted, refuse_if, rounded_mm, tidy_colour
from wiring.plan.panel import FaceLine, FaceText, Panel
from wiring.plan.panel_faults import face_faults
from wiring.plan.places import Point
from wiring.plan.plan import Plan

T = TypeVar("T", FaceLine, FaceText)
Sort = Literal["line", "text"]
WORDS: dict[Sort, str] = {"line": "track line", "text": "legend"}
FIELDS: dict[Sort, tuple[str, ...]] = {
    "line": ("width_mm", "colour"),
    "text": ("text", "x_mm", "y_mm", "high_mm", "colour", "turn_deg"),
}


def add_line(panel_id: str, points: Iterable[Point], width_mm: float = 4.0, colour: str = "BK") -> Edit:
    """Draw a track line along those corners, in mm from the face's upper left corner."""
    corners = tuple(_tidy(p) for p in points)

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        line = FaceLine(points=corners, width_mm=width_mm, colour=tidy_colour(colour))
        return _with(plan, panel, lines=(*panel.lines, line))

    return Edit("Draw track line", apply)


def add_text(panel_id: str, text: str, x_mm: float, y_mm: float, **fields: Any) -> Edit:  # noqa: ANN401
    """Put a legend with its middle on a place of the face; `fields` as FaceText has them."""
    _refuse_unknown(fields, "text")

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        at = _tidy((x_mm, y_mm))
        made = FaceText(text=text.strip(), x_mm=at[0], y_mm=at[1], **_tidied(fields))
        return _with(plan, panel, texts=(*panel.texts, made))

    return Edit("Put legend", apply)


def change_item(panel_id: str, sort: Sort, index: int, **fields: Any) -> Edit:  # noqa: ANN401
    """Set fields of the track line ("line") or legend ("text") of that index, those of FIELDS."""
    _refuse_unknown(fields, sort)

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        if sort == "line":
            line = msgspec.structs.replace(_at(panel, panel.lines, sort, index), **_tidied(fields))
            return _with(plan, panel, lines=_put(panel.lines, index, line))
        text = msgspec.structs.replace(_at(panel, panel.texts, sort, index), **_tidied(fields))
        return _with(plan, panel, texts=_put(panel.texts, index, text))

    return Edit(f"Change {WORDS[sort]}", apply)


def move_line_corner(panel_id: str, index: int, corner: int, x_mm: float, y_mm: float) -> Edit:
    """Put one corner of a track line somewhere else on the face."""

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        line = _at(panel, panel.lines, "line", index)
        if not 0 <= corner < len(line.points):
            raise EditRefused(f"The track line on the panel {panel.name} has no such corner any more.")
        points = (*line.points[:corner], _tidy((x_mm, y_mm)), *line.points[corner + 1 :])
        new = msgspec.structs.replace(line, points=points)
        return _with(plan, panel, lines=_put(panel.lines, index, new))

    return Edit("Move track line corner", apply)


def move_items(
    panel_id: str, lines: Collection[int], texts: Collection[int], dx_mm: float, dy_mm: float
) -> Edit:
    """Shift the track lines and legends of those indices."""

    def shifted(at: Point) -> Point:
        return _tidy((at[0] + dx_mm, at[1] + dy_mm))

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        new_lines = tuple(
            msgspec.structs.replace(line, points=tuple(map(shifted, line.points))) if i in lines else line
            for i, line in enumerate(panel.lines)
        )
        new_texts = tuple(
            msgspec.structs.replace(t, x_mm=shifted((t.x_mm, t.y_mm))[0], y_mm=shifted((t.x_mm, t.y_mm))[1])
            if i in texts
            else t
            for i, t in enumerate(panel.texts)
        )
        return _with(plan, panel, lines=new_lines, texts=new_texts)

    return Edit(f"Move {counted(len(lines) + len(texts), 'item')} on the face", apply)


def _with(plan: Plan, old: Panel, **fields: Any) -> Plan:  # noqa: ANN401 - lines and texts
    new = msgspec.structs.replace(old, **fields)
    if new == old:
        return plan
    refuse_if(face_faults(new))
    return plan.with_changes(panels=MappingProxyType({**dict(plan.panels), new.id: new}))


def _at(panel: Panel, items: tuple[T, ...], sort: Sort, index: int) -> T:
    if not 0 <= index < len(items):
        raise EditRefused(f"The panel {panel.name} has no such {WORDS[sort]} any more.")
    return items[index]


def _put(items: tuple[T, ...], index: int, new: T) -> tuple[T, ...]:
    return items[:index] + (new,) + items[index + 1 :]  # noqa: RUF005 - the checker loses T in a starred one


def _refuse_unknown(fields: dict[str, Any], sort: Sort) -> None:
    unknown = fields.keys() - set(FIELDS[sort])
    if unknown:
        raise TypeError(f"a {WORDS[sort]} has no field {', '.join(sorted(unknown))} to set")


def _tidied(fields: dict[str, Any]) -> dict[str, Any]:
    """Return fields as they are kept: places to a thousandth, colours in capitals, texts without rims."""
    tidy: dict[str, Callable[[Any], Any]] = {
        "colour": tidy_colour,
        "text": str.strip,
        "turn_deg": lambda v: rounded_mm(float(v) % 360.0),
    }
    return {k: tidy[k](v) if k in tidy else rounded_mm(float(v)) for k, v in fields.items()}


def _tidy(point: Point) -> Point:
    return rounded_mm(float(point[0])), rounded_mm(float(point[1]))
