"""The panels as sheets: a table of holes, then the face at 1:1 to tape on and drill."""

from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.drawings.panel_face import em_mm
from wiring.drawings.plan_fit import scale_words
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.pictures.transform import moved
from wiring.plan.designations import part_label
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.panel_front import LEAST_EM_MM, front_view
from wiring.sheets.panel_harness import harness_ways
from wiring.sheets.panel_template import Face, face_items, faces
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.section import Leaf, Section, body_size, text_section
from wiring.sheets.strip_charts import WIRE_COLUMNS, strip_rows, wires_by_terminal
from wiring.sheets.table import Cell, Column, Row, table

_OVERLAP_MM = 10.0
_HEAD_MM = 9.0
_EDGE = Pen("quiet", 0.2, (2.0, 1.0))
_AIR_MM = 2.0  # round the face on its sheet


def panel_sections(
    plan: Plan,
    kinds: Mapping[str, Kind],
    paper: str,
    name: str | None = None,
    backs: Sequence[Leaf] = (),
) -> tuple[Section, ...]:
    """Return the sheets of all panels that carry parts, or of the one of that name; nothing without any.

    First holes and wiring as lists, then each face as it will look, backs, and templates at full size.
    """
    found = tuple(f for f in faces(plan, kinds) if name in (None, f.area.name))
    if not found:
        return ()
    upright, lying = sheet(paper), sheet(paper, landscape=True)
    lists = text_section("Panels", "panels", upright, _tables(plan, kinds, found, body_size(upright)[0]))
    fronts = [_front(face, lying) for face in found]
    leaves = [leaf for face in found for leaf in _tiles(face, lying)]
    return (Section("Panels", "panels", (*lists.leaves, *fronts, *backs, *leaves)),)


def _front(face: Face, page: Sheet) -> Leaf:
    width, height = body_size(page)
    left, top, _, _ = page.body
    picture, scale = front_view(face, width, height - _HEAD_MM)
    enlarged = any(em_mm(t.high_mm) * scale < LEAST_EM_MM for t in face.panel.texts)
    says = f"{face.area.name}, front, as it will look{'; small letters larger than they are' * enlarged}"
    head = Words(says, (left, top + 4.6), 4.6, weight="semibold")
    items = moved(picture.items, (left, top + _HEAD_MM))
    return Leaf(page, (head, *items), f"{face.area.name}, front", scale_words(scale))


def _tables(
    plan: Plan, kinds: Mapping[str, Kind], found: tuple[Face, ...], width: float
) -> tuple[Block, ...]:
    columns = (
        Column("", 6, "centre"),
        Column("Part", 16, weight="semibold"),
        Column("From left", 22, "right"),
        Column("From top", 22, "right"),
        Column("Hole", 22, "right"),
        Column("Behind", 20, "right"),
        Column("Which is", 60),
    )
    blocks: list[Block] = [heading("Panels", width, anchor="panels")]
    blocks += paragraph(
        "Seen from the front. Check each hole against the part you have in hand before you drill. The faces "
        "follow at full size: tape them on, punch the centres through, and mind the 100 mm bar.",
        width,
    )
    for face in found:
        size = f"{face.area.right - face.area.left:.0f} × {face.area.bottom - face.area.top:.0f} mm"
        blocks.append(heading(f"{face.area.name}: {size}", width, level=2))
        rows = [
            (
                Cell(tick=True),
                part_label(plan, h.part.id),
                f"{h.x_mm:.1f} mm",
                f"{h.y_mm:.1f} mm",
                f"{h.across_mm:g} mm" if h.across_mm else "cut-out",
                f"{h.kind.behind_mm:g} mm" if h.kind.behind_mm else "",
                h.part.label or h.kind.title,
            )
            for h in sorted(face.holes, key=lambda h: (h.y_mm, h.x_mm))
        ]
        blocks += table(columns, rows, width)
    panels = [face.panel for face in found]
    return *blocks, *_wiring(plan, kinds, found, width), *harness_ways(plan, kinds, panels, width)


def _wiring(
    plan: Plan, kinds: Mapping[str, Kind], found: tuple[Face, ...], width: float
) -> tuple[Block, ...]:
    """Return what is on each terminal at the back of each panel, part by part."""
    at = wires_by_terminal(plan)
    blocks: list[Block] = []
    for face in found:
        rows: list[Row] = []
        for hole in sorted(face.holes, key=lambda h: (h.y_mm, h.x_mm)):
            name = f"-{hole.part.designation}"
            for cells in strip_rows(plan, kinds, hole.part.id, at):
                terminal = cells[1]
                rows.append((cells[0], f"{name}:{terminal}" if terminal else "", *cells[2:]))
        if any(at.get(TerminalRef(h.part.id, t.name)) for h in face.holes for t in h.kind.terminals):
            blocks.append(heading(f"{face.area.name}: wires at the back", width, level=2))
            blocks += table(WIRE_COLUMNS, rows, width)
    return tuple(blocks)


def _tiles(face: Face, page: Sheet) -> list[Leaf]:
    """Return the sheets of one face that hold a hole, each overlapping the next."""
    left, top, _, _ = page.body
    room_w, room_h = body_size(page)
    room_h -= _HEAD_MM
    wide = face.area.right - face.area.left + 2 * _AIR_MM
    high = face.area.bottom - face.area.top + 2 * _AIR_MM
    across, down = _count(wide, room_w), _count(high, room_h)
    leaves = []
    for row in range(down):
        for column in range(across):
            x = column * (room_w - _OVERLAP_MM) - _AIR_MM
            y = row * (room_h - _OVERLAP_MM) - _AIR_MM
            clip = (x, y, x + room_w, y + room_h)
            if not any(clip[0] <= h.x_mm <= clip[2] and clip[1] <= h.y_mm <= clip[3] for h in face.holes):
                continue
            place = f", sheet {'ABCDEFGH'[row % 8]}{column + 1}" if across * down > 1 else ""
            head = Words(
                f"{face.area.name}, front, full size{place}", (left, top + 4.6), 4.6, weight="semibold"
            )
            marks = _overlaps(room_w, room_h, last=column == across - 1, lowest=row == down - 1)
            items = moved((*moved(face_items(face, clip), (-x, -y)), *marks), (left, top + _HEAD_MM))
            leaves.append(Leaf(page, (head, *items), f"{face.area.name}, template", "1:1"))
    return leaves


def _overlaps(width: float, height: float, *, last: bool, lowest: bool) -> list[Item]:
    """Return the lines the next sheet's edge is laid on."""
    lines: list[Item] = []
    if not last:
        x = width - _OVERLAP_MM
        lines.append(Path(((x, 0.0), (x, height)), _EDGE))
    if not lowest:
        y = height - _OVERLAP_MM
        lines.append(Path(((0.0, y), (width, y)), _EDGE))
    return lines


def _count(length: float, room: float) -> int:
    """Return how many overlapping stretches of a room cover a length."""
    return 1 if length <= room else 1 + int(-(-(length - room) // (room - _OVERLAP_MM)))
