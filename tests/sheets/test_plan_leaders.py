"""Every wire end and every part of a plan sheet has its words; a leader runs over nothing but the ground."""

from itertools import pairwise
from pathlib import Path as FilePath

import pytest

from wiring.catalogue.shelf import builtin_kinds
from wiring.drawings.plan_labels import labelled
from wiring.drawings.plan_leaders import led_label, spots_along, spots_round
from wiring.drawings.plan_room import Room
from wiring.drawings.plan_view import plan_view
from wiring.drawings.plan_windows import windows
from wiring.files.store import load
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Disc, Path, Words

KINDS = builtin_kinds()
DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
WIRE = ((50.0, 50.0), (50.0, 90.0))


def views(name):
    plan = load(DEMOS / f"{name}.underboard")
    bodies = ((255.0, 153.0), (178.0, 240.0))
    if len(plan.wires) < 30:
        yield plan_view(plan, KINDS, below=True, width_mm=255.0, height_mm=153.0)
    for window in (
        windows(plan, KINDS, bodies)[-1:] if len(plan.wires) < 100 else windows(plan, KINDS, bodies)[:6]
    ):
        yield plan_view(plan, KINDS, below=True, window=window.area, width_mm=255.0, height_mm=153.0)


def unnamed(picture):
    return [w.text for w in picture.items if isinstance(w, Words) and "without room" in w.text]


@pytest.mark.parametrize("name", ["quay", "siding", "harbour"])
def test_no_part_and_no_wire_end_of_a_demo_goes_without_its_words(name):
    for picture in views(name):
        assert unnamed(picture) == []


def test_a_wire_in_a_crowd_is_labelled_where_there_is_room():
    room = Room((0.0, 0.0, 120.0, 120.0))
    room.take((30.0, 30.0, 49.0, 95.0))  # both sides of the wire are taken
    room.take((51.0, 30.0, 70.0, 95.0))
    assert labelled(room, "W1 RD", (49.5, 54.5, 50.5, 55.5), 2.3, reaches_mm=(0.3, 1.5, 3.0)) == ()
    leader, dot, words = led_label(room, "W1 RD", spots_along(WIRE), 2.3)
    left, top, right, bottom = words_box(words)
    assert right <= 30.4 or left >= 69.6 or bottom <= 30.4 or top >= 94.6
    assert isinstance(dot, Disc)
    assert dot.centre == leader.points[1]
    assert dot.centre[0] == 50.0
    assert 50.0 <= dot.centre[1] <= 70.0  # on the wire's own half, near its end


def test_a_leader_goes_round_what_is_taken():
    room = Room((0.0, 0.0, 120.0, 120.0))
    room.take(
        (52.0, 0.0, 56.0, 120.0)
    )  # a wall right of the wire: what lies beyond is nearest in no direction
    room.take((20.0, 40.0, 48.0, 100.0))
    leader, _, words = led_label(room, "W1 RD", spots_along(WIRE), 2.3)
    xs = [x for x, _ in leader.points]
    assert max(xs) < 52.0
    assert words.at[0] < 52.0


def test_nothing_later_lies_on_a_leader():
    room = Room((0.0, 0.0, 120.0, 120.0))
    room.take((30.0, 30.0, 49.0, 95.0))
    room.take((51.0, 30.0, 70.0, 95.0))
    leader, _, _ = led_label(room, "W1 RD", spots_along(WIRE), 2.3)
    a, b = leader.points
    for step in range(1, 10):
        x, y = a[0] + (b[0] - a[0]) * step / 10, a[1] + (b[1] - a[1]) * step / 10
        assert not room.free((x - 0.5, y - 0.5, x + 0.5, y + 0.5))


def test_without_any_room_there_are_no_words():
    room = Room((0.0, 0.0, 60.0, 60.0))
    room.take((0.0, 0.0, 60.0, 60.0))
    assert led_label(room, "W1 RD", spots_along(((10.0, 10.0), (40.0, 10.0))), 2.3) == ()


def test_words_wider_than_the_paper_find_no_place():
    room = Room((0.0, 0.0, 60.0, 60.0))
    assert led_label(room, "W" * 400, spots_round((20.0, 20.0, 26.0, 26.0)), 3.0) == ()


def test_points_tried_lie_on_the_wire_from_its_end_to_its_middle():
    bent = ((0.0, 0.0), (10.0, 0.0), (10.0, 30.0))
    spots = spots_along(bent)
    assert all(one[0] < other[0] <= 20.0 for one, other in pairwise(spots))
    assert all(y == 0.0 or x == 10.0 for _, (x, y) in spots)


def test_a_short_wire_under_signs_still_gets_a_leader():
    room = Room((0.0, 0.0, 120.0, 120.0))
    room.take((46.0, 46.0, 58.0, 58.0))
    found = led_label(room, "W7 BK", spots_along(((50.0, 50.0), (53.0, 50.0))), 2.3)
    assert [type(item) for item in found] == [Path, Disc, Words]
