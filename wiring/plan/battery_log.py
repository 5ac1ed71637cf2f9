"""What was done to a battery and read off it, day by day."""

import msgspec

from wiring.plan.names import PartId

FITTED, SWAPPED, CHARGED, MEASURED = "fitted", "swapped", "charged", "measured"
EVENTS = (FITTED, SWAPPED, CHARGED, MEASURED)
FRESH = (FITTED, SWAPPED, CHARGED)  # after which it is full


class BatteryReading(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """One entry: the day as ``2026-03-01``, what was done, and volts at its terminals if measured."""

    battery: PartId
    day: str
    event: str  # one of EVENTS
    volts_v: float = 0.0
    under_load: bool = True  # everything of its scenes lit; else nothing drawn since some hours
    note: str = ""
