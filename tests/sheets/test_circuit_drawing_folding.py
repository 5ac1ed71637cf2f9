"""The tree a circuit is folded into says the same as the pieces it was made from."""

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.drawings.circuit_pieces import Piece
from wiring.drawings.circuit_reduce import folded
from wiring.drawings.circuit_tree import End, Leaf, Parallel, Series, leaves

PLUS, MINUS = 0, 1
EDGES = st.lists(st.tuples(st.integers(0, 7), st.integers(0, 7)), min_size=1, max_size=16)


def pieces(pairs):
    return [Leaf(Piece(f"p{n}", "1", "2", "resistor"), a, b, n) for n, (a, b) in enumerate(pairs)]


def check(node):
    """Every junction of the tree is one net, and a path that ends does so only at its edge."""
    if isinstance(node, Series):
        assert node.top == node.parts[0].top
        assert node.bottom == node.parts[-1].bottom
        for one, other in zip(node.parts, node.parts[1:], strict=False):
            assert one.bottom == other.top
        assert not any(isinstance(part, End) for part in node.parts[1:-1])
    if isinstance(node, Parallel):
        assert len(node.parts) > 1
        for part in node.parts:
            assert (part.top, part.bottom) == (node.top, node.bottom)
    if isinstance(node, (Series, Parallel)):
        for part in node.parts:
            check(part)


@settings(max_examples=150, deadline=None)
@given(EDGES)
def test_every_piece_is_folded_once_between_its_own_nets(pairs):
    made = pieces(pairs)
    tree, aside = folded(made, PLUS, MINUS)
    nodes = [*([tree] if tree else []), *aside]
    found = [leaf for node in nodes for leaf in leaves(node)]
    assert Counter(leaf.piece.part for leaf in found) == Counter(leaf.piece.part for leaf in made)
    for leaf in found:
        a, b = pairs[leaf.order]
        assert {leaf.top, leaf.bottom} == {a, b}
    for node in nodes:
        check(node)
    if tree:
        assert {tree.top, tree.bottom} == {PLUS, MINUS}


@given(st.integers(1, 30))
def test_lamps_side_by_side_stay_in_plan_order(count):
    tree, aside = folded(pieces([(PLUS, MINUS)] * count), PLUS, MINUS)
    assert aside == ()
    assert [leaf.order for leaf in leaves(tree)] == list(range(count))


def test_a_fuse_a_switch_and_two_groups_fold_into_a_feeder_tree():
    # fuse 0-2; two switches 2-3 and 2-4, each with its own lamps to minus
    tree, aside = folded(pieces([(0, 2), (2, 3), (2, 4), (3, 1), (3, 1), (4, 1), (4, 1)]), PLUS, MINUS)
    assert aside == ()
    assert isinstance(tree, Series)
    assert isinstance(tree.parts[0], Leaf)
    assert isinstance(tree.parts[1], Parallel)
    assert [[leaf.order for leaf in leaves(part)] for part in tree.parts[1].parts] == [[1, 3, 4], [2, 5, 6]]


def test_a_bridge_is_taken_out_and_only_that():
    # the Wheatstone bridge, the textbook example of a network that is not series-parallel
    tree, aside = folded(pieces([(0, 2), (0, 3), (2, 1), (3, 1), (2, 3)]), PLUS, MINUS)
    assert len(list(leaves(tree))) == 4
    assert [leaf.order for node in aside for leaf in leaves(node)] == [4]


def test_a_piece_with_both_ends_on_one_net_is_set_aside():
    tree, aside = folded(pieces([(0, 1), (0, 0)]), PLUS, MINUS)
    assert [leaf.order for leaf in leaves(tree)] == [0]
    assert [leaf.order for node in aside for leaf in leaves(node)] == [1]


@pytest.mark.parametrize(("pairs", "ends_first"), [([(0, 2)], False), ([(2, 1)], True)])
def test_a_path_that_leads_nowhere_ends_open(pairs, ends_first):
    tree, _ = folded(pieces(pairs), PLUS, MINUS)
    assert isinstance(tree.parts[0], End) is ends_first
    assert isinstance(tree.parts[-1], End) is not ends_first


def test_a_long_chain_folds_quickly():
    chain = [(0, 2), *((n, n + 1) for n in range(2, 400)), (400, 1)]
    tree, aside = folded(pieces(chain), PLUS, MINUS)
    assert len(list(leaves(tree))) == 400
    assert aside == ()
