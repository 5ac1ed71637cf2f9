"""What parts of a kind join inside, in any position: for good, by contacts, through resistors and loads."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind

# Plus and minus of what gives DC.
DIRECT_ENDS: Mapping[str, tuple[str, str]] = {
    "supply_regulated": ("+", "-"),
    "supply_unregulated": ("+", "-"),
    "battery": ("+", "-"),
    "converter": ("O", "-"),
    "rectifier": ("+", "-"),
}
FIRM = frozenset({"fuse", "resettable_fuse", "pairs"})  # they close as long as they are whole
NO_LOADS = FIRM | frozenset(DIRECT_ENDS) | {"supply_ac", "separate", "bus"}
ALWAYS = ""  # in whatever position


class Joint(NamedTuple):
    """Two terminals, by their place in the kind, and the position that joins them."""

    one: int
    other: int
    position: str = ALWAYS


class InnerJoints(NamedTuple):
    """What parts of a kind join inside; terminals that are always one node are not named."""

    firm: tuple[Joint, ...]
    loose: tuple[Joint, ...]  # by a contact or a resistor
    loads: tuple[Joint, ...]
    source: Joint | None  # minus and plus of what gives DC


def inner_joints(kind: Kind) -> InnerJoints:
    """Return what parts of the kind join inside."""
    place = {terminal.name: number for number, terminal in enumerate(kind.terminals)}
    closed = tuple(Joint(place[a], place[b], p.name) for p in kind.positions for a, b in p.closes)
    ends = DIRECT_ENDS.get(kind.behaviour)
    source = Joint(place[ends[1]], place[ends[0]]) if ends is not None else None
    if kind.behaviour in FIRM:
        halves = [(n, f"{n[:-1]}b") for n in place if kind.behaviour == "pairs" and n.endswith("a")]
        across = tuple(Joint(place[a], place[b]) for a, b in halves if b in place)
        return InnerJoints((*closed, *across), (), (), source)
    touched = {end for joint in closed for end in joint[:2]}
    first, *others = [n for n in place.values() if n not in touched] or [0]
    fed = () if kind.behaviour in NO_LOADS else tuple(Joint(first, n) for n in others)
    if kind.behaviour == "resistor":
        return InnerJoints((), (*closed, *fed), (), source)
    return InnerJoints((), closed, fed, source)
