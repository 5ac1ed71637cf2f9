"""One conductor between two terminals."""

import msgspec

from wiring.plan.names import TerminalRef, WireId, WirewayId


class Wire(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A wire; `length_m` is what the user measured, None means: take it from the way it is drawn."""

    id: WireId
    label: str  # "W12"
    start: TerminalRef
    end: TerminalRef
    size: str = "22 AWG"  # as wiring.standards.conductors reads it
    colour: str = "BK"  # IEC 60757 letters
    solid: bool = False  # one strand, not stranded
    length_m: float | None = None
    bends: tuple[tuple[float, float], ...] = ()  # corners in mm, in order from start to end
    note: str = ""
    built: bool = False  # made, both ends landed and labelled
    along: tuple[WirewayId, ...] = ()  # wireways it was led along, from start to end
