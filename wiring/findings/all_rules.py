"""All checks in the order their findings are read among equals, as a table."""

from collections.abc import Callable, Iterator, Mapping

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import NO_FIGURES
from wiring.findings import (
    batteries,
    battery_charged,
    brightness,
    coils,
    contacts,
    crowded_terminals,
    diode_current,
    direct_on_ac,
    full_wireways,
    fuses,
    half_waves,
    led_resistor,
    letters,
    loose_ends,
    mixed_voltages,
    odd_settings,
    over_volts,
    panel_fit,
    plug_side,
    polarity,
    pulses,
    resistor_power,
    rush,
    safety,
    shared_resistor,
    store_rush,
    supplies,
    switched_return,
    throws,
    under_volts,
    unsolved,
    wire_current,
    wire_drop,
    worst_case,
)
from wiring.findings.finding import Finding
from wiring.findings.situation import Situation
from wiring.plan.names import PanelId, PartId, SceneId, WireId, WirewayId
from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.scene import Scene
from wiring.plan.wire import Wire
from wiring.plan.wireway import Wireway
from wiring.studies.alike import texts_of_parts, texts_of_wires
from wiring.studies.keeping import kept

RULES: tuple[Callable[[Situation], Iterator[Finding]], ...] = (
    unsolved.find,
    mixed_voltages.find,
    battery_charged.find,
    led_resistor.find,
    shared_resistor.find,
    supplies.find,
    wire_current.find,
    fuses.find,
    polarity.find,
    direct_on_ac.find,
    half_waves.find,
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
    switched_return.find,
    full_wireways.find,
    panel_fit.find,
    plug_side.find,
    letters.find,
    safety.find,
)

Rule = Callable[[Situation], Iterator[Finding]]
_Found = Mapping[Rule, tuple[Finding, ...]]
# They look at the plan alone, and at so much of it: no switch and no figure makes them find anything else.
ON_WIRED: tuple[Rule, ...] = (loose_ends.find, crowded_terminals.find)
ON_SETTINGS: tuple[Rule, ...] = (odd_settings.find,)
ON_PANELS: tuple[Rule, ...] = (panel_fit.find,)
ON_PLUGS: tuple[Rule, ...] = (plug_side.find,)
ON_PLACES: tuple[Rule, ...] = (full_wireways.find,)
ON_TEXTS: tuple[Rule, ...] = (letters.find,)

_told: tuple[Finding, ...] = ()  # the last findings; replaced whole


def found_in(situation: Situation) -> tuple[Finding, ...]:
    """Return every finding of a situation, the gravest first, else in the order of the table.

    A finding that was there in the last answer is the same object, and so is the whole if none is another.
    """
    global _told
    stands = _standing(situation)
    found = [finding for rule in RULES for finding in (stands[rule] if rule in stands else rule(situation))]
    found.sort(key=lambda finding: -finding.rank)
    last = _told
    before = {finding: finding for finding in last}
    told = tuple(before.get(finding, finding) for finding in found)
    _told = last if told == last else told
    return _told


def _standing(situation: Situation) -> _Found:
    """Return what is found in the plan alone, kept while what it is found in stays as it is."""
    plan, kinds, parts = situation.plan, situation.kinds, situation.parts
    words, texts = (plan.title, plan.author), (texts_of_parts(plan.parts), texts_of_wires(plan.wires))
    return {
        **kept(_on_wired, parts, situation.landed, kinds),
        **kept(_on_settings, parts, kinds),
        **kept(_on_panels, plan.parts, plan.panels, kinds),
        **kept(_on_plugs, plan.parts, situation.landed, plan.panels, kinds),
        **kept(_on_places, plan, kinds),
        **kept(_on_texts, *texts, plan.scenes, plan.panels, plan.wireways, *words, kinds),
    }


def _on_wired(
    parts: Mapping[PartId, Part], wires: Mapping[WireId, Wire], kinds: Mapping[str, Kind]
) -> _Found:
    return _alone(ON_WIRED, Plan(parts=parts, wires=wires), kinds)


def _on_settings(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> _Found:
    return _alone(ON_SETTINGS, Plan(parts=parts), kinds)


def _on_panels(
    parts: Mapping[PartId, Part], panels: Mapping[PanelId, Panel], kinds: Mapping[str, Kind]
) -> _Found:
    return _alone(ON_PANELS, Plan(parts=parts, panels=panels), kinds)


def _on_plugs(
    parts: Mapping[PartId, Part],
    wires: Mapping[WireId, Wire],
    panels: Mapping[PanelId, Panel],
    kinds: Mapping[str, Kind],
) -> _Found:
    return _alone(ON_PLUGS, Plan(parts=parts, wires=wires, panels=panels), kinds)


def _on_places(plan: Plan, kinds: Mapping[str, Kind]) -> _Found:
    return _alone(ON_PLACES, plan, kinds)


def _on_texts(
    parts: Mapping[PartId, Part],
    wires: Mapping[WireId, Wire],
    scenes: Mapping[SceneId, Scene],
    panels: Mapping[PanelId, Panel],
    wireways: Mapping[WirewayId, Wireway],
    title: str,
    author: str,
    kinds: Mapping[str, Kind],
) -> _Found:
    plan = Plan(
        title=title, author=author, parts=parts, wires=wires, scenes=scenes, panels=panels, wireways=wireways
    )
    return _alone(ON_TEXTS, plan, kinds)


def _alone(rules: tuple[Rule, ...], plan: Plan, kinds: Mapping[str, Kind]) -> _Found:
    """Return what rules find in a plan of which nothing else is known."""
    situation = Situation(plan, kinds, {}, NO_FIGURES, {}, ())
    return {rule: tuple(rule(situation)) for rule in rules}
