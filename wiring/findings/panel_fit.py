"""Parts of a panel that do not fit: bodies that touch behind it, reach over its edge, or are too deep."""

from collections.abc import Iterator, Sequence

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import listed
from wiring.plan.designations import part_label
from wiring.plan.panel import Panel
from wiring.plan.panel_bodies import APART_MM, Body, bodies_on, clashes, reaches_over, too_deep


def find(situation: Situation) -> Iterator[Finding]:
    """Find, panel by panel, the parts that stand too close together, over the edge, or too deep."""
    for panel in situation.plan.panels.values():
        bodies = bodies_on(situation.plan, situation.kinds, panel)
        yield from _too_close(situation, panel, bodies)
        yield from _over_the_edge(situation, panel, [b for b in bodies if reaches_over(b, panel)])
        yield from _too_deep(situation, panel, [b for b in bodies if too_deep(b, panel)])


def _too_close(situation: Situation, panel: Panel, bodies: Sequence[Body]) -> Iterator[Finding]:
    close = list(clashes(bodies))
    if close:
        plan = situation.plan
        named = [f"{part_label(plan, a.part.id)} and {part_label(plan, b.part.id)}" for a, b in close]
        yield Finding(
            "panel-fit",
            Rank.WEAK,
            f"On the panel {panel.name}, {listed(named)} stand closer than {APART_MM:g} mm.",
            "Their bodies touch behind the face, so one of them cannot be screwed in.",
            "Move them apart before you drill.",
            tuple(dict.fromkeys(body.part.id for pair in close for body in pair)),
        )


def _over_the_edge(situation: Situation, panel: Panel, over: Sequence[Body]) -> Iterator[Finding]:
    if over:
        yield Finding(
            "panel-fit",
            Rank.WEAK,
            f"{_names(situation, over)} {'reaches' if len(over) == 1 else 'reach'} over the edge of the "
            f"panel {panel.name}.",
            "There is no face to hold the part there.",
            "Move it inwards, or make the panel larger.",
            tuple(b.part.id for b in over),
        )


def _too_deep(situation: Situation, panel: Panel, deep: Sequence[Body]) -> Iterator[Finding]:
    if deep:
        most = max(b.kind.behind_mm for b in deep)
        yield Finding(
            "panel-fit",
            Rank.WEAK,
            f"{_names(situation, deep)} {'needs' if len(deep) == 1 else 'need'} {most:g} mm behind the panel "
            f"{panel.name}, where there are {panel.room_mm:g} mm.",
            "The body or its wires touch what is behind before the nut pulls it in.",
            "Set the panel farther out, or choose shallower parts.",
            tuple(b.part.id for b in deep),
        )


def _names(situation: Situation, bodies: Sequence[Body]) -> str:
    return listed([part_label(situation.plan, b.part.id) for b in bodies])
