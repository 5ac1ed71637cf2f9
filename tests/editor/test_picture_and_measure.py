"""A picture under the plan: chosen, kept, brought to scale, never lost; and measuring."""

import base64
import random

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QToolButton
from support.editors import close_editor, made_editor
from support.surfaces import LEFT, desk

from app.canvas.backdrop_box import backdrop_box
from app.canvas.picture_ways import MOST_INSIDE
from wiring.edits.backdrop import lay_backdrop, set_backdrop
from wiring.edits.move import move
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.store import load, save
from wiring.plan.backdrop import Backdrop
from wiring.plan.plan import Plan

__all__ = ["desk"]
Key = Qt.Key
SVG = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>'


def picture(folder, name="quay.png", size=(200, 100), colour="#ff0000"):
    image = QImage(*size, QImage.Format.Format_RGB32)
    image.fill(QColor(colour))
    assert image.save(str(folder / name))
    return folder / name


def lay(desk, path, choice=0):
    desk.view.lay_picture(path)
    button = desk.view.choices.findChild(QToolButton, f"choice{choice}")
    QTest.mouseClick(button, LEFT)
    desk.key(Key.Key_Return)
    return desk.plan.backdrop


def colour_at(desk, x, y) -> QColor:
    at = desk.px(x, y)
    return desk.shot().pixelColor(at.x(), at.y())


def redness(colour) -> int:
    return colour.red() - colour.blue()


@pytest.mark.parametrize("name", ["quay.png", "quay.jpg"])
def test_a_picture_lies_dimmed_under_the_plan_and_cannot_be_grabbed(desk, tmp_path, name):
    before = colour_at(desk, 423, 123)
    lain = lay(desk, picture(tmp_path, name))
    assert lain.data and not lain.path and desk.session.undo_label == "Lay picture under plan"
    after = colour_at(desk, 423, 123)
    assert redness(after) > redness(before) + 60 and after != QColor("#ff0000")
    desk.click(700, 120)
    assert desk.selection.ids == set()
    assert decode(encode(desk.plan)) == desk.plan
    desk.session.undo()
    assert desk.plan.backdrop is None and colour_at(desk, 423, 123) == before


def test_a_drawing_is_taken_too(desk, tmp_path):
    path = tmp_path / "tracks.svg"
    path.write_bytes(SVG)
    lain = lay(desk, path)
    assert (lain.media, lain.width_px / lain.height_px) == ("image/svg+xml", 2.0)


def test_two_points_and_their_distance_bring_it_to_scale(desk, tmp_path):
    old = lay(desk, picture(tmp_path))
    desk.view.begin_calibrate()
    desk.click(200, 200)
    desk.click(203, 200)  # too near to be meant
    desk.click(300, 200)
    QTest.keyClicks(desk.view, "50 cmx")
    desk.key(Key.Key_Backspace)
    desk.key(Key.Key_Return)
    new = desk.plan.backdrop
    assert new.mm_per_px == pytest.approx(5 * old.mm_per_px)
    assert new.x_mm - 200 == pytest.approx(5 * (old.x_mm - 200), abs=0.01)
    assert desk.view.tool == "select"


def test_a_picture_that_grows_beyond_sight_by_its_scale_is_brought_into_sight(desk, tmp_path):
    lay(desk, picture(tmp_path))
    desk.click(200, 200)
    desk.click(300, 200)
    QTest.keyClicks(desk.view, "3 m")
    desk.key(Key.Key_Return)
    box, seen = backdrop_box(desk.plan.backdrop), desk.view.sight().visible
    assert (
        seen.left <= box.left
        and box.right <= seen.right
        and seen.top <= box.top
        and box.bottom <= seen.bottom
    )
    scale = desk.view.sight().camera.scale
    desk.view.zoom(4.0)
    desk.session.do(set_backdrop(strength=0.2))
    assert desk.view.sight().camera.scale == pytest.approx(4 * scale)  # and only then


def photograph(folder, name, size, quality=95):
    """Return a picture no file makes small."""
    image = QImage(*size, QImage.Format.Format_RGB32)
    image.bits()[:] = random.Random(1).randbytes(image.sizeInBytes())
    assert image.save(str(folder / name), None, quality)
    return folder / name


