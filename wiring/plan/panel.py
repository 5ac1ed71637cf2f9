"""A fascia control panel: a face that carries switches and indicators."""

import msgspec

from wiring.plan.names import PanelId


class Panel(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A panel face drawn flat beside the fascia, rectangle in plan millimetres."""

    id: PanelId
    name: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
