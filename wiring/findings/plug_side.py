"""Plugs of panels that stand on the side away from what their wires lead to."""

from collections.abc import Iterator

from wiring.edits.harness_bundle import frame_of_plug
from wiring.edits.harness_way import Frame, Side
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.plan.harness import harness_of
from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.wire import Wire

EDGES: dict[Side, str] = {"top": "upper", "bottom": "lower", "left": "left", "right": "right"}
OPPOSITE: dict[Side, Side] = {"top": "bottom", "bottom": "top", "left": "right", "right": "left"}


def find(situation: Situation) -> Iterator[Finding]:
    """Find plugs most of whose wires to the layout lead to what lies beyond the opposite edge."""
    plan, kinds = situation.plan, situation.kinds
    for panel in plan.panels.values():
        harness = harness_of(plan, kinds, panel)
        if harness is None:
            continue
        for plug in harness.plugs:
            frame = frame_of_plug(panel, plug)
            outer = [way.outer for way in harness.ways if way.plug is plug and way.outer is not None]
            back = [w for w in outer if frame is not None and _leads_back(situation, frame, plug, w)]
            if frame is not None and 2 * len(back) > len(outer):
                yield _told(situation, panel, plug, frame.side, back)


def _leads_back(situation: Situation, frame: Frame, plug: Part, wire: Wire) -> bool:
    far = wire.end.part if wire.start.part == plug.id else wire.start.part
    part = situation.plan.parts.get(far)
    at: Point | None = (part.x_mm, part.y_mm) if part is not None else None
    return at is not None and frame.out(at) < -frame.depth


def _told(situation: Situation, panel: Panel, plug: Part, side: Side, back: list[Wire]) -> Finding:
    name = part_label(situation.plan, plug.id)
    here, there = EDGES[side], EDGES[OPPOSITE[side]]
    lead = "1 of its wires leads" if len(back) == 1 else f"{len(back)} of its wires lead"
    return Finding(
        "plug-far-side",
        Rank.NOTE,
        f"{name} stands beyond the {here} edge of {panel.name}, and {lead} beyond the {there} one.",
        "They have to go round the face, longer than need be and in the way of whoever reaches behind it.",
        f"Move {name} beyond the {there} edge; its harness follows.",
        (plug.id,),
        tuple(wire.id for wire in back),
    )
