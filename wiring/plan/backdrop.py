"""A picture of the track plan, or a photograph, that lies under the plan."""

import msgspec


class Backdrop(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A picture under the plan: where its upper left corner lies, and how large one of its pixels is.

    It is kept in the plan as base64 in `data`, or beside it as a file that `path` names from the plan's own
    folder; `media` is its type as RFC 2046 writes it. `turn_deg` turns it clockwise about its corner.
    """

    media: str  # "image/png", "image/jpeg" or "image/svg+xml"
    data: str = ""
    path: str = ""
    width_px: float
    height_px: float
    x_mm: float = 0.0
    y_mm: float = 0.0
    mm_per_px: float = 1.0
    turn_deg: float = 0.0
    strength: float = 0.45  # how much of it shows through the paper
