"""Pieces under one another and side by side between two rails."""

from wiring.drawings.circuit_beside import BESIDE_MM
from wiring.drawings.circuit_block import Block, sized
from wiring.drawings.circuit_blocks import (
    FLAG_MM,
    LINE,
    ROW_MM,
    TERMINAL_MM,
    dot,
    flag,
    leaf_block,
    line,
    upright_steps,
)
from wiring.drawings.circuit_facts import REFERENCE_BELOW_MM, REFERENCE_ROOM_MM, SMALL_MM, Facts
from wiring.drawings.circuit_loops import has_rail, is_open, lead_mm, on_rails
from wiring.drawings.circuit_rails import along, room_mm
from wiring.drawings.circuit_tree import End, Leaf, Node, Parallel, Series, Stray
from wiring.drawings.marks import net_out
from wiring.drawings.symbols.all_symbols import items_box
from wiring.pictures.metrics import width_mm
from wiring.pictures.picture import Anchor, Disc, Item, Point, Words
from wiring.pictures.transform import moved

GAP_MM = 3.0  # air between two columns
STUB_MM = 3.0
BAND_MM = 3.8  # between a rail and its columns: for wires that loop along it, or a rail that hangs on it
LONGEST_LEAD_MM = 4 * ROW_MM


def block(facts: Facts, node: Node, least_mm: float = 0.0, lead: float = 0.0) -> Block:
    """Return a node drawn from its top net down to its bottom net, at least so high.

    `lead` is how far above its symbol an upper piece starts, so that neighbours stand level.
    """
    key = (node, least_mm, lead, frozenset((ref, len(steps)) for ref, steps in facts.short.items()))
    return facts.kept(key, lambda: _block(facts, node, least_mm, lead))


def _block(facts: Facts, node: Node, least_mm: float, lead: float) -> Block:
    if isinstance(node, Leaf):
        return leaf_block(facts, node, least_mm, lead)
    if isinstance(node, Series):
        return _series(facts, node, least_mm, lead)
    if isinstance(node, Parallel):
        return _parallel(facts, node, least_mm)
    if isinstance(node, Stray):
        return _stray(facts, node)
    raise TypeError(f"{type(node).__name__} stands in no row of its own")


def _series(facts: Facts, node: Series, least_mm: float, lead: float) -> Block:
    items: list[Item] = []
    within: list[tuple[Block, Point]] = []
    y = left = right = 0.0
    open_top = open_bottom = False
    last = len(node.parts) - 1
    for number, part in enumerate(node.parts):
        if isinstance(part, End):
            first = number == 0
            end = _end(facts, part, first)
            items.extend(moved(end, (0.0, y)))
            right = max(right, items_box(end)[2])
            y += STUB_MM
            open_top, open_bottom = open_top or first, open_bottom or not first
            continue
        if number and has_rail(part, upper=True) and has_rail(node.parts[number - 1], upper=False):
            items.append(line((0.0, y), (0.0, y + BAND_MM)))
            y += BAND_MM
        least = max(0.0, least_mm - y) if number == last else 0.0
        drawn = block(facts, part, least, 0.0 if number else lead)
        within.append((drawn, (0.0, y)))
        left, right = min(left, drawn.left), max(right, drawn.right)
        open_top = open_top or (drawn.open_top and number == 0)
        open_bottom = drawn.open_bottom if number == last else open_bottom
        y += drawn.height
    return Block(tuple(items), left, right, y, open_top, open_bottom, tuple(within))


