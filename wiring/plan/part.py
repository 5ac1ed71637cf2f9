"""A part that stands in the plan."""

from collections.abc import Mapping

import msgspec

from wiring.catalogue.kind import Value
from wiring.plan.names import PanelId, PartId, SceneId


class Part(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One placed part: millimetres from the plan's origin, y down, turned clockwise as seen from above."""

    id: PartId
    kind: str
    designation: str  # without the leading minus: "E12"
    x_mm: float
    y_mm: float
    turn_deg: float = 0.0
    label: str = ""  # the user's own words: "lamp by the crane"
    settings: Mapping[str, Value] = {}
    position: str = ""  # how it stands while a session runs; "" means the kind's `in_use`
    scene: SceneId = ""
    panel: PanelId = ""
    note: str = ""
    group: str = ""  # parts that share it are one thing; see `wiring.plan.groups`
