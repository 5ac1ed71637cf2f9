"""Mends all findings of one sort as one step: one after the other, each found anew in what the last left."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from wiring.edits.edit import Edit, EditRefused
from wiring.findings.act import Act
from wiring.findings.doing import SETTINGS, edit_for
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation, examine
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan

MOST_STEPS = 300  # a sort whose mends call for each other for ever stops here
ON_OUTLOOKS = "battery-"  # rules that need the outlooks, which take long
IN_WORST_CASE = "-worst-case"  # rules that look at every position
# What is found of settings that cannot be hid other faults, which were there before: these may come out.
HIDING = frozenset({"setting-odd"})
NONE_HELPS = (
    "None of these could be mended without making something else dangerous; mend them one by one and look at "
    "what each brings."
)
_Danger = tuple[str, tuple[PartId, ...], tuple[WireId, ...]]
# What the button of all says, by the name of the act they share.
WORDS: Mapping[str, Callable[[int, str], str]] = {
    "set": lambda n, what: f"Set the {what} of {n} parts",
    "size": lambda n, _: f"Use thicker wire for {n} wires",
    "swap": lambda n, _: f"Swap the wires of {n} parts",
    "resistor": lambda n, _: f"Put a resistor before each of {n} LEDs",
    "fuse": lambda n, _: f"Put in {n} fuses",
    "rectifier": lambda n, _: f"Put in {n} rectifiers",
    "drill": lambda n, _: f"Drill the holes of {n} wireways",
    "fitted": lambda n, _: f"Note {n} as fitted today",
    "charged": lambda n, _: f"Note {n} as charged today",
    "usual": lambda n, _: f"Put {n} parts back to usual values",
}
LAMPS = ("lamp-over-volts",)  # rules that put resistors before lamps
OTHERWISE = "Mend all {n} of this sort"  # where their acts are not one and the same


class AllOfSort(NamedTuple):
    """The findings of one rule that have an act, two or more of them, and the words of mending them all."""

    rule: str
    words: str
    findings: tuple[Finding, ...]


def sorts(findings: Sequence[Finding]) -> Mapping[str, AllOfSort]:
    """Return by rule what can be mended all at once: where two findings or more of it have an act."""
    by_rule: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.act is not None:
            by_rule.setdefault(finding.rule, []).append(finding)
    return {
        rule: AllOfSort(rule, _words(rule, [f.act for f in found if f.act is not None]), tuple(found))
        for rule, found in by_rule.items()
        if len(found) > 1
    }


def mend_all(of: AllOfSort, situation: Situation) -> Edit:
    """Return the step that does the act of every finding of a sort.

    After each the plan is examined again, with switches as they stand, and the next act is the one found
    then: what an earlier act has mended as well is left alone. An act after which something else is dangerous
    is not done, unless what it mends only hid that. EditRefused when none is left to do.
    """

    def apply(plan: Plan) -> Plan:
        here = situation if situation.plan is plan else _again(situation, plan, of.rule)
        begun, tried = plan, set[Act]()
        allowed = _dangers(here)
        while (after := _next(here, of.rule, tried, allowed)) is not None:
            here = after
        if here.plan is begun:
            raise EditRefused(NONE_HELPS)
        return here.plan

    return Edit(of.words, apply)


def _next(here: Situation, rule: str, tried: set[Act], allowed: set[_Danger]) -> Situation | None:
    """Return what is found after the first act of the sort that does no harm; None when none is left."""
    for finding in here.findings:
        act = finding.act
        if finding.rule != rule or act is None or act in tried or len(tried) >= MOST_STEPS:
            continue
        tried.add(act)
        try:
            plan = edit_for(act, here.kinds).apply(here.plan)
        except EditRefused:
            continue
        after = _again(here, plan, rule)
        if rule in HIDING or _recovers(here, after) or not _new_rules(_dangers(after), allowed):
            return after
    return None


def _again(old: Situation, plan: Plan, rule: str) -> Situation:
    return examine(
        plan,
        old.kinds,
        {part: stands for part, stands in old.positions.items() if part in plan.parts},
        outlooks=rule.startswith(ON_OUTLOOKS),
        today=None if old.today == date.min else old.today,
        every_position=old.every_position and rule.endswith(IN_WORST_CASE),  # a hundred times as long
    )


def _recovers(here: Situation, after: Situation) -> bool:
    """Whether a supply gives its volts again that gave all it had: behind it, faults lay hidden."""
    figures = after.figures.supplies
    return any(
        f.limited and i in figures and not figures[i].limited for i, f in here.figures.supplies.items()
    )


def _dangers(situation: Situation) -> set[_Danger]:
    return {(f.rule, f.parts, f.wires) for f in situation.findings if f.rank is Rank.DANGER}


def _new_rules(now: set[_Danger], before: set[_Danger]) -> set[str]:
    """Return the rules that find a danger in a part or wire in which they found none before.

    A finding that is about fewer parts than before, or names a wire that was put in, is none that is new.
    """
    known: dict[str, set[str]] = {}
    for rule, parts, wires in before:
        known.setdefault(rule, set()).update(parts, wires)
    return {
        rule
        for rule, parts, wires in now
        if rule not in known or (parts and not known[rule].intersection((*parts, *wires)))
    }


def _words(rule: str, acts: Sequence[Act]) -> str:
    names = {act.name for act in acts}
    count = len({i for act in acts for i in act.parts or act.wires}) or len(acts)
    if len(names) > 1:
        return OTHERWISE.format(n=len(acts))
    settings = {_settings(act) for act in acts} if names == {"set"} else {""}
    if names == {"set"} and len(settings) > 1:
        return OTHERWISE.format(n=len(acts))
    words = WORDS[names.pop()](count, settings.pop())
    return words.replace("LEDs", "lamps") if rule in LAMPS else words


def _settings(act: Act) -> str:
    return " and ".join(dict.fromkeys(SETTINGS.get(n, n.replace("_", " ")) for n, _ in act.values))
