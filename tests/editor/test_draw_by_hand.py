"""What lies under the parts, by keys and clicks alone: a picture, the board, joists, tracks, lengths."""

import math
import re

import pytest
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QFileDialog, QToolButton
from support.surfaces import CTRL

SVG = (
    b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 2"><rect width="4" height="2" fill="red"/></svg>'
)


@pytest.fixture
def told(hands):
    """What the hint line says, newest last."""
    words = []
    hands.view.wished.connect(words.append)
    yield words
    hands.view.wished.disconnect(words.append)


def choose_picture(hands, path, monkeypatch):
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (str(path), ""))
    hands.act("picture")


def pixel(hands, x, y) -> QColor:
    at = hands.view.px(x, y)
    return hands.view.grab().toImage().pixelColor(at.x(), at.y())


def redness(colour) -> int:
    return colour.red() - colour.blue()


def photo(folder):
    image = QImage(200, 100, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff0000"))
    assert image.save(str(folder / "photo.png"))
    return folder / "photo.png"


@pytest.mark.parametrize("media", ["png", "svg"])
def test_a_picture_is_laid_dimmed_brought_to_scale_and_nothing_grabs_it(hands, tmp_path, monkeypatch, media):
    (tmp_path / "tracks.svg").write_bytes(SVG)
    path = photo(tmp_path) if media == "png" else tmp_path / "tracks.svg"
    session, bare = hands.editor.session, pixel(hands, 423, 323)
    choose_picture(hands, path, monkeypatch)
    hands.key("Return")
    dimmed = pixel(hands, 423, 323)
    assert redness(dimmed) > redness(bare) + 60 and dimmed != QColor("#ff0000")
    old = session.plan.backdrop
    hands.click(300, 300)
    hands.click(400, 300)
    hands.words("50 cm")
    hands.key("Return")
    new = session.plan.backdrop
    assert new.mm_per_px == pytest.approx(5 * old.mm_per_px, rel=0.02)  # a pixel of the screen is 1.6 mm
    assert new.x_mm - 300 == pytest.approx(5 * (old.x_mm - 300), rel=0.02)
    hands.drag((150, 300), (420, 380))
    hands.act("select_all")
    hands.key("Right")
    hands.key("Del")
    assert session.plan.backdrop == new
    for step in ("Scale picture", "Lay picture under plan"):
        assert session.undo_label == step
        hands.act("undo")
    assert session.plan.backdrop is None and pixel(hands, 423, 323) == bare


def test_where_a_picture_is_kept_is_asked_once_and_only_where_there_is_a_choice(hands, tmp_path, monkeypatch):
    choose_picture(hands, photo(tmp_path), monkeypatch)
    ways = [b.text() for b in hands.view.choices.findChildren(QToolButton) if b.isVisible()]
    assert ways == ["In the plan"]
    hands.key("Return")
    hands.key("Esc")
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_args: (str(tmp_path / "quay.underboard"), "")
    )
    hands.act("save")
    choose_picture(hands, tmp_path / "photo.png", monkeypatch)
    ways = [b.text() for b in hands.view.choices.findChildren(QToolButton) if b.isVisible()]
    assert ways == ["In the plan", "Beside the plan"]
    hands.key("Space")
    hands.key("Return")
    hands.key("Esc")
    assert not hands.view.choices.isVisible() and hands.editor.session.plan.backdrop.path
    hands.act("save")
    assert not hands.view.choices.isVisible()


def test_board_joists_and_tracks_are_drawn_by_key_and_clicks(hands):
    hands.act("board")
    for corner in ((0, 100), (1000, 100), (1000, 600), (0, 600), (0, 100)):
        hands.click(*corner)
    hands.act("joist")
    hands.drag((0, 300), (1000, 300))
    hands.key("Esc")
    hands.key("Esc")
    hands.act("track")
    for point in ((100, 500), (500, 500), (900, 400)):
        hands.click(*point)
    hands.key("Return")
    plan = hands.editor.session.plan
    assert plan.board == ((0, 100), (1000, 100), (1000, 600), (0, 600))
    assert [(j.start, j.end) for j in plan.joists] == [((0, 300), (1000, 300))]
    assert plan.tracks == (((100, 500), (500, 500), (900, 400)),)
    assert pixel(hands, 300, 500) != pixel(hands, 300, 520)  # the track can be seen
    assert hands.view.tool == "select"


def test_lengths_are_measured_in_the_units_that_are_chosen(hands, told):
    hands.act("measure")
    hands.click(100, 300)
    hands.click(400, 700)
    assert any(re.match(r"(49.9|50|50.1) cm straight, .* across, .* down", words) for words in told)
    hands.key("Esc")
    hands.key("Esc")
    before = hands.view.grab(hands.view.rect().adjusted(0, 0, 0, 24 - hands.view.height())).toImage()
    hands.pick("Lengths in", "feet and inches")
    after = hands.view.grab(hands.view.rect().adjusted(0, 0, 0, 24 - hands.view.height())).toImage()
    assert hands.editor.session.plan.habits.units == "us" and before != after  # the upper ruler
    hands.view.setFocus()
    hands.act("measure")
    hands.click(0, 300)
    hands.click(304.8, 300)
    assert any("1 ft" in words or "12 in" in words for words in told), told[-3:]


def test_parts_come_to_the_grid_or_into_line_and_with_ctrl_to_neither(hands):
    hands.place("warm white", (303, 252))
    hands.key("Esc")
    hands.view.zoom(2.0)
    part = next(iter(hands.editor.session.plan.parts))
    assert (part_at(hands, part)) == (305, 250)
    hands.drag((305, 250), (311.5, 256.5), CTRL)
    x, y = part_at(hands, part)
    assert (x % 5, y % 5) != (0, 0)
    hands.place("toggle", (x + 2, 402))
    switch = list(hands.editor.session.plan.parts)[-1]
    assert part_at(hands, switch) == (x, 400)


def test_parts_come_to_lie_on_tracks_and_edges_near_by_and_with_ctrl_beside_them(hands):
    hands.act("track")
    for point in ((100, 500), (500, 300)):
        hands.click(*point)
    hands.key("Return")
    ((start, end),) = hands.editor.session.plan.tracks
    hands.place("warm white", (303, 396))
    x, y = part_at(hands, list(hands.editor.session.plan.parts)[-1])
    off = (end[0] - start[0]) * (y - start[1]) - (end[1] - start[1]) * (x - start[0])
    assert abs(off) / math.dist(start, end) < 0.01  # on the line, within a hundredth of a millimetre
    assert math.dist((x, y), (303, 396)) < 8
    hands.click(203, 444, CTRL)
    beside = part_at(hands, list(hands.editor.session.plan.parts)[-1])
    assert math.dist(beside, (203, 444)) < 1.5
    hands.key("Esc")
    hands.act("board")
    for corner in ((0, 100), (1003, 100), (1003, 600), (0, 600), (0, 100)):
        hands.click(*corner)
    edge = max(x for x, _ in hands.editor.session.plan.board)
    hands.drag((x, y), (edge - 3, 213))
    assert part_at(hands, next(iter(hands.editor.session.plan.parts)))[0] == edge


def part_at(hands, part):
    found = hands.editor.session.plan.parts[part]
    return found.x_mm, found.y_mm
