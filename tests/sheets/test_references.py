"""References between sheets: both ways, to the zone where the other end is drawn, with links in the PDF."""

import io
import re
from datetime import date
from pathlib import Path as FilePath

import pypdf
import pytest
from support.editing import KINDS

from wiring.drawings.circuit_drawing import circuit_drawings
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.pdf import pdf_bytes
from wiring.pictures.picture import Words
from wiring.sheets.page import zone
from wiring.sheets.paper import sheet
from wiring.sheets.sheet_set import sheet_set

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
TODAY = date(2026, 3, 14)
PT = 72 / 25.4
PLACE = re.compile(r"(\d+)/([A-Z]\d)( \+\d+)?$")


@pytest.fixture(scope="module")
def situation():
    return examine(load(DEMOS / "harbour.underboard"), KINDS, today=TODAY)


@pytest.fixture(scope="module")
def pages(situation):
    return sheet_set(situation, "A4", TODAY)


def kind_of(page):
    return page.picture.title.split(": ")[-1].split(",")[0]


def places(page):
    return [w for w in page.picture.items if isinstance(w, Words) and PLACE.match(w.text)]


def sheet_of(page):
    return sheet("A4", landscape=page.picture.width_mm > page.picture.height_mm)


@pytest.mark.parametrize(
    "point, name",
    [((21.0, 11.0), "A1"), ((286.0, 199.0), "D6"), ((153.4, 104.9), "B3"), ((153.6, 105.1), "C4")],
)
def test_a_zone_is_the_one_printed_in_the_border(point, name):
    assert zone(sheet("A4", landscape=True), point) == name


def test_every_wire_of_the_bench_list_says_where_it_is_drawn_twice(situation, pages):
    bench = [p for p in pages if kind_of(p) == "Bench list"]
    assert sum(len(places(p)) for p in bench) == 2 * len(situation.plan.wires)


def test_a_wire_is_written_beside_the_place_the_list_names(situation, pages):
    wires = {w.label: w for w in situation.plan.wires.values()}
    checked = 0
    for page in pages:
        if kind_of(page) != "Bench list":
            continue
        words = [w for w in page.picture.items if isinstance(w, Words)]
        for label in (w for w in words if w.text in wires):
            row = [w for w in words if abs(w.at[1] - label.at[1]) < 0.01 and PLACE.match(w.text)]
            for place in row:
                number, area, _ = PLACE.match(place.text).groups()
                told = pages[int(number) - 1]
                near = [
                    w
                    for w in told.picture.items
                    if isinstance(w, Words) and re.search(rf"\b{label.text}\b", w.text)
                ]
                if kind_of(told) == "Circuit drawing":  # on a crowded plan not every wire has room for words
                    assert any(close(zone(sheet_of(told), w.at), area) for w in near), (
                        label.text,
                        place.text,
                    )
                checked += 1
    assert checked == 2 * len(wires)


def close(one, other):
    """The words of a wire stand beside its mark: in the same zone or the next."""
    return abs(ord(one[0]) - ord(other[0])) <= 1 and abs(int(one[1:]) - int(other[1:])) <= 1


def before(page, place):
    """The words that a reference follows: over it where a net comes in, else on its line."""
    words = [w for w in page.picture.items if isinstance(w, Words) and not PLACE.match(w.text)]
    if place.align == "right":
        found = [w for w in words if 0 < place.at[1] - w.at[1] < 4 and abs(w.at[0] - place.at[0]) < 0.5]
        return found[-1].text if found else ""
    found = [w for w in words if 0 < place.at[0] - words_box(w)[2] < 1.6 and same_line(w, place)]
    return found[-1].text if found else ""


def same_line(one, other):
    (_, top, _, bottom), (_, other_top, _, other_bottom) = words_box(one), words_box(other)
    return top < (other_top + other_bottom) / 2 < bottom


