"""Several switches in one feed: side by side, each from the supply and with its own loads behind."""

import math
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.feed_colours import Colours, striped
from wiring.edits.feed_ends import Sorted
from wiring.edits.feed_gates import Outlet, Poles, behind, is_passed, uses_both
from wiring.edits.laying import Laying
from wiring.edits.load_ends import gate_ends, second_ends
from wiring.edits.poles import Pole, poles
from wiring.edits.run_order import run_order
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

Lay = Callable[[Laying, Outlet, Sequence[TerminalRef]], None]


class Branch(NamedTuple):
    """The two ways out behind one switch, and where it stands; without a place the ways out of all."""

    plus: Outlet
    minus: Outlet
    at: Point | None = None


def beside_each_other(
    gates: Sequence[Part], kinds: Mapping[str, Kind], known: Mapping[TerminalRef, Pole]
) -> tuple[Part, ...]:
    """Return the switches that no supply reaches yet, where there are several; none for a lone one."""
    fresh = tuple(g for g in gates if kinds[g.kind].behaviour == "switch" and not is_passed(g, kinds, known))
    return fresh if len(fresh) > 1 else ()


def switches_alone(plan: Plan, kinds: Mapping[str, Kind], found: Sorted) -> bool:
    """Whether several switches are to be fed although nothing is selected that hangs behind them."""
    return len(beside_each_other(found.gates, kinds, poles(plan, kinds))) > 1


def branches(
    laying: Laying, switches: Sequence[Part], root: Branch, colours: Colours, wanted: Poles, lay: Lay
) -> tuple[Branch, ...]:
    """Feed all switches from the root; return what leads on behind each, or the root itself."""
    if not switches:
        return (root,)
    order = run_order([(s.x_mm, s.y_mm) for s in switches], laying.at(root.plus.refs[0]))
    ins: tuple[list[TerminalRef], list[TerminalRef]] = [], []
    found = []
    for switch in (switches[i] for i in order):
        kind = laying.kinds[switch.kind]
        first, second = gate_ends(switch, kind), second_ends(switch, kind)
        assert first is not None
        ins[0].append(first[0])
        plus, minus = Outlet((first[1],), behind(kind, root.plus.colour, colours)), root.minus
        if second is not None and uses_both(switch, kind, wanted):
            ins[1].append(second[0])
            minus = Outlet((second[1],), striped(root.minus.colour))
        found.append(Branch(plus, minus, (switch.x_mm, switch.y_mm)))
    lay(laying, root.plus, ins[0])
    lay(laying, root.minus, ins[1])
    return tuple(found)


def nearest_branch(found: Sequence[Branch], at: Point) -> Branch:
    """Return the way out whose switch stands nearest to a place."""
    return min(found, key=lambda b: round(math.dist(b.at, at), 3) if b.at is not None else 0.0)
