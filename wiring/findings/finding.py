"""One result of a check."""

from enum import IntEnum
from typing import NamedTuple

from wiring.findings.act import Act
from wiring.plan.names import PartId, WireId


class Rank(IntEnum):
    """How much a finding matters."""

    NOTE = 1  # circle: good to know
    WEAK = 2  # diamond: works badly
    DANGER = 3  # triangle: can burn, break or never work


class Finding(NamedTuple):
    """What is wrong, where, why it matters, and what would mend it; each one plain sentence."""

    rule: str  # stable name of the check: "supply-overload"
    rank: Rank
    what: str
    why: str
    mend: str
    parts: tuple[PartId, ...] = ()
    wires: tuple[WireId, ...] = ()
    act: Act | None = None  # what does the first thing the mend names, where that is one definite act
