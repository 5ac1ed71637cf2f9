"""What an edit of the wiring leaves as it was: islands it has not reached keep what is known of them."""

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.all_islands import swung_known
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.cold_lamps import ColdLamps, cold_lamps, cold_question
from wiring.circuit.cores import PLAN, cores_known
from wiring.circuit.dead_ends import DeadEnds, Twigs, dead_ends, hung
from wiring.circuit.direct import Known, last_known
from wiring.circuit.islands import Islands, dead_ends_question, find_islands, islands_question
from wiring.circuit.linear import Ints
from wiring.circuit.links import conductors_question, hanging_question
from wiring.circuit.sets import joined
from wiring.circuit.splicing import Spliced

Flags = NDArray[np.bool_]


def carry_over(old: Assembly, new: Spliced) -> None:
    """Give spliced arrays what is known of the old ones, as far as it holds for them."""
    label = old.kept.known(hanging_question(old), np.ndarray)
    islands = old.kept.known(islands_question(old), Islands)
    if label is None or islands is None:
        return
    assembly, kept = new.assembly, new.assembly.kept
    reached = _reached(label, new)
    hang = _joined_anew(label, new, reached, np.ones(len(assembly.a), dtype=np.bool_))
    kept.of(hanging_question(assembly), lambda: hang)
    conducts = old.kept.known(conductors_question(old), np.ndarray)
    if conducts is not None:
        conductor = _joined_anew(conducts, new, reached, assembly.conducting)
        kept.of(conductors_question(assembly), lambda: conductor)
    dead = _dead_ends(islands.dead, new, reached)
    kept.of(dead_ends_question(assembly), lambda: dead)
    found = find_islands(assembly)
    places = _places(islands, found, new, reached)
    _carry_direct(old, islands, new, found, places, reached)
    cold = old.kept.known(cold_question(old, islands), ColdLamps)
    if cold is not None:
        laws, still = cold_lamps(assembly, found)
        cold_now = new._replace(assembly=assembly._replace(laws=laws))
        _carry_direct(old._replace(laws=cold.laws), cold.islands, cold_now, still, places, reached)
    for place in np.flatnonzero(found.alternating & (places >= 0)).tolist():
        swung_known(assembly, found, place)[:] = swung_known(old, islands, int(places[place]))


def _reached(label: Ints, new: Spliced) -> Flags:
    """Return which nodes hang together with anything that has changed, or did."""
    was = new.nodes.filled(label, -1)
    stirred = np.zeros(int(label.max(initial=-1)) + 2, dtype=np.bool_)
    stirred[was[new.touched]] = True
    stirred[-1] = True  # the label of what is new
    return np.asarray(stirred[was])


def _joined_anew(label: Ints, new: Spliced, reached: Flags, joining: Flags) -> Ints:
    """Return the sets of nodes that some branches join, found anew for what the change has reached."""
    a, b = new.assembly.a, new.assembly.b
    now = new.nodes.filled(label, -1)
    nodes = np.flatnonzero(reached)
    place = np.full(len(now), -1, dtype=np.intp)
    place[nodes] = np.arange(len(nodes))
    mine = np.flatnonzero(reached[a] & joining)
    pairs = np.stack((place[a[mine]], place[b[mine]]), axis=1)
    now[nodes] = joined(pairs, len(nodes)) + int(label.max(initial=-1)) + 1
    used = np.zeros(int(now.max(initial=-1)) + 1, dtype=np.bool_)
    used[now] = True
    return np.asarray((np.cumsum(used) - 1)[now])


def _dead_ends(old: DeadEnds, new: Spliced, reached: Flags) -> DeadEnds:
    """Return the dead ends, looked for only in what the change has reached."""
    a, b = new.assembly.a, new.assembly.b
    node, branch = new.nodes.places(), new.branches.places()
    nodes = node[old.twigs.nodes]
    stay = nodes >= 0
    stay[stay] = ~reached[nodes[stay]]  # of a plan that has lost its last part there is nothing to ask
    kept = Twigs(nodes[stay], branch[old.twigs.branches[stay]], node[old.twigs.others[stay]])
    around, mine = np.flatnonzero(reached), np.flatnonzero(reached[a])
    place = np.full(len(reached), -1, dtype=np.intp)
    place[around] = np.arange(len(around))
    found = dead_ends(place[a[mine]], place[b[mine]], len(around))
    fresh = Twigs(around[found.twigs.nodes], mine[found.twigs.branches], around[found.twigs.others])
    together = Twigs(*(np.concatenate(both) for both in zip(kept, fresh, strict=True)))
    return hung(together, np.concatenate((old.depth[stay], found.depth)), len(a))


def _places(old: Islands, found: Islands, new: Spliced, reached: Flags) -> Ints:
    """Return the old place of each island that is as it was; -1 for others."""
    was = new.nodes.filled(old.of_node, -1)
    return np.asarray(np.where(reached[found.references], -1, was[found.references]))


def _carry_direct(
    old: Assembly, islands: Islands, new: Spliced, found: Islands, places: Ints, reached: Flags
) -> None:
    """Carry over the cores and the last readings of islands on direct current."""
    was, now = cores_known(old, islands), cores_known(new.assembly, found)
    for place, before in enumerate(places.tolist()):
        if before > PLAN and before in was:
            now[place] = was[before]
    last = last_known(old, islands)
    if not last:
        return
    same, residual_a = places >= 0, np.zeros(len(places))
    residual_a[same] = last[0].residual_a[places[same]]
    settled = np.zeros(len(places), dtype=np.bool_)
    settled[same] = last[0].settled[places[same]]
    nodes = new.nodes.filled(last[0].nodes, np.nan)
    nodes[reached] = np.nan
    columns = tuple(new.branches.filled(column, 0.0) for column in last[0].columns)
    values = new.branches.filled(last[0].values, np.nan)
    last_known(new.assembly, found)[:] = [Known(values, columns, nodes, residual_a, settled)]
