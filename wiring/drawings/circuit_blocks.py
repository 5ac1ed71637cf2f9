"""One piece of a current path drawn upright: what leads to it, its symbol, its words."""

from wiring.drawings.circuit_beside import BESIDE_MM, words_beside
from wiring.drawings.circuit_block import Block, sized
from wiring.drawings.circuit_facts import SMALL_MM, Facts
from wiring.drawings.circuit_pieces import INNER
from wiring.drawings.circuit_places import place_of
from wiring.drawings.circuit_poles import pole_mark
from wiring.drawings.circuit_tails import Step, Steps
from wiring.drawings.circuit_tree import Leaf
from wiring.drawings.marks import part_mark, wire_mark
from wiring.drawings.symbols.all_symbols import LENGTH_MM, symbol
from wiring.drawings.wire_colour import wire_colour
from wiring.pictures.picture import NO_PEN, Anchor, Disc, Item, Path, Pen, Point, Words
from wiring.pictures.transform import moved
from wiring.plan.names import TerminalRef

ROW_MM = 4.0  # one wire or strip terminal in the line
TERMINAL_MM = 0.6
DOT_MM = 0.55
TIP_MM = 1.3  # from the end of a symbol to the middle of its terminal number
FLAG_MM = 1.6
LINE = Pen("ink", 0.25)
EDGE = Pen("ink", 0.12)
BAR_MM = (2.6, 0.9)  # length and breadth of the insulation shown on a wire


def line(*points: Point) -> Path:
    """Return a conductor."""
    return Path(points, LINE)


def dot(at: Point) -> Disc:
    """Return a joint."""
    return Disc(at, DOT_MM, DOT_MM, Pen(width_mm=0.0), "ink")


def terminal(at: Point) -> Disc:
    """Return the circle of a terminal in a line."""
    return Disc(at, TERMINAL_MM, TERMINAL_MM, LINE, "paper")


def insulation(at: Point, letters: str, upright: bool = True) -> list[Path]:
    """Return a short piece of a wire's insulation on its conductor; the letters always stand beside it."""
    colour = wire_colour(letters)
    along, across = BAR_MM
    marks = [(across, colour.rgb, EDGE)]
    if colour.stripe_rgb:
        marks.append((across / 3, colour.stripe_rgb, NO_PEN))
    found = []
    for wide, rgb, pen in marks:
        half_x, half_y = (wide / 2, along / 2) if upright else (along / 2, wide / 2)
        (x, y), signs = at, ((-1, -1), (1, -1), (1, 1), (-1, 1))
        found.append(Path(tuple((x + a * half_x, y + b * half_y) for a, b in signs), pen, rgb, closed=True))
    return found


def flag(at: Point, across: int, down: int) -> Path:
    """Return the arrowhead where a conductor goes on elsewhere; it points along (across, down)."""
    x, y = at
    wing = FLAG_MM * 0.45
    tip = (x + across * FLAG_MM, y + down * FLAG_MM)
    return Path(
        (tip, (x - down * wing, y - across * wing), (x + down * wing, y + across * wing)), LINE, closed=True
    )


def upright_steps(steps: Steps, top_mm: float) -> list[Item]:
    """Return wires and strip terminals one under the other on x = 0, words to the right."""
    items: list[Item] = []
    for row, step in enumerate(steps):
        middle = top_mm + (row + 0.5) * ROW_MM
        start, end = top_mm + row * ROW_MM, top_mm + (row + 1) * ROW_MM
        if step.apart:
            items.extend((line((0.0, start), (0.0, middle - 0.7)), line((0.0, middle + 0.7), (0.0, end))))
        else:
            items.append(line((0.0, start), (0.0, end)))
        colour = "quiet" if step.terminal is None else "ink"
        words = Words(step.words, (BESIDE_MM, middle), SMALL_MM, colour, stand="middle")
        items.extend(step_items(step, (0.0, middle), words, upright=True))
    return items


