import pytest
from hypothesis import given
from hypothesis import strategies as st

from wiring.pictures.metrics import (
    cap_mm,
    fitted,
    overlap,
    width_mm,
    words_box,
    words_corners,
    wrapped,
)
from wiring.pictures.picture import Words
from wiring.pictures.typefaces import printable, runs


def test_a_figure_is_as_wide_as_the_typeface_says():
    # Lato's own hmtx table gives every figure an advance of 1160 of 2000 units.
    assert width_mm("0123456789", 10.0) == pytest.approx(58.0, abs=1e-6)


def test_width_grows_with_the_size_and_the_weight():
    assert width_mm("Harbour", 6.0) == pytest.approx(2 * width_mm("Harbour", 3.0))
    assert width_mm("Harbour", 3.0, "bold") > width_mm("Harbour", 3.0)


def test_a_sign_the_typeface_lacks_counts_as_the_box_it_prints_as():
    assert runs("a🙂b") == ("a", "", "b")
    assert width_mm("🙂", 10.0) == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("raw", "kept"),
    [("a\nb", "a b"), ("a\x07b", "ab"), ("\ud800", "\ufffd"), ("e\u0301", "é"), ("\u202eabc", "abc")],
)
def test_what_has_no_shape_is_left_out(raw, kept):
    assert printable(raw) == kept


@given(st.text())
def test_any_text_has_a_width_and_can_be_written(text):
    assert width_mm(text, 3.0) >= 0
    printable(text).encode()


@given(st.text(), st.floats(0.0, 60.0))
def test_a_fitted_text_never_exceeds_its_room(text, room_mm):
    short = fitted(text, room_mm, 3.0)
    assert width_mm(short, 3.0) <= room_mm
    if width_mm(text, 3.0) <= room_mm:
        assert short == text


def test_a_text_cut_short_shows_it():
    assert fitted("the lamp beside the crane", 20.0, 3.0).endswith("…")


@given(st.text(alphabet="abc dW\n"), st.floats(10.0, 60.0))
def test_wrapped_lines_fit_and_lose_no_letter(text, room_mm):
    lines = wrapped(text, room_mm, 3.0)
    assert all(width_mm(line, 3.0) <= room_mm for line in lines)
    assert "".join(lines).replace(" ", "") == "".join(text.split())


def test_lines_break_between_words():
    assert wrapped("yellow and green", width_mm("yellow and", 3.0), 3.0) == ("yellow and", "green")


@pytest.mark.parametrize(("align", "left"), [("left", 100.0), ("centre", 71.0), ("right", 42.0)])
def test_a_box_stands_where_the_words_are_aligned(align, left):
    words = Words("0123456789", (100.0, 50.0), 10.0, align=align)
    assert words_box(words)[0] == pytest.approx(left)
    assert words_box(words)[2] == pytest.approx(left + 58.0)


@pytest.mark.parametrize(("stand", "caps"), [("base", 0.0), ("middle", 0.5), ("top", 1.0)])
def test_words_stand_on_cap_heights(stand, caps):
    on_base = words_box(Words("H", (0.0, 0.0), 10.0))
    box = words_box(Words("H", (0.0, 0.0), 10.0, stand=stand))
    assert box[1] - on_base[1] == pytest.approx(caps * cap_mm(10.0))


def test_turned_words_run_down_the_page():
    corners = words_corners(Words("0123456789", (100.0, 50.0), 10.0, turn_deg=90.0))
    assert corners[0][1] == pytest.approx(50.0)
    assert corners[1][1] == pytest.approx(108.0)
    assert corners[0][0] > corners[3][0]


def test_boxes_that_only_touch_do_not_overlap():
    assert not overlap((0, 0, 10, 10), (10, 0, 20, 10))
    assert overlap((0, 0, 10, 10), (9, 9, 20, 20))
