"""The panels as sheets: a table of holes, then the face at 1:1 to tape on and drill."""

from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.drawings.panel_face import em_mm
from wiring.drawings.plan_fit import scale_words
from wiring.pictures.picture import Anchor, Item, Words
from wiring.pictures.transform import moved
from wiring.plan.designations import part_label
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.quantities.face_lengths import length_words
from wiring.sheets.blocks import LIST_MM, SMALL_MM, Block, heading, paragraph
from wiring.sheets.drill_words import drill_words
from wiring.sheets.panel_front import LEAST_EM_MM, back_mark, front_mark, front_scale, front_view
from wiring.sheets.panel_harness import harness_ways
from wiring.sheets.panel_template import Face, faces
from wiring.sheets.panel_tiles import HEAD_MM, face_tiles, template_mark
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.pending import sheet_words
from wiring.sheets.section import Leaf, Section, body_size, text_section
from wiring.sheets.strip_charts import WIRE_COLUMNS, strip_rows, wires_by_terminal
from wiring.sheets.table import Cell, Column, Row, table

_BETWEEN_MM = 5.0  # from one face to the title of the next on the same sheet
_LEAST_AMONG = 1 / 1.5  # scale at which a face is drawn among its lists, not on a sheet of its own
_HIGHEST_AMONG = 0.4  # of a sheet
_APART_MM = 50.0
_TIGHTEST = 0.92  # of the lists, where this saves the page of a last few rows
_WORTH = 0.75  # faces share a sheet where none would be larger than this allows by itself


def panel_sections(
    plan: Plan,
    kinds: Mapping[str, Kind],
    paper: str,
    name: str | None = None,
    backs: Sequence[Leaf] = (),
) -> tuple[Section, ...]:
    """Return the sheets of all panels that carry parts, or of the one of that name; nothing without any.

    First holes and wiring as lists, small faces drawn among them, then the other faces as they will look, the
    backs, and templates at full size.
    """
    found = tuple(f for f in faces(plan, kinds) if name in (None, f.area.name))
    if not found:
        return ()
    upright, lying = sheet(paper), sheet(paper, landscape=True)
    among = {f.panel.id: drawn for f in found if (drawn := _among_lists(f, upright))}
    tables = _tables(plan, kinds, found, body_size(upright)[0], among)
    lists = text_section("Panels", "panels", upright, tables, tightest=_TIGHTEST)
    apart = [f for f in found if f.panel.id not in among]
    fronts = [_fronts(some, lying) for some in _shared_out(apart, lying)]
    leaves = [leaf for face in found for leaf in face_tiles(face, lying)]
    return (Section("Panels", "panels", (*lists.leaves, *fronts, *backs, *leaves)),)


def _among_lists(face: Face, page: Sheet) -> Block | None:
    """Return a face drawn among its lists if it is small enough to be told well there."""
    width, height = body_size(page)
    scale = front_scale([face], width, height * _HIGHEST_AMONG)
    if scale < _LEAST_AMONG:
        return None
    picture, _ = front_view(face, width, height, scale)
    says = f"{_looks(face, scale)}, {scale_words(scale)}"
    items = (
        Anchor(front_mark(face.panel.id), (0.0, 0.0)),
        *moved(picture.items, (0.0, 0.0)),
        Words(says[0].upper() + says[1:], (0.0, picture.height_mm + 4.0), SMALL_MM, "quiet"),
    )
    return Block(picture.height_mm + 8.5, items, keep_next=True)


def _looks(face: Face, scale: float) -> str:
    enlarged = any(em_mm(t.high_mm) * scale < LEAST_EM_MM for t in face.panel.texts)
    return f"front, as it will look{'; small letters larger than they are' * enlarged}"


def _shared_out(found: Sequence[Face], page: Sheet) -> list[list[Face]]:
    """Return the faces sheet by sheet, in order: low ones share one where this makes them little smaller."""
    sheets: list[list[Face]] = []
    for face in found:
        longer = [*sheets[-1], face] if sheets else []
        if longer and _scale(longer, page) >= _WORTH * min(_scale([f], page) for f in longer):
            sheets[-1] = longer
        else:
            sheets.append([face])
    return sheets


def _scale(some: Sequence[Face], page: Sheet) -> float:
    width, height = body_size(page)
    return front_scale(some, width, height - HEAD_MM * len(some) - _BETWEEN_MM * (len(some) - 1))


def _fronts(some: Sequence[Face], page: Sheet) -> Leaf:
    left, top, _, _ = page.body
    scale = _scale(some, page)
    items: list[Item] = []
    for face in some:
        picture, _ = front_view(face, *body_size(page), scale)
        items.append(Anchor(front_mark(face.panel.id), (left, top)))
        says = f"{face.area.name}, {_looks(face, scale)}"
        items.append(Words(says, (left, top + 4.6), 4.6, weight="semibold"))
        items += moved(picture.items, (left, top + HEAD_MM))
        top += HEAD_MM + picture.height_mm + _BETWEEN_MM
    kind = f"{some[0].area.name}, front" if len(some) == 1 else "Panels, fronts"
    return Leaf(page, tuple(items), kind, scale_words(scale), bookmark=kind)


def _where(face: Face, *, drawn: bool) -> Block:
    """Return a line that says on which sheets a panel is drawn."""
    marks = [
        ("Back: sheet ", back_mark(face.area.name)),
        ("Full size: from sheet ", template_mark(face.panel.id)),
    ]
    if not drawn:
        marks.insert(0, ("Front: sheet ", front_mark(face.panel.id)))
    words = [sheet_words(s, m, (_APART_MM * i, LIST_MM), LIST_MM) for i, (s, m) in enumerate(marks)]
    return Block(LIST_MM * 2, tuple(words), keep_next=True)


def _tables(
    plan: Plan, kinds: Mapping[str, Kind], found: tuple[Face, ...], width: float, among: Mapping[str, Block]
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
        leads=True,
    )
    us = plan.habits.units == "us"
    for face in found:
        sides = (face.area.right - face.area.left, face.area.bottom - face.area.top)
        size = " × ".join(length_words(side, us=us) for side in sides)
        blocks.append(heading(f"{face.area.name}: {size}", width, level=2))
        drawn = among.get(face.panel.id)
        blocks.append(_where(face, drawn=drawn is not None))
        blocks += [drawn] if drawn else []
        rows = [
            (
                Cell(tick=True),
                part_label(plan, h.part.id),
                length_words(h.x_mm, us=us) if us else f"{h.x_mm:.1f} mm",
                length_words(h.y_mm, us=us) if us else f"{h.y_mm:.1f} mm",
                drill_words(h.across_mm, us=us) if h.across_mm else "cut-out",
                (length_words(h.kind.behind_mm, us=us) if h.kind.behind_mm else ""),
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
