from xml.etree import ElementTree

import pytest

from wiring.pictures.metrics import cap_mm
from wiring.pictures.picture import Anchor, Disc, Link, Path, Pen, Picture, Words
from wiring.pictures.svg import svg_text
from wiring.pictures.theme import DARK, PAPER

SVG = "{http://www.w3.org/2000/svg}"


def parsed(*items, **fields):
    return ElementTree.fromstring(svg_text(Picture(items, 120.0, 80.0, **fields)).encode())


def test_the_document_is_its_size_in_millimetres():
    root = parsed(left_mm=-10.0, top_mm=-5.0)
    assert (root.get("width"), root.get("height")) == ("120mm", "80mm")
    assert root.get("viewBox") == "-10 -5 120 80"


def test_user_text_is_escaped_and_kept():
    root = parsed(Words('S1 <main> & "yard" $x$', (1.0, 2.0)), title="Quay & <crane>")
    assert root.find(f".//{SVG}text").text == 'S1 <main> & "yard" $x$'
    assert root.find(f"{SVG}title").text == "Quay & <crane>"


@pytest.mark.parametrize("text", ["\x00\x07", "a\ud800b", "\u202eשלום", "🙂", "", "]]>"])
def test_no_text_breaks_the_document(text):
    parsed(Words(text, (1.0, 2.0)), title=text)


def test_words_stand_where_asked():
    text = parsed(Words("H", (30.0, 20.0), 5.0, align="right", stand="middle")).find(f".//{SVG}text")
    assert text.get("text-anchor") == "end"
    assert float(text.get("y")) == pytest.approx(20.0 + cap_mm(5.0) / 2, abs=0.001)


def test_words_turn_about_their_own_point():
    text = parsed(Words("H", (30.0, 20.0), turn_deg=90.0)).find(f".//{SVG}text")
    assert text.get("transform") == "rotate(90 30 20)"


def test_a_ground_lies_under_its_words():
    group = parsed(Words("H", (30.0, 20.0), ground="paper")).find(f"{SVG}g")
    assert [child.tag.removeprefix(SVG) for child in group] == ["polygon", "text"]


def test_shapes_keep_their_pens_fills_and_dashes():
    root = parsed(
        Path(((0.0, 0.0), (10.0, 0.0), (10.0, 5.0)), Pen("copper", 0.5, (2.0, 1.0)), "lit", closed=True),
        Disc((5.0, 5.0), 2.0, 2.0, opacity=0.5),
        Disc((5.0, 5.0), 2.0, 1.0),
    )
    path = root.find(f".//{SVG}path")
    assert path.get("d") == "M0 0L10 0L10 5Z"
    assert path.get("stroke") == PAPER["copper"]
    assert path.get("fill") == PAPER["lit"]
    assert path.get("stroke-dasharray") == "2 1"
    assert root.find(f".//{SVG}circle").get("opacity") == "0.5"
    assert root.find(f".//{SVG}ellipse").get("ry") == "1"


def test_a_smooth_path_is_drawn_as_curves():
    points = ((0.0, 0.0), (1.0, 1.0), (2.0, 1.0), (3.0, 0.0))
    assert parsed(Path(points, smooth=True)).find(f".//{SVG}path").get("d") == "M0 0C1 1 2 1 3 0"


def test_what_only_pdf_knows_leaves_no_trace():
    assert list(parsed(Link(0, 0, 1, 1, "x"), Anchor("x", (0, 0))).find(f"{SVG}g")) == []


def test_a_theme_colours_the_same_picture():
    dark = svg_text(Picture((Path(((0, 0), (1, 1))),), 10.0, 10.0), DARK)
    assert DARK["paper"] in dark
    assert DARK["ink"] in dark
