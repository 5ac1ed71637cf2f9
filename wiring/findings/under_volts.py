"""Motors, servos and modules that get too few volts."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from wiring.circuit.linear import Floats
from wiring.findings.asked import Asked, asked, figures_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names, volts
from wiring.studies.keeping import kept
from wiring.studies.settings import number

OFF = 0.05  # of what is needed: switched off, not weak


class _Need(NamedTuple):
    rule: str
    setting: str
    share: float  # of that setting, which is the least that will do
    why: str


# A stall motor on six tenths of its volts throws slowly and holds weakly: common practice, no source.
_NEEDS = {
    "stall_motor": _Need(
        "motor-weak", "rated_v", 0.6, "A motor short of volts throws slowly or not at all, and holds weakly."
    ),
    "servo": _Need("module-starved", "min_v", 1.0, "A servo short of volts twitches or stops half-way."),
    "flasher": _Need("module-starved", "min_v", 1.0, "It drops out or flashes badly."),
    "constant_current": _Need("module-starved", "min_v", 1.0, "It can no longer hold its light steady."),
}

_BEHAVIOURS = tuple(_NEEDS)


def find(situation: Situation) -> Iterator[Finding]:
    """Find parts below the least volts they need, one finding for each kind of part."""
    plan = situation.plan
    found: dict[str, list[tuple[float, str]]] = {}
    some = asked(situation, _BEHAVIOURS)
    least, figures = kept(_least, some), figures_of(situation, some)
    got_v = np.abs(figures.volts)
    for row, part, _ in some.rows(figures.known & (got_v > OFF * least) & (got_v < least)):
        found.setdefault(part.kind, []).append((float(got_v[row]), part.id))
    for kind_key, weak in found.items():
        weak.sort()
        parts = tuple(part for _, part in weak)
        kind = situation.kinds[kind_key]
        need = _NEEDS[kind.behaviour]
        least_v = need.share * number(plan.parts[parts[0]], kind, need.setting)
        yield Finding(
            need.rule,
            Rank.WEAK,
            f"{part_names(plan, parts)} {do(len(parts), 'gets', 'get')} only {volts(plan, weak[0][0])} "
            f"and {do(len(parts), 'needs', 'need')} {volts(plan, least_v)} or more.",
            need.why,
            "Use thicker wire, or a supply with more volts.",
            parts,
        )


def _least(some: Asked) -> Floats:
    """Return the least volts each part needs."""
    needs = [(part, kind, _NEEDS[kind.behaviour]) for part, kind in zip(some.parts, some.kinds, strict=True)]
    return np.array([need.share * number(part, kind, need.setting) for part, kind, need in needs])
