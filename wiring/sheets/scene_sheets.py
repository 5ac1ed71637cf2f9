"""What of a plan is printed for one scene: what stands in it, and what its wires lead to."""

from msgspec.structs import replace

from wiring.findings.situation import Situation
from wiring.sheets.places import place_name


def of_scene(situation: Situation, name: str) -> Situation:
    """Return the situation with the parts of a scene or panel, its wires, and the parts they lead to.

    Readings stay those of the whole layout. ValueError in one sentence for an unknown name.
    """
    plan = situation.plan
    known = [*(p.name for p in plan.panels.values()), *(s.name for s in plan.scenes.values())]
    if name not in known:
        says = f"the plan has {', '.join(known)}" if known else "the plan has none"
        raise ValueError(f"There is no scene or panel called “{name}”; {says}.")
    own = {p.id for p in plan.parts.values() if place_name(plan, p) == name}
    wires = {i: w for i, w in plan.wires.items() if w.start.part in own or w.end.part in own}
    led_to = {ref.part for w in wires.values() for ref in (w.start, w.end)}
    parts = {i: p for i, p in plan.parts.items() if i in own or i in led_to}
    findings = tuple(
        f for f in situation.findings if not own.isdisjoint(f.parts) or not wires.keys().isdisjoint(f.wires)
    )
    supplies = {i: f for i, f in situation.figures.supplies.items() if i in parts}
    return situation._replace(
        plan=replace(plan, title=f"{plan.title}, {name}", parts=parts, wires=wires),
        figures=situation.figures._replace(supplies=supplies),
        outlooks={i: o for i, o in situation.outlooks.items() if i in parts},
        findings=findings,
    )
