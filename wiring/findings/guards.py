"""Which wires each fuse guards, and what the thinnest of them bears: asked for by every rule about fuses."""

from collections.abc import Mapping, Sequence
from math import inf

from wiring.findings.asked import Asked, asked
from wiring.findings.situation import Situation
from wiring.plan.names import PartId
from wiring.studies.joints import ends
from wiring.studies.keeping import kept
from wiring.studies.protection import Ends, Guarded, all_guarded
from wiring.studies.roles import FUSES, SOURCE_ENDS, SOURCES
from wiring.studies.wire_limits import warm_a


def guarded_wires(situation: Situation) -> Mapping[PartId, Guarded]:
    """Return for every fuse the wires behind it."""
    fuses, sources = asked(situation, FUSES), asked(situation, SOURCES)
    leads = kept(source_leads, sources)
    return all_guarded(kept(fuse_leads, fuses), leads, situation.plan.wires, situation.joints)


def wire_bears_a(situation: Situation, guarded: Guarded) -> float:
    """Return the amperes that the thinnest wire behind a fuse bears; infinite where there is none."""
    return warm_a(situation.plan.wires[guarded.thinnest].size) if guarded.thinnest else inf


def source_leads(sources: Asked) -> Sequence[Ends]:
    """Return both ends of each source."""
    rows = zip(sources.ids, sources.kinds, strict=True)
    return [Ends(part, *ends(part, SOURCE_ENDS[kind.behaviour])) for part, kind in rows]


def fuse_leads(fuses: Asked) -> Sequence[Ends]:
    """Return both ends of each fuse."""
    return [Ends(part, *ends(part, ("1", "2"))) for part in fuses.ids]
