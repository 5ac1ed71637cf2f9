"""Putting a part into the lead of a terminal, and swapping two leads: what is joined, and where it lies."""

import math
from itertools import pairwise

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done, furnished_quay

from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.groups import join
from wiring.edits.into_lead import put_into_lead
from wiring.edits.lay_along import lay_along
from wiring.edits.laying import body_box
from wiring.edits.place_part import place
from wiring.edits.set_wire import set_wire
from wiring.edits.swap_leads import swap_leads
from wiring.edits.wireways import add_wireway
from wiring.findings.act import Act
from wiring.findings.doing import edit_for
from wiring.plan.lengths import wire_path
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.routing.along_wireways import routes

RESISTOR, FUSE = KINDS["resistor"], KINDS["fuse"]
T = TerminalRef


def with_resistor(plan, *refs):
    return put_into_lead(refs, RESISTOR, {"resistance": 470.0}, "2", "1", kinds=KINDS).apply(plan)


def new_parts(old, new):
    return [p for i, p in new.parts.items() if i not in old.parts]


def pair(*more, **fields):
    """A supply p1 and an LED p2 with a wire from plus to A and one from minus to K."""
    return done(
        Plan(),
        place(KINDS["supply-regulated"], 0, 0),
        place(KINDS["led-white-bare"], 300, 0),
        connect(T("p1", "+"), T("p2", "A"), colour="RD", size="24 AWG", **fields),
        connect(T("p1", "-"), T("p2", "K")),
        *more,
    )


def square_pair():
    """The same with the red wire coming to the LED on a level stretch."""
    plan = pair()
    x_mm, y_mm = wire_path(plan, KINDS, plan.wires["w3"])[0]
    return set_wire(["w3"], bends=[(x_mm, y_mm - 80), (200.0, y_mm - 80), (200.0, 0.0)]).apply(plan)


def overlaps(plan, part):
    """Bodies that lie over that of a part."""
    left, top, right, bottom = body_box(part, KINDS[part.kind])
    for other in plan.parts.values():
        if other.id != part.id and KINDS[other.kind].width_mm:
            x0, y0, x1, y1 = body_box(other, KINDS[other.kind])
            if x0 < right and x1 > left and y0 < bottom and y1 > top:
                yield other


def test_on_a_level_stretch_the_part_stands_on_the_wire_and_nothing_else_moves():
    plan = square_pair()
    new = with_resistor(plan, T("p2", "A"))
    (made,) = new_parts(plan, new)
    old_path = wire_path(plan, KINDS, plan.wires["w3"])
    kept, lead = new.wires["w3"], new.wires["w6"]
    assert (kept.start, kept.end) == (("p1", "+"), (made.id, "1"))
    assert (lead.start, lead.end, lead.bends) == ((made.id, "2"), ("p2", "A"), ())
    assert (lead.colour, lead.size) == (kept.colour, kept.size)
    assert wire_path(new, KINDS, kept)[:-1] == old_path[:-1]
    assert made.y_mm == pytest.approx(0.0) and 200.0 < made.x_mm < old_path[-1][0]
    assert all(y == pytest.approx(0.0) for _, y in wire_path(new, KINDS, lead))
    assert new.wires["w4"] is plan.wires["w4"] and new.parts["p2"] is plan.parts["p2"]


def test_where_a_wire_has_no_room_the_part_stands_beside_and_the_wires_run_square():
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 0), place(KINDS["led-white-bare"], 70, 0))
    plan = done(plan, connect(T("p1", "+"), T("p2", "A")), connect(T("p1", "-"), T("p2", "K")))
    new = with_resistor(plan, T("p2", "A"))
    (made,) = new_parts(plan, new)
    assert not list(overlaps(new, made))
    for wire in (new.wires["w3"], new.wires["w6"]):
        path = wire_path(new, KINDS, wire)
        legs = pairwise(path)
        assert all(min(abs(a[0] - b[0]), abs(a[1] - b[1])) < 0.01 for a, b in legs)


