"""Note in the plan what was done to a battery: fitted, swapped, charged, or measured."""

from datetime import date

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import part_of, refuse_if
from wiring.plan.battery_log import MEASURED, BatteryReading
from wiring.plan.battery_log_faults import log_faults
from wiring.plan.plan import Plan


def log_battery(
    battery: str,
    event: str,
    day: date,
    volts_v: float = 0.0,
    *,
    under_load: bool = True,
    note: str = "",
) -> Edit:
    """Add an entry, kept in order of days; refused when the battery is gone or the entry makes no sense."""
    entry = BatteryReading(
        battery=battery,
        day=day.isoformat(),
        event=event,
        volts_v=float(volts_v),
        under_load=under_load,
        note=note,
    )

    def apply(plan: Plan) -> Plan:
        part_of(plan, battery)
        refuse_if(log_faults(entry))
        if entry in plan.battery_log:
            return plan
        return plan.with_changes(battery_log=tuple(sorted((*plan.battery_log, entry), key=lambda e: e.day)))

    word = "reading" if event == MEASURED else f"battery {event}"
    return Edit(f"Log {word}", apply)


def strike_reading(entry: BatteryReading) -> Edit:
    """Take an entry out of the log; refused when it is not there."""

    def apply(plan: Plan) -> Plan:
        if entry not in plan.battery_log:
            raise EditRefused("The battery log has no such entry any more.")
        kept = list(plan.battery_log)
        kept.remove(entry)
        return plan.with_changes(battery_log=tuple(kept))

    return Edit("Strike log entry", apply)
