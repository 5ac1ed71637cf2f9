"""Divide a circuit into sections that each fit one row, and name the nets that go on from one to another."""

import math
from typing import NamedTuple

from wiring.drawings.circuit_block import Block
from wiring.drawings.circuit_blocks import leaf_block
from wiring.drawings.circuit_facts import Facts
from wiring.drawings.circuit_groups import GAP_MM, block
from wiring.drawings.circuit_runs import run_block
from wiring.drawings.circuit_tree import End, Leaf, Node, Parallel, Series, in_series, leaves

ROW_MM = 222.0
FLAGS_MM = 22.0  # kept free for the names of rails at both ends
AIR_MM = 3.0
RUN_DEPTH_MM = 17.0  # the words of a run reach so far below its rail
RUN_MM = 110.0  # so far a run along the upper rail may reach before the pieces stand upright
DISTRICT_ABOVE = 40  # pieces; a larger circuit shows its districts apart
DISTRICT_PIECES = 6
RAIL_PURPOSES = {"protect", "switch", "join"}


class Section(NamedTuple):
    """A node to draw between two rails, with the source at its left or flags that name its rails."""

    node: Node | None
    top: int
    bottom: int
    source: Leaf | None = None
    upper: tuple[Leaf, ...] = ()  # along the upper rail, from the source on
    lower: tuple[Leaf, ...] = ()  # along the lower rail, the last one next to the source

    @property
    def source_top(self) -> int:
        """The net of the source's plus."""
        return self.source.top if self.source else self.top

    @property
    def source_bottom(self) -> int:
        """The net of the source's minus."""
        return self.source.bottom if self.source else self.bottom


class Divider:
    """Cuts sections off one tree; `wanted` collects the nets that need their name in two places."""

    def __init__(self, facts: Facts, row_mm: float = ROW_MM) -> None:
        self.facts = facts
        self.row_mm = row_mm
        self.cut: list[Section] = []
        self.wanted: set[int] = set()

    def divided(self, section: Section) -> list[Section]:
        """Return the section and those cut from it, each no wider than a row where that can be had."""
        if section.node is None:
            return [section]
        node = section.node
        if sum(1 for _ in leaves(node)) > DISTRICT_ABOVE:
            node = self._without_districts(node)
        section = with_runs(self.facts, section._replace(node=node))
        if section.node is not None:
            section = section._replace(node=self._fitted(section.node, self._room(section)))
        waiting, self.cut = self.cut, []
        found = [section]
        for other in waiting:
            found.extend(self.divided(other))
        return found

    def _room(self, section: Section) -> float:
        room = self.row_mm - FLAGS_MM
        if section.source is not None and section.node is not None:
            source = leaf_block(self.facts, section.source)
            height = block(self.facts, section.node).height
            room -= run_start_mm(source, height, bool(section.lower)) + AIR_MM
            room -= max(
                run_block(self.facts, list(section.upper), True)[1],
                run_block(self.facts, list(section.lower), False)[1],
            )
        return room

    def _without_districts(self, node: Node) -> Node:
        if isinstance(node, Series):
            parts = tuple(self._without_districts(p) if isinstance(p, Parallel) else p for p in node.parts)
            return node._replace(parts=parts)
        if isinstance(node, Parallel):
            return node._replace(parts=tuple(self._district(part) for part in node.parts))
        return node

    def _district(self, node: Node) -> Node:
        if not isinstance(node, Series) or sum(1 for _ in leaves(node)) < DISTRICT_PIECES:
            return node
        for number, part in enumerate(node.parts):
            if isinstance(part, Parallel) and number:
                rest = node.parts[number:]
                body = rest[0] if len(rest) == 1 else Series(rest, part.top, node.bottom, part.order)
                self._set_apart(body)
                head = node.parts[:number]
                kept: Node = head[0] if number == 1 else Series(head, node.top, part.top, node.order)
                return in_series(kept, End(part.top, node.bottom, part.order), node.top, node.bottom)
        return node

    def _fitted(self, node: Node, room_mm: float) -> Node:
        if width(block(self.facts, node)) <= room_mm:
            return node
        if isinstance(node, Series):
            parts = tuple(p if isinstance(p, End) else self._fitted(p, room_mm) for p in node.parts)
            return node._replace(parts=parts)
        if not isinstance(node, Parallel):
            return node
        units = [[self._fitted(part, room_mm) for part in unit] for unit in _units(node.parts)]
        widths = [sum(width(block(self.facts, part)) + GAP_MM for part in unit) for unit in units]
        first: list[Node] = []
        used_mm, share_mm = 0.0, self._share(sum(widths), room_mm)
        for fitted, wide_mm in zip(units, widths, strict=True):
            if first and used_mm + wide_mm > min(room_mm, share_mm + wide_mm / 2):
                break
            first.extend(fitted)
            used_mm += wide_mm
        rest = [part for unit in units for part in unit][len(first) :]
        if rest:
            whole = node._replace(parts=tuple(rest), order=rest[0].order, led=True)
            self._set_apart(rest[0] if len(rest) == 1 else whole)
        return node._replace(parts=tuple(first)) if len(first) > 1 else first[0]

    def _share(self, whole_mm: float, room_mm: float) -> float:
        """Return how much a first row takes: rows of like fullness read better than full ones and a rest."""
        full_mm = self.row_mm - FLAGS_MM
        rows = 1 + math.ceil(max(whole_mm - room_mm, 0.0) / full_mm)
        return whole_mm * room_mm / (room_mm + (rows - 1) * full_mm)

    def _set_apart(self, node: Node) -> None:
        self.cut.append(Section(node, node.top, node.bottom))
        self.wanted |= {node.top, node.bottom}


