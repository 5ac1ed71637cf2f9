"""Electronic modules that take one power, whatever the volts."""

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import Behaviour, Piece, Values, positive
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

ALIVE_V = 0.05


def _compile(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece(
        (Branch("constant_power", "+", "-", (positive(values, "power"), positive(values, "min_v"))),)
    )


def _read(values: Values, position: str, figure: PartFigure) -> PartFigure:
    if ALIVE_V < figure.volts_v < values["min_v"]:
        return figure._replace(state="starved")
    return figure._replace(state="runs" if figure.volts_v >= values["min_v"] else "")


CONSTANT_POWER = Behaviour(_compile, _read, polarised=True)
