"""Parts joined as one thing: every part is in one thing at most, copies are things of their own."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done, quay

from wiring.edits.align import align
from wiring.edits.copies import wires_between
from wiring.edits.distribute import distribute
from wiring.edits.duplicate import duplicate
from wiring.edits.edit import EditRefused
from wiring.edits.fragment import copied, paste
from wiring.edits.groups import join, take_apart
from wiring.edits.lead_over import split_at_new
from wiring.edits.mirror import mirror
from wiring.edits.place_part import place
from wiring.edits.remove import remove
from wiring.edits.split_wire import insert_in_wire
from wiring.edits.turn import turn
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.plan.changes import changes_between
from wiring.plan.groups import members, shared_groups, thing_of, things_of
from wiring.plan.plan import Plan
from wiring.plan.soundness import least_next_number, unsound


def street() -> Plan:
    """Return the quay with six lamps more, p8 to p13."""
    return done(quay(), *(place(KINDS["led-red"], 100.0 * n, 900) for n in range(6)))


PARTS = tuple(street().parts)
SETS = st.lists(st.sampled_from(PARTS), min_size=2, max_size=5, unique=True)


def things(plan: Plan) -> set[frozenset[str]]:
    return set(map(frozenset, things_of(plan, plan.parts)))


@settings(deadline=None, max_examples=40)
@given(st.lists(SETS, max_size=4))
def test_joined_parts_and_all_that_was_joined_with_them_are_one_thing(joins) -> None:
    plan, expected = street(), []
    for ids in joins:
        whole = set(ids).union(*(one for one in expected if one & set(ids)))
        try:
            plan = join(ids).apply(plan)
        except EditRefused:
            assert whole in expected
            continue
        expected = [one for one in expected if not one & whole] + [whole]
    assert things(plan) == set(map(frozenset, expected))
    assert not unsound(plan, KINDS) and decode(encode(plan)) == plan
    for one in expected:
        apart = take_apart([min(one)]).apply(plan)
        assert things(apart) == things(plan) - {frozenset(one)}


@settings(deadline=None, max_examples=40)
@given(st.lists(SETS, min_size=1, max_size=3), st.sets(st.sampled_from(PARTS), min_size=1))
def test_copies_are_joined_as_their_originals_among_themselves_only(joins, chosen) -> None:
    plan = street()
    for ids in joins:
        try:
            plan = join(ids).apply(plan)
        except EditRefused:
            continue
    for edit in (duplicate(chosen), paste(copied(plan, chosen), kinds=KINDS)):
        after = edit.apply(plan)
        added = [i for i in after.parts if i not in plan.parts]
        twin = dict(zip(added, (i for i in plan.parts if i in chosen), strict=True))
        found = {frozenset(twin[i] for i in one) for one in things(after) - things(plan)}
        assert things(plan) <= things(after)
        assert found == {one & chosen for one in things(plan) if len(one & chosen) > 1}
        assert not unsound(after, KINDS)


def test_a_set_set_down_as_one_thing_is_one_whatever_it_was_before() -> None:
    plan = join(["p2", "p3"]).apply(street())
    after = paste(copied(plan, ["p2", "p3", "p4"]), as_one=True, kinds=KINDS).apply(Plan())
    assert things(after) == {frozenset(after.parts)} and len(after.wires) == 3
    alone = paste(copied(plan, ["p2"]), as_one=True, kinds=KINDS).apply(Plan())
    assert [p.group for p in alone.parts.values()] == [""]


def test_what_is_pasted_twice_is_two_things_and_keeps_its_wires() -> None:
    text = copied(join(["p2", "p3", "p4"]).apply(street()), ["p2", "p3", "p4"])
    plan = done(Plan(), paste(text, kinds=KINDS), paste(text, 500, 0, kinds=KINDS))
    assert sorted(map(len, things(plan))) == [3, 3]
    assert [len(wires_between(plan, one)) for one in things(plan)] == [3, 3]


def test_only_the_joined_parts_change_and_a_turn_or_mirror_keeps_them_joined() -> None:
    plan = street()
    joined = join(["p8", "p9", "w5"]).apply(plan)
    assert changes_between(plan, joined).ids == {"p8", "p9"}
    assert joined.next_number == plan.next_number + 1
    moved = done(joined, turn(["p8", "p9"], 90), mirror(["p8", "p9"], "across"))
    assert things(moved) == {frozenset({"p8", "p9"})}


def test_one_that_is_left_alone_counts_as_joined_with_nothing() -> None:
    plan = done(street(), join(["p8", "p9"]), remove(["p9"]))
    assert members(plan, "p8") == () and thing_of(plan, ["p8"]) == ()
    assert shared_groups(plan.parts.values()) == ()
    with pytest.raises(EditRefused, match="nothing to take apart"):
        take_apart(["p8"]).apply(plan)
    assert members(join(["p8", "p10"]).apply(plan), "p10") == ("p8", "p10")


@pytest.mark.parametrize("ids", [[], ["p8"], ["w5", "w6"], ["p8", "p8"]])
def test_fewer_than_two_parts_are_no_thing(ids) -> None:
    with pytest.raises(EditRefused, match="two or more parts"):
        join(ids).apply(street())


def test_the_same_thing_is_not_joined_anew_and_a_part_that_is_gone_is_told() -> None:
    plan = join(["p8", "p9", "p10"]).apply(street())
    with pytest.raises(EditRefused, match="one thing already"):
        join(["p8", "p9"]).apply(plan)
    with pytest.raises(EditRefused, match="no part p99"):
        join(["p8", "p99"]).apply(plan)


def test_a_plan_without_joined_parts_is_written_as_ever_and_an_old_file_opens() -> None:
    assert b"group" not in encode(street())
    old = b'{"format": "underboard plan", "version": 1, "parts": [' + b",".join(
        b'{"id": "p%d", "kind": "led-red", "designation": "E%d", "x_mm": 0, "y_mm": %d}' % (n, n, n * 50)
        for n in (1, 2)
    )
    assert things_of(decode(old + b"]}"), ["p1", "p2"]) == ()


def test_no_number_of_a_group_is_given_twice_and_a_bad_one_is_no_plan() -> None:
    plan = join(["p8", "p9"]).apply(street())
    lowered = plan.with_changes(next_number=plan.next_number - 1)
    assert least_next_number(plan) == plan.next_number and unsound(lowered, KINDS)
    by_hand = encode(plan).replace(b'"group": "g14"', b'"group": "two words"')
    with pytest.raises(NotReadable, match="cannot be an id"):
        decode(by_hand)


def inside(plan: Plan, thing) -> list[float]:
    """Return where the parts of a thing lie as seen from its first one, x and y in turn."""
    first, *others = (plan.parts[i] for i in thing)
    return [d for p in others for d in (p.x_mm - first.x_mm, p.y_mm - first.y_mm)]


@pytest.mark.parametrize("line", ["left", "right", "top", "bottom", "row", "column"])
def test_things_are_lined_up_as_wholes(line) -> None:
    plan = done(street(), join(["p2", "p3", "p4"]), join(["p8", "p9"]))
    after = align(["p2", "p3", "p4", "p8", "p9", "p12"], line, kinds=KINDS).apply(plan)
    for thing in things_of(plan, plan.parts):
        assert inside(after, thing) == pytest.approx(inside(plan, thing))
    assert after.parts["p10"] is plan.parts["p10"]
    if line == "row":
        ys = [[after.parts[i].y_mm for i in one] for one in (["p2", "p3", "p4"], ["p8", "p9"], ["p12"])]
        assert len({(min(y) + max(y)) / 2 for y in ys}) == 1


def test_the_parts_of_one_thing_alone_are_lined_up_among_themselves() -> None:
    plan = join(["p2", "p3", "p4"]).apply(street())
    after = align(["p2", "p3", "p4"], "row", kinds=KINDS).apply(plan)
    assert len({after.parts[i].y_mm for i in ("p2", "p3", "p4")}) == 1


def test_things_are_spaced_out_by_their_middles() -> None:
    plan = done(street(), join(["p9", "p10"]))  # at 100 and 200, between 0 and 500
    after = distribute(["p8", "p9", "p10", "p13"], "across", kinds=KINDS).apply(plan)
    assert [after.parts[i].x_mm for i in ("p8", "p9", "p10", "p13")] == [0, 200, 300, 500]
    with pytest.raises(EditRefused, match="at least three"):
        distribute(["p8", "p9", "p10"], "across", kinds=KINDS).apply(plan)


def test_a_part_put_into_a_wire_within_a_thing_belongs_to_it() -> None:
    plan = join(["p2", "p3"]).apply(street())  # w5 runs between them, w6 leaves them
    for wires, held in ((["w5"], True), (["w6"], False), (["w5", "w6"], False)):
        strip = split_at_new(wires, KINDS["terminal-strip-4"], 100, 500, kinds=KINDS).apply(plan)
        fuse = insert_in_wire(wires[0], KINDS["fuse"], 100, 500, kinds=KINDS).apply(plan)
        new = f"p{plan.next_number}"
        assert members(strip, new) == (("p2", "p3", new) if held else ())
        assert bool(members(fuse, new)) == (wires[0] == "w5")