def test_a_photograph_larger_than_is_shown_is_taken_and_kept_as_a_smaller_copy(desk, tmp_path):
    path = tmp_path / "large.jpg"
    image = QImage(8000, 60, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff0000"))
    assert image.save(str(path))
    lain = lay(desk, path)
    assert (lain.width_px, lain.height_px) == (8000, 60) and lain.data
    assert desk.view.sight().picture[0].width() == 4096
    wide = backdrop_box(lain)
    assert (wide.right - wide.left) / (wide.bottom - wide.top) == pytest.approx(8000 / 60, rel=0.01)


def test_a_photograph_of_many_bytes_is_kept_in_a_plan_without_saving_first(desk, tmp_path):
    path = photograph(tmp_path, "many.png", (1500, 1000))
    assert path.stat().st_size > MOST_INSIDE
    desk.view.lay_picture(path)
    button = desk.view.choices.findChild(QToolButton, "choice0")
    assert "as a copy of 1500 × 1000 pixels" in button.toolTip()
    desk.key(Key.Key_Return)
    lain = desk.plan.backdrop
    assert lain.media == "image/jpeg" and len(base64.b64decode(lain.data)) <= MOST_INSIDE
    assert decode(encode(desk.plan)) == desk.plan


def test_a_photograph_stands_upright_as_the_camera_was_held(desk, tmp_path):
    lain = lay(desk, turned_photograph(tmp_path))
    assert (lain.width_px, lain.height_px) == (30, 60)
    whole = desk.view.sight().picture[0]
    assert (whole.width(), whole.height()) == (30, 60)


def turned_photograph(folder):
    """Return a JPEG of 60 by 30 pixels whose Exif says that its right side is up (orientation 6)."""
    plain = picture(folder, "turned.jpg", (60, 30)).read_bytes()
    # Exif 2.3, 4.5.4 and 4.6.4: marker APP1, a TIFF header and one entry, tag 0x0112, SHORT, one value
    tiff = b"MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0"
    body = b"Exif\0\0" + tiff
    app1 = b"\xff\xe1" + (len(body) + 2).to_bytes(2, "big") + body
    path = folder / "turned.jpg"
    path.write_bytes(plain[:2] + app1 + plain[2:])
    return path


def test_a_picture_chosen_again_lies_where_the_lost_one_lay(desk, tmp_path):
    there = Backdrop(
        media="image/png",
        path="gone.png",
        width_px=400,
        height_px=200,
        x_mm=70,
        y_mm=30,
        mm_per_px=2.5,
        turn_deg=90,
    )
    desk.session.do(lay_backdrop(there))
    lain = lay(desk, picture(tmp_path))  # 200 by 100
    assert backdrop_box(lain) == pytest.approx(backdrop_box(there)) and lain.turn_deg == 90
    assert desk.view.tool == "select"  # it is to scale already


def test_a_picture_just_laid_waits_for_its_scale_and_escape_leaves_it(desk, tmp_path):
    lain = lay(desk, picture(tmp_path))
    assert desk.view.tool == "picture" and desk.hints[-1].startswith("Click a point on the picture")
    desk.click(200, 200)
    desk.key(Key.Key_Escape)
    assert desk.view.tool == "select" and desk.plan.backdrop == lain


def test_enter_waits_for_a_length_and_escape_leaves_the_scale(desk, tmp_path):
    old = lay(desk, picture(tmp_path))
    desk.view.begin_calibrate()
    desk.click(200, 200)
    desk.click(300, 200)
    desk.key(Key.Key_Return)
    assert desk.plan.backdrop == old and desk.view.tool == "calibrate"
    desk.key(Key.Key_Escape)
    assert desk.plan.backdrop == old and desk.view.tool == "select"


def test_the_picture_alone_is_moved_by_a_drag_until_escape(desk, tmp_path):
    old = lay(desk, picture(tmp_path))
    desk.key(Key.Key_Escape)
    parts = desk.plan.parts
    desk.view.begin_shift_picture()
    assert desk.hints[-1].startswith("Drag to move the picture")
    desk.click(200, 200)
    assert desk.plan.backdrop == old  # a click moves nothing
    desk.press(200, 200)
    desk.move(260, 180)
    assert desk.plan.backdrop == old
    desk.release(260, 180)
    new = desk.plan.backdrop
    assert (new.x_mm - old.x_mm, new.y_mm - old.y_mm) == (pytest.approx(60), pytest.approx(-20))
    assert desk.plan.parts is parts and desk.session.undo_label == "Move picture"
    assert desk.view.tool == "picture"
    desk.press(200, 200)
    desk.move(300, 300)
    desk.key(Key.Key_Escape)
    desk.key(Key.Key_Escape)
    assert desk.plan.backdrop == new and desk.view.tool == "select"
    desk.session.undo()
    assert desk.plan.backdrop == old


def test_what_is_no_picture_is_refused_in_one_sentence(desk, tmp_path):
    told = []
    desk.session.refused.connect(told.append)
    (tmp_path / "a.txt").write_text("words")
    (tmp_path / "b.png").write_bytes(b"not a picture")
    for name in ("a.txt", "b.png", "gone.png"):
        desk.view.lay_picture(tmp_path / name)
    assert ["PNG, JPEG or SVG" in told[0], "damaged" in told[1], "cannot be read" in told[2]] == [True] * 3
    desk.view.begin_calibrate()
    desk.view.begin_shift_picture()
    assert told[3] == told[4] and "choose one first" in told[3] and not desk.view.choices.isVisible()


def test_a_picture_beside_the_plan_goes_along_when_the_plan_is_saved_elsewhere(editor, tmp_path, monkeypatch):
    home, away = tmp_path / "home", tmp_path / "away"
    home.mkdir()
    away.mkdir()
    source = picture(tmp_path, "photo.png")
    documents, view = editor.window.documents, editor.window.plan_view
    names = iter([home / "a.underboard", away / "b.underboard"])
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(next(names)), ""))
    assert documents.save_as()
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (str(source), ""))
    editor.window.acts["picture"].trigger()
    QTest.keyClick(view, Key.Key_Space)
    QTest.keyClick(view, Key.Key_Return)
    assert editor.session.plan.backdrop.path == "photo.png"
    assert (home / "photo.png").read_bytes() == source.read_bytes()
    source.unlink()
    assert documents.save_as()
    assert (away / "photo.png").read_bytes() == (home / "photo.png").read_bytes()
    told = []
    editor.session.faulted.connect(told.append)
    editor.session.open(load(away / "b.underboard"), away / "b.underboard")
    assert told == [] and len(view._state.pictures.levels()) >= 1