def _end(facts: Facts, end: End, first: bool) -> list[Item]:
    """Return the end of a path that leads nowhere, or on to another place of the drawing."""
    edge = 0.0 if first else STUB_MM
    joined = STUB_MM - edge
    if end.flag:
        tip = edge + (FLAG_MM if first else -FLAG_MM)
        words = Words(end.flag, (BESIDE_MM, edge + (0.9 if first else -0.9)), SMALL_MM, stand="middle")
        past = BESIDE_MM + width_mm(end.flag, SMALL_MM) + 0.8
        return [
            line((0.0, joined), (0.0, tip)),
            flag((0.0, edge if first else tip), 0, 1),
            words,
            Anchor(net_out(end.flag), (past, words.at[1])),
            Anchor("", (past + REFERENCE_ROOM_MM, words.at[1])),
        ]
    tip = edge + (TERMINAL_MM if first else -TERMINAL_MM)
    return [line((0.0, joined), (0.0, tip)), Disc((0.0, tip), TERMINAL_MM, TERMINAL_MM, LINE, "paper")]


def _stray(facts: Facts, stray: Stray) -> Block:
    """Return wires and terminals that hang on a rail: on the upper one, or standing on the lower."""
    steps = facts.tails.strays[stray.top if stray.hangs else stray.bottom][stray.number]
    if not stray.hangs:
        steps = tuple(reversed(steps))
    return sized(upright_steps(steps, 0.0), len(steps) * ROW_MM, not stray.hangs, stray.hangs)


def _parallel(facts: Facts, node: Parallel, least_mm: float) -> Block:
    parts = sorted(node.parts, key=is_open)
    facts, upper, lower = on_rails(facts, node, parts)
    band_top = BAND_MM if upper.used or any(has_rail(p, upper=True) for p in parts) else 0.0
    band_bottom = BAND_MM if lower.used or any(has_rail(p, upper=False) for p in parts) else 0.0
    lead = max((n for n in (lead_mm(facts, p) for p in parts) if n <= LONGEST_LEAD_MM), default=0.0)
    drawn = [block(facts, part, 0.0, lead) for part in parts]
    height = max([least_mm - band_top - band_bottom, *(b.height for b in drawn)])
    drawn = [
        b if b.open_bottom or b.height >= height else block(facts, part, height, lead)
        for b, part in zip(drawn, parts, strict=True)
    ]
    full = band_top + height + band_bottom
    x = end = 0.0
    left = drawn[0].left
    items: list[Item] = []
    within: list[tuple[Block, Point]] = []
    tops: list[float] = []
    bottoms: list[float] = []
    for number, part in enumerate(drawn):
        room = max(room_mm(upper, number), room_mm(lower, number))
        x = max(end + GAP_MM - part.left, x + room) if number else 0.0
        left = left if number else min(left, -room)
        y = full - band_bottom - part.height if part.open_top else band_top
        within.append((part, (x, y)))
        if not part.open_top:
            tops.append(x)
            items.append(line((x, 0.0), (x, band_top)))
        if not part.open_bottom:
            bottoms.append(x)
            items.append(line((x, full - band_bottom), (x, full)))
        items.extend(along(upper, number, x, 0.0, 2.7))
        items.extend(along(lower, number, x, full, full - 1.3))
        end = x + part.right
    rails = [*_rail(tops, 0.0, node.flag_top, end), *_rail(bottoms, full, node.flag_bottom, end)]
    right = max(end, items_box(rails)[2])
    open_top, open_bottom = not tops or tops[0] > 0, not bottoms or bottoms[0] > 0
    return Block((*rails, *items), left, right, full, open_top, open_bottom, tuple(within))


def _rail(joints: list[float], y: float, name: str, end_mm: float) -> list[Item]:
    """Return a rail over its columns with a dot at each joint; a name sends it on past the last column."""
    if not joints or (len(joints) == 1 and not name):
        return []
    reach = max(end_mm, joints[-1]) + 1.0 if name else joints[-1]
    items: list[Item] = [line((joints[0], y), (reach, y))]
    items.extend(dot((x, y)) for x in (joints if name else joints[:-1]))
    if name:
        items.append(flag((reach, y), 1, 0))
        items.append(Words(name, (reach + FLAG_MM + 0.6, y), SMALL_MM, stand="middle"))
        items.append(Anchor(net_out(name), (reach + FLAG_MM + 0.6, y + REFERENCE_BELOW_MM)))
    return items
