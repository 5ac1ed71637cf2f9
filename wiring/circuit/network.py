"""One island as arrays: branches grouped by law, nodes numbered, some of them held at given volts."""

from functools import cached_property

import numpy as np

from wiring.circuit.branches.law import Law
from wiring.circuit.branches.laws import LAW_NUMBER, LAWS
from wiring.circuit.linear import Floats, Ints, Pattern

SOURCE = LAW_NUMBER["source"]
START_SHARE = 0.9  # of the highest voltage, where loads are made straight lines for the first guess
LEAST_START_V = 0.1


class Network:
    """Branches from node a to node b; nodes 0..free-1 are unknown, the rest are held."""

    def __init__(self, laws: Ints, a: Ints, b: Ints, values: Floats, free: int, held: Floats) -> None:
        self.laws, self.a, self.b, self.values, self.free, self.held = laws, a, b, values, free, held

    @cached_property
    def groups(self) -> list[tuple[Law, Ints]]:
        """The laws there are, each with its branches."""
        return [(LAWS[n], np.flatnonzero(self.laws == n)) for n in np.unique(self.laws)]

    @cached_property
    def pattern(self) -> Pattern:
        """The matrix's shape, the same for every voltage."""
        return Pattern(self.a, self.b, self.free)

    def share_pattern(self, other: "Network | None") -> None:
        """Take the matrix's shape of a network with the same branches and nodes."""
        if other is not None:
            self.__dict__["pattern"] = other.pattern

    @property
    def linear(self) -> bool:
        """Whether currents are proportional to voltages, sources apart."""
        sources = self.values[self.laws == SOURCE]
        straight = bool(np.all(np.isinf(sources[:, 2]) & (sources[:, 3] != 0)))
        return straight and all(law.linear or law.name == "source" for law, _ in self.groups)

    @property
    def monotone(self) -> bool:
        """Whether there is one solution only."""
        return all(law.monotone for law, _ in self.groups)

    def with_values(self, values: Floats, laws: Ints | None = None) -> "Network":
        """Return the same network with other values (and laws); the matrix's shape is shared."""
        other = Network(self.laws if laws is None else laws, self.a, self.b, values, self.free, self.held)
        other.share_pattern(self)
        return other

    def volts(self, x: Floats) -> Floats:
        """Return the voltage of every branch for given node voltages."""
        full = np.concatenate((x, self.held))
        return np.asarray(full[self.a] - full[self.b])

    def currents(self, v: Floats) -> tuple[Floats, Floats]:
        """Return current and slope of every branch for given branch voltages."""
        amps, slopes = np.empty_like(v), np.empty_like(v)
        for law, members in self.groups:
            amps[members], slopes[members] = law.current(v[members], self.values[members].T)
        return amps, slopes

    def sums(self, per_branch: Floats, opposite: float = -1.0) -> Floats:
        """Return per free node what leaves it minus what enters it (plus, with opposite = 1)."""
        size = self.free + len(self.held)
        out = np.bincount(self.a, per_branch, size) + opposite * np.bincount(self.b, per_branch, size)
        return np.asarray(out[: self.free])

    def first_guess(self) -> Floats:
        """Return node voltages of the network with every branch made a straight line."""
        sources = self.laws == SOURCE
        highest = max([LEAST_START_V, *np.abs(self.values[sources, 0]), *np.abs(self.held)])
        at = np.full(len(self.a), START_SHARE * highest)
        amps, _ = self.currents(at)
        slopes = np.abs(amps) / at
        slopes[sources] = 1.0 / self.values[sources, 1]
        push = np.where(sources, -self.values[:, 0] * slopes, 0.0)
        fixed = self.volts(np.zeros(self.free))
        return self.pattern.solver(slopes)(-self.sums(slopes * fixed + push))


def side_by_side(lanes: list[Network]) -> Network:
    """Return networks of one shape as one network in which they do not touch."""
    first, count = lanes[0], len(lanes)
    free, held = first.free, len(first.held)

    def spread(ends: Ints) -> Ints:
        lane = np.arange(count)[:, None]
        unknown = ends[None, :] + free * lane
        known = ends[None, :] - free + free * count + held * lane
        return np.where(ends[None, :] < free, unknown, known).ravel()

    return Network(
        np.tile(first.laws, count), spread(first.a), spread(first.b),
        np.concatenate([lane.values for lane in lanes]), free * count,
        np.concatenate([lane.held for lane in lanes]),
    )  # fmt: skip