def test_a_square_wire_keeps_its_course_and_its_last_corner_is_drawn_along():
    plan = pair(place(KINDS["led-white-bare"], 400, 0), connect(T("p2", "A"), T("p5", "A")))
    (x_mm, _), (last_mm, _) = (wire_path(plan, KINDS, plan.wires["w6"])[n] for n in (0, -1))
    plan = set_wire(["w6"], bends=[(x_mm, -60), (last_mm, -60)]).apply(plan)
    new = with_resistor(plan, T("p2", "A"), T("p5", "A"))
    first, second = (wire_path(new, KINDS, new.wires["w6"])[n] for n in (0, -1))
    assert new.wires["w6"].bends == ((first[0], -60), (second[0], -60)) != plan.wires["w6"].bends


def test_all_wires_of_a_terminal_land_on_the_new_part():
    plan = pair(place(KINDS["led-white-bare"], 400, 0), connect(T("p2", "A"), T("p5", "A")))
    new = with_resistor(plan, T("p2", "A"))
    (made,) = new_parts(plan, new)
    assert new.wires["w3"].end == (made.id, "1") and new.wires["w6"].start == (made.id, "1")
    at_led = [w for w in new.wires.values() if T("p2", "A") in (w.start, w.end)]
    assert len(at_led) == 1 and T(made.id, "2") in (at_led[0].start, at_led[0].end)


def test_two_terminals_that_one_wire_joins_get_a_part_each():
    plan = pair(place(KINDS["led-white-bare"], 400, 0), connect(T("p2", "A"), T("p5", "A")))
    new = with_resistor(plan, T("p2", "A"), T("p5", "A"))
    first, second = new_parts(plan, new)
    assert (new.wires["w6"].start, new.wires["w6"].end) == ((first.id, "1"), (second.id, "1"))
    assert len(new.wires) == len(plan.wires) + 2 and first.designation != second.designation


def test_what_was_measured_stays_and_what_was_built_has_to_be_wired_again():
    plan = set_wire(["w3"], length_m=2.5).apply(pair())
    built = msgspec.structs.replace(plan.wires["w3"], built=True)
    plan = plan.with_changes(wires={**plan.wires, "w3": built})
    new = with_resistor(plan, T("p2", "A"))
    assert new.wires["w3"].length_m == 2.5 and not new.wires["w3"].built
    swapped = swap_leads(["p2"], "A", "K", kinds=KINDS).apply(plan)
    assert not swapped.wires["w3"].built and swapped.wires["w3"].length_m == 2.5


def test_in_a_thing_the_new_part_belongs_to_it():
    plan = pair(join(["p1", "p2"]))
    (made,) = new_parts(plan, with_resistor(plan, T("p2", "A")))
    assert made.group == plan.parts["p2"].group != ""
    (made,) = new_parts(pair(), with_resistor(pair(), T("p2", "A")))
    assert made.group == ""


def test_a_wire_in_a_wireway_stays_in_it():
    plan = pair(add_wireway([(0, 100), (300, 100)], "Beam"))
    plan = lay_along(routes(plan, KINDS, ["w3"])).apply(plan)
    assert plan.wires["w3"].along
    act = Act("resistor", "", ("p2",), values=(("resistance", 470.0), ("rated_power", 0.5)))
    new = edit_for(act, KINDS).apply(plan)
    (made,) = new_parts(plan, new)
    path = wire_path(new, KINDS, new.wires["w3"])
    assert new.wires["w3"].along == plan.wires["w3"].along and new.wires["w3"].end == (made.id, "1")
    assert [round(y) for _, y in path[1:-1]] == [
        100,
        100,
    ]  # down, along the beam, and up
    assert path[-1][0] == pytest.approx(path[-2][0])


@pytest.mark.parametrize(
    "act",
    [
        lambda: with_resistor(pair(), T("p9", "A")),
        lambda: with_resistor(done(Plan(), place(KINDS["led-white-bare"], 0, 0)), T("p1", "A")),
    ],
)
def test_what_has_gone_or_has_no_wire_is_refused_in_one_sentence(act):
    with pytest.raises(EditRefused, match=r"^(The plan has no part p9|-E1:A has no wire).*\.$"):
        act()
    with pytest.raises(EditRefused, match=r"has no wires to swap"):
        swap_leads(["p1"], "A", "K").apply(done(Plan(), place(KINDS["led-white-bare"], 0, 0)))


