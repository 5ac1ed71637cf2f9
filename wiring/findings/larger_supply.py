"""The supply that would bear its load, and whether it may be put there as the wires behind it stand."""

import msgspec

from wiring.findings.act import Act
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps
from wiring.plan.names import PartId
from wiring.standards.current_ratings import next_rating_up
from wiring.studies.fault_current import fault_current_a
from wiring.studies.joints import ends
from wiring.studies.protection import Ends, all_guarded, all_unguarded, carries_a
from wiring.studies.roles import FUSES, LOADS, SOURCE_ENDS, SOURCES, THROUGH
from wiring.studies.wire_limits import warm_a

# The setting that says how much each gives. A battery is swapped on its own page, a converter is a module.
GIVES = {"supply_regulated": "limit_a", "supply_unregulated": "rated_a", "supply_ac": "rated_a"}


def larger_supply(situation: Situation, supply: PartId, wanted_a: float) -> tuple[float, Act | None]:
    """Return the rated current to plan for, and the act of planning it.

    No act where a short on the larger supply would make a wire hot that no fuse guards, or guards too late:
    the fuse comes first.
    """
    rating_a = next_rating_up(wanted_a)
    part = situation.plan.parts[supply]
    setting = GIVES.get(situation.kinds[part.kind].behaviour)
    if setting is None or not _is_guarded(situation, supply, setting, rating_a):
        return rating_a, None
    return rating_a, set_one(situation, supply, amps(situation.plan, rating_a), **{setting: rating_a})


def _is_guarded(situation: Situation, supply: PartId, setting: str, rating_a: float) -> bool:
    """Whether no wire gets hot in a short on the larger supply before a fuse opens."""
    plan, kinds, joints = situation.plan, situation.kinds, situation.joints
    part = plan.parts[supply]
    larger = msgspec.structs.replace(part, settings={**part.settings, setting: rating_a})
    pushed_a = fault_current_a(larger, kinds[part.kind])
    loads = [Ends(p.id, *ends(p.id, pair)) for p, k in situation.of(*LOADS) for pair in THROUGH[k.behaviour]]
    sources = [Ends(p.id, *ends(p.id, SOURCE_ENDS[k.behaviour])) for p, k in situation.of(*SOURCES)]
    bare = all_unguarded(sources, loads, joints)[supply].wires
    if any(warm_a(plan.wires[wire].size) < pushed_a for wire in bare):
        return False
    fuses = {p.id: (p, k) for p, k in situation.of(*FUSES)}
    guarded = all_guarded([Ends(f, *ends(f, ("1", "2"))) for f in fuses], sources, plan.wires, joints)
    return all(
        found.thinnest is None or carries_a(*fuses[fuse]) <= warm_a(plan.wires[found.thinnest].size)
        for fuse, found in guarded.items()
    )
