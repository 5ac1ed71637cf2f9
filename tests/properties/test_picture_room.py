"""However the view moves over a picture larger than it, what it shows is painted and the rest stays whole."""

from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QRect, QRectF

from app.canvas.camera import Camera
from app.canvas.painting.clips import rim_of
from app.canvas.painting.picture_room import RIM_PX, PictureRoom
from app.canvas.painting.shades import shades
from app.canvas.sight import Sight
from wiring.pictures.theme import LIGHT
from wiring.plan.plan import Plan

WIDE, HIGH = 640, 400
LESS_THAN_HALF = st.tuples(st.integers(-190, 190), st.integers(-190, 190))
RATIOS = st.sampled_from([1.0, 1.1, 1.25, 1.5, 2.0])
edges = st.floats(-900, 900)


def sight(ratio: float) -> Sight:
    return Sight(Plan(), {}, None, Camera(0.7, 31.0, -12.0), shades(LIGHT), WIDE, HIGH, ratio)


def united(one: QRect, strips: list[QRect]) -> QRect:
    for strip in strips:
        assert strip.intersects(one)
        grown = one.united(strip)
        # One rectangle after each strip, and the strip reaches back over the edge by no more than its rim.
        area = grown.width() * grown.height() - one.width() * one.height()
        assert 0 <= strip.width() * strip.height() - area <= RIM_PX * max(strip.width(), strip.height())
        one = grown
    return one


@settings(deadline=None, max_examples=60)
@given(RATIOS, st.lists(st.tuples(LESS_THAN_HALF, st.booleans()), max_size=25))
def test_what_the_view_needs_can_always_be_painted_in_strips(ratio, walk):
    look = sight(ratio)
    room, camera, way = PictureRoom(look), look.camera, (0, 0)
    for (dx, dy), reaches in walk:
        camera = camera.panned(dx / ratio, dy / ratio)
        way = (-dx, -dy)
        assert room.is_near(camera)
        before = camera.to_px(room.anchor.left_mm, room.anchor.top_mm)
        by = room.shortage(camera)
        room.move(*by)
        after = camera.to_px(room.anchor.left_mm, room.anchor.top_mm)
        assert abs(after[0] - before[0] + by[0] / ratio) < 1e-6  # its corner went the other way
        assert abs(after[1] - before[1] + by[1] / ratio) < 1e-6
        assert room.all.contains(room.covered)
        assert room.shortage(camera) == (0, 0)
        room.covered = united(room.covered, room.strips(room.needed(camera)))
        assert room.shows(camera)
        assert room.strips(room.needed(camera)) == []
        if reaches:
            room.move(*room.shortage(camera, way))
            room.covered = united(room.covered, room.strips(room.ahead(camera, way)))
            assert room.shows(camera)
            assert room.shortage(camera, way) == (0, 0)
            assert room.strips(room.ahead(camera, way)) == []


@given(edges, edges, st.floats(1, 2000), st.floats(1, 2000))
def test_the_rim_covers_all_that_lies_outside(left, top, wide, high):
    outer, inner = QRectF(0, 0, WIDE, HIGH), QRectF(left, top, wide, high)
    rims = rim_of(outer, inner)
    common = outer & inner
    area = sum(rim.width() * rim.height() for rim in rims)
    outside = WIDE * HIGH - common.width() * common.height()
    assert outside - 1e-6 <= area <= outside + 2 * (WIDE + HIGH)
    assert all(outer.contains(rim) for rim in rims)
    for n, one in enumerate(rims):
        assert not any(one.intersects(other) for other in rims[n + 1 :])
