"""Islands on direct current as one network: folded, held at their references, solved in one go.

A core numbers its branches and nodes by their places in its scope, some islands or one, so it stays right
where an edit elsewhere renumbers the plan.
"""

from typing import NamedTuple

import numpy as np

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.dead_ends import Twigs
from wiring.circuit.folding import JUNCTION, RESISTOR, Folded, fold, folded_ohms, unfold
from wiring.circuit.islands import Islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network, Shape
from wiring.circuit.point import Rest
from wiring.circuit.together import Flags, Together, newton_together

SOURCE = LAW_NUMBER["source"]
PLAN = -1  # the core of all islands on direct current, among those of one island


class Scope(NamedTuple):
    """The branches and nodes of some islands, by their numbers in the plan."""

    branches: Ints
    nodes: Ints


class Core(NamedTuple):
    """What of a scope can carry direct current, all its islands side by side, and what hangs on it."""

    branches: Ints
    laws: Ints  # of those branches
    nodes: Ints  # the free ones, in the order of the shape
    islands: Ints  # of each component of the shape, by their places in the scope
    held: Ints  # the held node of each component
    folded: Folded  # of `branches`
    shape: Shape
    rest: list[Rest]  # where it last came to rest; one or none
    a: Ints  # of all branches of the scope
    b: Ints
    layers: tuple[Twigs, ...]
    sources: Flags  # of all branches of the scope
    loops: Ints
    references: Ints  # of each node of the scope: the node its volts are counted from


class CoreSolved(NamedTuple):
    """Currents of the core's branches and volts of the scope's nodes (those not of the core are nought)."""

    amps: Floats
    nodes: Floats
    residual_a: Floats  # per component
    converged: Flags  # per component


def scope_of_plan(assembly: Assembly, islands: Islands) -> Scope:
    """Return the branches and nodes of all islands on direct current."""
    return assembly.kept.of(("scope", islands), lambda: _scope(islands))


def _scope(islands: Islands) -> Scope:
    meant = np.append(~islands.alternating, False)  # the last is for what nothing feeds: -1
    return Scope(np.flatnonzero(meant[islands.of_branch]), np.flatnonzero(meant[islands.of_node]))


def cores_known(assembly: Assembly, islands: Islands) -> dict[int, Core]:
    """Return the cores that have been made, by the place of their island; to be added to."""
    return assembly.kept.of(("cores", islands, assembly.laws), dict[int, Core])


def core_of_plan(assembly: Assembly, islands: Islands) -> Core:
    """Return the core of all islands on direct current."""
    known = cores_known(assembly, islands)
    if PLAN not in known:
        places = np.flatnonzero(~islands.alternating)
        known[PLAN] = _core(assembly, islands, scope_of_plan(assembly, islands), places)
    return known[PLAN]


def core_of_island(assembly: Assembly, islands: Islands, place: int) -> Core:
    """Return the core of one island."""
    known = cores_known(assembly, islands)
    if place not in known:
        island = islands.fed[place]
        known[place] = _core(assembly, islands, Scope(island.branches, island.nodes), np.array([place]))
    return known[place]


def _core(assembly: Assembly, islands: Islands, scope: Scope, places: Ints) -> Core:
    """Return the core of the islands in these places."""
    mine, around = scope
    count = len(around)
    place = np.full(assembly.node_count, -1, dtype=np.intp)
    place[around] = np.arange(count)
    number = np.full(len(islands.references), -1, dtype=np.intp)
    number[places] = np.arange(len(places))
    all_a, all_b = place[assembly.a[mine]], place[assembly.b[mine]]
    of_node, references = number[islands.of_node[around]], place[islands.references[places]]
    branches = np.flatnonzero(~islands.dead.dead[mine] & ~islands.circling[mine])
    all_laws = assembly.laws[mine]
    laws, a, b = all_laws[branches], all_a[branches], all_b[branches]
    used = np.zeros(count, dtype=np.bool_)
    used[a] = used[b] = True
    held = _held(of_node, references, used)
    stay = held[held >= 0]
    folded = fold(laws, a, b, assembly.values[mine[branches], 0], count, stay)
    used &= ~folded.passed
    used[stay] = False
    nodes = np.flatnonzero(used)
    placed = np.full(count, len(nodes), dtype=np.intp)
    placed[nodes] = np.arange(len(nodes))
    present = np.flatnonzero(np.bincount(of_node[nodes], minlength=len(places)))
    component = np.zeros(len(places), dtype=np.intp)
    component[present] = np.arange(len(present))
    shape = Shape(
        laws[folded.left], placed[folded.a], placed[folded.b], len(nodes), 1, component[of_node[nodes]]
    )
    return Core(
        branches, laws, nodes, present, held[present], folded, shape, [], all_a, all_b,
        _layers(islands, mine, place), all_laws == SOURCE, np.flatnonzero(islands.circling[mine]),
        references[of_node],
    )  # fmt: skip


def _layers(islands: Islands, mine: Ints, place: Ints) -> tuple[Twigs, ...]:
    """Return the twigs that hang on a scope, by its own numbers; nodes outside it have the place -1."""
    dead = islands.dead
    here = place[dead.twigs.nodes] >= 0
    nodes, branches, others = (column[here] for column in dead.twigs)
    inner = Twigs(place[nodes], np.searchsorted(mine, branches), place[others])
    return dead._replace(twigs=inner, depth=dead.depth[here]).layers


def _held(of_node: Ints, references: Ints, used: Flags) -> Ints:
    """Return a node of each island's core: its reference, any where that lies on a dead end, -1 for none."""
    last = np.full(len(references), -1, dtype=np.intp)
    nodes = np.flatnonzero(used)
    last[of_node[nodes]] = nodes
    return np.where(used[references], references, last)


def solved_core(core: Core, values: Floats, warm: Floats | None = None) -> CoreSolved:
    """Return a core solved; `values` are those of its scope's branches, one more axis for columns.

    `warm` holds likely volts of the scope's nodes; it is used where each component has one solution only.
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
    solved = _warmly(core, network, warm) if network.monotone else None
    if solved is None or not solved.converged.all():
        solved = newton_together(network)
    if not columns:
        core.rest[:] = [] if solved.rest is None else [solved.rest]
    final = np.empty((len(core.branches), *columns))
    final[left] = solved.amps
    sense = core.folded.sense if not columns else core.folded.sense[:, None]
    amps = final[core.folded.into] * sense
    return CoreSolved(amps, _nodes(core, steps, amps, solved.x), solved.residual_a, solved.converged)


def _warmly(core: Core, network: Network, warm: Floats | None) -> Together | None:
    """Return a core solved from where it last came to rest, or from likely volts of the scope's nodes."""
    if warm is None:
        return None
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
