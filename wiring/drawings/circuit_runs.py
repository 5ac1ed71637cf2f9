"""Pieces that lie along a rail: the fuse and the switch between a supply and all it feeds."""

from wiring.drawings.circuit_beside import LINE_MM
from wiring.drawings.circuit_block import Block, sized
from wiring.drawings.circuit_blocks import line, step_items
from wiring.drawings.circuit_facts import DESIGNATION_MM, SMALL_MM, TEXT_MM, Facts
from wiring.drawings.circuit_places import place_of
from wiring.drawings.circuit_poles import other_poles, pole_line, pole_mark, pole_room_mm
from wiring.drawings.circuit_tails import Steps
from wiring.drawings.circuit_tree import Leaf
from wiring.drawings.marks import part_mark
from wiring.drawings.symbols.all_symbols import LENGTH_MM, symbol
from wiring.pictures.metrics import cap_mm, widest_mm, width_mm
from wiring.pictures.picture import Anchor, Item, Words
from wiring.pictures.transform import moved

ABOVE_MM = 1.1  # from a rail up to the words over it
AIR_MM = 1.4  # on each side of words over a rail


def run_block(facts: Facts, pieces: list[Leaf], upper: bool) -> tuple[Block, float]:
    """Return pieces drawn along a rail from x = 0 to the returned length.

    On the upper rail they come in feeding order from the left; on the lower rail the last one, next to the
    supply, comes first.
    """
    items: list[Item] = []
    x = 0.0
    for leaf in pieces if upper else reversed(pieces):
        left_net = leaf.top if upper else leaf.bottom
        forward = facts.nets.of[leaf.piece.start_ref] == left_net
        piece = leaf.piece
        left, right = (piece.start_ref, piece.end_ref) if forward else (piece.end_ref, piece.start_ref)
        x = _steps(tuple(reversed(facts.steps(left))), x, items)
        drawn = symbol(piece.symbol, piece.state, "right" if forward else "left", facts.symbols)
        words = [facts.designation(piece), *(text for text, _ in facts.words(piece))]
        wide = max(
            LENGTH_MM,
            width_mm(words[0], DESIGNATION_MM, "semibold") + 2 * AIR_MM,
            widest_mm(words[1:], TEXT_MM) + 2 * AIR_MM,
            pole_room_mm(facts, piece) + 2 * AIR_MM,
        )
        pad = (wide - LENGTH_MM) / 2
        if pad > 0:
            items.extend((line((x, 0.0), (x + pad, 0.0)), line((x + wide - pad, 0.0), (x + wide, 0.0))))
        first = len(items)
        items.extend(moved(drawn.items, (x + pad if forward else x + wide - pad, 0.0)))
        items.append(Words(left.terminal, (x + pad + 0.3, -ABOVE_MM), SMALL_MM, "quiet"))
        items.append(
            Words(right.terminal, (x + wide - pad - 0.3, -ABOVE_MM), SMALL_MM, "quiet", align="right")
        )
        y = max(drawn.box[3], 0.5) + 1.2
        middle = x + wide / 2
        items.append(
            Words(words[0], (middle, y), DESIGNATION_MM, weight="semibold", align="centre", stand="top")
        )
        y += LINE_MM + cap_mm(DESIGNATION_MM) - cap_mm(TEXT_MM)
        for text, quiet in facts.words(piece):
            colour = "quiet" if quiet else "ink"
            items.append(Words(text, (middle, y), TEXT_MM, colour, align="centre", stand="top"))
            y += LINE_MM
        for other in other_poles(facts, piece):
            items.extend(pole_line(other, middle - pole_room_mm(facts, piece) / 2, y))
            y += LINE_MM
        items.append(place_of(piece.part, items[first:]))
        items.extend((Anchor(part_mark(piece.part), (middle, 0.0)), *pole_mark(facts, piece, (middle, 0.0))))
        x = _steps(facts.steps(right), x + wide, items)
    return sized(items, 0.0), x


def _steps(steps: Steps, x: float, items: list[Item]) -> float:
    """Add wires and strip terminals along the rail, words above; return where they end."""
    for step in steps:
        wide = width_mm(step.words, SMALL_MM) + 2 * AIR_MM
        gap = 0.7 if step.apart else 0.0
        items.append(line((x, 0.0), (x + wide / 2 - gap, 0.0)))
        items.append(line((x + wide / 2 + gap, 0.0), (x + wide, 0.0)))
        colour = "quiet" if step.terminal is None else "ink"
        words = Words(step.words, (x + wide / 2, -ABOVE_MM), SMALL_MM, colour, align="centre")
        items.extend(step_items(step, (x + wide / 2, 0.0), words, upright=False))
        x += wide
    return x
