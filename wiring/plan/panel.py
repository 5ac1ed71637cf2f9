"""A fascia control panel: a face that carries switches and indicators, and what is painted on it."""

import msgspec

from wiring.plan.names import PanelId


class FaceLine(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A stretch of the track diagram; corners in mm from the face's upper left corner, as seen in front."""

    points: tuple[tuple[float, float], ...]
    width_mm: float = 4.0
    colour: str = "BK"  # letters of IEC 60757, one colour


class FaceText(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A legend; its middle in mm from the face's upper left corner, seen from the front."""

    text: str
    x_mm: float
    y_mm: float
    high_mm: float = 3.5  # of its capitals, as engravers and stencils count
    colour: str = "BK"  # letters of IEC 60757, one colour
    turn_deg: float = 0.0  # clockwise


class Panel(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A panel face drawn flat beside the fascia, rectangle in plan millimetres."""

    id: PanelId
    name: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    spacing_mm: float = 0.0  # what parts snap to, from the upper left corner; 0: the plan's own grid
    room_mm: float = 0.0  # clear depth behind the face; 0: not known
    lines: tuple[FaceLine, ...] = ()
    texts: tuple[FaceText, ...] = ()
