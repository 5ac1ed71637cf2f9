"""A drawn piece of a circuit: items of its own and blocks within it, laid flat once all is in place."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.drawings.symbols.all_symbols import items_box
from wiring.pictures.picture import Item, Point
from wiring.pictures.transform import moved


class Block(NamedTuple):
    """Drawn items that hang from (0, 0) and end at (0, height), and how far they reach to each side."""

    items: tuple[Item, ...]
    left: float
    right: float
    height: float
    open_top: bool = False  # not joined to what lies above
    open_bottom: bool = False
    within: tuple[tuple["Block", Point], ...] = ()


def sized(items: Sequence[Item], height: float, open_top: bool = False, open_bottom: bool = False) -> Block:
    """Return the items as a block, measured."""
    left, _, right, _ = items_box(items)
    return Block(tuple(items), min(left, 0.0), max(right, 0.0), height, open_top, open_bottom)


def flat(block: Block, at: Point = (0.0, 0.0)) -> list[Item]:
    """Return all items of a block and of those within it; each is shifted once, however deep it lies."""
    found: list[Item] = []
    _flatten(block, at[0], at[1], found)
    return found


def _flatten(block: Block, x: float, y: float, found: list[Item]) -> None:
    found.extend(moved(block.items, (x, y)) if x or y else block.items)
    for inner, (across, down) in block.within:
        _flatten(inner, x + across, y + down, found)
