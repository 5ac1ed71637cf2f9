"""Random edits, undone and redone: never an unsound plan, and undo is the very same object."""

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule
from support.editing import COORDINATES, KINDS, quay

from wiring.edits.align import align
from wiring.edits.benchwork import add_track, remove_track
from wiring.edits.bends import add_bend, move_bend, remove_bend, straighten
from wiring.edits.connect import connect, reconnect
from wiring.edits.distribute import distribute
from wiring.edits.duplicate import duplicate
from wiring.edits.edit import EditRefused
from wiring.edits.feed import feed
from wiring.edits.fragment import copied, paste
from wiring.edits.history import Step, begun, recorded, redone, undone
from wiring.edits.joists import add_joist, change_joist, remove_joist
from wiring.edits.lay_along import lay_along
from wiring.edits.lead_over import lead_over, split_at_new
from wiring.edits.mirror import mirror
from wiring.edits.move import move
from wiring.edits.panels import add_panel, change_panel, put_on_panel, remove_panel
from wiring.edits.place_part import place
from wiring.edits.recolour import recolour, set_circuit_colours
from wiring.edits.remove import remove
from wiring.edits.scenes import add_scene, change_scene, put_in_scene, remove_scene
from wiring.edits.set_plan import set_habits, set_plan
from wiring.edits.set_value import rename, set_field, set_setting
from wiring.edits.set_wire import set_wire, swap_ends
from wiring.edits.split_wire import insert_in_wire, split_wire
from wiring.edits.throw import keep_position
from wiring.edits.turn import turn
from wiring.edits.wireways import (
    add_corner,
    add_wireway,
    move_corner,
    remove_corner,
    remove_wireway,
    set_wireway,
    shift_wireway,
)
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.plan.changes import changes_between
from wiring.plan.names import TerminalRef
from wiring.plan.soundness import unsound
from wiring.routing.along_wireways import routes

TABLES = ("parts", "wires", "scenes", "panels")
NUMBERS = st.sampled_from([0.0, 1.0, 3.0, 470.0, -1.0, 1e9, float("nan"), float("inf")])


