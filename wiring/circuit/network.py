"""Networks as arrays: branches grouped by law, nodes numbered, some of them held at given volts.

A network may hold many of one shape side by side, as columns: then its values have a third axis, its held
volts a second, and so have all node and branch arrays.
"""

from functools import cached_property

import numpy as np

from wiring.circuit.branches.junction import curve_behind
from wiring.circuit.branches.law import Curve, Law
from wiring.circuit.branches.laws import LAW_NUMBER, LAWS
from wiring.circuit.elimination.sums import Summing
from wiring.circuit.linear import Floats, Ints, Pattern

SOURCE, RESISTOR, JUNCTION = (LAW_NUMBER[name] for name in ("source", "resistor", "junction"))
START_SHARE = 0.9  # of the highest voltage, where loads are made straight lines for the first guess
LEAST_START_V = 0.1
ROUNDING = 1e-15
Members = Ints | slice


class Shape:
    """What networks of the same branches and nodes share; worked out when it is first asked for."""

    def __init__(self, laws: Ints, a: Ints, b: Ints, free: int, held: int, component: Ints | None) -> None:
        self.laws, self.a, self.b, self.free, self.held = laws, a, b, free, held
        self.component = np.zeros(free, dtype=np.intp) if component is None else component
        self.components = int(self.component.max(initial=0)) + 1  # one at least
        self.from_a, self.to_b = Summing(a, free + held), Summing(b, free + held)
        self.by_component = Summing(self.component, self.components)

    @cached_property
    def groups(self) -> list[tuple[Law, Members]]:
        """The laws there are, each with its branches: a slice where they lie in a row, which is quicker."""
        found: list[tuple[Law, Members]] = []
        for n in np.flatnonzero(np.bincount(self.laws)).tolist():
            members = np.flatnonzero(self.laws == n)
            begin, end = int(members[0]), int(members[-1]) + 1
            found.append((LAWS[n], slice(begin, end) if end - begin == len(members) else members))
        return found

    @cached_property
    def pattern(self) -> Pattern:
        """The matrix's shape, the same for every voltage."""
        return Pattern(self.a, self.b, self.free)

    @cached_property
    def sources(self) -> Ints:
        """The branches that are sources."""
        return np.flatnonzero(self.laws == SOURCE)

    @cached_property
    def of_branch(self) -> Ints:
        """The component of each branch; that of a branch between two held nodes is the first."""
        low = np.minimum(self.a, self.b)
        return np.where(low < self.free, np.append(self.component, 0)[np.minimum(low, self.free)], 0)


