import math

import pytest
from schemdraw import Drawing
from schemdraw import elements as elm
from schemdraw.segments import Segment, SegmentArc, SegmentBezier, SegmentCircle, SegmentPath, SegmentText

from wiring.catalogue.shelf import builtin_kinds
from wiring.drawings.circuit_pieces import JOINTS
from wiring.drawings.schemdraw_picture import PictureFigure
from wiring.drawings.symbols.all_symbols import LENGTH_MM, NAMES, items_box, symbol
from wiring.pictures.picture import Disc, Path, Words

ENDS = {"down": (0, 1), "up": (0, -1), "right": (1, 0), "left": (-1, 0)}


def recorded(*segments, at=(0, 0)):
    element = elm.Element()
    element.segments.extend(segments)
    drawing = Drawing(show=False, canvas="svg")
    placed = drawing.add(element.at(at))
    figure = PictureFigure(10.0)
    placed._draw(figure)
    return figure.items


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("way", ENDS)
def test_a_symbol_runs_from_its_first_terminal_to_its_second(name, way):
    drawn = symbol(name, "", way)
    across, down = ENDS[way]
    points = [p for i in drawn.items if isinstance(i, Path) for p in i.points]
    end = (across * LENGTH_MM, down * LENGTH_MM)
    assert min(math.dist(p, (0, 0)) for p in points) < 1e-6
    assert min(math.dist(p, end) for p in points) < 1e-6
    left, top, right, bottom = drawn.box
    assert max(right - left, bottom - top) <= LENGTH_MM + 1e-6


def test_every_kind_that_is_a_piece_has_a_symbol_of_its_own():
    lacking = {k.symbol for k in builtin_kinds().values() if k.behaviour not in JOINTS} - set(NAMES)
    assert lacking == set()


@pytest.mark.parametrize("name", ["led", "switch", "push"])
def test_what_lies_beside_a_symbol_keeps_its_side_when_it_stands_on_its_head(name):
    upright, turned = symbol(name, "changeover", "down").box, symbol(name, "changeover", "up").box
    assert turned[0] == pytest.approx(upright[0])
    assert turned[2] == pytest.approx(upright[2])


@pytest.mark.parametrize("name", ["switch", "push"])
def test_open_and_closed_contacts_differ(name):
    assert symbol(name, "closed").items != symbol(name, "").items


def test_a_blown_fuse_has_no_wire_in_its_middle():
    def crosses_middle(state):
        lines = [i.points for i in symbol("fuse", state).items if isinstance(i, Path) and not i.closed]
        return any(abs(a[0]) + abs(b[0]) < 1e-6 and a[1] < LENGTH_MM / 2 < b[1] for a, b in lines)

    assert crosses_middle("")
    assert not crosses_middle("blown")


def test_axes_turn_over_and_units_become_millimetres():
    (line,) = recorded(Segment([(0, 0), (1, 2)]))
    assert line.points == ((0.0, 0.0), (10.0, -20.0))


def test_a_gap_lifts_the_pen():
    lines = recorded(Segment([(0, 0), (1, 0), (math.nan, math.nan), (2, 0), (3, 0)]))
    assert [line.points for line in lines] == [((0, 0), (10, 0)), ((20, 0), (30, 0))]


def test_circles_arcs_and_curves_keep_their_shape():
    circle, arc, curve = recorded(
        SegmentCircle((1, 1), 0.5),
        SegmentArc((0, 0), width=2, height=2, theta1=0, theta2=90),
        SegmentBezier([(0, 0), (1, 1), (2, 0)]),
    )
    assert isinstance(circle, Disc)
    assert circle.centre == (10.0, -10.0)
    assert circle.radius_x_mm == pytest.approx(5.0)
    assert all(math.hypot(*p) == pytest.approx(10.0) for p in arc.points)
    assert arc.points[0] == pytest.approx((10.0, 0.0))
    assert arc.points[-1] == pytest.approx((0.0, -10.0), abs=1e-9)
    assert curve.smooth
    middle = [(a + 3 * b + 3 * c + d) / 8 for a, b, c, d in zip(*curve.points, strict=True)]
    assert middle == pytest.approx([10.0, -5.0])  # where the quadratic curve is half way


def test_a_path_of_letters_is_followed():
    line, curve = recorded(SegmentPath(["M", (0, 0), "L", (1, 0), "C", (2, 0), (2, 1), (3, 1)]))
    assert line.points == ((0, 0), (10, 0))
    assert curve.smooth
    assert curve.points[-1] == (30.0, -10.0)


def test_an_arrow_has_a_filled_head_at_its_tip():
    *_, head = recorded(Segment([(0, 0), (1, 0)], arrow="->"))
    assert head.fill == "ink"
    assert max(p[0] for p in head.points) == pytest.approx(10.0)


def test_words_keep_their_lines_and_their_size():
    first, second = recorded(SegmentText((0, 0), "a\nb", fontsize=10, align=("left", "bottom")))
    assert (first.text, second.text) == ("a", "b")
    assert isinstance(first, Words)
    assert first.size_mm == pytest.approx(10 * 25.4 / 72)
    assert second.at[1] > first.at[1]


def test_the_box_of_items_holds_words_too():
    assert items_box([Words("0123456789", (0.0, 0.0), 10.0)])[2] == pytest.approx(58.0)
