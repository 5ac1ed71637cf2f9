"""What joins and parts conductors: switches, relays, terminal strips, distribution blocks, plugs."""

from itertools import pairwise

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import (
    Behaviour,
    Piece,
    UnusableError,
    Values,
    contacts,
    not_negative,
    positive,
)
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

LETS_GO = 0.1  # of rated coil volts; common practice, no source


def _contacts_only(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece(contacts(values, position))


def _relay(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    if lets_go_v(values) >= positive(values, "pull_in_v"):
        raise UnusableError("drop_out_v", "must be less than the voltage it pulls in at")
    coil = Branch("resistor", "A1", "A2", (positive(values, "coil_ohm"),), "coil")
    return Piece((coil, *contacts(values, position)))


def lets_go_v(values: Values) -> float:
    """Return the coil volts beneath which an operated relay lets go; between them and pull-in it stays."""
    own = not_negative(values, "drop_out_v") if "drop_out_v" in values else 0.0
    return own if own > 0.0 else LETS_GO * positive(values, "rated_v")


def _relay_state(values: Values, position: str, figure: PartFigure) -> PartFigure:
    return figure._replace(state=position)


def _separate(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece()


def _bus(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece((), tuple(pairwise(terminals)))


def _pairs(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    if position is None or position.closes or position.name == "apart":
        return Piece(contacts(values, position))
    ways = tuple((t, f"{t[:-1]}b") for t in terminals if t.endswith("a") and f"{t[:-1]}b" in terminals)
    return Piece(contacts(values, Position(position.name, ways)))


SWITCH = Behaviour(_contacts_only)
RELAY = Behaviour(_relay, _relay_state)
SEPARATE = Behaviour(_separate)
BUS = Behaviour(_bus)
PAIRS = Behaviour(_pairs)
