"""Where the two conductors of a feed begin: wired from the supply over fuse, switch and blocks if need be."""

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.edits.edit import EditRefused
from wiring.edits.feed_beside import block_behind
from wiring.edits.feed_colours import Colours, feed_colours
from wiring.edits.feed_ends import Sorted
from wiring.edits.feed_gates import Outlet, Poles, take, through_gates
from wiring.edits.feed_tiers import Far, Stem, tiers, way_out
from wiring.edits.laying import Laying
from wiring.edits.lead_over import Joint, free_joints
from wiring.edits.poles import Pole, poles, source_ends
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part

NOTHING_FEEDS = (
    "Select what is to feed them as well: a supply or battery, a distribution block, or a switch that is fed."
)


class Roots(NamedTuple):
    """Both poles, the supply behind them, and the fuses and switches that stand side by side after them."""

    plus: Outlet
    minus: Outlet
    source: PartId
    colours: Colours
    stems: tuple[Stem, ...] = (Stem(None, is_fed=True),)


def roots(
    laying: Laying, found: Sorted, wanted: Poles = 0, *, in_series: bool = False, far: Far = math.dist
) -> Roots:
    """Return where to feed from; lays what is missing between the selected supply and the way out.

    Several fuses are left to stand side by side, and several switches too, unless `in_series` leads one
    behind the other.

    EditRefused when nothing selected leads to a supply, or more than one does.
    """
    known = poles(laying.plan, laying.kinds)
    source = _source(laying, found, known)
    kind = laying.kinds[laying.plan.parts[source].kind]
    ends = source_ends(kind)
    assert ends is not None
    colours = feed_colours(laying.plan, laying.kinds, source)
    plus = Outlet((TerminalRef(source, ends[0]),), colours.plus)
    minus = Outlet((TerminalRef(source, ends[1]),), colours.minus)
    others = len(found.own_fuses)
    row, stems = tiers(
        laying.plan, laying.kinds, found.gates, known, in_series=in_series, far=far, others=others
    )
    plus, minus = through_gates(laying, row, known, (plus, minus), colours, wanted)
    blocks = [b for b in found.blocks if b.id not in _behind_stems(laying, stems, known)]
    plus, minus = _to_blocks(laying, blocks, known, plus, minus)
    plus, minus = _at_taps(laying, found.taps, known, plus, minus)
    return Roots(plus, minus, source, colours, stems)


def _behind_stems(laying: Laying, stems: Sequence[Stem], known: Mapping[TerminalRef, Pole]) -> set[PartId]:
    """Return the blocks on which fuses and switches that stand side by side lead on."""
    gates = [stem.gate for stem in stems if stem.gate is not None and stem.is_fed]
    outs = [way_out(gate, laying.kinds, known) for gate in gates]
    return {ref.part for out in outs if out is not None for ref in block_behind(laying, out)}


def _source(laying: Laying, found: Sorted, known: Mapping[TerminalRef, Pole]) -> PartId:
    plan = laying.plan
    feeders = (*found.gates, *found.blocks, *found.taps)
    reached = {known[r].source for p in feeders for r in _refs(laying, p) if r in known}
    behind = {p.id for p in found.sources} or reached
    if not behind:
        every = [p.id for p in plan.parts.values() if p.kind in laying.kinds and _feeds(laying, p)]
        if len(every) != 1:
            raise EditRefused(NOTHING_FEEDS)
        behind = set(every)
    if len(behind) > 1:
        names = " and ".join(sorted(f"-{plan.parts[i].designation}" for i in behind)[:2])
        raise EditRefused(f"{names} would both feed these; leave one of them out.")
    return behind.pop()


def _feeds(laying: Laying, part: Part) -> bool:
    return source_ends(laying.kinds[part.kind]) is not None


def _refs(laying: Laying, part: Part) -> list[TerminalRef]:
    return [TerminalRef(part.id, t.name) for t in laying.kinds[part.kind].terminals]


def _to_blocks(
    laying: Laying, blocks: Sequence[Part], known: Mapping[TerminalRef, Pole], plus: Outlet, minus: Outlet
) -> tuple[Outlet, Outlet]:
    """Make distribution blocks the ways out: of the pole they are joined to, else plus first, then minus."""
    side: dict[bool, Part] = {}
    loose = []
    for block in blocks:
        pole = next((known[r] for r in _refs(laying, block) if r in known), None)
        if pole is None:
            loose.append(block)
        elif side.setdefault(pole.is_plus, block) is not block:
            raise EditRefused(
                f"Both -{side[pole.is_plus].designation} and -{block.designation} are of one pole."
            )
    for block in loose:
        pole_free = next((is_plus for is_plus in (True, False) if is_plus not in side), None)
        if pole_free is None:
            raise EditRefused(f"-{block.designation} is one block too many; two blocks feed both poles.")
        side[pole_free] = block
        outlet = plus if pole_free else minus
        near = laying.at(outlet.refs[0])
        first = take(laying, Outlet(tuple(_refs(laying, block)), ""), near)
        laying.wire(take(laying, outlet, laying.at(first)), first, outlet.colour)
    outlets = {True: plus, False: minus}
    for is_plus, block in side.items():
        outlets[is_plus] = Outlet(tuple(_refs(laying, block)), _colour_at(laying, block, outlets[is_plus]))
    return outlets[True], outlets[False]


def _colour_at(laying: Laying, block: Part, outlet: Outlet) -> str:
    """Return the colour of the wires a block has already: one net, one colour."""
    wires = (*laying.plan.wires.values(), *laying.wires)
    return next((w.colour for w in wires if block.id in (w.start.part, w.end.part)), outlet.colour)


def _at_taps(
    laying: Laying, taps: Sequence[Part], known: Mapping[TerminalRef, Pole], plus: Outlet, minus: Outlet
) -> tuple[Outlet, Outlet]:
    """Let strips and plugs that are fed be the ways out, at their ends farthest from the supply.

    Those without any wire yet are put in between, nearest first.
    """
    refs = [r for tap in taps for r in _refs(laying, tap) if r in known]
    for is_plus, outlet in ((True, plus), (False, minus)):
        own = [r for r in refs if known[r].is_plus == is_plus]
        if own:
            farthest = max(own, key=lambda r: (known[r].steps, -laying.count[r]))
            made = Outlet((farthest,), outlet.colour)
            plus, minus = (made, minus) if is_plus else (plus, made)
    fed = {r.part for r in refs}
    for tap in sorted(taps, key=lambda t: math.dist((t.x_mm, t.y_mm), laying.at(plus.refs[0]))):
        if any(laying.count[r] for r in _refs(laying, tap)) and tap.id not in fed:
            raise EditRefused(f"-{tap.designation} is joined to no supply yet; wire it first.")
        if tap.id not in fed:
            joints = free_joints(laying.plan, laying.kinds, tap.id)
            if len(joints) < 2:
                raise EditRefused(f"-{tap.designation} has one joint only, and a feed needs two.")
            plus, minus = (
                _over_joint(laying, tap, j, o) for j, o in zip(joints, (plus, minus), strict=False)
            )
    return plus, minus


def _over_joint(laying: Laying, tap: Part, joint: Joint, outlet: Outlet) -> Outlet:
    """Lead one pole over a joint of a strip or plug, in at the side that faces it."""
    start = laying.at(outlet.refs[0])
    near, far = sorted(
        (TerminalRef(tap.id, name) for name in joint), key=lambda r: round(math.dist(laying.at(r), start), 3)
    )
    laying.wire(take(laying, outlet, laying.at(near)), near, outlet.colour)
    return Outlet((far,), outlet.colour)
