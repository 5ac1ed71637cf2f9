"""What a converter does next, by what its output gives and its input gets: one step toward its rest."""

from typing import NamedTuple

from wiring.circuit.behaviours.converter import power_in_w, volts_out
from wiring.circuit.behaviours.piece import Values

LEAST_POWER_W = 1e-9
POWER_TOLERANCE = 1e-10  # of the power
MOST_STRIKES = 3  # times a converter's input may break down on the way before it counts as broken down


class Reads(NamedTuple):
    """What one solve says of a converter."""

    in_v: float
    out_w: float
    out_a: float
    failed: bool


class Stand(NamedTuple):
    """How a converter is set: the power it takes in, the volts it holds; or that it has given up."""

    in_w: float
    emf_v: float
    strikes: int = 0
    off: bool = False
    broken: bool = False  # its input does not hold up under its load


def next_stand(values: Values, stand: Stand, reads: Reads) -> tuple[Stand, bool]:
    """Return how a converter is to be set after a solve, and whether that is another setting than before."""
    if stand.off or (reads.failed and stand.in_w <= LEAST_POWER_W):
        return stand, False
    if reads.failed or reads.in_v < values["min_v"]:
        strikes = stand.strikes + 1
        if stand.in_w > LEAST_POWER_W and strikes < MOST_STRIKES:
            return stand._replace(in_w=0.5 * stand.in_w, strikes=strikes), True
        return Stand(0.0, 0.0, strikes, True, stand.in_w > LEAST_POWER_W), True
    asked_w = power_in_w(values, reads.out_w, reads.out_a)
    emf_v = volts_out(values, reads.in_v)
    moved = abs(emf_v - stand.emf_v) > POWER_TOLERANCE * values["volts"]
    moved |= abs(asked_w - stand.in_w) > POWER_TOLERANCE * asked_w + LEAST_POWER_W
    return stand._replace(in_w=asked_w, emf_v=emf_v), moved