def circuit_places(pages):
    """Every reference on a circuit drawing: its sheet, its own zone, and the words it follows."""
    for number, page in enumerate(pages, start=1):
        if kind_of(page) == "Circuit drawing":
            for place in places(page):
                yield number, f"{number}/{zone(sheet_of(page), place.at)}", before(page, place), place.text


def test_nets_refer_both_ways(pages):
    """Where a net comes in, or an idle throw leads to it, its home is told; its list names them all."""
    told: dict[str, set[str]] = {}
    asked: dict[str, set[str]] = {}
    for page in pages:
        for word in page.picture.items:
            if isinstance(word, Words) and (match := re.match(r"(-\S+) goes on: (.*)", word.text)):
                for part in match[2].split(", "):
                    head, _, zones = part.partition("/")
                    told.setdefault(match[1], set()).update(f"{head}/{z}" for z in zones.strip(",").split())
    for _, own, words, _ in circuit_places(pages):
        if words.startswith("-") or "→" in words:
            asked.setdefault(words.split("→")[-1].strip(), set()).add(own)
    assert len(told) >= 8
    for name, where in told.items():
        near = {f"{p.split('/')[0]}/{a}" for p in asked[name] for a in round_about(p.split("/")[1])}
        assert where <= near, name


def round_about(area):
    """A zone and those beside it: a mark at a zone's edge has its words in the next."""
    row, column = ord(area[0]), int(area[1:])
    return {f"{chr(row + r)}{column + c}" for r in (-1, 0, 1) for c in (-1, 0, 1)}


def test_poles_drawn_apart_refer_to_each_other(pages):
    """Each pole says where the first one is, and the first where each of the others: there and back again."""
    told = [(own, text, words) for _, own, words, text in circuit_places(pages) if words.startswith("see ")]
    assert len(told) == 2 * 14  # switches of two poles
    for own, text, words in told:
        back = {f"{text.split('/')[0]}/{a}" for a in round_about(text.split("/")[1])}
        assert any(o in back and close_to(t, own) for o, t, _ in told), (own, words, text)


def close_to(place, other):
    (sheet_one, one), (sheet_two, two) = place.split("/"), other.split("/")
    return sheet_one == sheet_two and one in round_about(two)


def test_references_are_links_that_lead_to_the_sheet_they_name(pages):
    reader = pypdf.PdfReader(io.BytesIO(pdf_bytes(pages)))
    sheets = {p.indirect_reference.idnum: i for i, p in enumerate(reader.pages, start=1)}
    checked = 0
    for page, printed in zip(pages, reader.pages, strict=True):
        links = [a.get_object() for a in printed.get("/Annots", ())]
        for place in places(page):
            x, y = place.at[0] * PT, (page.picture.height_mm - place.at[1]) * PT
            over = [k for k in links if k["/Rect"][0] - 1 <= x <= k["/Rect"][2] + 1]
            over = [k for k in over if k["/Rect"][1] - 1 <= y <= k["/Rect"][3] + 1]
            reached = {sheets[k["/Dest"][0].idnum] for k in over}
            assert int(place.text.split("/")[0]) in reached, (page.picture.title, place.text)
            checked += 1
    assert checked > 800


def test_no_words_lie_on_other_words_on_any_sheet_of_the_whole_layout(pages):
    for page in pages:
        words = [w for w in page.picture.items if isinstance(w, Words) and w.text.strip()]
        boxes = sorted((words_box(w), w.text) for w in words)  # from left to right
        for i, (one, text) in enumerate(boxes):
            for other, more in boxes[i + 1 :]:
                if other[0] >= one[2]:
                    break
                assert not overlap(one, other, 0.45), (page.picture.title, text, more)


def test_a_drawing_by_itself_holds_no_reference(situation):
    s = situation
    for drawing in circuit_drawings(s.plan, s.kinds, s.positions, s.figures):
        assert not [w for w in drawing.picture.items if isinstance(w, Words) and PLACE.match(w.text)]
