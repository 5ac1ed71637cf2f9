"""A capacitor-discharge unit at rest, or with a button held: its pulse is worked out by a study, not here.

A full capacitor takes next to nothing, so all that reaches the output comes through the charging resistor.
"""

import math

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import Behaviour, Piece, Values, not_negative, positive
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

# Ohms times farads of an electrolytic capacitor's leak: a tenth of the 0.01 C V in microamperes that makers
# promise after minutes under voltage. Common practice, no source.
LEAK_OHM_FARADS = 1000.0
STORE, CHARGE = "main", "charge"  # roles of the two branches; the part's figures tell of the capacitor
ALIVE_V = 0.05
DRAINED = "empty, its output draws"


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
    """The capacitor's volts, and the current that comes in: what heats the charging resistor tells it."""
    stored_v, leaks_w = abs(figure.volts_v), abs(figure.volts_v * figure.current_a)
    takes_a = math.sqrt(max(figure.power_w - leaks_w, 0.0) / values["charge_ohm"])
    figure = figure._replace(current_a=takes_a)
    if takes_a * values["charge_ohm"] > stored_v + ALIVE_V:  # less than half of its feed's volts is left
        return figure._replace(state=DRAINED)
    return figure._replace(state="full" if stored_v > ALIVE_V else "")


DISCHARGE_UNIT = Behaviour(_compile, _read, polarised=True, restates=True)
