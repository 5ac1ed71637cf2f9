"""Where the parts and wires of a circuit drawing are: boxes round what is drawn of each, and its words.

While a drawing is laid out the boxes travel among its items, so that they are shifted with them.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from wiring.drawings.symbols.all_symbols import items_box
from wiring.pictures.metrics import Box
from wiring.pictures.picture import Anchor, Item, Link
from wiring.plan.names import PartId, WireId

_SIGN = "\ue001"  # of private use: no name of an anchor begins with it


class Place(NamedTuple):
    """One box of a part or a wire: a part drawn apart has several, a strip one for each terminal."""

    id: PartId | WireId
    box: Box  # left, top, right, bottom in mm

    @property
    def middle(self) -> tuple[float, float]:
        """The middle of the box."""
        left, top, right, bottom = self.box
        return (left + right) / 2, (top + bottom) / 2


def place_of(one: PartId | WireId, drawn: Sequence[Item]) -> Link:
    """Return the box round some items as an item that nothing paints."""
    left, top, right, bottom = items_box([item for item in drawn if not isinstance(item, Anchor)])
    return Link(left, top, right - left, bottom - top, _SIGN + one)


def without_places(items: Iterable[Item]) -> tuple[tuple[Item, ...], tuple[Place, ...]]:
    """Return what is to be painted, and the places that travelled among it."""
    kept: list[Item] = []
    places: list[Place] = []
    for item in items:
        if isinstance(item, Link) and item.target.startswith(_SIGN):
            box = (item.left_mm, item.top_mm, item.left_mm + item.width_mm, item.top_mm + item.height_mm)
            places.append(Place(item.target[len(_SIGN) :], box))
        else:
            kept.append(item)
    return tuple(kept), tuple(places)