class Network:
    """Branches from node a to node b; nodes 0..free-1 are unknown, the rest are held.

    `component` tells which nodes hang together, if they fall into several parts that touch at held nodes
    only. `behind` is, per branch, resistance added to a junction that does not pass its leak alone.
    """

    def __init__(
        self, laws: Ints, a: Ints, b: Ints, values: Floats, free: int, held: Floats, *,
        component: Ints | None = None, behind: Floats | None = None,
    ) -> None:  # fmt: skip
        self.laws, self.a, self.b, self.values, self.free, self.held = laws, a, b, values, free, held
        self.behind = behind
        self.shape = Shape(laws, a, b, free, len(held), component)

    @classmethod
    def shaped(cls, shape: Shape, values: Floats, held: Floats, behind: Floats | None = None) -> "Network":
        """Return a network of a shape known before."""
        network = cls.__new__(cls)
        network.laws, network.a, network.b, network.free = shape.laws, shape.a, shape.b, shape.free
        network.values, network.held, network.behind, network.shape = values, held, behind, shape
        return network

    @property
    def pattern(self) -> Pattern:
        """The matrix's shape, the same for every voltage."""
        return self.shape.pattern

    @property
    def groups(self) -> list[tuple[Law, Members]]:
        """The laws there are, each with its branches."""
        return self.shape.groups

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
        if laws is None or laws is self.laws:
            return Network.shaped(self.shape, values, self.held, self.behind)
        other = Network(
            laws, self.a, self.b, values, self.free, self.held,
            component=self.shape.component, behind=self.behind,
        )  # fmt: skip
        other.shape.pattern = self.pattern
        return other

    def volts(self, x: Floats) -> Floats:
        """Return the voltage of every branch for given node voltages."""
        full = np.concatenate((x, self.held))
        return np.asarray(full[self.a] - full[self.b])

    def moved(self, move: Floats) -> Floats:
        """Return by how much the voltage of every branch changes where the node voltages change so much."""
        full = np.concatenate((move, np.zeros_like(self.held)))
        return np.asarray(full[self.a] - full[self.b])

    @cached_property
    def _curves(self) -> list[tuple[Members, Curve]]:
        """The branches of each law, and their curve."""
        return [(members, self._curve(law, members)) for law, members in self.groups]

    def _curve(self, law: Law, members: Members) -> Curve:
        columns = np.ndim(self.held) > 1 or self.values.ndim > 2
        rows = np.ascontiguousarray(np.moveaxis(self.values[members], 1, 0)[: len(law.parameters)])
        behind = None if self.behind is None else self.behind[members]
        if columns and rows.ndim == 2:
            rows, behind = rows[..., None], None if behind is None else behind[:, None]
        if behind is not None and law.name == "junction":
            return curve_behind(rows, behind)
        return law.curve(rows)

    def currents(self, v: Floats) -> tuple[Floats, Floats]:
        """Return current and slope of every branch for given branch voltages."""
        amps, slopes = np.empty_like(v), np.empty_like(v)
        for members, curve in self._curves:
            amps[members], slopes[members] = curve(v[members])
        return amps, slopes

    def some_currents(self, branches: Ints, v: Floats) -> tuple[Floats, Floats]:
        """Return current and slope of some branches, for their voltages."""
        amps, slopes = np.empty_like(v), np.empty_like(v)
        for number in np.unique(self.laws[branches]).tolist():
            mine = np.flatnonzero(self.laws[branches] == number)
            amps[mine], slopes[mine] = self._curve(LAWS[number], branches[mine])(v[mine])
        return amps, slopes

    def sums(self, per_branch: Floats, opposite: float = -1.0) -> Floats:
        """Return per free node what leaves it minus what enters it (plus, with opposite = 1)."""
        out = self.shape.from_a(per_branch) + opposite * self.shape.to_b(per_branch)
        return out[: self.free]

    @cached_property
    def rounding_v(self) -> Floats:
        """Per branch: volts that get lost in the digits of its component's highest volts."""
        return np.asarray((ROUNDING * self.highest)[self.shape.of_branch])

    @cached_property
    def highest(self) -> Floats:
        """The most any node of each component can rise to, volts: all EMFs and held volts, one on another."""
        shape = self.shape
        sources = shape.sources
        emfs = np.abs(self.values[sources, 0])
        total = Summing(shape.of_branch[sources], shape.components)(emfs)
        held = np.max(np.abs(self.held), axis=0, initial=0.0)
        total = total + held if total.ndim >= np.ndim(held) + 1 else total[:, None] + held
        return np.asarray(np.maximum(total, LEAST_START_V))

    def first_guess(self) -> Floats:
        """Return node voltages of the network with every branch made a straight line."""
        shape = self.shape
        fixed = self.volts(np.zeros((self.free, *self.highest.shape[1:])))
        at = START_SHARE * self._loudest()[shape.of_branch]
        amps, _ = self.currents(at)
        slopes = np.abs(amps) / at
        sources = shape.sources
        emf, ohms = self.values[sources, 0], self.values[sources, 1]
        if slopes.ndim > emf.ndim:
            emf, ohms = emf[:, None], ohms[:, None]
        slopes[sources] = 1.0 / ohms
        push = slopes * fixed
        push[sources] -= emf * slopes[sources]
        return self.pattern.solver(slopes)(-self.sums(push))

    def _loudest(self) -> Floats:
        """Return the highest EMF or held volts of each component."""
        shape = self.shape
        found = np.full(self.highest.shape, LEAST_START_V)
        held = np.max(np.abs(self.held), axis=0, initial=0.0)
        np.maximum(found, held, out=found)
        emfs = np.abs(self.values[shape.sources, 0])
        if emfs.ndim < found.ndim:
            emfs = emfs[:, None]
        np.maximum.at(found, shape.of_branch[shape.sources], emfs)
        return found


def as_columns(lanes: list[Network]) -> Network:
    """Return networks of one shape as the columns of one."""
    first = lanes[0]
    values = first.values
    if any(lane.values is not values for lane in lanes):
        values = np.stack([lane.values for lane in lanes], axis=-1)
    held = np.stack([lane.held for lane in lanes], axis=-1)
    behind = None if first.behind is None else first.behind
    return Network.shaped(first.shape, values, held, behind)
