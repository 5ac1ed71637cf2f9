"""LEDs that nothing holds back: no resistor, or one too small."""

from collections.abc import Iterator, Sequence

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.linear import Floats
from wiring.findings.asked import Asked, asked, figures_of, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.larger_resistor import larger_resistor
from wiring.findings.offers import resistor_before
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, ohms, part_names, volts, watts
from wiring.plan.part import Part
from wiring.studies.joints import LASTING, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.resistor_choice import ResistorChoice, series_resistor
from wiring.studies.roles import SOURCE_ENDS, SOURCES
from wiring.studies.settings import number

LEDS, LIT = ("led",), ("led", "strip")


def find(situation: Situation) -> Iterator[Finding]:
    """Find LEDs wired straight across a supply, then LEDs with too much current, grouped by kind."""
    bare = tuple(straight_across(situation))
    plan = situation.plan
    groups: dict[tuple[str, str, ResistorChoice | None], list[Part]] = {}
    for part, source in bare:
        choice = _choice(situation, situation.kinds[part.kind], part, source)
        groups.setdefault((part.kind, source, choice), []).append(part)
    for (kind, source, choice), parts in groups.items():
        ids = tuple(part.id for part in parts)
        yield Finding(
            "led-without-resistor",
            Rank.DANGER,
            f"{part_names(plan, ids)} {do(len(ids), 'is', 'are')} wired straight across "
            f"-{plan.parts[source].designation}, with no resistor.",
            "An LED takes all the current it can get and burns out at once.",
            _mend(situation, situation.kinds[kind], parts[0], choice, do(len(ids), "it", "each")),
            ids,
            act=resistor_before(situation, ids, choice.ohms, choice.rated_w) if choice else None,
        )
    yield from _too_much(situation, {part.id for part, _ in bare})


def straight_across(situation: Situation) -> Iterator[tuple[Part, str]]:
    """Walk the bare LEDs that wires and contacts alone join to both ends of a supply, in any position."""
    net = situation.joints.net(LASTING | Link.MOMENTARY)
    yield from kept(_straight_across, asked(situation, LEDS), asked(situation, SOURCES), net)


def _straight_across(leds: Asked, sources: Asked, net: Net) -> Sequence[tuple[Part, str]]:
    sides: dict[frozenset[int], str] = {}
    for source, kind in zip(sources.ids, sources.kinds, strict=True):
        groups = frozenset(net.group_of(ref) for ref in ends(source, SOURCE_ENDS[kind.behaviour]))
        if -1 not in groups:
            sides.setdefault(groups, source)
    found: list[tuple[Part, str]] = []
    for part, series_ohm in zip(leds.parts, settings_of(leds, "series_ohm").tolist(), strict=True):
        if series_ohm <= 0 and sides:
            across = sides.get(frozenset(net.group_of(ref) for ref in ends(part.id, ("A", "K"))))
            if across is not None:
                found.append((part, across))
    return found


def _choice(situation: Situation, kind: Kind, part: Part, source: str) -> ResistorChoice | None:
    figure = situation.figures.supplies.get(source)
    wished_a = number(part, kind, "forward_a") * number(part, kind, "in_parallel")
    return series_resistor(figure.nominal_v if figure else 0.0, _forward_v(part, kind), wished_a)


def _forward_v(part: Part, kind: Kind) -> float:
    return number(part, kind, "forward_v") * number(part, kind, "in_series")


def _mend(situation: Situation, kind: Kind, part: Part, choice: ResistorChoice | None, which: str) -> str:
    if choice is None:
        least_v = volts(situation.plan, _forward_v(part, kind))
        return f"Feed it from more than {least_v}, through a resistor of its own."
    return (
        f"Put a resistor of {ohms(situation.plan, choice.ohms)}, {watts(situation.plan, choice.rated_w)}, "
        f"in series with {which}."
    )


def _too_much(situation: Situation, known: set[str]) -> Iterator[Finding]:
    plan = situation.plan
    groups: dict[str, list[tuple[float, str]]] = {}
    some = asked(situation, LIT)
    figures = figures_of(situation, some)
    shares = np.abs(figures.amps) / np.maximum(kept(_mosts, some), 1e-9)
    for row, part, _ in some.rows(figures.known & (shares > 1.0)):
        if part.id not in known:
            groups.setdefault(part.kind, []).append((float(shares[row]), part.id))
    for kind_key, found in groups.items():
        found.sort(reverse=True)
        worst = found[0][1]
        ids = tuple(part for _, part in found)
        most = _most_a(plan.parts[worst], situation.kinds[kind_key])
        larger = larger_resistor(situation, ids) if situation.kinds[kind_key].behaviour == "led" else None
        yield Finding(
            "led-current",
            Rank.DANGER,
            f"{part_names(plan, ids)} {do(len(ids), 'takes', 'take up to')} "
            f"{amps(plan, abs(situation.figures.parts[worst].current_a))}, but no more than "
            f"{amps(plan, most)} is allowed.",
            "Too much current makes an LED hot and ends its life early.",
            f"{larger.words if larger else 'Use a larger series resistor'}, or a supply with fewer volts.",
            ids,
            act=larger.act if larger else None,
        )


def _mosts(some: Asked) -> Floats:
    return np.array([_most_a(part, kind) for part, kind in zip(some.parts, some.kinds, strict=True)])


def _most_a(part: Part, kind: Kind) -> float:
    each = number(part, kind, "max_a")
    if kind.behaviour == "strip":
        section_m = number(part, kind, "section")
        return each * max(round(number(part, kind, "length") / section_m), 1) if section_m > 0 else each
    return each * max(number(part, kind, "in_parallel"), 1.0)