def _units(parts: tuple[Node, ...]) -> list[list[Node]]:
    """Return columns in groups that stay together: neighbours that show one part, as the coils of a pair."""
    units: list[list[Node]] = []
    held: set[str] = set()
    for part in parts:
        ids = {leaf.piece.part for leaf in leaves(part)}
        if units and ids & held:
            units[-1].append(part)
        else:
            units.append([part])
            held = set()
        held |= ids
    return units


def width(drawn: Block) -> float:
    """Return how wide a block is."""
    return drawn.right - drawn.left


def run_start_mm(source: Block, height_mm: float, lower: bool) -> float:
    """Return how far right of a source its runs start: at once where its words stand well below them."""
    below_run = (height_mm - source.height) / 2 > RUN_DEPTH_MM
    return AIR_MM if below_run and not lower else source.right + AIR_MM


def with_runs(facts: Facts, section: Section) -> Section:
    """Lay the fuses and switches next to the source along its rails; what is left stands upright."""
    node = section.node
    if section.source is None or not isinstance(node, Series):
        return section
    parts = list(node.parts)
    upper = _taken_off(facts, parts, upper=True)
    lower = _taken_off(facts, parts, upper=False)
    body: Node = (
        parts[0] if len(parts) == 1 else Series(tuple(parts), parts[0].top, parts[-1].bottom, node.order)
    )
    return section._replace(node=body, upper=tuple(upper), lower=tuple(lower))


def _taken_off(facts: Facts, parts: list[Node], *, upper: bool) -> list[Leaf]:
    """Take what may lie along a rail off one end of some parts, as far as there is room on it."""
    run: list[Leaf] = []
    while len(parts) > 1:
        piece = parts[0 if upper else -1]
        if (upper and isinstance(parts[1], End)) or not isinstance(piece, Leaf):
            break
        longer = [*run, piece] if upper else [piece, *run]
        if not _lies(facts, piece, piece.top if upper else piece.bottom):
            break
        if run_block(facts, longer, upper)[1] > RUN_MM:
            break
        run = longer
        parts.pop(0 if upper else -1)
    return run


def upright(section: Section) -> Section:
    """Return the section with its runs put back into the node."""
    if section.node is None or not (section.upper or section.lower):
        return section
    body = section.node.parts if isinstance(section.node, Series) else (section.node,)
    parts = (*section.upper, *body, *section.lower)
    node = Series(parts, parts[0].top, parts[-1].bottom, section.node.order)
    return section._replace(node=node, upper=(), lower=())


def _lies(facts: Facts, node: Leaf, outer: int) -> bool:
    """Tell whether a piece may lie along a rail: a fuse or a contact with nothing else on its outer net."""
    if node.piece.idle or facts.tails.strays.get(outer):
        return False
    kind = facts.kinds[facts.plan.parts[node.piece.part].kind]
    return kind.purpose in RAIL_PURPOSES and kind.behaviour not in ("relay", "diode", "resistor")
