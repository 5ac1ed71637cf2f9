import io
import re
import shutil
import subprocess
from pathlib import Path as FilePath

import pypdf
import pytest

from wiring.pictures.metrics import width_mm, words_box
from wiring.pictures.pdf import Page, pdf_bytes
from wiring.pictures.picture import Anchor, Disc, Link, Path, Pen, Picture, Words

MM = 25.4 / 72
poppler = pytest.mark.skipif(shutil.which("pdftotext") is None, reason="poppler is not installed")
WEIGHTS = ("regular", "semibold", "bold", "italic")


def picture(*items, **fields):
    return Picture(items, 210.0, 297.0, **fields)


def read(*pages, **fields):
    return pypdf.PdfReader(io.BytesIO(pdf_bytes([Page(p) for p in pages], **fields)))


def boxes(path):
    """Words of a file as poppler places them: text to left, top, right, bottom in mm."""
    page = subprocess.run(["pdftotext", "-bbox", path, "-"], capture_output=True, text=True, check=True)
    pattern = r'<word xMin="(\S+)" yMin="(\S+)" xMax="(\S+)" yMax="(\S+)">(.*)</word>'
    return {m[4]: tuple(float(v) * MM for v in m[:4]) for m in re.findall(pattern, page.stdout)}


def test_a_page_is_as_large_as_its_picture():
    box = read(picture()).pages[0].mediabox
    assert float(box.width) * MM == pytest.approx(210.0, abs=0.001)
    assert float(box.height) * MM == pytest.approx(297.0, abs=0.001)


def test_a_line_keeps_its_length_in_the_page_content():
    content = read(picture(Path(((20.0, 30.0), (120.0, 30.0))))).pages[0].get_contents().get_data().decode()
    x1, y1, x2, y2 = (float(v) * MM for v in re.search(r"(\S+) (\S+) m (\S+) (\S+) l", content).groups())
    assert x2 - x1 == pytest.approx(100.0, abs=0.001)
    assert (x1, y1, y2) == pytest.approx((20.0, 267.0, 267.0), abs=0.001)


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="poppler is not installed")
def test_a_hundred_millimetre_line_measures_a_hundred_on_the_raster(tmp_path):
    (tmp_path / "a.pdf").write_bytes(
        pdf_bytes([Page(picture(Path(((20.0, 30.0), (120.0, 30.0)), Pen("#000000", 0.5))))])
    )
    done = subprocess.run(
        [
            "pdftoppm",
            *["-r", "1270", "-gray", "-y", "1490", "-H", "20", "-x", "0", "-W", "10500"],
            str(tmp_path / "a.pdf"),
        ],
        capture_output=True,
        check=True,
    ).stdout
    header = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", done)
    width = int(header[1])
    row = done[header.end() + 10 * width :][:width]
    inked = [i for i, grey in enumerate(row) if grey < 128]
    assert len(inked) / 50 == pytest.approx(100.0, abs=0.05)  # 50 dots a millimetre
    assert inked[0] / 50 == pytest.approx(20.0, abs=0.05)


@poppler
@pytest.mark.parametrize("weight", WEIGHTS)
@pytest.mark.parametrize("align", ["left", "centre", "right"])
def test_text_lands_where_asked_and_as_wide_as_measured(tmp_path, align, weight):
    words = Words("Harbour22AWG", (100.0, 50.0), 4.0, align=align, weight=weight)
    (tmp_path / "a.pdf").write_bytes(pdf_bytes([Page(picture(words))]))
    found = boxes(tmp_path / "a.pdf")["Harbour22AWG"]
    asked = words_box(words)
    assert found[0] == pytest.approx(asked[0], abs=0.05)
    assert found[2] == pytest.approx(asked[2], abs=0.05)
    assert found[3] == pytest.approx(asked[3], abs=0.3)


@poppler
def test_turned_text_runs_down_the_page(tmp_path):
    (tmp_path / "a.pdf").write_bytes(
        pdf_bytes([Page(picture(Words("Harbour", (100.0, 50.0), 4.0, turn_deg=90.0)))])
    )
    left, top, right, bottom = boxes(tmp_path / "a.pdf")["Harbour"]
    assert top == pytest.approx(50.0, abs=0.05)
    assert bottom - top == pytest.approx(width_mm("Harbour", 4.0), abs=0.05)
    assert right - left < bottom - top


