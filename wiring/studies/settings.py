"""A part's settings as finite numbers, whatever a file or a slip of the hand put there."""

import math
from collections.abc import Mapping

from wiring.catalogue.kind import Kind, Value
from wiring.plan.part import Part

_typical: dict[int, tuple[Kind, Mapping[str, Value]]] = {}  # by the kind's id, with the kind it is of
_MOST_KINDS = 4096


def number(part: Part, kind: Kind, name: str) -> float:
    """Return a setting of a part; the kind's typical value where it is no finite number, else 0."""
    value = part.settings.get(name)
    if isinstance(value, int | float) and math.isfinite(value):
        return float(value)
    value = _typical_of(kind).get(name, 0.0)
    return float(value) if isinstance(value, int | float) and math.isfinite(value) else 0.0


def text(part: Part, kind: Kind, name: str) -> str:
    """Return a setting of a part as text; empty where it has none."""
    typical = _typical_of(kind).get(name, "")
    return str(part.settings.get(name, typical))


def _typical_of(kind: Kind) -> Mapping[str, Value]:
    known = _typical.get(id(kind))
    if known is None or known[0] is not kind:
        if len(_typical) >= _MOST_KINDS:
            _typical.clear()
        known = _typical[id(kind)] = kind, {s.name: s.default for s in reversed(kind.settings)}
    return known[1]
