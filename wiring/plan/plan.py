"""The whole document of one layout, as one frozen value."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

import msgspec

from wiring.plan.backdrop import Backdrop
from wiring.plan.battery_log import BatteryReading
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.joist import Joist
from wiring.plan.names import PanelId, PartId, SceneId, TerminalRef, WireId, WirewayId
from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.scene import Scene, UsePattern
from wiring.plan.wire import Wire
from wiring.plan.wireway import Wireway

Line = tuple[tuple[float, float], ...]
UNTITLED = "Untitled plan"


class Habits(msgspec.Struct, frozen=True, omit_defaults=True):
    """What the builder does everywhere unless a part or wire says otherwise."""

    units: str = "metric"  # or "us": how lengths are shown
    wire_size: str = "22 AWG"
    slack_m: float = 0.10  # spare length per wire end, for stripping and reach
    ambient_c: float = 20.0
    drop_limit: float = 0.10  # NEM 604: at most a tenth of the source voltage lost on the wires
    dim_lightness: float = 50.0  # CIE 1976 lightness, of 100 when fresh, below which a lamp counts as too dim
    fascia: str = "bottom"  # which edge of the plan the builder stands at
    paper: str = "A4"  # or "Letter" or "A3"
    symbols: str = "iec"  # or "ieee": the set circuit drawings are made with
    currency: str = ""  # what prices are in, in the builder's own words; never assumed


class Plan(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A plan. Mappings are keyed by id and kept in the order things were made."""

    title: str = UNTITLED
    author: str = ""
    habits: Habits = Habits()
    use: UsePattern = UsePattern()  # for parts that lie in no scene
    board: Line = ()  # outline of the benchwork, mm
    tracks: tuple[Line, ...] = ()
    joists: tuple[Joist, ...] = ()
    scenes: Mapping[SceneId, Scene] = MappingProxyType({})
    panels: Mapping[PanelId, Panel] = MappingProxyType({})
    parts: Mapping[PartId, Part] = MappingProxyType({})
    wires: Mapping[WireId, Wire] = MappingProxyType({})
    wireways: Mapping[WirewayId, Wireway] = MappingProxyType({})
    backdrop: Backdrop | None = None
    battery_log: tuple[BatteryReading, ...] = ()
    prices: Mapping[str, float] = MappingProxyType({})  # of one battery by its type's key, or of one part
    circuit_colours: Mapping[PartId, CircuitColours] = MappingProxyType({})  # by the supply's id
    next_number: int = 1  # ids are never given twice

    def with_changes(self, **fields: Any) -> "Plan":  # noqa: ANN401 - msgspec checks the field names
        """Return a plan that differs in those fields only and shares the rest."""
        return msgspec.structs.replace(self, **fields)

    def wires_at(self, ref: TerminalRef) -> tuple[Wire, ...]:
        """Return the wires that end on a terminal, in plan order."""
        return tuple(w for w in self.wires.values() if ref in (w.start, w.end))