class Editing(RuleBasedStateMachine):
    def __init__(self):
        super().__init__()
        self.start = quay()
        self.history = begun(self.start)
        self.mirror = {name: dict(getattr(self.start, name)) for name in TABLES}
        self.refusals = 0

    @property
    def plan(self):
        return self.history.now.plan

    def one(self, data, table):
        ids = sorted(getattr(self.plan, table))
        return data.draw(st.sampled_from(ids or ["x99"]))

    def some(self, data, *tables):
        ids = sorted(i for table in tables for i in getattr(self.plan, table))
        return data.draw(st.lists(st.sampled_from(ids), max_size=5)) if ids else []

    def ref(self, data):
        part = self.plan.parts.get(self.one(data, "parts"))
        if part is None:
            return TerminalRef("p0", "1")
        names = [t.name for t in KINDS[part.kind].terminals]
        return TerminalRef(part.id, data.draw(st.sampled_from(names)))

    def do(self, edit):
        old = self.plan
        try:
            new = edit.apply(old)
        except EditRefused as refusal:
            assert str(refusal).endswith(".") and "\n" not in str(refusal)
            self.refusals += 1
            return
        if new is old:
            return
        assert new != old, f"{edit.label} made another plan out of the same values"
        self.follow(old, new)
        ancestors = [step.plan for step in (*self.history.past, self.history.now)]
        for name in TABLES:
            fresh = getattr(new, name).keys() - getattr(old, name).keys()
            assert not any(fresh & getattr(before, name).keys() for before in ancestors), "an id came back"
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

    @rule(kind=st.sampled_from(sorted(KINDS)), x=COORDINATES, y=COORDINATES)
    def place_part(self, kind, x, y):
        self.do(place(KINDS[kind], x, y))

    @rule(data=st.data(), size=st.sampled_from([None, "18 AWG"]))
    def draw_wire(self, data, size):
        self.do(connect(self.ref(data), self.ref(data), size=size))

    @rule(data=st.data(), which=st.sampled_from(["start", "end"]))
    def lay_end(self, data, which):
        self.do(reconnect(self.one(data, "wires"), which, self.ref(data)))

    @rule(data=st.data(), dx=COORDINATES, dy=COORDINATES)
    def shift(self, data, dx, dy):
        self.do(move(self.some(data, "parts", "wires"), dx, dy))

    @rule(data=st.data(), degrees=st.sampled_from([0, 15, 90, 360, -90]))
    def spin(self, data, degrees):
        self.do(turn(self.some(data, "parts"), degrees))

    @rule(data=st.data())
    def take_away(self, data):
        self.do(remove(self.some(data, "parts", "wires")[:1]))

    @rule(data=st.data(), value=NUMBERS)
    def set_some(self, data, value):
        part = self.plan.parts.get(self.one(data, "parts"))
        names = [s.name for s in KINDS[part.kind].settings] if part else []
        self.do(set_setting([part.id if part else "p0"], data.draw(st.sampled_from([*names, "odd"])), value))

    @rule(data=st.data(), name=st.sampled_from(["E1", "-X7", "two words", "", "G1"]))
    def name_part(self, data, name):
        self.do(rename(self.one(data, "parts"), name))

    @rule(data=st.data())
    def ask_for_what_is_not_there(self, data):
        part, wire = self.one(data, "parts"), self.one(data, "wires")
        odd = data.draw(st.sampled_from([TerminalRef(part, "no such"), TerminalRef("x99", "1")]))
        self.do(connect(odd, self.ref(data)))
        self.do(reconnect(wire, "end", odd))
        self.do(move(["x99", part], 1, 1))
        self.do(split_wire(wire, part, "no such", "1"))
        self.do(keep_position(part, "sideways"))
        self.do(put_in_scene([part], "x99"))

    @rule(data=st.data())
    def keep(self, data):
        part = self.plan.parts.get(self.one(data, "parts"))
        stands = [p.name for p in KINDS[part.kind].positions] if part else []
        self.do(keep_position(part.id if part else "x99", data.draw(st.sampled_from(["", *stands]))))

    @rule(data=st.data(), fields=st.sampled_from([{"colour": "GN"}, {"label": "W1"}, {"length_m": -1}]))
    def change_wires(self, data, fields):
        self.do(set_wire(self.some(data, "wires"), **fields))

    @rule(data=st.data(), index=st.integers(-1, 3), x=COORDINATES)
    def bend(self, data, index, x):
        wire = self.one(data, "wires")
        self.do(
            data.draw(
                st.sampled_from(
                    [
                        add_bend(wire, index, x, 5),
                        move_bend(wire, index, x, 5),
                        remove_bend(wire, index),
                        straighten(wire),
                        swap_ends([wire]),
                    ]
                )
            )
        )

    @rule(data=st.data(), kind=st.sampled_from(["fuse", "terminal-strip-4", "toggle-on-off"]))
    def insert(self, data, kind):
        wire = self.one(data, "wires")
        choice = [insert_in_wire(wire, KINDS[kind], 3, 4), split_wire(wire, self.one(data, "parts"))]
        self.do(data.draw(st.sampled_from(choice)))

    @rule(data=st.data())
    def copy(self, data):
        ids = self.some(data, "parts")
        self.do(duplicate(ids))
        text = copied(self.plan, ids)
        if text:
            self.do(paste(text, at=(0, 0)))

    @rule(data=st.data(), x=COORDINATES, width=st.sampled_from([0, 300, -1]))
    def scenes(self, data, x, width):
        scene = self.one(data, "scenes")
        self.do(add_scene("Quay", x, -1000, width, 2000))
        self.do(put_in_scene(self.some(data, "parts")[:2], scene))
        self.do(data.draw(st.sampled_from([change_scene(scene, x_mm=x), remove_scene(scene)])))

    @rule(data=st.data(), x=COORDINATES)
    def panels(self, data, x):
        panel = self.one(data, "panels")
        self.do(add_panel("Fascia", x, -1000, 600, 2000))
        self.do(put_on_panel(self.some(data, "parts")[:2], panel))
        self.do(data.draw(st.sampled_from([change_panel(panel, x_mm=x), remove_panel(panel)])))

    @rule(data=st.data(), x=COORDINATES, y=COORDINATES)
    def wireways(self, data, x, y):
        way = self.one(data, "wireways")
        self.do(add_wireway([(x, y), (0, 0), (x, 900)], "Beam"))
        wires = self.some(data, "wires")
        self.do(lay_along(routes(self.plan, KINDS, wires)))
        choice = [move_corner(way, 1, y, x), set_wireway(way, hole_mm=x), remove_wireway(way)]
        choice += [add_corner(way, x, y), remove_corner(way, 1), shift_wireway(way, x, y)]
        choice += [set_wireway(way, fascia_drop_mm=y)]
        self.do(data.draw(st.sampled_from(choice)))

    @rule(data=st.data(), x=COORDINATES, y=COORDINATES)
    def joists(self, data, x, y):
        self.do(add_joist((x, y), (0, 50)))
        index = data.draw(st.integers(-1, 2))
        choice = [change_joist(index, end=(y, x)), change_joist(index, width_mm=x), remove_joist(index)]
        self.do(data.draw(st.sampled_from(choice)))

    @rule(data=st.data(), letters=st.sampled_from(["OG", "", "GNYE", "bu"]))
    def colours(self, data, letters):
        part = self.one(data, "parts")
        self.do(set_circuit_colours(part, plus=letters, switched=letters))
        self.do(recolour(built_too=letters == "OG", kinds=KINDS))

    @rule(data=st.data(), x=COORDINATES, turn_deg=st.sampled_from([0, 90, 45]))
    def split_some(self, data, x, turn_deg):
        wires = self.some(data, "wires")[:2]
        self.do(lead_over(wires, self.one(data, "parts"), kinds=KINDS))
        self.do(split_at_new(wires, KINDS["terminal-strip-4"], x, x, kinds=KINDS))
        text = copied(self.plan, self.some(data, "parts")[:2])
        self.do(paste(text, at=(x, 0), turn_deg=turn_deg, kinds=KINDS))

    @rule(data=st.data(), manner=st.sampled_from(["chain", "star"]))
    def feed_some(self, data, manner):
        self.do(feed(self.some(data, "parts"), manner, kinds=KINDS))

    @rule(data=st.data(), line=st.sampled_from(["left", "bottom", "row", "column"]))
    def arrange(self, data, line):
        ids = self.some(data, "parts")
        edits = [align(ids, line), distribute(ids, "across"), mirror(ids, "down")]
        self.do(data.draw(st.sampled_from(edits)))

    @rule(data=st.data(), x=COORDINATES, units=st.sampled_from(["us", "metric", "feet"]))
    def surroundings(self, data, x, units):
        self.do(set_habits(units=units))
        self.do(set_plan(title=f"Quay {x:g}"))
        self.do(add_track([(x, 0), (0, 0)]))
        self.do(remove_track(data.draw(st.integers(-1, 2))))

    @rule(data=st.data())
    def note(self, data):
        self.do(set_field(self.some(data, "parts"), note="checked", x_mm=5))

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
