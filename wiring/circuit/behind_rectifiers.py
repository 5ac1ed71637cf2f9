"""The volts of nodes behind a rectifier, against its minus: what a meter shows there, not against an AC leg.

Behind a rectifier lies what hangs together with its plus and minus without a diode between and without an
alternating source. Where several rectifiers feed one such part, the first one's minus counts.
"""

import numpy as np

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.islands import Island
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.sets import joined

JUNCTION = LAW_NUMBER["junction"]
DIODES = frozenset({"diode", "rectifier"})


def direct_volts(assembly: Assembly, island: Island, nodes: Floats) -> Floats:
    """Return for each node of an island its mean volts against its rectifier's minus; NaN where none has one.

    `nodes` are the island's nodes over a cycle, a row a phase.
    """
    found = np.full(nodes.shape[1], np.nan)
    minus = _minus(assembly, island)
    behind = np.flatnonzero(minus >= 0)
    if len(behind):
        found[behind] = (nodes[:, behind] - nodes[:, minus[behind]]).mean(axis=0)
    return found


def _minus(assembly: Assembly, island: Island) -> Ints:
    """Return for each node of an island the place of its rectifier's minus among them; -1 for none."""
    place = np.full(assembly.node_count, -1, dtype=np.intp)
    place[island.nodes] = np.arange(len(island.nodes))
    minus = np.full(len(island.nodes), -1, dtype=np.intp)
    ends = _ends(assembly, place)
    if not ends:
        return minus
    mine = island.branches
    plain = np.array([not _is_diode(assembly, branch) for branch in mine.tolist()], dtype=np.bool_)
    a, b = place[assembly.a[mine[plain]]], place[assembly.b[mine[plain]]]
    pairs = np.concatenate((np.stack((a, b), axis=1), np.array(ends, dtype=np.intp)))
    part_of = joined(pairs, len(island.nodes))
    swings = mine[assembly.alternating[mine]]
    fed = set(part_of[place[assembly.a[swings]]].tolist()) | set(part_of[place[assembly.b[swings]]].tolist())
    for _plus, end in reversed(ends):
        if part_of[end] not in fed:
            minus[part_of == part_of[end]] = end
    return minus


def _ends(assembly: Assembly, place: Ints) -> list[tuple[int, int]]:
    """Return plus and minus of each rectifier that lies in the island, by their places there."""
    found = []
    for part, compiled in assembly.parts.items():
        if compiled.kind.behaviour != "rectifier":
            continue
        number = {t.name: n for n, t in enumerate(compiled.kind.terminals)}
        begin = assembly.first_terminal[part]
        plus, minus = (int(place[assembly.node_of[begin + number[end]]]) for end in "+-")
        if plus >= 0 and minus >= 0:
            found.append((plus, minus))
    return found


def _is_diode(assembly: Assembly, branch: int) -> bool:
    if assembly.laws[branch] != JUNCTION:
        return False
    return assembly.parts[assembly.owners[branch]].kind.behaviour in DIODES
