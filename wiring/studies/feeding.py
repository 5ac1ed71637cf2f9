"""Which resistor bare LEDs want in front of them, alone or as strings in series."""

from collections.abc import Iterable, Mapping

from wiring.catalogue.kind import Kind
from wiring.circuit.behaviours.feeding import rating
from wiring.circuit.behaviours.piece import UnusableError
from wiring.edits.feed_ends import TAPS, Group, is_bare_led, sorted_out
from wiring.edits.feed_leads import Leads
from wiring.edits.feed_roots import roots
from wiring.edits.laying import Laying
from wiring.edits.run_order import run_order
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.studies.resistor_choice import series_resistor

# Of the supply's volts, so that LEDs that differ still share a current; common practice.
LEFT_FOR_RESISTOR = 0.2


def feeding_volts(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> float:
    """Return the nominal volts of the supply that a feed of those parts would draw on; 0 when not known.

    Raises EditRefused as :func:`wiring.edits.feed.feed` does when nothing selected leads to one supply.
    """
    found = sorted_out(plan, kinds, ids)
    laying = Laying(plan, kinds, [p.id for part in found for p in part])
    source = plan.parts[roots(laying, found).source]
    kind = kinds[source.kind]
    try:
        return rating(kind.behaviour, kind.values(source.settings)).nominal_v
    except (UnusableError, KeyError):
        return 0.0


def groups(
    plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str], volts_v: float, *, in_series: bool = False
) -> tuple[Group, ...]:
    """Return the bare LEDs among those parts with the E24 resistor each needs, or each string of them.

    Strings are of one kind, neighbours, as long as the volts allow with a fifth left for the resistor. An LED
    that wants more than the supply gives gets none and is left to the findings.
    """
    by_kind: dict[tuple[str, float, float], list[Part]] = {}
    for part in _bare_leds(plan, kinds, ids):
        by_kind.setdefault((part.kind, *_wants(part, kinds[part.kind])), []).append(part)
    made: list[Group] = []
    for (_, forward_v, current_a), parts in by_kind.items():
        most = int(volts_v * (1 - LEFT_FOR_RESISTOR) / forward_v) if in_series and forward_v > 0 else 1
        length = max(most, 1)
        order = run_order([(p.x_mm, p.y_mm) for p in parts])
        for first in range(0, len(order), length):
            string = [parts[i].id for i in order[first : first + length]]
            choice = series_resistor(volts_v, forward_v * len(string), current_a)
            if choice is not None:
                made.append(Group(tuple(string), choice.ohms, choice.rated_w))
    return tuple(made)


def has_bare_leds(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> bool:
    """Whether any of those parts that is not fed yet is an LED without a resistor."""
    return bool(_bare_leds(plan, kinds, ids))


def _bare_leds(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> list[Part]:
    """Return the LEDs to feed that have no resistor, neither of their own nor on their leads."""
    wanted = tuple(i for i in ids if i in plan.parts)  # one that is gone is refused by the feed itself
    chosen = [plan.parts[i] for i in wanted if plan.parts[i].kind in kinds]
    if not any(is_bare_led(p, kinds[p.kind]) or kinds[p.kind].behaviour in TAPS for p in chosen):
        return []  # most selections have none, and sorting takes a while on a large plan
    leads = Leads(plan, kinds)
    bare = [p for p in sorted_out(plan, kinds, wanted, leads).loads if is_bare_led(p, kinds[p.kind])]
    return [p for p in bare if not any(lead.over_resistor for lead in leads.of(p.id) or ())]


def _wants(part: Part, kind: Kind) -> tuple[float, float]:
    values = kind.values(part.settings)
    forward_v = float(values["forward_v"]) * float(values["in_series"])
    return forward_v, float(values["forward_a"]) * float(values["in_parallel"])
