"""All checks in the order their findings are read among equals, as a table."""

from collections.abc import Callable, Iterator, Mapping

from wiring.findings import (
    batteries,
    brightness,
    coils,
    contacts,
    crowded_terminals,
    diode_current,
    direct_on_ac,
    full_wireways,
    fuses,
    led_resistor,
    loose_ends,
    mixed_voltages,
    odd_settings,
    over_volts,
    panel_fit,
    polarity,
    pulses,
    resistor_power,
    rush,
    safety,
    store_rush,
    supplies,
    throws,
    under_volts,
    unsolved,
    wire_current,
    wire_drop,
    worst_case,
)
from wiring.findings.finding import Finding
from wiring.findings.situation import Situation

RULES: tuple[Callable[[Situation], Iterator[Finding]], ...] = (
    unsolved.find,
    mixed_voltages.find,
    led_resistor.find,
    supplies.find,
    wire_current.find,
    fuses.find,
    polarity.find,
    direct_on_ac.find,
    coils.find,
    resistor_power.find,
    diode_current.find,
    contacts.find,
    brightness.find,
    wire_drop.find,
    worst_case.find,
    over_volts.find,
    under_volts.find,
    pulses.find,
    throws.find,
    rush.find,
    store_rush.find,
    batteries.find,
    odd_settings.find,
    loose_ends.find,
    crowded_terminals.find,
    full_wireways.find,
    panel_fit.find,
    safety.find,
)

STANDING = frozenset(  # they look at the plan alone: no switch and no figure makes them find anything else
    {odd_settings.find, loose_ends.find, crowded_terminals.find, full_wireways.find, panel_fit.find}
)
_Standing = Mapping[Callable[[Situation], Iterator[Finding]], tuple[Finding, ...]]
_stood: tuple[object, object, _Standing] | None = None  # of the last plan; replaced whole


def found_in(situation: Situation) -> tuple[Finding, ...]:
    """Return every finding of a situation, the gravest first, else in the order of the table."""
    stands = _standing(situation)
    found = [finding for rule in RULES for finding in (stands[rule] if rule in stands else rule(situation))]
    return tuple(sorted(found, key=lambda finding: -finding.rank))


def _standing(situation: Situation) -> _Standing:
    """Return what is found in the plan alone, worked out once however its switches are thrown."""
    global _stood
    last = _stood
    if last is not None and last[0] is situation.plan and last[1] is situation.kinds:
        return last[2]
    found: _Standing = {rule: tuple(rule(situation)) for rule in RULES if rule in STANDING}
    _stood = situation.plan, situation.kinds, found
    return found
