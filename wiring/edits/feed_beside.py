"""Several fuses or switches in one feed: side by side, each from the supply and with its own loads behind."""

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.feed_colours import Colours, striped
from wiring.edits.feed_ends import Sorted
from wiring.edits.feed_gates import Outlet, Poles, behind, is_passed, uses_both
from wiring.edits.feed_tiers import Stem, way_out
from wiring.edits.laying import Laying
from wiring.edits.load_ends import gate_ends, second_ends
from wiring.edits.poles import Pole, poles
from wiring.edits.run_order import run_order
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan

Lay = Callable[[Laying, Outlet, Sequence[TerminalRef]], None]
Known = Mapping[TerminalRef, Pole]


class Branch(NamedTuple):
    """The two ways out behind one fuse or switch, or those of all."""

    plus: Outlet
    minus: Outlet


def beside_each_other(gates: Sequence[Part], kinds: Mapping[str, Kind], known: Known) -> tuple[Part, ...]:
    """Return the switches that no supply reaches yet, where there are several; none for a lone one."""
    fresh = tuple(g for g in gates if kinds[g.kind].behaviour == "switch" and not is_passed(g, kinds, known))
    return fresh if len(fresh) > 1 else ()


def switches_alone(plan: Plan, kinds: Mapping[str, Kind], found: Sorted) -> bool:
    """Whether several switches are to be fed although nothing is selected that hangs behind them."""
    return len(beside_each_other(found.gates, kinds, poles(plan, kinds))) > 1


def branches(
    laying: Laying,
    stems: Sequence[Stem],
    root: Branch,
    colours: Colours,
    known: Known,
    wanted: Poles,
    lay: Lay,
) -> tuple[Branch, ...]:
    """Feed all fuses and switches; return the ways out, in the order of `wiring.edits.feed_tiers.slots`."""
    firsts = [_first(laying, stem, root, colours, known) for stem in stems]
    lay(laying, root.plus, [gate_in(laying, stem) for stem in _in_order(laying, stems, root)])
    made: list[Branch] = []
    for stem, first in zip(stems, firsts, strict=True):
        made += _behind_switches(laying, stem.switches, first, colours, wanted, lay) or (first,)
    return tuple(made)


def gate_in(laying: Laying, stem: Stem) -> TerminalRef:
    """Return where current comes into the fuse of a stem."""
    assert stem.gate is not None
    ends = gate_ends(stem.gate, laying.kinds[stem.gate.kind])
    assert ends is not None
    return ends[0]


def block_behind(laying: Laying, out: TerminalRef) -> tuple[TerminalRef, ...]:
    """Return the terminals of a distribution block that is wired to a way out; none where there is none."""
    for wire in laying.plan.wires.values():
        if out in (wire.start, wire.end):
            other = wire.end if wire.start == out else wire.start
            kind = laying.kinds.get(laying.plan.parts[other.part].kind)
            if kind is not None and kind.behaviour == "bus":
                return tuple(TerminalRef(other.part, t.name) for t in kind.terminals)
    return ()


def _in_order(laying: Laying, stems: Sequence[Stem], root: Branch) -> list[Stem]:
    """Return the stems whose fuse is new, in the order in which a run passes them."""
    fresh = [(stem, stem.gate) for stem in stems if stem.gate is not None and not stem.is_fed]
    order = run_order([(gate.x_mm, gate.y_mm) for _, gate in fresh], laying.at(root.plus.refs[0]))
    return [fresh[i][0] for i in order]


def _first(laying: Laying, stem: Stem, root: Branch, colours: Colours, known: Known) -> Branch:
    """Return what leads on behind the fuse of a stem, or behind a gate that is fed already."""
    gate = stem.gate
    if gate is None:
        return root
    kind, minus = laying.kinds[gate.kind], root.minus
    if stem.is_fed:
        out = way_out(gate, laying.kinds, known)
        returned = [r for r in second_ends(gate, kind) or () if r in known and not known[r].is_plus]
        if returned:
            last = max(returned, key=lambda r: known[r].steps)
            minus = Outlet((last,), colours.of(known[last]))
    else:
        ends = gate_ends(gate, kind)
        out = ends[1] if ends is not None else None
    assert out is not None
    refs = block_behind(laying, out)
    laid = next((w.colour for w in laying.plan.wires.values() if out in (w.start, w.end)), "")
    return Branch(Outlet(refs or (out,), laid or behind(kind, root.plus.colour, colours)), minus)


def _behind_switches(
    laying: Laying, switches: Sequence[Part], root: Branch, colours: Colours, wanted: Poles, lay: Lay
) -> list[Branch]:
    """Feed switches side by side from a root; return what leads on behind each."""
    order = run_order([(s.x_mm, s.y_mm) for s in switches], laying.at(root.plus.refs[0]))
    ins: tuple[list[TerminalRef], list[TerminalRef]] = [], []
    found: dict[int, Branch] = {}
    for i in order:
        switch = switches[i]
        kind = laying.kinds[switch.kind]
        first, second = gate_ends(switch, kind), second_ends(switch, kind)
        assert first is not None
        ins[0].append(first[0])
        plus, minus = Outlet((first[1],), behind(kind, root.plus.colour, colours)), root.minus
        if second is not None and uses_both(switch, kind, wanted):
            ins[1].append(second[0])
            minus = Outlet((second[1],), striped(root.minus.colour))
        found[i] = Branch(plus, minus)
    lay(laying, root.plus, ins[0])
    lay(laying, root.minus, ins[1])
    return [found[i] for i in sorted(found)]
