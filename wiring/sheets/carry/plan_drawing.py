"""The plan from below as SVG whose wires and parts can be found, pointed at and lit up one by one."""

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_band import fascia_mark, fascia_side
from wiring.drawings.plan_clip import pieces
from wiring.drawings.plan_fit import Box, Fit, plan_bounds
from wiring.drawings.plan_ground import ground
from wiring.drawings.plan_names import named
from wiring.drawings.plan_parts import Placed, placed_parts, sign_items, terminal_items, terminal_on_paper
from wiring.drawings.plan_room import Room
from wiring.drawings.plan_wires import Run, wire_runs
from wiring.drawings.wire_colour import wire_colour
from wiring.findings.situation import Situation
from wiring.pictures.picture import Path, Point
from wiring.pictures.svg import svg_items
from wiring.pictures.theme import PAPER
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.sheets.carry.markup import Markup, tag

# Every role is a variable of the page, so that the drawing follows its light and dark looks.
PAGE_THEME: Mapping[str, str] = {role: f"var(--{role})" for role in PAPER}
_LEAST_MM, _MOST_MM = 200.0, 640.0  # longest side; text keeps its size, so more wires get more room
_MARGIN_MM = 12.0
_PART_MM, _WIRE_MM = 3.0, 2.3  # of text, which a phone enlarges with the drawing
_NO_CUT: Box = (-1e9, -1e9, 1e9, 1e9)


class PlanDrawing(NamedTuple):
    """The drawing, and where the terminals lie on it, in its own units."""

    svg: Markup
    width_mm: float
    height_mm: float
    fascia: str  # the side of the drawing the fascia is on: bottom, top, left, right
    fit: Fit
    placed: Mapping[PartId, Placed]

    def centres(self) -> dict[PartId, Point]:
        """Return where the middle of each part is drawn."""
        return {part: spot.centre for part, spot in self.placed.items()}

    def at(self, plan: Plan, kinds: Mapping[str, Kind], ref: TerminalRef) -> Point | None:
        """Return where a terminal is drawn; None when its part is not."""
        spot = self.placed.get(ref.part)
        if spot is None:
            return None
        return terminal_on_paper(self.fit, spot, kinds[plan.parts[ref.part].kind], ref.terminal)


def plan_drawing(situation: Situation) -> PlanDrawing | None:
    """Return the plan from below; None when nothing is drawn on it yet."""
    plan, kinds = situation.plan, situation.kinds
    bounds = plan_bounds(plan, kinds)
    if bounds is None:
        return None
    fit, width, height = _fit(bounds, len(plan.wires) + len(plan.parts))
    placed = placed_parts(plan, kinds, fit)
    runs = wire_runs(plan, kinds, fit, placed, _NO_CUT)
    room = Room((0.0, 0.0, width, height))
    # the words for it stand beside the drawing, where they stay when the plan is moved
    fascia = [i for i in fascia_mark(bounds, fit, plan.habits.fascia) if isinstance(i, Path)]
    for line in fascia:
        room.draw(line.points)
    drawn = [(run, piece) for run in runs.values() for piece in pieces(run.points, _NO_CUT)]
    words = named(
        plan, fit, room, _NO_CUT, placed, drawn, wire_labels=True, part_mm=_PART_MM, wire_mm=_WIRE_MM
    )
    glow, signs = sign_items(plan, kinds, situation.positions, situation.figures, fit, placed)
    layers: tuple[tuple[str, Sequence[str]], ...] = (
        ("ground", svg_items(ground(plan, fit, _NO_CUT), PAGE_THEME)),
        ("glow", svg_items(glow, PAGE_THEME)),
        ("signs", svg_items(signs, PAGE_THEME)),
        ("wires", [_wire(run) for run in runs.values()]),
        ("dots", svg_items(terminal_items(kinds, plan, fit, placed), PAGE_THEME)),
        ("words", svg_items((*fascia, *words.items), PAGE_THEME)),
        ("marks", []),
    )
    drawn_layers = (tag("g", Markup("".join(lines)), class_=f"layer-{name}") for name, lines in layers)
    svg = tag(
        "svg",
        *drawn_layers,
        id="plan",
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width:.1f} {height:.1f}",
        role="img",
        aria_label="Plan of the wiring, seen from below",
        font_kerning="none",
        stroke_linejoin="round",
    )
    return PlanDrawing(svg, width, height, fascia_side(plan.habits.fascia, True), fit, placed)


def _fit(bounds: Box, records: int) -> tuple[Fit, float, float]:
    """Return how the plan is laid down: small plans fill a small drawing, crowded ones get more room."""
    wide, high = max(bounds[2] - bounds[0], 1.0), max(bounds[3] - bounds[1], 1.0)
    longest = min(max(26.0 * math.sqrt(records), _LEAST_MM), _MOST_MM)
    scale = min(longest / max(wide, high), 1.0)
    width, height = wide * scale + 2 * _MARGIN_MM, high * scale + 2 * _MARGIN_MM
    middle = ((bounds[0] + bounds[2]) / 2, (bounds[1] + bounds[3]) / 2)
    return Fit(scale, middle, (width / 2, height / 2), True), width, height


def _wire(run: Run) -> Markup:
    """Return one wire: edge, insulation and stripe; the page thickens them when seen from far."""
    data = "M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in run.points)
    spec = wire_colour(run.wire.colour)
    paths = [tag("path", d=data, class_="edge"), tag("path", d=data, class_="skin", stroke=spec.rgb)]
    if spec.stripe_rgb:
        paths.append(tag("path", d=data, class_="stripe", stroke=spec.stripe_rgb))
    return tag("g", *paths, class_="wire", data_wire=run.wire.id, style=f"--w:{run.width_mm:.2f}")
