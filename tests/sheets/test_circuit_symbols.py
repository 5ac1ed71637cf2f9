import math
from itertools import pairwise

import pytest
from schemdraw import Drawing
from schemdraw import elements as elm
from schemdraw.segments import Segment, SegmentArc, SegmentBezier, SegmentCircle, SegmentPath, SegmentText

from wiring.catalogue.shelf import builtin_kinds
from wiring.drawings.circuit_pieces import JOINTS
from wiring.drawings.schemdraw_picture import PictureFigure
from wiring.drawings.symbols.all_symbols import IEEE_NAMES, LENGTH_MM, NAMES, SETS, items_box, symbol
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


@pytest.mark.parametrize("symbols", SETS)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("way", ENDS)
def test_a_symbol_runs_from_its_first_terminal_to_its_second(name, way, symbols):
    drawn = symbol(name, "", way, symbols)
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


@pytest.mark.parametrize("symbols", SETS)
@pytest.mark.parametrize("name", ["switch", "push", "contact"])
def test_open_and_closed_contacts_differ(name, symbols):
    assert symbol(name, "closed", "down", symbols).items != symbol(name, "", "down", symbols).items


@pytest.mark.parametrize("name", NAMES)
def test_the_sets_differ_where_a_symbol_has_two_forms(name):
    same = symbol(name, "", "down", "iec").items == symbol(name, "", "down", "ieee").items
    assert same == (name not in IEEE_NAMES)


def slants(drawn):
    """Strokes that run neither along the conductor nor square to it."""
    lines = [i.points for i in drawn.items if isinstance(i, Path) and not i.smooth]
    steps = [(b[0] - a[0], b[1] - a[1]) for points in lines for a, b in pairwise(points)]
    return sum(abs(x) > 0.1 and abs(y) > 0.1 for x, y in steps)


def test_a_resistor_is_a_box_or_a_zigzag():
    """IEC 60617-4 (symbol 04-01-01) has a rectangle, IEEE 315-1975 (2.1) a zigzag; both from memory."""
    assert slants(symbol("resistor")) == 0
    assert slants(symbol("resistor", "", "down", "ieee")) == 6 + 1  # the strokes at both ends are halves


def test_contacts_have_rings_in_one_set_only():
    """IEC 60617-7 (07-02-01) draws a make contact without rings; they are common in American practice."""
    rings = {s: sum(isinstance(i, Disc) for i in symbol("contact", "", "down", s).items) for s in SETS}
    assert rings == {"iec": 0, "ieee": 2}


def test_only_what_a_hand_works_has_the_bar_of_a_manual_control():
    reach = {name: symbol(name).box[0] for name in ("contact", "switch", "push")}
    assert reach["contact"] == pytest.approx(0.0, abs=1e-9)
    assert reach["switch"] == pytest.approx(reach["push"])
    assert reach["switch"] < -3.0
    assert len(symbol("push").items[-1].points) == len(symbol("switch").items[-1].points) + 2  # the legs


def test_a_set_there_is_not_is_refused_in_words():
    with pytest.raises(ValueError, match="There is no set of symbols “nema”; choose from iec, ieee"):
        symbol("lamp", "", "down", "nema")


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
