"""Islands on direct current as one network: folded, held at their references, solved in one go."""

from typing import NamedTuple

import numpy as np

from wiring.circuit.assembly import Assembly
from wiring.circuit.folding import JUNCTION, RESISTOR, Folded, fold, folded_ohms, unfold
from wiring.circuit.islands import Islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network, Shape
from wiring.circuit.point import Rest
from wiring.circuit.together import Flags, Together, newton_together


class Core(NamedTuple):
    """What of a plan can carry direct current, all islands side by side; nodes by their plan numbers."""

    branches: Ints
    laws: Ints  # of those branches
    nodes: Ints  # the free ones, in the order of the shape
    islands: Ints  # of each component of the shape
    held: Ints  # the held node of each component
    folded: Folded  # of `branches`
    shape: Shape
    rest: list[Rest]  # where it last came to rest; one or none


class CoreSolved(NamedTuple):
    """Currents of the core's branches and volts of its nodes (those of others are nought)."""

    amps: Floats
    nodes: Floats  # of all nodes of the plan
    residual_a: Floats  # per component
    converged: Flags  # per component


def core_of_plan(assembly: Assembly, islands: Islands) -> Core:
    """Return the core of all islands on direct current."""
    known = ("core", islands, assembly.laws)
    return assembly.kept.of(known, lambda: _core(assembly, islands, ~islands.alternating))


def core_of_island(assembly: Assembly, islands: Islands, place: int) -> Core:
    """Return the core of one island."""
    only = np.zeros(len(islands.references), dtype=np.bool_)
    only[place] = True
    known = ("core of one", islands.fed[place], assembly.laws)
    return assembly.kept.of(known, lambda: _core(assembly, islands, only))


def _core(assembly: Assembly, islands: Islands, among: Flags) -> Core:
    """Return the core of some of the islands."""
    count = assembly.node_count
    meant = np.append(among, False)  # the last is for branches nothing feeds: -1
    carries = meant[islands.of_branch] & ~islands.dead.dead & ~islands.circling
    branches = np.flatnonzero(carries)
    laws, a, b = assembly.laws[branches], assembly.a[branches], assembly.b[branches]
    used = np.zeros(count, dtype=np.bool_)
    used[a] = used[b] = True
    held = _held(islands, used)
    stay = held[held >= 0]
    folded = fold(laws, a, b, assembly.values[branches, 0], count, stay)
    used &= ~folded.passed
    used[stay] = False
    nodes = np.flatnonzero(used)
    place = np.full(count, len(nodes), dtype=np.intp)
    place[nodes] = np.arange(len(nodes))
    of_node = islands.of_node[nodes]
    present = np.flatnonzero(np.bincount(of_node, minlength=len(islands.references)))
    number = np.zeros(len(islands.references), dtype=np.intp)
    number[present] = np.arange(len(present))
    shape = Shape(laws[folded.left], place[folded.a], place[folded.b], len(nodes), 1, number[of_node])
    return Core(branches, laws, nodes, present, held[present], folded, shape, [])


def _held(islands: Islands, used: Flags) -> Ints:
    """Return a node of each island's core: its reference, any where that lies on a dead end, -1 for none."""
    last = np.full(len(islands.references), -1, dtype=np.intp)
    nodes = np.flatnonzero(used)
    last[islands.of_node[nodes]] = nodes
    return np.where(used[islands.references], islands.references, last)


def solved_core(core: Core, values: Floats, warm: Floats | None = None) -> CoreSolved:
    """Return a core solved; `values` are the whole plan's, one more axis for columns.

    `warm` holds likely volts of the plan's nodes; it is used where each component has one solution only.
    """
    mine = values if len(core.branches) == len(values) else values[core.branches]
    columns = values.shape[2:]
    if not len(core.nodes):
        amps, nodes = np.zeros((len(mine), *columns)), np.zeros((len(core.folded.passed), *columns))
        return CoreSolved(amps, nodes, np.zeros((0, *columns)), np.ones((0, *columns), dtype=np.bool_))
    ohms, steps = folded_ohms(core.folded, core.laws, mine)
    left = core.folded.left
    rows = mine[left]
    plain = core.shape.laws == RESISTOR
    rows[plain, 0] = ohms[left[plain]]
    behind = ohms[left] if np.any(core.shape.laws == JUNCTION) and core.folded.folds else None
    network = Network.shaped(core.shape, rows, np.zeros((1, *columns)), behind)
    solved = _warmly(core, network, warm) if warm is not None and network.monotone else None
    if solved is None or not solved.converged.all():
        solved = newton_together(network)
    if not columns:
        core.rest[:] = [] if solved.rest is None else [solved.rest]
    final = np.empty((len(core.branches), *columns))
    final[left] = solved.amps
    sense = core.folded.sense if not columns else core.folded.sense[:, None]
    amps = final[core.folded.into] * sense
    return CoreSolved(amps, _nodes(core, steps, amps, solved.x), solved.residual_a, solved.converged)


def _warmly(core: Core, network: Network, warm: Floats) -> Together | None:
    """Return a core solved from where it last came to rest, or from likely volts of the plan's nodes."""
    if core.rest:
        return newton_together(network, rest=core.rest[0])
    start = warm[core.nodes] - warm[core.held][core.shape.component]
    return newton_together(network, start) if np.all(np.isfinite(start)) else None


def _nodes(core: Core, steps: tuple[Floats, ...], amps: Floats, x: Floats) -> Floats:
    count = len(core.folded.passed)
    nodes = np.zeros((count, *x.shape[1:]))
    nodes[core.nodes] = x
    unfold(core.folded, steps, amps, nodes)
    return nodes
