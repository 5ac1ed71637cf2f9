"""Resistor, fuses and diodes."""

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import Behaviour, Piece, Values, not_negative, positive, warmer_k
from wiring.circuit.branches.junction import junction_values
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

# Ohms times farads of an aluminium electrolytic capacitor's own resistance: 0.1 ohm at 1000 microfarads.
# Common practice, no source; maker's sheets state 0.05 to 0.3 ohm there.
OWN_OHM_FARADS = 1e-4
LEAST_FARADS = 1e-8  # less than that smooths nothing
DIODE_OWN_DROP_V = 1e-5  # of forward_v, lost in bulk resistance at forward_a: next to nothing


def _resistor(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece((Branch("resistor", "1", "2", (not_negative(values, "resistance"),)),))


def _fuse(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    if position is not None and position.name != "whole":
        return Piece()
    return Piece((Branch("resistor", "1", "2", (not_negative(values, "cold_ohm"),), "fuse"),))


def _open_fuse(values: Values, position: str, figure: PartFigure) -> PartFigure:
    return figure._replace(state=position if position in ("blown", "tripped") else "")


def _one_diode(values: Values, anode: str, cathode: str) -> Branch:
    forward_a = positive(values, "forward_a")
    law = junction_values(
        forward_v=positive(values, "forward_v", DIODE_OWN_DROP_V),
        forward_a=forward_a,
        slope_v=positive(values, "slope_v"),
        own_ohms=DIODE_OWN_DROP_V / forward_a,
        in_series=1.0,
        series_ohms=0.0,
        chains=1.0,
        warmer_k=warmer_k(values),
    )
    return Branch("junction", anode, cathode, law)


def _diode(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece((_one_diode(values, "A", "K"),))


def _rectifier(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    pairs = (("~1", "+"), ("~2", "+"), ("-", "~1"), ("-", "~2"))
    diodes = tuple(_one_diode(values, a, k) for a, k in pairs)
    farads = not_negative(values, "capacitance") if "capacitance" in values else 0.0
    if farads < LEAST_FARADS:
        return Piece(diodes)
    return Piece((*diodes, Branch("capacitor", "+", "-", (farads, OWN_OHM_FARADS / farads), "smoothing")))


RESISTOR = Behaviour(_resistor)
FUSE = Behaviour(_fuse, _open_fuse)
DIODE = Behaviour(_diode)
RECTIFIER = Behaviour(_rectifier)
