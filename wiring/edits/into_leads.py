"""Put a new part into both leads of another: a rectifier behind an AC supply, or before what wants DC."""

import math
from collections.abc import Iterable, Iterator, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.into_lead import GAP_MM, Spot, best_spot, lies_within, moved_to, reach_of, wires_at
from wiring.edits.laying import Laying
from wiring.edits.tables import counted, known_kinds
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

Two = tuple[str, str]
AWAY_MM = (12.0, 20.0, 30.0, 45.0, 60.0)  # between the two bodies, so that two wires have room to turn
ASIDE_MM = (0.0, -20.0, 20.0, -40.0, 40.0)
TURNS_DEG = (0.0, 90.0, -90.0, 180.0)  # from the way the two terminals point


def put_into_leads(
    pairs: Iterable[tuple[TerminalRef, TerminalRef]],
    kind: Kind,
    at: Two,
    away: Two,
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Put a part between each pair of terminals of one part and the wires on them.

    Its terminals `at` are wired to the two, its terminals `away` take the wires that were there. EditRefused
    when a terminal has no wire.
    """
    wanted = tuple(dict.fromkeys(pairs))

    def apply(plan: Plan) -> Plan:
        known = {**known_kinds(kinds), kind.key: kind}
        wires = {ref: wires_at(plan, ref) for pair in wanted for ref in pair}
        lifted = [wire.id for some in wires.values() for wire in some]
        laying = Laying(plan, known, dict.fromkeys(pair[0].part for pair in wanted), lifted)
        now: dict[str, Wire] = {}  # a wire may lead from one of the terminals to another
        for pair in wanted:
            like = plan.parts[pair[0].part]
            spot = best_spot(laying, kind, list(_spots(laying, pair, kind)))
            turn = spot.turn_deg + (180.0 if kind.terminal(at[0]).x_mm > 0 else 0.0)
            made = laying.part(kind, (spot.x_mm, spot.y_mm), turn, like, {})
            if like.group and all(lies_within(plan, like.group, ref, wires[ref]) for ref in pair):
                laying.parts[-1] = msgspec.structs.replace(made, group=like.group)
            for ref, near, far in zip(pair, at, away, strict=True):
                first = wires[ref][0]
                for wire in (now.get(w.id, w) for w in wires[ref]):
                    now[wire.id] = moved_to(laying, wire, ref, TerminalRef(made.id, far), keeps_way=False)
                laying.wire(ref, TerminalRef(made.id, near), first.colour)
                lead = laying.wires[-1]
                laying.wires[-1] = msgspec.structs.replace(lead, size=first.size, solid=first.solid)
        laying.wires.extend(now.values())
        return laying.done()

    return Edit(f"Put in {counted(len(wanted), kind.title.split(' ')[-1].lower())}", apply)


def _spots(laying: Laying, pair: tuple[TerminalRef, TerminalRef], kind: Kind) -> Iterator[Spot]:
    """Walk the places beside the two terminals, those out from their part first."""
    part = laying.plan.parts[pair[0].part]
    (ax, ay), (bx, by) = (laying.at(ref) for ref in pair)
    x_mm, y_mm = (ax + bx) / 2, (ay + by) / 2
    level = math.hypot(x_mm - part.x_mm, y_mm - part.y_mm) < GAP_MM  # one on each side: below is as good
    out = 90.0 if level else math.degrees(math.atan2(y_mm - part.y_mm, x_mm - part.x_mm))
    out = 90.0 * round(out / 90.0)
    for away in AWAY_MM:
        for turn in TURNS_DEG:
            angle, far = math.radians(out + turn), away + reach_of(kind)
            cos, sin = round(math.cos(angle), 9), round(math.sin(angle), 9)
            for aside in ASIDE_MM:
                yield Spot(x_mm + cos * far - sin * aside, y_mm + sin * far + cos * aside, out + turn)
