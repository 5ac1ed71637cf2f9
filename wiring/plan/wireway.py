"""A path under the layout that wires may follow."""

import msgspec

from wiring.plan.names import WirewayId


class Wireway(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A path along beams and through holes of joists, as corners in plan millimetres.

    `hole_mm` is the diameter of its narrowest hole, `drop_mm` the way from it up to a terminal on the board,
    `fascia_drop_mm` the way to a terminal on a panel; None when that is no other.
    """

    id: WirewayId
    name: str
    points: tuple[tuple[float, float], ...]
    hole_mm: float = 20.0
    drop_mm: float = 80.0
    fascia_drop_mm: float | None = None
