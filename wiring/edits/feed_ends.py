"""What feeding is about: which selected parts want current, which give it, which stand in between."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.feed_leads import Leads
from wiring.edits.load_ends import gate_ends
from wiring.edits.poles import source_ends
from wiring.edits.tables import part_of
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan

FUSES = frozenset({"fuse", "resettable_fuse"})
COIL_ENDS = ("N", "C", "R")
TAPS = frozenset({"separate", "pairs"})
REVERSED = "stall_motor"  # thrown by turning its volts round
REVERSING = frozenset({("11", "14"), ("11", "12"), ("21", "24"), ("21", "22")})
STORE = "discharge_unit"  # gives what it is fed to coils


class Group(NamedTuple):
    """Loads that are fed as one: a single one, or LEDs in series behind one resistor."""

    parts: tuple[PartId, ...]
    ohms: float = 0.0  # of the resistor in front; 0 for none
    watts: float = 0.25


class Sorted(NamedTuple):
    """The selected parts by what they are to a feed, in plan order."""

    sources: tuple[Part, ...]
    gates: tuple[Part, ...]  # switches and fuses
    blocks: tuple[Part, ...]  # all terminals one
    taps: tuple[Part, ...]  # terminal strips and plugs
    loads: tuple[Part, ...]  # that no supply reaches yet on one of their ends
    coils: tuple[Part, ...] = ()  # twin-coil motors that still lack a wire
    throwers: tuple[Part, ...] = ()  # unwired contacts that let go by themselves or stand off: for coils
    stores: tuple[Part, ...] = ()  # capacitor-discharge units: for coils
    movers: tuple[Part, ...] = ()  # bare stall motors, where there is a reverser for each
    reversers: tuple[Part, ...] = ()  # unwired changeovers of two poles
    own_fuses: tuple[Part, ...] = ()  # on which loads hang already


def lets_go(kind: Kind) -> bool:
    """Whether a switch can send a pulse: a push-to-make button, or a changeover that can stand off."""
    if kind.behaviour != "switch":
        return False
    if any(position.momentary and ("13", "14") in position.closes for position in kind.positions):
        return True
    closing = {pair for position in kind.positions for pair in position.closes}
    return any(not p.closes for p in kind.positions) and closing == {("11", "14"), ("11", "12")}


def is_bare_led(part: Part, kind: Kind) -> bool:
    """Whether a part is an LED without a resistor of its own."""
    return kind.behaviour == "led" and float(kind.values(part.settings).get("series_ohm", 0.0)) <= 0.0


def sorted_out(
    plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str], leads: Leads | None = None
) -> Sorted:
    """Sort selected parts; wires among the ids are passed over. EditRefused for a part that is gone.

    A plug or strip that no supply reaches stands for the loads that hang on it.
    """
    chosen = {part_of(plan, i).id for i in ids if i not in plan.wires}
    wired = {ref for wire in plan.wires.values() for ref in (wire.start, wire.end)}
    leads = leads or Leads(plan, kinds)
    taken = {ref.part for ref in wired}
    for tap in [i for i in chosen if i in taken and _behaviour(plan, kinds, i) in TAPS]:
        chosen |= leads.behind(tap)
    found: dict[str, list[Part]] = {name: [] for name in Sorted._fields}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if part.id in chosen and kind is not None:
            name = _role(part, kind, wired, leads)
            if name:
                found[name].append(part)
    hanging = {i for p in found["loads"] for i in leads.between(p.id)}
    found["own_fuses"] = [p for p in found["gates"] if p.id in hanging and kinds[p.kind].behaviour in FUSES]
    for name in ("gates", "blocks", "taps"):  # what hangs on a load already is a way to it, and no way out
        found[name] = [p for p in found[name] if p.id not in hanging]
    idle = [p for p in found["gates"] if p.id not in taken]
    if found["coils"]:
        found["throwers"] = [p for p in idle if lets_go(kinds[p.kind])]
        units = (plan.parts[i] for i in sorted(chosen) if _behaviour(plan, kinds, i) == STORE)
        found["stores"] = list(units)
    movers = [p for p in found["loads"] if kinds[p.kind].behaviour == REVERSED and p.id not in taken]
    reversers = [p for p in idle if _reverses(kinds[p.kind])]
    if movers and len(reversers) >= len(movers):
        found["movers"], found["reversers"] = movers, reversers
    used = {p.id for name in ("throwers", "movers", "reversers") for p in found[name]}
    for name in ("gates", "loads"):
        found[name] = [p for p in found[name] if p.id not in used]
    return Sorted(*(tuple(found[name]) for name in Sorted._fields))


def _reverses(kind: Kind) -> bool:
    return {pair for position in kind.positions for pair in position.closes} == REVERSING


def _behaviour(plan: Plan, kinds: Mapping[str, Kind], part_id: PartId) -> str:
    kind = kinds.get(plan.parts[part_id].kind)
    return kind.behaviour if kind is not None else ""


def _role(part: Part, kind: Kind, wired: set[TerminalRef], leads: Leads) -> str:
    ends = leads.of(part.id)
    if ends is not None:
        return "loads" if any(lead.at is not None for lead in ends) else ""
    if kind.behaviour == "twin_coil":
        return "" if wired.issuperset(TerminalRef(part.id, n) for n in COIL_ENDS) else "coils"
    if gate_ends(part, kind) is not None:
        return "gates"
    if source_ends(kind) is not None:
        return "sources"
    if kind.behaviour == "bus":
        return "blocks"
    return "taps" if kind.behaviour in TAPS and not leads.behind(part.id) else ""
