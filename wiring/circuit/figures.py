"""What a solved plan reads: volts, amperes and watts of every part, wire and supply, and what went wrong."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.plan.names import PartId, TerminalRef, WireId


class WireFigure(NamedTuple):
    """One wire: current from start to end, volts lost along it, watts it turns into heat (RMS on AC)."""

    current_a: float
    drop_v: float
    power_w: float
    ohms: float


class PartFigure(NamedTuple):
    """One part: volts across it, current into it, watts it takes, and its light relative to rated.

    On AC volts and current are RMS and watts the mean; the light of an LED goes with the mean current.
    """

    volts_v: float
    current_a: float
    power_w: float
    light: float | None = None  # luminous output over rated output; None for what gives no light
    state: str = ""  # "runs", "stalled", "blocked", "drops out", ... in plain words; "" when nothing to say
    peak_a: float | None = None  # where it differs from current_a: inrush, pulse, flasher on
    mean_a: float | None = None  # on AC, where diodes leave one; a DC meter shows it


class SupplyFigure(NamedTuple):
    """One supply or battery: volts at its terminals, current it gives, and how that stands to its rating."""

    volts_v: float
    current_a: float
    power_w: float
    rated_a: float  # infinite when no rating is known
    nominal_v: float
    limited: bool = False  # it has reached its current limit and its volts have fallen


class Problem(NamedTuple):
    """Something that kept part of the plan from being solved, in words for the user."""

    # "shorted", "floating", "loop", "not solved", "backward", "turned", "collapsed", "buzzing", "over limit"
    code: str
    parts: tuple[PartId, ...]
    wires: tuple[WireId, ...]
    words: str


class Figures(NamedTuple):
    """The readings of a whole plan in one set of positions. No value is ever NaN or infinite."""

    parts: Mapping[PartId, PartFigure]
    wires: Mapping[WireId, WireFigure]
    supplies: Mapping[PartId, SupplyFigure]
    # Volts against the minus of the supply that feeds it. On AC, RMS against one leg; behind a rectifier,
    # what a DC meter shows against that rectifier's minus.
    terminals: Mapping[TerminalRef, float]
    circuits: Sequence[tuple[PartId, ...]]  # parts that are joined through conductors, one tuple a circuit
    alternating: frozenset[PartId]  # parts fed with AC; their figures are RMS
    problems: tuple[Problem, ...]
    residual_a: float  # largest breach of Kirchhoff's current law that is left
    rectified: frozenset[PartId] = (
        frozenset()
    )  # of the alternating ones: all terminals lie behind a rectifier


NO_FIGURES = Figures({}, {}, {}, {}, (), frozenset(), (), 0.0)
