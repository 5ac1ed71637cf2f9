"""Motors, servos, relays and modules that get more volts than they are made for."""

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

BREAKS = 1.5  # times what it is made for; common practice, no source


class _Most(NamedTuple):
    setting: str
    share: float  # of that setting, which is the most that is well


# Coils and motors bear a quarter more than rated: common practice, no source.
_MOSTS = {
    "stall_motor": _Most("rated_v", 1.25),
    "servo": _Most("rated_v", 1.25),
    "relay": _Most("rated_v", 1.25),
    "constant_current": _Most("max_v", 1.0),
}

_BEHAVIOURS = tuple(_MOSTS)


def find(situation: Situation) -> Iterator[Finding]:
    """Find parts above the most volts they stand, one finding for each kind of part."""
    plan = situation.plan
    found: dict[str, list[tuple[float, str]]] = {}
    some = asked(situation, _BEHAVIOURS)
    made_for, mosts = kept(_made_for, some)
    got_v = np.abs(figures_of(situation, some).volts)
    for row, part, _ in some.rows((made_for > 0) & (got_v > mosts)):
        found.setdefault(part.kind, []).append((float(got_v[row] / made_for[row]), part.id))
    for kind_key, over in found.items():
        over.sort(reverse=True)
        parts = tuple(part for _, part in over)
        kind = situation.kinds[kind_key]
        made_for_v = number(plan.parts[parts[0]], kind, _MOSTS[kind.behaviour].setting)
        got = volts(plan, over[0][0] * made_for_v)
        breaks = over[0][0] > BREAKS
        yield Finding(
            "part-over-volts",
            Rank.DANGER if breaks else Rank.WEAK,
            f"{part_names(plan, parts)} {do(len(parts), 'gets', 'get')} {got} "
            f"and {do(len(parts), 'is', 'are')} made for {volts(plan, made_for_v)}.",
            "So many volts destroy it." if breaks else "It runs hot and does not last.",
            "Use a supply with fewer volts, or parts made for these.",
            parts,
        )


def _made_for(some: Asked) -> tuple[Floats, Floats]:
    """Return what each part is made for, and the most it bears."""
    mosts = [_MOSTS[kind.behaviour] for kind in some.kinds]
    rows = zip(some.parts, some.kinds, mosts, strict=True)
    made_for = np.array([number(part, kind, most.setting) for part, kind, most in rows])
    return made_for, made_for * np.array([most.share for most in mosts])
