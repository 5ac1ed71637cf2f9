"""What moves: stall motors, twin coils, servos."""

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import Behaviour, Piece, Values, contacts, positive
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

STARTS = 0.5  # of rated volts: below this a stall motor does not move
SERVO_CURRENTS = {"moving": "moving_a", "stalled": "stalled_a"}


def _stall_motor(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    moving = position is not None and position.name == "moving"
    ohms = positive(values, "rated_v") / positive(values, "running_a" if moving else "stalled_a")
    return Piece((Branch("resistor", "M1", "M2", (ohms,)), *contacts(values, position)))


def _motor_state(values: Values, position: str, figure: PartFigure) -> PartFigure:
    volts = abs(figure.volts_v)
    if volts < 0.01 * values["rated_v"]:
        return figure
    if position == "moving":
        return figure._replace(state="runs" if volts >= STARTS * values["rated_v"] else "too weak to move")
    return figure._replace(state="stalled")


def _twin_coil(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    ohms = positive(values, "coil_ohm")
    coils = (Branch("resistor", "N", "C", (ohms,)), Branch("resistor", "R", "C", (ohms,)))
    return Piece((*coils, *contacts(values, position)))


def _coil_state(values: Values, position: str, figure: PartFigure) -> PartFigure:
    return figure._replace(state="a coil is on") if abs(figure.current_a) > 1e-3 else figure


def _servo(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    amps = positive(values, SERVO_CURRENTS.get(position.name if position else "", "idle_a"))
    return Piece((Branch("constant_current", "+", "-", (amps, positive(values, "min_v"))),))


def _servo_state(values: Values, position: str, figure: PartFigure) -> PartFigure:
    if figure.volts_v < 0.05:
        return figure
    if figure.volts_v < values["min_v"]:
        return figure._replace(state="too few volts")
    return figure._replace(state={"moving": "runs", "stalled": "stalled"}.get(position, "holds"))


STALL_MOTOR = Behaviour(_stall_motor, _motor_state)
TWIN_COIL = Behaviour(_twin_coil, _coil_state)
SERVO = Behaviour(_servo, _servo_state, polarised=True)