def test_a_picture_that_is_gone_is_told_when_the_plan_is_opened(editor, tmp_path, monkeypatch):
    path = tmp_path / "a.underboard"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(path), ""))
    editor.window.documents.save_as()
    editor.window.plan_view.lay_picture(picture(tmp_path, "photo.png"))
    QTest.keyClick(editor.window.plan_view, Key.Key_Space)
    QTest.keyClick(editor.window.plan_view, Key.Key_Return)
    editor.window.documents.save()
    (tmp_path / "photo.png").unlink()
    other = made_editor(tmp_path)
    told = []
    other.session.faulted.connect(told.append)
    other.session.open(load(path), path)
    assert told == ["The picture photo.png is not beside the plan any more; put it back or choose it again."]
    close_editor(other)


def test_two_plans_whose_pictures_have_one_name_show_each_its_own(editor, tmp_path):
    for folder, colour in (("red", "#ff0000"), ("blue", "#0000ff")):
        (tmp_path / folder).mkdir()
        picture(tmp_path / folder, "photo.png", colour=colour)
        backdrop = Backdrop(media="image/png", path="photo.png", width_px=200, height_px=100)
        path = tmp_path / folder / "a.underboard"
        save(lay_backdrop(backdrop).apply(Plan()), path)
        assert editor.window.documents.open_path(path)
        shown = editor.window.plan_view._state.pictures.levels()[0].toImage().pixelColor(5, 5)
        assert shown.name() == colour
    (tmp_path / "red" / "photo.png").unlink()
    assert editor.window.documents.open_path(tmp_path / "red" / "a.underboard")
    assert editor.window.plan_view._state.pictures.levels() == ()
    assert not (tmp_path / "red" / "photo.png").exists()


def test_a_damaged_picture_in_a_plan_is_told_once(desk):
    told = []
    desk.session.faulted.connect(told.append)
    broken = Backdrop(media="image/png", data="AAAA", width_px=10, height_px=10)
    desk.session.open(lay_backdrop(broken).apply(desk.plan), None)
    desk.session.do(move(["p1"], 5, 5))
    assert told == ["The picture kept in this plan is damaged; choose it again."]
    assert desk.view.sight().picture == ()


def test_measuring_tells_the_distance_from_middle_to_middle(desk):
    desk.view.begin_measure()
    desk.click(101, 300)  # the battery's middle is at 100, 300
    desk.move(400, 700)
    assert desk.hints[-1].startswith("50 cm straight, 30 cm across, 40 cm down")
    desk.click(400, 700)
    desk.move(400, 600)
    assert "60 cm in all" in desk.hints[-1]
    before = desk.plan
    desk.key(Key.Key_Escape)
    desk.key(Key.Key_Escape)
    assert desk.view.tool == "select" and desk.plan is before
