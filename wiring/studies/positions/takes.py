"""The most that parts take and sources give, when nothing lies farther apart than all sources reach together.

No load gives anything. So wherever volts step down along loads and conductors, some source must step them up
again, and no two nodes are farther apart than all electromotive forces added. Currents are RMS on AC: at each
moment of a cycle the alternating ones reach only as far as the sine then does, which is the same for all.
"""

import math
from collections.abc import Iterable
from typing import NamedTuple

import numpy as np

from wiring.circuit.behaviours.converter import power_in_w
from wiring.circuit.behaviours.piece import Values
from wiring.circuit.branches.laws import LAW_NUMBER, LAWS
from wiring.circuit.linear import Floats
from wiring.studies.positions.pieces import Piece

FILAMENT, SOURCE = LAW_NUMBER["filament"], LAW_NUMBER["source"]
MOMENTS = 64  # of a quarter cycle
SHARES = 64  # of a converter's limit, gone through for the most it takes in


class Reach(NamedTuple):
    """The volts all sources of a family add up to."""

    direct_v: float
    swing_v: float  # peak of the alternating ones
    within_v: float = math.inf  # no two nodes are farther apart, whatever the sources add up to

    @property
    def most_v(self) -> float:
        """The most at any moment."""
        return min(self.direct_v + self.swing_v, self.within_v)

    def held(self) -> "Reach":
        """Return the same with the most lasting all the time, as behind a smoothing capacitor."""
        return Reach(self.most_v, 0.0)

    def moments_v(self) -> Floats:
        """Return the most at evenly spread moments; one is enough on DC."""
        if self.swing_v == 0.0:
            return np.array([self.most_v])
        sines = np.sin((np.arange(MOMENTS) + 0.5) / MOMENTS * np.pi / 2.0)
        return np.asarray(self.direct_v + self.swing_v * sines)


def reach_of(sources: Iterable[Piece]) -> Reach:
    """Return what all sources add up to."""
    direct = swing = 0.0
    for piece in sources:
        if piece.role == "alternating":
            swing += abs(piece.row[0])
        else:
            direct += abs(piece.row[0])
    return Reach(direct, swing)


def load_a(piece: Piece, reach: Reach) -> float:
    """Return the most a load takes, amperes (RMS on AC). A filament keeps the ohms its RMS volts give it."""
    volts = reach.moments_v()
    if piece.law == FILAMENT:
        volts = np.array([_rms(volts)])
    at = np.concatenate((-volts, volts))
    if not LAWS[piece.law].monotone:  # a module of one power takes most at its least volts
        at = np.minimum(at, piece.row[1])
    amps = np.abs(_amps(piece, at)).reshape(2, -1).max(axis=0)
    return _rms(amps)


def input_a(values: Values, role: str, piece: Piece) -> float:
    """Return the most a converter takes in: what its limit lets out, over its efficiency, at least volts."""
    if role == "idle":
        return float(values["idle_a"])
    amps = np.linspace(0.0, float(values["limit_a"]), SHARES + 1)
    watts = max(power_in_w(values, float(values["volts"]) * a, a) for a in amps.tolist())
    return watts / piece.row[1]


def gives_a(piece: Piece, reach: Reach) -> float:
    """Return the most a source gives, all others pulling its plus below its minus (RMS on AC)."""
    emf_v, ohms = abs(piece.row[0]), piece.row[1]
    if piece.role == "alternating":
        return _rms(reach.moments_v()) / ohms
    others_v = max(min(reach.direct_v + reach.swing_v - emf_v, reach.within_v), 0.0)
    return max(-float(_amps(piece, np.array([-others_v]))[0]), 0.0)


def sinks_a(piece: Piece, reach: Reach) -> float:
    """Return the most that flows back into a source, all others pushing."""
    emf_v = abs(piece.row[0])
    if piece.role == "alternating":
        others = reach._replace(swing_v=max(reach.swing_v - emf_v, 0.0))
        return _rms(others.moments_v()) / piece.row[1]
    return _rms(np.maximum(_amps(piece, reach.moments_v()), 0.0))


def _amps(piece: Piece, volts: Floats) -> Floats:
    rows = np.repeat(np.array(piece.row)[:, None], len(volts), axis=1)
    return LAWS[piece.law].current(volts, rows)[0]


def _rms(values: Floats) -> float:
    return float(np.sqrt(np.mean(values * values)))