def step_items(step: Step, at: Point, words: Words, *, upright: bool) -> list[Item]:
    """Return the mark of a wire or a strip terminal on its line, its words, and the place of both."""
    if step.terminal is not None:
        drawn: list[Item] = [terminal(at), words]
        return [*drawn, place_of(step.terminal.part, drawn)] if step.terminal.part else drawn
    if step.wire is None:
        return [words]
    drawn = [*insulation(at, step.wire.colour, upright), words]
    return [*drawn, Anchor(wire_mark(step.wire.id), at), place_of(step.wire.id, drawn)]


def upper_and_lower(facts: Facts, leaf: Leaf) -> tuple[TerminalRef, TerminalRef]:
    """Return the two terminals of an upright piece."""
    piece = leaf.piece
    if facts.nets.of[piece.start_ref] == leaf.top:
        return piece.start_ref, piece.end_ref
    return piece.end_ref, piece.start_ref


def leaf_block(facts: Facts, leaf: Leaf, least_mm: float = 0.0, lead_mm: float = 0.0) -> Block:
    """Return a piece with what leads to it above and below.

    Its upper lead is at least `lead_mm` long, the lower one stretches to the least height.
    """
    piece = leaf.piece
    upper, lower = upper_and_lower(facts, leaf)
    down = upper == piece.start_ref
    above, below = tuple(reversed(facts.steps(upper))), facts.steps(lower)
    if not piece.symbol:
        return _lead(facts, above, below, lower if down else upper, least_mm)
    body = facts.kept(("body", leaf), lambda: _body(facts, leaf, upper, lower, down))
    head, foot = _upright(facts, above), _upright(facts, below)
    y = max(head.height, lead_mm)
    bottom = y + body.height
    end = bottom + foot.height
    items: list[Item] = []
    if y > head.height:
        items.append(line((0.0, head.height), (0.0, y)))
    if end < least_mm:
        items.append(line((0.0, end), (0.0, least_mm)))
    return Block(
        tuple(items),
        min(head.left, body.left, foot.left),
        max(head.right, body.right, foot.right),
        max(end, least_mm),
        within=((head, (0.0, 0.0)), (body, (0.0, y)), (foot, (0.0, bottom))),
    )


def _body(facts: Facts, leaf: Leaf, upper: TerminalRef, lower: TerminalRef, down: bool) -> Block:
    """Return the symbol of a piece with the words beside it."""
    piece = leaf.piece
    drawn = symbol(piece.symbol, piece.state, "down" if down else "up", facts.symbols)
    items: list[Item] = list(drawn.items if down else moved(drawn.items, (0.0, LENGTH_MM)))
    height = max(LENGTH_MM, words_beside(facts, piece, drawn.box[2], down, 0.0, items))
    middle = (0.0, LENGTH_MM / 2)
    items.extend((Anchor(part_mark(piece.part), middle), *pole_mark(facts, piece, middle)))
    for ref, at in ((upper, TIP_MM), (lower, LENGTH_MM - TIP_MM)):
        if ref.terminal != INNER:
            items.append(Words(ref.terminal, (0.8, at), SMALL_MM, "quiet", stand="middle"))
        if volts := facts.volts(ref):
            items.append(Words(volts, (-0.8, at), SMALL_MM, "quiet", align="right", stand="middle"))
    items.append(place_of(piece.part, items))
    if height > LENGTH_MM:
        items.append(line((0.0, LENGTH_MM), (0.0, height)))
    return sized(items, height)


def _upright(facts: Facts, steps: Steps) -> Block:
    return facts.kept(steps, lambda: sized(upright_steps(steps, 0.0), len(steps) * ROW_MM))


def _lead(facts: Facts, above: Steps, below: Steps, ref: TerminalRef, least_mm: float) -> Block:
    """Return the common lead of two coils: a terminal in the line and the wires that go on from it."""
    own = Step(ref.terminal, terminal=ref)
    steps = (*above, own, *below)
    items = upright_steps(steps, 0.0)
    items.append(Anchor(part_mark(ref.part), (0.0, (len(above) + 0.5) * ROW_MM)))
    height = len(steps) * ROW_MM
    if volts := facts.volts(ref):
        at = (-BESIDE_MM, (len(above) + 0.5) * ROW_MM)
        items.append(Words(volts, at, SMALL_MM, "quiet", align="right", stand="middle"))
    if height < least_mm:
        items.append(line((0.0, height), (0.0, least_mm)))
    return sized(items, max(height, least_mm))
