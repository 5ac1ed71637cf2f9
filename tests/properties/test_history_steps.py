"""The history alone: any mix of steps, undo and redo is a list with a pointer into it."""

from hypothesis import given
from hypothesis import strategies as st

from wiring.edits.history import Step, amended, begun, recorded, redone, undone
from wiring.plan.plan import Plan

ACTS = st.lists(st.sampled_from(["record", "amend", "undo", "redo"]), max_size=40)


@given(ACTS)
def test_history_behaves_like_a_list_with_a_pointer(acts):
    start = Plan()
    history, at = begun(start), 0
    line = [history.now]
    for number, act in enumerate(acts):
        step = Step(f"step {number}", Plan(title=str(number)))
        if act == "record":
            history, line, at = recorded(history, step), [*line[: at + 1], step], at + 1
        elif act == "amend":
            history, line = amended(history, step), [*line[:at], step]
        elif act == "undo":
            history, at = undone(history), max(at - 1, 0)
        else:
            history, at = redone(history), min(at + 1, len(line) - 1)
        assert history.now is line[at]
        assert history.undo_label == (line[at].label if at else None)
        assert history.redo_label == (line[at + 1].label if at + 1 < len(line) else None)


def test_nothing_to_undo_gives_the_same_history():
    history = begun(Plan())
    assert undone(history) is history and redone(history) is history
