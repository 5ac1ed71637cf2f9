"""Random hands on the inspector: no press, list, typing, choice or undo, in any order, leaves it wrong."""

import pytest
from support.inspector_monkey import Monkey, plans


@pytest.mark.parametrize("seed", [1, 2])
def test_random_hands_leave_the_inspector_right(editor, seed):
    plans(editor, 3 * seed)
    monkey = Monkey(editor, seed)
    for _ in range(60):
        monkey.act()
    monkey.come_to_rest()
    assert len(monkey.done) > 12
