"""Random edits, undone and redone: never an unsound plan, and undo is the very same object."""

from random import Random

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from support.editing import KINDS, furnished_quay, quay
from support.random_edits import DRAWS, Hand, edits_there_are

from wiring.edits.edit import EditRefused
from wiring.edits.history import Step, begun, recorded, redone, undone
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.plan.changes import changes_between
from wiring.plan.soundness import unsound

TABLES = ("parts", "wires", "scenes", "panels")
TRIES = 400


class Editing(RuleBasedStateMachine):
    @initialize(start=st.sampled_from([quay(), furnished_quay()]))
    def begin(self, start):
        self.start = start
        self.history = begun(self.start)
        self.mirror = {name: dict(getattr(self.start, name)) for name in TABLES}

    @property
    def plan(self):
        return self.history.now.plan

    @rule(name=st.sampled_from(sorted(DRAWS)), dice=st.randoms(use_true_random=False))
    def edit(self, name, dice):
        old = self.plan
        edit = DRAWS[name](Hand(old, dice))
        try:
            new = edit.apply(old)
        except EditRefused as refusal:
            assert str(refusal).endswith(".") and "\n" not in str(refusal)
            return
        if new is old:
            return
        assert new != old, f"{name} made another plan out of the same values"
        assert edit.label and edit.label[0].isupper(), name
        self.follow(old, new)
        ancestors = [step.plan for step in (*self.history.past, self.history.now)]
        for table in TABLES:
            fresh = getattr(new, table).keys() - getattr(old, table).keys()
            assert not any(fresh & getattr(before, table).keys() for before in ancestors), "an id came back"
        self.history = recorded(self.history, Step(edit.label, new))

    def follow(self, old, new):
        changes = changes_between(old, new)
        for name in TABLES:
            changed, table = getattr(changes, name), getattr(new, name)
            for gone in changed.removed:
                del self.mirror[name][gone]
            for key in changed.added | changed.altered:
                self.mirror[name][key] = table[key]
            for key in changed.altered:
                assert getattr(old, name)[key] != table[key], "an equal record was made anew"

    @rule(back=st.integers(1, 4))
    def go_back(self, back):
        for _ in range(back):
            old = self.plan
            self.history = undone(self.history)
            self.follow(old, self.plan)

    @rule()
    def go_forward(self):
        old = self.plan
        self.history = redone(self.history)
        self.follow(old, self.plan)

    @invariant()
    def plan_is_sound(self):
        assert unsound(self.plan, KINDS) == ()

    @invariant()
    def what_the_changes_told_is_the_plan(self):
        for name in TABLES:
            assert self.mirror[name] == dict(getattr(self.plan, name))

    def teardown(self):
        while self.history.future:
            self.history = redone(self.history)
        end = self.plan
        assert decode(encode(end)) == end
        while self.history.past:
            self.history = undone(self.history)
        assert self.plan is self.start
        while self.history.future:
            self.history = redone(self.history)
        assert self.plan is end


TestEditing = pytest.mark.filterwarnings("ignore::hypothesis.errors.NonInteractiveExampleWarning")(
    Editing.TestCase
)
TestEditing.settings = settings(
    max_examples=80,
    stateful_step_count=40,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def test_every_edit_there_is_can_be_drawn():
    assert set(edits_there_are()) == set(DRAWS)


@pytest.mark.parametrize("name", sorted(DRAWS))
def test_every_edit_drawn_changes_a_plan_sooner_or_later(name):
    """A draw whose edits are always refused would try nothing."""
    dice, plan = Random(name), furnished_quay()
    for _ in range(TRIES):
        try:
            if DRAWS[name](Hand(plan, dice)).apply(plan) is not plan:
                return
        except EditRefused:
            continue
    pytest.fail(f"{TRIES} draws of {name} changed nothing")
