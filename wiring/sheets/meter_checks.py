"""What a multimeter should read with everything as it stands in a session."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label, terminal_label
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.sheets.designation_runs import run_words
from wiring.sheets.places import place_name, place_order
from wiring.sheets.strip_names import CHARTED

# How far a sound joint may read from what is worked out, by what feeds it. Common practice, no source:
# a regulated supply holds its volts within a twentieth; fresh cells, lamps and old transformers scatter more.
_TOLERANCES: Mapping[str, float] = {
    "supply_regulated": 0.05,
    "battery": 0.10,
    "supply_unregulated": 0.15,
    "supply_ac": 0.15,
}
_BARE_LED = 0.15  # forward voltages of one type scatter; common practice, no source
METER_V = 0.1  # what a cheap meter and its leads add; also the least tolerance
_NOUGHT_V = 1e-9
DEAD_V = 0.3  # under this a point counts as dead
_LOADS = (
    "led", "strip", "filament", "flasher", "constant_current", "constant_power", "stall_motor", "servo",
    "relay",
)  # fmt: skip


_THROWN = ("switch", "stall_motor", "twin_coil", "servo")


class VoltCheck(NamedTuple):
    """One reading to take: red lead on one terminal, black on the other."""

    place: str
    what: str
    red: TerminalRef
    black: TerminalRef
    expect_v: float
    low_v: float
    high_v: float
    alternating: bool


def volt_checks(situation: Situation) -> tuple[VoltCheck, ...]:
    """Return the readings place by place: supplies, strips, loads; those not worked out are left out."""
    plan, kinds, figures = situation.plan, situation.kinds, situation.figures
    feeds = {part: _feed(situation, circuit) for circuit in figures.circuits for part in circuit}
    order = place_order(plan)
    found: list[tuple[tuple[int, int, str], VoltCheck]] = []
    for number, part in enumerate(plan.parts.values()):
        kind = kinds.get(part.kind)
        if kind is None:
            continue
        supply = feeds.get(part.id, "")
        tolerance = _TOLERANCES.get(kinds[plan.parts[supply].kind].behaviour, 0.15) if supply else 0.15
        if kind.behaviour == "led" and not kind.values(part.settings).get("series_ohm"):
            tolerance = max(tolerance, _BARE_LED)
        rank, pairs = _pairs(plan, kind, part, supply, kinds)
        for red, black, what in pairs:
            red_v, black_v = figures.terminals.get(red), figures.terminals.get(black)
            if red_v is None or black_v is None:
                continue
            if kind.behaviour == "stall_motor" and red_v < black_v:  # it turns either way: no minus to read
                red, black, red_v, black_v = black, red, black_v, red_v
            place = place_name(plan, part)
            swings = part.id in figures.alternating and part.id not in figures.rectified
            check = _check(place, what, red, black, red_v - black_v, tolerance, swings)
            found.append(((order.get(place, len(order)), rank, f"{number:06d}"), check))
    found.sort(key=lambda f: f[0])
    return tuple(check for _, check in found)


def _pairs(
    plan: Plan, kind: Kind, part: Part, supply: PartId, kinds: Mapping[str, Kind]
) -> tuple[int, list[tuple[TerminalRef, TerminalRef, str]]]:
    """Return the rank of a part in the order of checks, and the pairs of terminals to measure between."""
    name = part.label or kind.title
    if kind.behaviour in _TOLERANCES or kind.behaviour in _LOADS:
        first, second = kind.terminals[0].name, kind.terminals[1].name
        pair = (TerminalRef(part.id, first), TerminalRef(part.id, second), name)
        return (0 if kind.behaviour in _TOLERANCES else 2), [pair]
    if kind.behaviour in CHARTED and supply:
        black = TerminalRef(supply, kinds[plan.parts[supply].kind].terminals[1].name)
        used = {ref for w in plan.wires.values() for ref in (w.start, w.end) if ref.part == part.id}
        reds = [ref for t in kind.terminals if (ref := TerminalRef(part.id, t.name)) in used]
        if kind.behaviour == "bus":  # all its terminals are one piece of metal
            reds = reds[:1]
        return 1, [(red, black, name) for red in reds]
    return 3, []


def _feed(situation: Situation, circuit: tuple[PartId, ...]) -> PartId:
    """Return the supply of a circuit whose minus is the nought volts are counted from; "" without one."""
    plan, kinds, volts = situation.plan, situation.kinds, situation.figures.terminals
    supplies = [
        p
        for p in circuit
        if p in plan.parts
        and plan.parts[p].kind in kinds
        and kinds[plan.parts[p].kind].behaviour in _TOLERANCES
    ]
    for supply in supplies:
        second = kinds[plan.parts[supply].kind].terminals[1].name
        if abs(volts.get(TerminalRef(supply, second), 1.0)) < _NOUGHT_V:
            return supply
    return ""


def _check(
    place: str, what: str, red: TerminalRef, black: TerminalRef, volts: float, share: float, alternating: bool
) -> VoltCheck:
    if alternating:
        volts = abs(volts)
    if abs(volts) < DEAD_V:
        return VoltCheck(place, what, red, black, 0.0, -DEAD_V, DEAD_V, alternating)
    spread = max(abs(volts) * share, METER_V)
    return VoltCheck(place, what, red, black, volts, volts - spread, volts + spread, alternating)


def check_words(plan: Plan, ref: TerminalRef) -> str:
    """Return where a meter lead goes."""
    return terminal_label(plan, ref)


def positions_words(situation: Situation) -> str:
    """Return how every switch stands while the readings are taken: ``-S1 to -S5 on; -S6, -S9 up``."""
    plan, kinds = situation.plan, situation.kinds
    stands: dict[str, list[str]] = {}
    for part_id, position in situation.positions.items():
        kind = kinds.get(plan.parts[part_id].kind) if part_id in plan.parts else None
        if kind is not None and kind.behaviour in _THROWN:
            stands.setdefault(position, []).append(part_label(plan, part_id))
    return "; ".join(f"{run_words(labels)} {position}" for position, labels in stands.items())
