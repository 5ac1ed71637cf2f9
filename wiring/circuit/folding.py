"""Branches one after the other with nothing between made one: a lamp with its wires is solved as one branch.

A node that two branches hold, one of them a resistor and the other a resistor or a junction, is passed
through: the resistor is added to the other branch. Exact, as a junction's law knows a series resistance.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.branches.resistor import LEAST_OHMS
from wiring.circuit.linear import Floats, Ints

RESISTOR, JUNCTION = LAW_NUMBER["resistor"], LAW_NUMBER["junction"]
MOST_ROUNDS = 40
MOST_OHMS = 1e6


class Fold(NamedTuple):
    """Nodes passed through in one round: the resistor that goes, the branch that takes it, the far node."""

    nodes: Ints
    gone: Ints
    into: Ints
    far: Ints  # the resistor's other end
    same: (
        Floats  # 1 where current through `into` counted from its a to its b leaves `far` for `nodes`, else -1
    )


class Folded(NamedTuple):
    """A network with its passed nodes taken out."""

    left: Ints  # branches that are left, those of one law in a row
    a: Ints  # of those
    b: Ints
    folds: tuple[Fold, ...]
    into: Ints  # per branch: the branch it is part of at the end, itself if it is left
    sense: Floats  # per branch: 1 where its current counts as that branch's, -1 where the other way
    passed: NDArray[np.bool_]  # per node


def fold(laws: Ints, a: Ints, b: Ints, ohms: Floats, count: int, stay: Ints) -> Folded:
    """Return a network of `count` nodes folded; nodes in `stay` are never passed through.

    `ohms` of resistors: those from MOST_OHMS on stay by themselves, as a junction leaks as much as they pass.
    """
    a, b = a.copy(), b.copy()
    sense, passed = np.ones(len(a)), np.zeros(count, dtype=np.bool_)
    into = np.arange(len(a))
    left = np.ones(len(a), dtype=np.bool_)
    plain = (laws == RESISTOR) & (ohms < MOST_OHMS)
    fit = plain | (laws == JUNCTION)
    candidates, first, second = _between_two(a, b, count, stay)
    one, other = first[candidates], second[candidates]
    candidates = candidates[fit[one] & fit[other] & (plain[one] | plain[other])]
    folds: list[Fold] = []
    for _ in range(MOST_ROUNDS):
        nodes = _apart(candidates, first, second, a, b, count)
        if not len(nodes):
            break
        one, other = first[nodes], second[nodes]
        goes_first = plain[one]
        gone, kept = np.where(goes_first, one, other), np.where(goes_first, other, one)
        far = a[gone] + b[gone] - nodes
        forward = b[kept] != nodes  # the kept branch begins at the node
        same = np.where(forward, 1.0, -1.0)
        alike = np.where(forward, b[gone] == nodes, a[gone] == nodes)
        folds.append(Fold(nodes, gone, kept, far, same))
        sense[gone] = np.where(alike, 1.0, -1.0)
        into[gone], left[gone], passed[nodes] = kept, False, True
        a[kept] = np.where(forward, far, a[kept])
        b[kept] = np.where(forward, b[kept], far)
        at_first = first[far] == gone
        at_second = ~at_first & (second[far] == gone)
        first[far[at_first]] = kept[at_first]
        second[far[at_second]] = kept[at_second]
        candidates = candidates[~passed[candidates]]
        one, other = first[candidates], second[candidates]
        candidates = candidates[(one != other) & (plain[one] | plain[other])]
    for step in reversed(folds):
        sense[step.gone] *= sense[step.into]
        into[step.gone] = into[step.into]
    kept_branches = np.flatnonzero(left)
    kept_branches = kept_branches[np.argsort(laws[kept_branches], kind="stable")]
    return Folded(kept_branches, a[kept_branches], b[kept_branches], tuple(folds), into, sense, passed)


def _between_two(a: Ints, b: Ints, count: int, stay: Ints) -> tuple[Ints, Ints, Ints]:
    """Return the nodes between two branches that may be passed, and of every node a branch and another.

    The other one is right for nodes between two only: it is the sum of their numbers without the first.
    """
    fixed = np.zeros(count, dtype=np.bool_)
    fixed[stay] = True
    numbers = np.arange(len(a))
    degree = np.bincount(a, minlength=count) + np.bincount(b, minlength=count)
    sums = np.bincount(a, numbers, count) + np.bincount(b, numbers, count)
    first = np.zeros(count, dtype=np.intp)
    first[a], first[b] = numbers, numbers
    return np.flatnonzero((degree == 2) & ~fixed), first, sums.astype(np.intp) - first


def _apart(candidates: Ints, first: Ints, second: Ints, a: Ints, b: Ints, count: int) -> Ints:
    """Return some of the candidates, no two of which share a branch; of two, that of lower score."""
    if not len(candidates):
        return candidates
    score = np.full(count, np.inf)
    score[candidates] = (candidates * 0.6180339887498949) % 1.0
    one, other = first[candidates], second[candidates]
    near = a[one] + b[one] - candidates, a[other] + b[other] - candidates
    mine = score[candidates]
    return np.asarray(candidates[(mine < score[near[0]]) & (mine < score[near[1]])])


def folded_ohms(folded: Folded, laws: Ints, values: Floats) -> tuple[Floats, tuple[Floats, ...]]:
    """Return for each branch the ohms that come to lie in it (a resistor's own included), and each fold's."""
    first = values[:, 0]
    plain = laws == RESISTOR
    ohms = np.where(plain if first.ndim == 1 else plain[:, None], np.maximum(first, LEAST_OHMS), 0.0)
    steps = []
    for step in folded.folds:
        going = ohms[step.gone]
        steps.append(going)
        ohms[step.into] += going
    return ohms, tuple(steps)


def unfold(folded: Folded, steps: tuple[Floats, ...], amps: Floats, nodes: Floats) -> None:
    """Give the passed nodes their volts; `amps` is every branch's current, the folded ones' as they were."""
    for step, ohms in zip(reversed(folded.folds), reversed(steps), strict=True):
        same = step.same if amps.ndim == 1 else step.same[:, None]
        along = amps[step.into] * same
        nodes[step.nodes] = nodes[step.far] - along * ohms
