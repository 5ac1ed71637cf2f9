"""A capacitor-discharge unit at rest, or with a button held: its pulse is worked out by a study, not here.

A full capacitor takes next to nothing, so all that reaches the output comes through the charging resistor.
"""

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import Behaviour, Piece, Values, not_negative, positive
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

# Ohms times farads of an electrolytic capacitor's leak: a tenth of the 0.01 C V in microamperes that makers
# promise after minutes under voltage. Common practice, no source.
LEAK_OHM_FARADS = 1000.0
STORE, CHARGE = "main", "charge"  # roles of the two branches; the part's figures tell of the capacitor
ALIVE_V = 0.05
EVEN = 0.5  # of the part's watts: more than that in the charging resistor means that the output draws


def _compile(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    not_negative(values, "open_v")
    leak_ohm = LEAK_OHM_FARADS / positive(values, "capacitance")
    return Piece(
        (
            Branch("resistor", "O", "-", (leak_ohm,), STORE),
            Branch("resistor", "+", "O", (positive(values, "charge_ohm"),), CHARGE),
        )
    )


def _read(values: Values, position: str, figure: PartFigure) -> PartFigure:
    if abs(figure.volts_v) < ALIVE_V:
        return figure
    stored_w = abs(figure.volts_v * figure.current_a)
    return figure._replace(state="empty, its output draws" if stored_w < EVEN * figure.power_w else "full")


DISCHARGE_UNIT = Behaviour(_compile, _read, polarised=True)
