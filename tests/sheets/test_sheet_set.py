import io
import re
from datetime import date
from pathlib import Path as FilePath

import pypdf
import pytest
from msgspec.structs import replace
from support.editing import KINDS, quay

from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.pdf import pdf_bytes
from wiring.pictures.picture import Words
from wiring.plan.plan import Plan
from wiring.sheets.paper import PAPERS
from wiring.sheets.sheet_set import sheet_set

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
TODAY = date(2026, 3, 14)
ODD = ['<&">', "🚂🔥", "מנורה על הרציף", "x" * 200, "", "=cmd", "line\nbreak", "a\u202eb", "W\u0000"]


@pytest.fixture(scope="module")
def sets():
    made = {}
    for name, paper in (("quay", "Letter"), ("siding", "A4")):
        plan = load(DEMOS / f"{name}.underboard")
        made[name, paper] = sheet_set(examine(plan, KINDS, today=TODAY), paper, TODAY)
    made["tiny", "A3"] = sheet_set(examine(quay(), KINDS, today=TODAY), "A3", TODAY)
    made["tiny", "A4"] = sheet_set(examine(quay(), KINDS, today=TODAY), "A4", TODAY)
    return made


@pytest.fixture(scope="module")
def readers(sets):
    return {key: pypdf.PdfReader(io.BytesIO(pdf_bytes(pages))) for key, pages in sets.items()}


def words_of(page):
    return [i for i in page.picture.items if isinstance(i, Words) and i.text.strip()]


def frame_of(page):
    return 20.0, 10.0, page.picture.width_mm - 10.0, page.picture.height_mm - 10.0


def test_words_stay_inside_the_frame(sets):
    for pages in sets.values():
        for page in pages:
            left, top, right, bottom = frame_of(page)
            for words in words_of(page):
                x1, y1, x2, y2 = words_box(words)
                if words.size_mm == 2.6 and len(words.text) == 1:
                    continue  # the name of a zone stands in the border
                assert x1 >= left - 0.01 and y1 >= top - 0.01 and x2 <= right + 0.01 and y2 <= bottom + 0.3, (
                    words
                )


def test_no_words_lie_on_other_words(sets):
    for pages in sets.values():
        for page in pages:
            if page.picture.title.split(":")[-1].strip().startswith("Circuit"):
                continue  # the circuit drawings have their own test
            boxes = sorted((words_box(w), w.text) for w in words_of(page))  # from left to right
            for i, (one, text) in enumerate(boxes):
                for other, more in boxes[i + 1 :]:
                    if other[0] >= one[2]:
                        break
                    assert not overlap(one, other, 0.45), (page.picture.title, text, more)


def test_lists_are_set_large_enough_to_read_at_arms_length(sets):
    for pages in sets.values():
        for page in pages:
            kind = page.picture.title.split(": ")[-1]
            if kind.startswith(("Bench", "Cut", "Parts", "Terminal", "Meter", "Safety", "Summary")):
                body = [w for w in words_of(page) if w.at[1] < page.picture.height_mm - 45 and w.at[1] > 12]
                assert min(w.size_mm for w in body if w.at[0] > 20 and w.at[0] < frame_of(page)[2]) >= 3.0


def test_nothing_but_wire_labels_and_small_fronts_is_set_smaller_than_seven_points(sets):
    for (_, paper), pages in sets.items():
        for page in pages:
            kind = page.picture.title.split(": ")[-1]
            least = 5.9 if "front" in kind or "label" in kind else 7.0 if paper == "A4" else 6.6
            small = [w for w in words_of(page) if w.size_mm * 72 / 25.4 < least]
            assert not small, (page.picture.title, small[0])


@pytest.mark.parametrize("paper", PAPERS)
def test_sheets_have_the_size_of_their_paper(sets, paper):
    short, long = sorted(PAPERS[paper])
    pages = [p for (_, used), made in sets.items() if used == paper for p in made]
    assert pages
    for page in pages:
        assert sorted((page.picture.width_mm, page.picture.height_mm)) == [short, long]


