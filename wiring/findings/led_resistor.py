"""LEDs that nothing holds back: no resistor, or one too small."""

from collections.abc import Iterator, Sequence

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.behaviours.light import whole_sections
from wiring.circuit.linear import Floats
from wiring.findings.asked import Asked, asked, figures_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.larger_resistor import larger_resistor, some_resistor
from wiring.findings.leds_across import Across, all_across
from wiring.findings.offers import resistor_before
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, ohms, part_names, volts, watts
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.studies.keeping import kept
from wiring.studies.resistor_choice import ResistorChoice
from wiring.studies.settings import number

LIT = ("led", "strip")


def find(situation: Situation) -> Iterator[Finding]:
    """Find LEDs straight across a supply, then LEDs with too much current, grouped by kind."""
    rows: dict[tuple[object, ...], list[Across]] = {}
    known: set[PartId] = set()
    for chain in all_across(situation):
        kinds = tuple(situation.plan.parts[led].kind for led in chain.leds)
        rows.setdefault((kinds, *chain[1:]), []).append(chain)
        known |= {*chain.leds} if chain.bare else set()
    for alike in rows.values():
        if not alike[0].lights:
            yield _short_of_volts(situation, alike)
        elif alike[0].bare:
            yield _no_resistor(situation, alike)
    yield from _too_much(situation, known)


def _no_resistor(situation: Situation, alike: Sequence[Across]) -> Finding:
    plan, one = situation.plan, alike[0]
    leds, choice = tuple(led for chain in alike for led in chain.leds), one.resistor()
    several = len(one.leds) > 1
    whole = "them" if len(alike) == 1 else "each row"
    if choice is not None:
        mend = f"Put {_resistor(situation, choice)} in series with {whole if several else _each(alike)}."
    else:
        mend = "Use a supply with fewer volts: no usual resistor bears what must be lost in it."
    first = tuple(chain.leds[0] for chain in alike)
    act = resistor_before(situation, first, choice.ohms, choice.rated_w) if choice else None
    return Finding(
        "led-without-resistor",
        Rank.DANGER,
        f"{part_names(plan, leds)} {do(len(leds), 'is', 'are')} wired {_in_series(alike)}straight across "
        f"-{plan.parts[one.source].designation}, with no resistor.",
        "An LED takes all the current it can get and burns out at once."
        if not several
        else "LEDs take all the current they can get and burn out at once.",
        _behind_rectifier(situation, one, mend),
        leds,
        act=None if one.alternating else act,
    )


def _short_of_volts(situation: Situation, alike: Sequence[Across]) -> Finding:
    plan, one = situation.plan, alike[0]
    leds = tuple(led for chain in alike for led in chain.leds)
    figures = [situation.figures.parts.get(led) for led in leds]
    shares = [
        abs(figure.current_a) / max(_most_a(plan.parts[led], situation.kinds[plan.parts[led].kind]), 1e-9)
        for led, figure in zip(leds, figures, strict=True)
        if figure is not None
    ]
    too_much = max(shares, default=0.0) > 1.0
    glow = do(
        len(leds),
        "It glows weakly",
        "They stay dark or glow weakly" if len(one.leds) > 1 else "They glow weakly",
    )
    loose = (
        f", and with no resistor {do(len(leds), 'its', 'their')} current grows fast when the volts rise"
        if one.bare
        else ""
    )
    return Finding(
        "led-short-of-volts",
        Rank.DANGER if too_much else Rank.WEAK,
        f"{part_names(plan, leds)} {do(len(leds), 'needs', 'need')} {volts(plan, one.forward_v)}"
        f"{_of_each(alike)}, and "
        f"-{plan.parts[one.source].designation} gives {_given(situation, one)}"
        f"{' with no resistor' if one.bare else ''}.",
        "With no resistor they take more than they bear as soon as the volts are a little high."
        if too_much
        else f"{glow}{loose}.",
        _fewer(situation, alike),
        leds,
    )


def _fewer(situation: Situation, alike: Sequence[Across]) -> str:
    """Return the mend of LEDs that need more volts than there are."""
    one, (count, choice) = alike[0], alike[0].fewer()
    source, each_v = situation.plan.parts[one.source].designation, volts(situation.plan, one.most_v)
    several = len(one.leds) > 1
    if not one.bare:
        if one.supply_v > one.most_v:
            return f"Wire each of them by itself across -{source}."
        return f"Wire each of them by itself, to more than {each_v}."
    if choice is None or count < 1:
        which = "each of them by itself" if several else _each(alike)
        return f"Feed {which} from more than {each_v}, through a resistor of its own."
    resistor = _resistor(situation, choice)
    if count == 1:
        mend = f"Wire each of them by itself across -{source}, with {resistor} in series."
    else:
        mend = f"Put no more than {count} in series, and {resistor} into each row."
    return _behind_rectifier(situation, one, mend)


def _behind_rectifier(situation: Situation, one: Across, mend: str) -> str:
    """Return a mend for AC, which an LED bears one way only; its resistor is that for the peaks."""
    if not one.alternating:
        return mend
    source = situation.plan.parts[one.source].designation
    return f"Put a rectifier behind -{source}, and {mend[0].lower()}{mend[1:]}"


def _each(alike: Sequence[Across]) -> str:
    return do(len(alike), "it", "each")


def _in_series(alike: Sequence[Across]) -> str:
    count = len(alike[0].leds)
    if count == 1:
        return ""
    return "in series " if len(alike) == 1 else f"in rows of {count} "


def _of_each(alike: Sequence[Across]) -> str:
    """Return to how many of them volts are needed, after the volts."""
    if len(alike[0].leds) == 1:
        return do(len(alike), "", " each")
    return f" {_in_series(alike).strip()}"


def _resistor(situation: Situation, choice: ResistorChoice) -> str:
    return f"a resistor of {ohms(situation.plan, choice.ohms)}, {watts(situation.plan, choice.rated_w)},"


def _given(situation: Situation, one: Across) -> str:
    figure = situation.figures.supplies.get(one.source)
    given = volts(situation.plan, figure.nominal_v if figure is not None else one.supply_v)
    return f"{given} AC" if one.alternating else given


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
            f"{larger.words if larger else some_resistor(situation, ids)}, or a supply with fewer volts.",
            ids,
            act=larger.act if larger else None,
        )


def _mosts(some: Asked) -> Floats:
    return np.array([_most_a(part, kind) for part, kind in zip(some.parts, some.kinds, strict=True)])


def _most_a(part: Part, kind: Kind) -> float:
    each = number(part, kind, "max_a")
    if kind.behaviour == "strip":
        section_m = number(part, kind, "section")
        return each * whole_sections(number(part, kind, "length"), section_m) if section_m > 0 else each
    return each * max(number(part, kind, "in_parallel"), 1.0)
