"""Settings that cannot be right: out of range, or not what the setting takes."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import usual
from wiring.findings.situation import Situation
from wiring.plan.record_faults import kind_faults

_LONGEST = 190  # letters; a list of choices may run on


def find(situation: Situation) -> Iterator[Finding]:
    """Find parts whose settings or position do not fit their kind, one finding for each fault."""
    for part in situation.plan.parts.values():
        kind = situation.kinds.get(part.kind)
        if kind is None or not (part.settings or part.position):
            continue
        for fault in kind_faults(part, kind):
            what = fault if len(fault) <= _LONGEST else f"{fault[: _LONGEST - 1].rsplit(' ', 1)[0]} …."
            yield Finding(
                "setting-odd",
                Rank.WEAK,
                what,
                "The figures of this part may be missing or taken with its usual value instead.",
                "Put its usual value back, or the right one where the part's settings are shown.",
                (part.id,),
                act=usual(part.id),
            )
