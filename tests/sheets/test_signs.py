import pytest
from msgspec.structs import replace
from support.editing import KINDS

from wiring.catalogue.known_names import SIGNS as KNOWN
from wiring.drawings.signs.all_signs import SIGNS, sign
from wiring.drawings.signs.extent import extent
from wiring.drawings.signs.halo import halo, reach
from wiring.drawings.signs.hand import State
from wiring.drawings.signs.lens_colours import lens_colour
from wiring.drawings.signs.terminals import terminals
from wiring.pictures.picture import Disc, Path, Words
from wiring.plan.part import Part

MOVING = {
    "toggle", "slide", "push", "stall_motor", "coil_motor", "fuse", "resettable_fuse", "relay", "plug",
}  # fmt: skip


def part(kind, **settings):
    return Part(id="p1", kind=kind.key, designation="E1", x_mm=0, y_mm=0, settings=settings)


def box_of(items):
    points = [p for i in items if isinstance(i, Path) for p in i.points]
    for i in items:
        if isinstance(i, Disc):
            points += [(i.centre[0] - i.radius_x_mm, i.centre[1] - i.radius_y_mm)]
            points += [(i.centre[0] + i.radius_x_mm, i.centre[1] + i.radius_y_mm)]
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs), min(ys), max(xs), max(ys)


def states(kind):
    names = [p.name for p in kind.positions] or [""]
    return [State(name, light) for name in names for light in (None, 0.0, 100.0)]


def test_every_sign_a_kind_may_name_is_drawn_and_no_other():
    assert set(SIGNS) == set(KNOWN)


@pytest.mark.parametrize("key", sorted(KINDS))
def test_a_sign_stays_within_its_extent_and_has_no_words(key):
    kind = KINDS[key]
    left, top, right, bottom = extent(kind)
    for state in states(kind):
        items = sign(kind, None, state)
        assert items and not any(isinstance(i, Words) for i in items)
        x1, y1, x2, y2 = box_of(items)
        air = 0.02 + 0.13 * min(kind.width_mm, kind.height_mm)  # levers and windows may reach over the body
        assert (x1, y1) >= (left - air, top - air) and x2 <= right + air and y2 <= bottom + air


@pytest.mark.parametrize("key", sorted(k for k in KINDS if KINDS[k].sign in MOVING))
def test_every_position_of_a_part_that_can_be_seen_looks_different(key):
    kind = KINDS[key]
    drawn = [sign(kind, None, State(p.name)) for p in kind.positions]
    assert len(set(drawn)) == len(drawn)


def test_a_toggle_lies_the_way_its_position_says():
    kind = KINDS["toggle-centre-off"]
    tips = {p: sign(kind, None, State(p))[-1].centre[1] for p in ("up", "off", "down")}
    assert tips["up"] < tips["off"] < tips["down"]


@pytest.mark.parametrize("length_m", [0.1, 0.5, 2.0])
def test_a_strip_is_drawn_as_long_as_it_is_set(length_m):
    kind = KINDS["led-strip-warm-white"]
    long = part(kind, length=length_m)
    body = [i for i in sign(kind, long, State()) if isinstance(i, Path)]
    _, _, x2, _ = box_of(body)
    assert max(p[0] for i in body for p in i.points) == pytest.approx(-kind.width_mm / 2 + 1000 * length_m)
    assert extent(kind, long)[2] == pytest.approx(x2)


@pytest.mark.parametrize(("series", "parallel"), [(1, 1), (4, 1), (8, 1), (3, 2), (40, 1)])
def test_a_holder_shows_its_cells(series, parallel):
    kind = KINDS["battery-alkaline"]
    items = sign(kind, part(kind, in_series=series, in_parallel=parallel))
    caps = [i for i in items if isinstance(i, Path) and i.fill == "copper"]
    assert len(caps) == min(series * parallel, 16)


def test_the_flat_of_an_led_is_at_its_minus_side():
    kind = KINDS["led-red"]
    flat = sign(kind)[-1]
    assert flat.points[0][0] * kind.terminal("K").x_mm > 0


def test_leds_differ_in_colour():
    keys = [f"led-{c}" for c in ("red", "yellow", "green", "blue", "white", "warm-white")]
    assert len({lens_colour(KINDS[k]) for k in keys}) == len(keys)


@pytest.mark.parametrize("key", ["led-red", "lamp-12v", "building-led", "led-strip-warm-white"])
def test_the_halo_grows_with_lightness_and_is_gone_in_the_dark(key):
    kind = KINDS[key]
    assert halo(kind, None) == halo(kind, 0.0) == ()
    assert reach(kind, 30) < reach(kind, 60) < reach(kind, 100)
    widths = [box_of(halo(kind, x))[2] for x in (20.0, 60.0, 100.0)]
    assert widths == sorted(widths) and widths[0] < widths[2]


@pytest.mark.parametrize("key", sorted(KINDS))
def test_each_terminal_has_its_dot_and_its_mark(key):
    kind = KINDS[key]
    items = terminals(kind)
    assert [i.centre for i in items if isinstance(i, Disc)] == [(t.x_mm, t.y_mm) for t in kind.terminals]
    strokes = {"+": 2, "-": 1, "~": 1, "": 0}
    assert len(items) - len(kind.terminals) == sum(strokes[t.mark] for t in kind.terminals)


def test_an_unknown_sign_is_drawn_as_an_outline():
    assert len(sign(replace(KINDS["led-red"], sign="windmill"))) >= 3
