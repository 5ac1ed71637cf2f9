"""Whatever a person wires, the drawing shows each part once and nothing on top of anything else."""

from collections import Counter
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from support.drawn import crossings, lines_through_words, outside, words_on_words

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.figures import Figures
from wiring.drawings.circuit_blocks import upper_and_lower
from wiring.drawings.circuit_build import built
from wiring.drawings.circuit_drawing import circuit_drawings
from wiring.drawings.circuit_rows import section_items
from wiring.drawings.circuit_tree import Parallel, Series, Stray, leaves
from wiring.drawings.symbols.all_symbols import SETS
from wiring.pictures.picture import Words
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.wire import Wire

KINDS = builtin_kinds()
LABELS = st.sampled_from(["", "lamp", "the lamp beside the crane on the quay", "🙂", "Öl & <b>", "W" * 30])
SOURCES = ["supply-regulated", "battery-alkaline", "supply-ac"]


@st.composite
def plans(draw):
    keys = [draw(st.sampled_from(SOURCES)), *draw(st.lists(st.sampled_from(sorted(KINDS)), max_size=11))]
    letters = Counter()
    parts = {}
    for number, key in enumerate(keys):
        kind = KINDS[key]
        letters[kind.designation] += 1
        position = draw(st.sampled_from([p.name for p in kind.positions])) if kind.positions else ""
        parts[f"p{number}"] = Part(
            id=f"p{number}",
            kind=key,
            designation=f"{kind.designation}{letters[kind.designation]}",
            x_mm=0.0,
            y_mm=0.0,
            label=draw(LABELS),
            position=position,
        )
    ends = [TerminalRef(p.id, t.name) for p in parts.values() for t in KINDS[p.kind].terminals]
    pairs = draw(st.lists(st.tuples(st.sampled_from(ends), st.sampled_from(ends)), max_size=24))
    wires = {
        f"w{n}": Wire(id=f"w{n}", label=f"W{n}", start=a, end=b, colour=draw(st.sampled_from(["BK", "RDWH"])))
        for n, (a, b) in enumerate(pairs)
        if a != b
    }
    return Plan(parts=parts, wires=wires)


def figures(plan):
    """Figures as though all were one circuit, which is the hardest to draw."""
    volts = {TerminalRef(p.id, t.name): 11.83 for p in plan.parts.values() for t in KINDS[p.kind].terminals}
    return Figures({}, {}, {}, volts, (tuple(plan.parts),), frozenset(), (), 0.0)


@settings(max_examples=50, deadline=None)
@given(plans())
def test_every_joint_of_the_drawing_is_a_net_of_the_plan(plan):
    ready = built(plan, KINDS, in_use(plan, KINDS), figures(plan), plan.parts)
    nets = ready.facts.nets.of
    shown = Counter()
    for section in ready.sections:
        pieces = [leaf for leaf in (section.source, *section.upper, *section.lower) if leaf]
        if section.node is not None:
            pieces.extend(leaves(section.node))
            check_joints(section.node)
        for leaf in pieces:
            upper, lower = upper_and_lower(ready.facts, leaf)
            assert (nets[upper], nets[lower]) == (leaf.top, leaf.bottom)
            shown[leaf.piece] += 1
    assert set(shown.values()) <= {1}
    for section in ready.sections:
        section_items(ready.facts, section, ready.dresser)
    named = {net for s in ready.sections if s.source is None for net in (s.top, s.bottom)}
    assert ready.dresser.wanted <= named  # every net that goes on elsewhere has its name in both places
    for tail in ready.facts.tails.at.items():
        assert all(nets[step.terminal] == nets[tail[0]] for step in tail[1] if step.terminal)


def check_joints(node):
    if isinstance(node, Series):
        for one, other in pairwise(node.parts):
            assert one.bottom == other.top
    if isinstance(node, (Series, Parallel)):
        for part in node.parts:
            if isinstance(node, Parallel) and not isinstance(part, Stray):
                assert (part.top, part.bottom) == (node.top, node.bottom)
            check_joints(part)


@settings(max_examples=50, deadline=None)
@given(plans(), st.sampled_from(sorted(SETS)))
def test_every_part_and_wire_once_and_nothing_over_anything(plan, symbols):
    drawings = circuit_drawings(plan, KINDS, in_use(plan, KINDS), figures(plan), symbols)
    assert Counter(p for d in drawings for p in d.parts) == Counter(list(plan.parts))
    assert Counter(w for d in drawings for w in d.wires) == Counter(list(plan.wires))
    words = " ".join(i.text for d in drawings for i in d.picture.items if isinstance(i, Words))
    for wire in plan.wires.values():
        assert wire.label in words
    assert {p.id for d in drawings for p in d.places} == {*plan.parts, *plan.wires}
    for drawing in drawings:
        assert words_on_words(drawing.picture) == []
        assert lines_through_words(drawing.picture) == []
        assert crossings(drawing.picture) == []
        assert outside(drawing.picture) == []
