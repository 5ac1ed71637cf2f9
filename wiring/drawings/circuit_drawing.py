"""Circuit drawings of a plan, one or more for each fed circuit: feed above, return below, paths between."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.circuit_build import Built, built
from wiring.drawings.circuit_facts import TEXT_MM, Facts
from wiring.drawings.circuit_gather import shown
from wiring.drawings.circuit_pieces import JOINTS, SOURCES
from wiring.drawings.circuit_places import Place, place_of, without_places
from wiring.drawings.circuit_rows import section_items
from wiring.drawings.marks import wire_mark
from wiring.drawings.symbols.all_symbols import items_box
from wiring.pictures.metrics import wrapped
from wiring.pictures.picture import Anchor, Item, Picture, Words
from wiring.pictures.transform import moved
from wiring.plan.designations import part_label, terminal_label
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

# A drawing is no larger where its parts allow: it fits a framed A4 or Letter sheet on its side at full size.
SHEET_MM = (222.0, 126.0)  # printed larger where it can be, so that the smallest words have 7 points
BETWEEN_MM = (9.0, 7.0)  # air between sections: side by side, and one row to the next
MARGIN_MM = 2.0
_WIDER_MM, _FEW_PARTS = 10.0, 16  # of a circuit in one row: so much wider, and of so many parts at most
LARGER = (1.3, 1.15)  # how much a drawing that fills one sheet in short rows may be enlarged in print


class Drawing(NamedTuple):
    """One circuit drawing: what it shows is in no other drawing of the plan."""

    title: str
    picture: Picture
    parts: tuple[PartId, ...]
    wires: tuple[WireId, ...]
    places: tuple[Place, ...] = ()  # where each of them is drawn


class _Placed(NamedTuple):
    items: tuple[Item, ...]
    box: tuple[float, float, float, float]  # left, top, right, bottom
    parts: list[PartId]
    wires: list[WireId]
    fed_from: str = ""  # the net a section goes on from, where its source is on another sheet

    @property
    def width(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        return self.box[3] - self.box[1]


@dataclass
class _Sheet:
    items: list[Item]
    sections: list[_Placed]
    width: float = 0.0
    height: float = 0.0


def circuit_drawings(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    figures: Figures,
    symbols: str | None = None,
    sheet_mm: tuple[float, float] = SHEET_MM,
) -> tuple[Drawing, ...]:
    """Return the drawings of all circuits that have a supply or a battery, in the order of the figures.

    `symbols` is "iec" or "ieee", the plan's own unless told; ValueError for another. None is larger than
    `sheet_mm` where its parts allow.
    """
    symbols = plan.habits.symbols if symbols is None else symbols
    found: list[Drawing] = []
    for circuit in figures.circuits:
        if _sources(plan, kinds, circuit):
            found.extend(_drawings_of(plan, kinds, positions, figures, circuit, symbols, sheet_mm))
    return tuple(found)


def not_fed(plan: Plan, kinds: Mapping[str, Kind], figures: Figures) -> tuple[PartId, ...]:
    """Return the parts that no supply or battery reaches; they are in no drawing."""
    fed = {p for circuit in figures.circuits if _sources(plan, kinds, circuit) for p in circuit}
    return tuple(p for p in plan.parts if p not in fed)


def _sources(plan: Plan, kinds: Mapping[str, Kind], circuit: Sequence[PartId]) -> list[PartId]:
    within = set(circuit)
    return [
        p.id
        for p in plan.parts.values()
        if p.id in within and p.kind in kinds and kinds[p.kind].behaviour in SOURCES
    ]


def _drawings_of(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    figures: Figures,
    circuit: Sequence[PartId],
    symbols: str,
    sheet_mm: tuple[float, float],
) -> list[Drawing]:
    laid_out = partial(_laid_out, plan, kinds, positions, figures, circuit, symbols)
    sheets = laid_out((sheet_mm[0] + _WIDER_MM, sheet_mm[1])) if len(circuit) <= _FEW_PARTS else []
    if len(sheets) != 1 or any(section.fed_from for section in sheets[0].sections):
        sheets = laid_out(sheet_mm)  # it does not stand whole in one row
    rows = len(sheets) == 1 and any(section.fed_from for section in sheets[0].sections)
    for factor in LARGER if rows else ():  # in rows it is anyway: shorter ones can be enlarged in print
        room = (sheet_mm[0] / factor, sheet_mm[1] / factor)
        larger = laid_out(room)
        if len(larger) == 1 and larger[0].width <= room[0] and larger[0].height <= room[1]:
            sheets = larger
            break
    title = " and ".join(
        f"{part_label(plan, p)} {plan.parts[p].label or kinds[plan.parts[p].kind].title}"
        for p in _sources(plan, kinds, circuit)[:2]
    )
    taken: set[str] = set()
    drawings: list[Drawing] = []
    for number, sheet in enumerate(sheets, start=1):
        sections = sheet.sections
        fed_from = dict.fromkeys(s.fed_from for s in sections if s.fed_from)
        name = title if number == 1 or not fed_from else f"{title}, from {', '.join(fed_from)}"
        if len(sheets) > 1:
            name += f" ({number} of {len(sheets)})"
        parts = [p for p in dict.fromkeys(p for s in sections for p in s.parts) if p not in taken]
        wires = [w for w in dict.fromkeys(w for s in sections for w in s.wires) if w not in taken]
        taken.update(parts, wires)
        painted, places = without_places(sheet.items)
        picture = Picture(
            painted,
            sheet.width + 2 * MARGIN_MM,
            sheet.height + 2 * MARGIN_MM,
            -MARGIN_MM,
            -MARGIN_MM,
            name,
        )
        drawings.append(Drawing(name, picture, tuple(parts), tuple(wires), places))
    return drawings


def _laid_out(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    figures: Figures,
    circuit: Sequence[PartId],
    symbols: str,
    room_mm: tuple[float, float],
) -> list[_Sheet]:
    ready = built(plan, kinds, positions, figures, circuit, symbols, room_mm[0])
    placed = _placed(ready)
    seen_parts = {p for section in placed for p in section.parts}
    seen_wires = {w for section in placed for w in section.wires}
    rest = [w for w in ready.facts.nets.wires if w.id not in seen_wires]
    loose = [p for p in circuit if p in plan.parts and p not in seen_parts]
    if rest or loose:
        placed.append(_note(ready.facts, [w.id for w in rest], loose))
    return _sheets(placed, room_mm)


def _placed(ready: Built) -> list[_Placed]:
    placed: list[_Placed] = []
    for section in ready.sections:
        items = section_items(ready.facts, section, ready.dresser)
        parts, wires = shown(ready.facts, section)
        fed_from = "" if section.source else ready.facts.tails.names.get(section.top, "")
        placed.append(_Placed(items, items_box(items), parts, wires, fed_from))
    return placed


def _note(facts: Facts, wires: list[WireId], parts: list[PartId]) -> _Placed:
    """Return in words what no current path shows: wires between terminals that lead to no part."""
    plan = facts.plan
    told = [
        f"{w.label} {w.colour} {terminal_label(plan, w.start)} – {terminal_label(plan, w.end)}"
        for w in map(plan.wires.__getitem__, wires)
        if w.start.part in plan.parts and w.end.part in plan.parts
    ]
    told.extend(part_label(plan, p) for p in parts if facts.kinds[plan.parts[p].kind].behaviour in JOINTS)
    lines = wrapped("In no current path: " + ", ".join(told), SHEET_MM[0] / 2, TEXT_MM)
    items: tuple[Item, ...] = tuple(
        Words(text, (0.0, 2.0 + row * 2.8), TEXT_MM, "quiet", stand="middle")
        for row, text in enumerate(lines)
    )
    items += tuple(Anchor(wire_mark(w), (0.0, 2.0)) for w in wires)
    items += tuple(place_of(one, items) for one in (*wires, *parts))
    return _Placed(items, items_box(items), parts, wires)


def _sheets(placed: list[_Placed], room_mm: tuple[float, float]) -> list[_Sheet]:
    """Pack sections into rows and rows into sheets, in order; a last row is not left alone on its sheet."""
    pages = _pages(placed, room_mm)
    if len(pages) > 1 and len(pages[-1]) == 1 and len(pages[-2]) > 2:
        row = pages[-2][-1]
        if _high(row) + BETWEEN_MM[1] + _high(pages[-1][0]) <= room_mm[1]:
            pages[-2].pop()
            pages[-1].insert(0, row)
    return [_sheet(rows) for rows in pages]


def _pages(placed: list[_Placed], room_mm: tuple[float, float]) -> list[list[list[_Placed]]]:
    """Return the sections of each row of each sheet, every row and sheet filled before the next is begun."""
    pages: list[list[list[_Placed]]] = [[]]
    row: list[_Placed] = []
    x = y = 0.0
    for section in placed:
        if not row or x + section.width > room_mm[0]:
            y += _high(row) + BETWEEN_MM[1] if row else 0.0
            row, x = [], 0.0
            pages[-1].append(row)
        if y > 0 and y + section.height > room_mm[1]:
            if not row:
                pages[-1].pop()
            row, x, y = [], 0.0, 0.0
            pages.append([row])
        row.append(section)
        x += section.width + BETWEEN_MM[0]
    return pages


def _high(row: Sequence[_Placed]) -> float:
    return max(section.height for section in row)


def _sheet(rows: Sequence[Sequence[_Placed]]) -> _Sheet:
    here = _Sheet([], [])
    y = 0.0
    for row in rows:
        x = 0.0
        for section in row:
            here.items.extend(moved(section.items, (x - section.box[0], y - section.box[1])))
            here.sections.append(section)
            here.width = max(here.width, x + section.width)
            here.height = max(here.height, y + section.height)
            x += section.width + BETWEEN_MM[0]
        y += _high(row) + BETWEEN_MM[1]
    return here
