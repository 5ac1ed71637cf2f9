"""Switches and relays that carry more current than their contacts are made for."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wiring.circuit.linear import Floats, Ints
from wiring.circuit.many_readings import wire_columns
from wiring.findings.asked import Asked, asked, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.plan.names import TerminalRef, WireId
from wiring.plan.wire import Wire
from wiring.standards.current_ratings import next_rating_up
from wiring.studies.keeping import kept

SWITCHES = ("switch",)


def find(situation: Situation) -> Iterator[Finding]:
    """Find switches whose wires bring more current to a terminal than the contacts are rated for."""
    plan = situation.plan
    switches = asked(situation, SWITCHES)
    rated = settings_of(switches, "rated_a")
    through = _through_a(situation, switches)
    for row, part, _ in switches.rows((rated > 0) & (through > 1.001 * rated)):
        most, rated_a = float(through[row]), float(rated[row])
        better_a = next_rating_up(1.25 * most)
        yield Finding(
            "contact-current",
            Rank.DANGER if most > 2 * rated_a else Rank.WEAK,
            f"{part_name(plan, part.id)} carries {amps(plan, most)}; its contacts are made "
            f"for {amps(plan, rated_a)}.",
            "Its contacts burn or weld together.",
            f"Use a switch for at least {amps(plan, better_a)}, or let a relay carry the load.",
            (part.id,),
            act=set_one(situation, part.id, amps(plan, better_a), rated_a=better_a),
        )


class _Landings(NamedTuple):
    """Ends of wires on terminals of switches."""

    wires: Sequence[WireId]
    signs: Floats  # +1 where the wire's current comes to the terminal
    terminals: Ints
    switch: Ints  # of each terminal
    switches: int


def _through_a(situation: Situation, switches: Asked) -> Floats:
    """Return the most current that wires bring to a terminal of each; what they pass along cancels out."""
    landings = kept(_landings, switches, situation.landed)
    columns = wire_columns(situation.figures)
    rows = kept(_rows, landings, columns.rows)
    brings_a = np.append(np.where(columns.known, columns.amps, 0.0), 0.0)[rows] * landings.signs
    net_a = np.abs(np.bincount(landings.terminals, brings_a, minlength=len(landings.switch)))
    most_a = np.zeros(landings.switches)
    np.maximum.at(most_a, landings.switch, net_a)
    return most_a


def _landings(switches: Asked, wires: Mapping[WireId, Wire]) -> _Landings:
    place: dict[TerminalRef, int] = {}
    of_terminal: list[int] = []
    for row, (part, kind) in enumerate(zip(switches.ids, switches.kinds, strict=True)):
        for terminal in kind.terminals:
            place[TerminalRef(part, terminal.name)] = len(of_terminal)
            of_terminal.append(row)
    found = [
        (wire.id, sign, place[ref])
        for wire in wires.values()
        for ref, sign in ((wire.start, -1.0), (wire.end, 1.0))
        if ref in place
    ]
    names, signs, terminals = zip(*found, strict=True) if found else ((), (), ())
    return _Landings(
        names,
        np.array(signs, dtype=np.float64),
        np.array(terminals, dtype=np.intp),
        np.array(of_terminal, dtype=np.intp),
        len(switches.ids),
    )


def _rows(landings: _Landings, rows: Mapping[WireId, int]) -> Ints:
    return np.array([rows.get(wire, -1) for wire in landings.wires], dtype=np.intp)