def test_every_sheet_has_a_bar_of_exactly_a_hundred_millimetres_in_the_pdf(sets, readers):
    for key, pages in sets.items():
        assert len(readers[key].pages) == len(pages)
        for page in readers[key].pages:
            content = page.get_contents().get_data().decode("latin-1")
            lines = re.findall(r"(\S+) (\S+) m (\S+) (\S+) l\s+S", content)
            level = [(float(c) - float(a)) * 25.4 / 72 for a, b, c, d in lines if b == d]
            assert any(abs(length - 100.0) < 0.01 for length in level)
            assert "(100 mm." in content


def test_sheets_are_numbered_dated_and_named(sets):
    for pages in sets.values():
        for number, page in enumerate(pages, start=1):
            texts = [w.text for w in words_of(page)]
            assert f"{number} of {len(pages)}" in texts and "2026-03-14" in texts
            assert {"Title", "Document", "Drawn by", "Date", "Scale", "Sheet"} <= set(texts)


def test_the_contents_name_the_sheet_each_part_begins_on(sets):
    for pages in sets.values():
        marks = {t: n for n, p in enumerate(pages, start=1) for t in p.bookmark.split("; ") if t}
        cover = words_of(pages[0])
        for title, number in marks.items():
            row = next(w for w in cover if w.text == title and w.at[1] > 60 and w.at[1] < 240)
            assert any(w.text == str(number) and abs(w.at[1] - row.at[1]) < 0.1 for w in cover), title


def test_bookmarks_and_links_lead_somewhere(sets, readers):
    for key, pages in sets.items():
        reader = readers[key]
        heads = [o for o in reader.outline if not isinstance(o, list)]
        assert [o.title for o in heads] == [p.bookmark for p in pages if p.bookmark]
        below = [o for some in reader.outline if isinstance(some, list) for o in some]
        assert [(o.title, reader.get_destination_page_number(o)) for o in below] == [
            (p.under, i) for i, p in enumerate(pages) if p.under
        ]
        links = [a for p in reader.pages for a in p.get("/Annots", ())]
        assert len(links) >= 2 * len(heads)
        starts = {i for i, p in enumerate(pages) if p.bookmark}
        reached = {_sheet_of(reader, a.get_object()) for a in reader.pages[0]["/Annots"]}
        assert reached == starts


def _sheet_of(reader, link):
    return next(i for i, page in enumerate(reader.pages) if page.indirect_reference == link["/Dest"][0])


@pytest.mark.parametrize("odd", ODD)
def test_odd_labels_do_no_harm(odd):
    plan = quay()
    parts = {i: replace(p, label=odd, note=odd) for i, p in plan.parts.items()}
    wires = {i: replace(w, note=odd) for i, w in plan.wires.items()}
    scenes = {i: replace(s, name=odd) for i, s in plan.scenes.items()}
    plan = plan.with_changes(parts=parts, wires=wires, scenes=scenes, title=odd, author=odd)
    pages = sheet_set(examine(plan, KINDS, today=TODAY), "A4", TODAY)
    for page in pages:
        left, _, right, _ = frame_of(page)
        for words in words_of(page):
            box = words_box(words)
            assert box[0] >= left - 15.01 and box[2] <= right + 10
    assert len(pypdf.PdfReader(io.BytesIO(pdf_bytes(pages))).pages) == len(pages)


def test_a_wire_of_an_unknown_colour_or_to_a_missing_part_is_still_listed():
    plan = quay()
    wire_id = next(iter(plan.wires))
    wire = plan.wires[wire_id]
    gone = plan.wires[wire_id].start.part
    wires = {**plan.wires, wire_id: replace(wire, colour="ZZ")}
    parts = {i: p for i, p in plan.parts.items() if i != gone}
    plan = plan.with_changes(wires=wires, parts=parts)
    pages = sheet_set(examine(plan, KINDS, today=TODAY), "A4", TODAY)
    texts = [w.text for p in pages for w in words_of(p)]
    assert "ZZ" in texts and any("missing" in t for t in texts)


def test_an_empty_plan_still_gives_a_set():
    pages = sheet_set(examine(Plan(), KINDS, today=TODAY), "A4", TODAY)
    assert [p.bookmark for p in pages][:2] == ["Summary", "Safety notes"]
    assert pdf_bytes(pages).startswith(b"%PDF")


def test_other_paper_is_refused_in_one_sentence():
    with pytest.raises(ValueError, match=r"^Sheets are printed on A4, Letter or A3, not on “A5”\.$"):
        sheet_set(examine(Plan(), KINDS, today=TODAY), "A5", TODAY)
