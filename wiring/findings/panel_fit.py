"""Parts of a panel that do not fit: bodies that touch behind the face, or reach over its edge."""

import math
from collections.abc import Iterator
from itertools import combinations

from wiring.catalogue.kind import Kind
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import listed
from wiring.plan.designations import part_label
from wiring.plan.panel import Panel
from wiring.plan.part import Part

APART_MM = 2.0  # common practice, no source: room for a nut, a spanner and a bent terminal
_MOUNTED = ("toggle", "push", "slide", "indicator")  # signs of what sits in a panel without saying its hole

Box = tuple[float, float, float, float]


def find(situation: Situation) -> Iterator[Finding]:
    """Find, panel by panel, the parts that stand too close together or over the edge."""
    for panel in situation.plan.panels.values():
        bodies = [(p, _body(p, k)) for p, k in _mounted(situation, panel)]
        close = [(a, b) for (a, x), (b, y) in combinations(bodies, 2) if _gap_mm(x, y) < APART_MM - 1e-6]
        over = [p for p, box in bodies if not _inside(box, panel)]
        if close:
            named = [
                f"{part_label(situation.plan, a.id)} and {part_label(situation.plan, b.id)}" for a, b in close
            ]
            yield Finding(
                "panel-fit",
                Rank.WEAK,
                f"On the panel {panel.name}, {listed(named)} stand closer than {APART_MM:g} mm.",
                "Their bodies touch behind the face, so one of them cannot be screwed in.",
                "Move them apart before you drill.",
                tuple(dict.fromkeys(p.id for pair in close for p in pair)),
            )
        if over:
            yield Finding(
                "panel-fit",
                Rank.WEAK,
                f"{listed([part_label(situation.plan, p.id) for p in over])} "
                f"{'reaches' if len(over) == 1 else 'reach'} over the edge of the panel {panel.name}.",
                "There is no face to hold the part there.",
                "Move it inwards, or make the panel larger.",
                tuple(p.id for p in over),
            )


def _mounted(situation: Situation, panel: Panel) -> Iterator[tuple[Part, Kind]]:
    right, bottom = panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm
    for part in situation.plan.parts.values():
        kind = situation.kinds.get(part.kind)
        if kind is None or not (kind.hole_mm or kind.sign in _MOUNTED):
            continue
        if panel.x_mm <= part.x_mm <= right and panel.y_mm <= part.y_mm <= bottom:
            yield part, kind


def _body(part: Part, kind: Kind) -> Box:
    """Return the upright rectangle round a part's body, in plan mm."""
    cos, sin = abs(math.cos(math.radians(part.turn_deg))), abs(math.sin(math.radians(part.turn_deg)))
    half_w = (kind.width_mm * cos + kind.height_mm * sin) / 2
    half_h = (kind.width_mm * sin + kind.height_mm * cos) / 2
    return part.x_mm - half_w, part.y_mm - half_h, part.x_mm + half_w, part.y_mm + half_h


def _gap_mm(one: Box, other: Box) -> float:
    """Return how far two boxes lie apart; less than nothing when they overlap."""
    across = max(one[0], other[0]) - min(one[2], other[2])
    down = max(one[1], other[1]) - min(one[3], other[3])
    return math.hypot(across, down) if across > 0 and down > 0 else max(across, down)


def _inside(box: Box, panel: Panel) -> bool:
    return (
        box[0] >= panel.x_mm - 1e-6
        and box[1] >= panel.y_mm - 1e-6
        and box[2] <= panel.x_mm + panel.width_mm + 1e-6
        and box[3] <= panel.y_mm + panel.height_mm + 1e-6
    )