@pytest.mark.skipif(shutil.which("pdffonts") is None, reason="poppler is not installed")
def test_every_font_is_embedded_as_a_subset(tmp_path):
    words = [Words(f"Ω {w}", (10.0, 10.0 * i), weight=w) for i, w in enumerate(WEIGHTS, 1)]
    (tmp_path / "a.pdf").write_bytes(pdf_bytes([Page(picture(*words))]))
    told = subprocess.run(["pdffonts", tmp_path / "a.pdf"], capture_output=True, text=True, check=True).stdout
    rows = told.splitlines()[2:]
    assert len(rows) == 4
    assert all(re.search(r"yes yes yes", row) for row in rows)


def test_nothing_is_a_raster_image():
    page = read(picture(Disc((50.0, 50.0), 5.0, 5.0, fill="lit", opacity=0.4), Words("x", (1.0, 9.0)))).pages[
        0
    ]
    assert list(page.images) == []


@pytest.mark.parametrize("text", ["🙂", "שלום", "\x00", "a\ud800b", "e\u0301", "Ω µ × − °", ""])
def test_no_text_stops_the_writing(text):
    page = read(picture(Words(text, (10.0, 10.0)), title=text), title=text, author=text).pages[0]
    assert isinstance(page.extract_text(), str)


def test_a_sign_the_typeface_lacks_is_a_visible_box_between_its_neighbours():
    page = read(picture(Words("lamp 🙂 lit", (10.0, 10.0)))).pages[0]
    assert " re " in page.get_contents().get_data().decode()
    assert page.extract_text().split() == ["lamp", "lit"]


def test_bookmarks_links_and_metadata():
    first = picture(Words("see -E4", (10.0, 10.0)), Link(10.0, 5.0, 20.0, 6.0, "-E4"))
    second = picture(Anchor("-E4", (40.0, 60.0)))
    data = pdf_bytes([Page(first, "Bench list"), Page(second, "Circuit – Ω", 1)], "Quay", "The builder")
    reader = pypdf.PdfReader(io.BytesIO(data))
    assert reader.metadata.title == "Quay"
    assert reader.metadata.author == "The builder"
    assert reader.outline[0].title == "Bench list"
    assert reader.outline[1][0].title == "Circuit – Ω"
    rectangle = [float(v) * MM for v in reader.pages[0]["/Annots"][0].get_object()["/Rect"]]
    assert rectangle == pytest.approx([10.0, 286.0, 30.0, 292.0], abs=0.01)


def test_readers_show_the_number_a_sheet_bears_where_it_is_not_its_place_in_the_file():
    pages = [Page(picture(), "What changed", label="B1"), Page(picture(), "Bench list", label="17")]
    assert pypdf.PdfReader(io.BytesIO(pdf_bytes(pages))).page_labels == ["B1", "17"]
    plain = [Page(picture(), label="1"), Page(picture(), label="2")]
    assert "/PageLabels" not in pypdf.PdfReader(io.BytesIO(pdf_bytes(plain))).root_object


def test_nothing_of_this_machine_stands_in_the_file():
    data = pdf_bytes([Page(picture(Words("Quay", (10.0, 10.0))), "Quay")], "Quay", "The builder")
    for sign in (b"/home", b"/tmp", b"/work", str(FilePath.cwd()).encode()):
        assert sign not in data
    assert set(pypdf.PdfReader(io.BytesIO(data)).metadata) == {
        "/Author",
        "/CreationDate",
        "/Creator",
        "/Keywords",
        "/ModDate",
        "/Producer",
        "/Subject",
        "/Title",
        "/Trapped",
    }


def test_a_link_to_nowhere_is_left_out():
    assert "/Annots" not in read(picture(Link(0.0, 0.0, 5.0, 5.0, "nowhere"))).pages[0]


def test_equal_pages_give_equal_bytes_when_asked():
    pages = [Page(picture(Words("Quay", (10.0, 10.0))), "Quay")]
    assert pdf_bytes(pages, repeatable=True) == pdf_bytes(pages, repeatable=True)


def test_a_picture_may_start_anywhere():
    shifted = picture(Path(((-10.0, -20.0), (0.0, -20.0))), left_mm=-10.0, top_mm=-20.0)
    content = read(shifted).pages[0].get_contents().get_data().decode()
    x1, y1 = (float(v) * MM for v in re.search(r"(\S+) (\S+) m ", content).groups())
    assert (x1, y1) == pytest.approx((0.0, 297.0), abs=0.001)


def test_no_page_is_refused_in_plain_words():
    with pytest.raises(ValueError, match="no page"):
        pdf_bytes([])