def test_an_led_is_turned_round_where_its_wires_lie():
    plan = square_pair()
    new = swap_leads(["p2"], "A", "K", kinds=KINDS).apply(plan)
    assert new.parts["p2"].turn_deg == 180.0
    for wire_id in plan.wires:
        old_path, path = (wire_path(p, KINDS, p.wires[wire_id]) for p in (plan, new))
        assert all(math.dist(a, b) < 0.01 for a, b in zip(old_path, path, strict=True))
    assert new.wires["w3"].end == ("p2", "K") and new.wires["w4"].end == ("p2", "A")
    back = swap_leads(["p2"], "A", "K", kinds=KINDS).apply(new)
    assert back.parts == plan.parts and back.wires == plan.wires


def test_a_part_with_both_terminals_on_one_side_has_its_wires_laid_anew():
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 0), place(KINDS["flasher"], 200, 0))
    plan = done(plan, connect(T("p1", "+"), T("p2", "-")), connect(T("p1", "-"), T("p2", "+")))
    new = swap_leads(["p2"], "+", "-", kinds=KINDS).apply(plan)
    assert new.parts["p2"] is plan.parts["p2"]
    assert new.wires["w3"].end == ("p2", "+") and new.wires["w4"].end == ("p2", "-")


def test_what_sits_on_a_panel_is_not_turned():
    plan = furnished_quay()
    led = next(p for p in plan.parts.values() if p.kind == "indicator-red")
    names = [t.name for t in KINDS[led.kind].terminals]
    plan = done(plan, connect(T("p2", "+"), T(led.id, names[0])), connect(T("p2", "-"), T(led.id, names[1])))
    assert led.panel
    assert swap_leads([led.id], *names[:2], kinds=KINDS).apply(plan).parts[led.id] is led


WIRED = sorted({ref for w in furnished_quay().wires.values() for ref in (w.start, w.end)})


@settings(deadline=None, max_examples=40)
@given(
    st.lists(st.sampled_from(WIRED), min_size=1, max_size=4, unique=True), st.sampled_from([RESISTOR, FUSE])
)
def test_wherever_parts_are_put_in_the_same_things_hang_together_but_for_them(refs, kind):
    plan = furnished_quay()
    new = put_into_lead(refs, kind, {}, "1", "2", kinds=KINDS).apply(plan)
    made = new_parts(plan, new)
    assert len(made) == len(refs) and len(new.wires) == len(plan.wires) + len(refs)
    home = {}
    for part in made:  # a new part bridged is the terminal it was put before
        lead = next(w for w in new.wires.values() if T(part.id, "1") in (w.start, w.end))
        home[part.id] = lead.end if lead.start == T(part.id, "1") else lead.start
    for wire_id, wire in plan.wires.items():
        ends = [new.wires[wire_id].start, new.wires[wire_id].end]
        assert [home.get(ref.part, ref) for ref in ends] == [wire.start, wire.end]
    assert sorted(home.values()) == sorted(refs)
    assert {p.id: p for p in new.parts.values() if p.id in plan.parts} == dict(plan.parts)


def test_a_row_of_leds_gets_its_resistors_beside_each_other():
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 200))
    leds = []
    for n in range(6):
        leds.append(f"p{plan.next_number}")
        plan = done(plan, place(KINDS["led-white-bare"], 200 + 60 * n, 0))
    for a, b in pairwise(leds):
        plan = done(plan, connect(T(a, "A"), T(b, "A")), connect(T(a, "K"), T(b, "K")))
    plan = done(plan, connect(T("p1", "+"), T(leds[0], "A")), connect(T("p1", "-"), T(leds[0], "K")))
    new = with_resistor(plan, *(T(led, "A") for led in leds))
    for part in new_parts(plan, new):
        assert not list(overlaps(new, part))
