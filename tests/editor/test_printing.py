"""Screen, PDF and printer show the same pictures: letters as measured, millimetres that are millimetres."""

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QSizeF, Qt
from PySide6.QtGui import QColor, QImage, QPageSize, QPainter, QPdfWriter
from PySide6.QtWidgets import QFileDialog
from support.editors import open_demo

from app.printing.print_pages import page_layout, paint_pages
from app.theme.fonts import load_fonts, picture_width
from app.theme.paint_picture import ASCENT_EM, CAP_EM, DESCENT_EM, paint_picture, pen_for
from wiring.pictures.metrics import ascent_mm, cap_mm, descent_mm, width_mm
from wiring.pictures.pdf import Page
from wiring.pictures.picture import Disc, Path, Pen, Picture, Words
from wiring.pictures.theme import PAPER

PX_PER_MM = 10


def painted(*items, width=40.0, height=20.0, left=0.0, top=0.0) -> QImage:
    load_fonts()
    image = QImage(round(width * PX_PER_MM), round(height * PX_PER_MM), QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    painter.scale(PX_PER_MM, PX_PER_MM)
    paint_picture(painter, Picture(items, width, height, left, top), PAPER)
    painter.end()
    return image


def ink_box(image: QImage) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of everything that is not white, in mm."""
    dark = [
        (x, y)
        for y in range(image.height())
        for x in range(image.width())
        if image.pixelColor(x, y).lightness() < 128
    ]
    xs, ys = [x for x, _ in dark], [y for _, y in dark]
    return min(xs) / PX_PER_MM, min(ys) / PX_PER_MM, (max(xs) + 1) / PX_PER_MM, (max(ys) + 1) / PX_PER_MM


@pytest.mark.parametrize("weight", ["regular", "semibold", "bold", "italic"])
@pytest.mark.parametrize("text", ["-E12", "AVATAR Te", "office ffl", "18.2 mA Ω µ"])
def test_letters_are_as_wide_on_screen_as_they_are_measured_for_paper(qapp, weight, text):
    load_fonts()
    assert picture_width(text, weight) == pytest.approx(width_mm(text, 1.0, weight), rel=2e-3)


@pytest.mark.parametrize("weight", ["regular", "semibold", "bold", "italic"])
def test_heights_written_down_are_those_of_the_typeface(weight):
    assert CAP_EM[weight] == pytest.approx(cap_mm(1.0, weight), abs=1e-3)
    assert pytest.approx(ascent_mm(1.0, weight), abs=1e-3) == ASCENT_EM
    assert pytest.approx(descent_mm(1.0, weight), abs=1e-3) == DESCENT_EM


@pytest.mark.parametrize("align", ["left", "centre", "right"])
def test_words_stand_where_they_are_aligned(qapp, align):
    width = width_mm("HHHH", 6.0)
    left, _, right, _ = ink_box(painted(Words("HHHH", (20, 10), 6.0, align=align)))
    starts = {"left": 20.0, "centre": 20 - width / 2, "right": 20 - width}[align]
    bearing = 0.09 * 6  # the white on either side of an H
    assert left == pytest.approx(starts + bearing, abs=0.2)
    assert right == pytest.approx(starts + width - bearing, abs=0.2)


@pytest.mark.parametrize(("stand", "top"), [("base", 10 - 4.3), ("middle", 10 - 2.15), ("top", 10.0)])
def test_words_stand_on_at_or_below_their_point(qapp, stand, top):
    _, found, _, bottom = ink_box(painted(Words("HHHH", (20, 10), 6.0, stand=stand)))
    assert found == pytest.approx(top, abs=0.15)
    assert bottom - found == pytest.approx(4.3, abs=0.15)


def test_turned_words_run_clockwise(qapp):
    left, top, right, bottom = ink_box(painted(Words("HHHH", (20, 2), 4.0, turn_deg=90)))
    assert bottom - top > 2 * (right - left)
    assert left > 19.5 and top > 1.9


def test_shapes_lie_where_they_are_drawn(qapp):
    box = ink_box(painted(Path(((5, 5), (35, 5), (35, 15), (5, 15)), Pen("ink", 0.4), closed=True)))
    assert box == pytest.approx((4.8, 4.8, 35.2, 15.2), abs=0.11)
    box = ink_box(painted(Disc((20, 10), 8, 4, Pen("ink", 0.0), fill="ink")))
    assert box == pytest.approx((12, 6, 28, 14), abs=0.11)


def test_a_picture_starts_at_its_own_corner(qapp):
    line = Path(((105, 55), (135, 55)), Pen("ink", 0.4))
    assert ink_box(painted(line, left=100.0, top=50.0))[1] == pytest.approx(4.8, abs=0.11)


def test_dashes_keep_their_millimetres_whatever_the_pen():
    assert pen_for(Pen("ink", 0.5, (2.0, 1.0)), PAPER).dashPattern() == [4.0, 2.0]
    assert pen_for(Pen("ink", 0.25, (2.0,)), PAPER).dashPattern() == [8.0, 8.0]
    assert pen_for(Pen("ink", 0.0), PAPER).style() is Qt.PenStyle.NoPen


def page(width: float, height: float) -> Page:
    return Page(
        Picture((Path(((10, 10), (110, 10)), Pen("ink", 0.4)), Words("-X1:3", (10, 20))), width, height)
    )


def test_printed_pages_have_their_own_size_and_a_line_its_length(qapp, tmp_path):
    load_fonts()
    target = QPdfWriter(str(tmp_path / "out.pdf"))
    target.setResolution(1200)
    assert paint_pages(target, 1200, [page(210, 297), page(297, 210)])
    first, second = PdfReader(tmp_path / "out.pdf").pages
    assert [round(float(first.mediabox.width)), round(float(first.mediabox.height))] == [595, 842]
    assert [round(float(second.mediabox.width)), round(float(second.mediabox.height))] == [842, 595]
    assert "-X1:3" in first.extract_text()
    assert list(first.images) == []


def test_a_printed_millimetre_lies_where_the_picture_has_it(qapp, tmp_path):
    """The line runs from 10 mm to 110 mm, 10 mm below the top: 28.35, 311.8 and 813.5 points in the PDF."""
    load_fonts()
    target = QPdfWriter(str(tmp_path / "out.pdf"))
    target.setResolution(1200)
    paint_pages(target, 1200, [page(210, 297)])
    (first,) = PdfReader(tmp_path / "out.pdf").pages
    drawn: list[tuple[float, float]] = []

    def visit(operator, operands, matrix, _text_matrix):
        if operator in (b"m", b"l") and len(operands) == 2:
            x, y = (float(v) for v in operands)
            a, b, c, d, e, f = matrix
            drawn.append((a * x + c * y + e, b * x + d * y + f))

    first.extract_text(visitor_operand_before=visit)
    assert drawn[0] == pytest.approx((28.35, 813.5), abs=0.6)
    assert drawn[1] == pytest.approx((311.8, 813.5), abs=0.6)


def test_letter_paper_is_recognised():
    layout = page_layout(page(215.9, 279.4))
    assert layout.pageSize().id() == QPageSize.PageSizeId.Letter
    assert layout.fullRectPoints().size().toTuple() == (612, 792)
    assert layout.pageSize().size(QPageSize.Unit.Millimeter).isNull() is False
    assert QSizeF(layout.pageSize().size(QPageSize.Unit.Millimeter)).width() == pytest.approx(215.9, abs=0.1)


def test_no_pages_print_nothing(tmp_path, qapp):
    assert not paint_pages(QPdfWriter(str(tmp_path / "out.pdf")), 1200, [])


def test_the_sheets_view_shows_every_page_and_saves_the_same(editor, tmp_path, monkeypatch):
    open_demo(editor)
    editor.window.show_view("sheets")
    sheets = editor.window.sheets_page
    assert sheets.list.model().rowCount() == len(sheets.pages) > 3
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", staticmethod(lambda *_a: (str(tmp_path / "quay"), ""))
    )
    editor.window.acts["save_pdf"].trigger()
    assert len(PdfReader(tmp_path / "quay.pdf").pages) == len(sheets.pages)
    sheets.list.setCurrentIndex(sheets.list.model().index(2, 0))
    assert sheets.picture._picture is sheets.pages[2].picture


def test_another_paper_makes_other_sheets(editor):
    open_demo(editor)
    editor.window.show_view("sheets")
    sheets = editor.window.sheets_page
    assert sheets.paper.currentText() == "Letter"
    sheets.paper.setCurrentText("A4")
    sheets.paper.activated.emit(0)
    assert editor.session.plan.habits.paper == "A4"
    sizes = {tuple(sorted((p.picture.width_mm, p.picture.height_mm))) for p in sheets.pages}
    assert sizes == {(210.0, 297.0)}


def test_an_empty_plan_is_told_that_there_is_nothing_to_print(editor):
    editor.window.show_view("sheets")
    editor.window.acts["print"].trigger()
    assert editor.notices.last is not None
    assert "place something" in editor.notices.last.text


def test_a_page_is_white_whatever_the_look(editor):
    open_demo(editor)
    editor.look.wear("dark")
    editor.window.show_view("sheets")
    view = editor.window.sheets_page.picture
    image = view.grab().toImage()
    corner = view.pixels(3, 3)
    assert image.pixelColor(corner.toPoint()) == QColor("#ffffff")
