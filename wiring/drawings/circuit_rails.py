"""The words and marks along a rail between two columns."""

from wiring.drawings.circuit_beside import BESIDE_MM
from wiring.drawings.circuit_blocks import step_items
from wiring.drawings.circuit_facts import SMALL_MM
from wiring.drawings.circuit_loops import Rail
from wiring.pictures.metrics import width_mm
from wiring.pictures.picture import Item, Words

AIR_MM = 0.9  # on each side of words along a rail


def room_mm(rail: Rail, number: int) -> float:
    """Return how much rail a column needs before it for what lies there."""
    joint = rail.joints[number - 1] if number else None
    room = width_mm(joint.words, SMALL_MM) + BESIDE_MM + AIR_MM if joint else 0.0
    return room + sum(_wide(step.words) for step in rail.runs[number])


def along(rail: Rail, number: int, x: float, y: float, base: float) -> list[Item]:
    """Return what lies on a rail at height y before the column at x, its words on one base line."""
    items: list[Item] = []
    if (joint := rail.joints[number]) is not None:
        words = Words(joint.words, (x + BESIDE_MM, base), SMALL_MM)
        items.extend(step_items(joint, (x, y), words, upright=False))
    edge = x
    for step in reversed(rail.runs[number]):
        wide = _wide(step.words)
        middle = edge - wide / 2
        colour = "ink" if step.wire is None else "quiet"
        words = Words(step.words, (middle, base), SMALL_MM, colour, align="centre")
        items.extend(step_items(step, (middle, y), words, upright=False))
        edge -= wide
    return items


def _wide(words: str) -> float:
    return width_mm(words, SMALL_MM) + 2 * AIR_MM
