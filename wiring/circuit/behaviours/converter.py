"""A step-down module: steady volts out, the power for them and its own losses taken in.

What it takes in depends on what goes out, so its input branch is set anew after each solve until both agree;
see wiring.circuit.supply_states. The two sides share their minus, as in all cheap modules.
"""

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import Behaviour, Piece, UnusableError, Values, not_negative, positive
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

LEAST_OUT_OHMS = 1e-3
OUTPUT, INPUT = 0, 1  # places of the branches
ALIVE_V = 0.05


def _compile(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    volts, limit_a, min_v = (positive(values, name) for name in ("volts", "limit_a", "min_v"))
    ohms = max(not_negative(values, "ohms"), LEAST_OUT_OHMS)
    not_negative(values, "drop_out_v")
    for name in ("efficiency", "half_efficiency"):
        if positive(values, name) > 1.0:
            raise UnusableError(name, "must not be more than 100 %")
    return Piece(
        (
            Branch("source", "O", "-", (volts, ohms, limit_a, 0.0), "output"),
            Branch("constant_power", "+", "-", (0.0, min_v)),
            Branch("constant_current", "+", "-", (positive(values, "idle_a"), min_v), "idle"),
        )
    )


def power_in_w(values: Values, power_w: float, amps: float) -> float:
    """Return the watts taken in for so many watts given out at so many amperes, the idle current left out.

    One over the efficiency goes in a straight line through the figures at half and at full current: a part
    of the loss goes with the current and a part with its square.
    """
    share = amps / values["limit_a"]
    half, full = 1.0 / values["half_efficiency"], 1.0 / values["efficiency"]
    over = float(half + (full - half) * (2.0 * share - 1.0))
    return power_w * max(over, 1.0)


def volts_out(values: Values, volts_in: float) -> float:
    """Return the volts it holds at its output: its own, or what its drop-out leaves of the input."""
    return min(float(values["volts"]), max(volts_in - float(values["drop_out_v"]), 0.0))


def _read(values: Values, position: str, figure: PartFigure) -> PartFigure:
    """Its figures are those of its input, what it takes for itself included."""
    share = min(max(figure.volts_v / values["min_v"], 0.0), 1.0)
    figure = figure._replace(current_a=figure.current_a + share * values["idle_a"])
    starves = ALIVE_V < figure.volts_v < values["min_v"]
    return figure._replace(state="starved") if starves else figure


CONVERTER = Behaviour(_compile, _read, feeds=True, restates=True)
