"""Where things lie on the plan, in millimetres."""

import math

from wiring.catalogue.kind import Kind
from wiring.plan.part import Part

Point = tuple[float, float]


def on_plan(part: Part, x_mm: float, y_mm: float) -> Point:
    """Return where a point given from the part's centre lies on the plan, after the part's turn."""
    angle = math.radians(part.turn_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    return part.x_mm + x_mm * cos - y_mm * sin, part.y_mm + x_mm * sin + y_mm * cos


def terminal_at(part: Part, kind: Kind, terminal: str) -> Point:
    """Return where a terminal lies on the plan; KeyError if the kind has no such terminal."""
    spec = kind.terminal(terminal)
    return on_plan(part, spec.x_mm, spec.y_mm)
