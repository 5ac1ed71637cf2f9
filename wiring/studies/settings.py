"""A part's settings as finite numbers, whatever a file or a slip of the hand put there."""

import math

from wiring.catalogue.kind import Kind
from wiring.plan.part import Part


def number(part: Part, kind: Kind, name: str) -> float:
    """Return a setting of a part; the kind's typical value where it is no finite number, else 0."""
    typical = next((s.default for s in kind.settings if s.name == name), 0.0)
    for value in (part.settings.get(name), typical):
        if isinstance(value, int | float) and math.isfinite(value):
            return float(value)
    return 0.0


def text(part: Part, kind: Kind, name: str) -> str:
    """Return a setting of a part as text; empty where it has none."""
    typical = next((s.default for s in kind.settings if s.name == name), "")
    return str(part.settings.get(name, typical))
