"""After a printed set, only the sheets that changed are printed, and what changed is said in words."""

from datetime import date
from pathlib import Path as FilePath

import pytest
from msgspec.structs import replace
from support.editing import KINDS, quay

from wiring.drawings.marks import wire_mark
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.pdf import pdf_bytes
from wiring.pictures.picture import Words
from wiring.sheets.printed_file import printed_path, read_printed, write_printed
from wiring.sheets.printed_set import revision_letter
from wiring.sheets.set_changes import GONE
from wiring.sheets.sheet_set import made_set
from wiring.sheets.tiling import Tiling

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
FIRST, LATER = date(2026, 3, 14), date(2026, 4, 2)


@pytest.fixture(scope="module")
def plan():
    return load(DEMOS / "siding.underboard")


@pytest.fixture(scope="module")
def first(plan):
    return made_set(examine(plan, KINDS, today=FIRST), "A4", FIRST)


def later(plan, first, **more):
    situation = examine(plan, KINDS, today=FIRST)
    return made_set(situation, "A4", LATER, since=first.printed(), changed_only=True, **more)


@pytest.fixture(scope="module")
def changed(plan):
    """The plan with one wire of another colour and size, and one wire gone."""
    by_label = {w.label: w for w in plan.wires.values()}
    wires = dict(plan.wires)
    wires[by_label["W2"].id] = replace(by_label["W2"], colour="GN", size="0.75 mm²")
    del wires[by_label["W6"].id]
    return plan.with_changes(wires=wires)


@pytest.fixture(scope="module")
def second(changed, first):
    return later(changed, first)


def words(page):
    return [i for i in page.picture.items if isinstance(i, Words) and i.text.strip()]


def texts(page):
    return [w.text for w in words(page)]


def test_nothing_is_printed_when_nothing_changed(plan, first):
    made = later(plan, first)
    assert made.pages == () and made.changes.letter == "A"


def test_a_tick_of_a_made_wire_is_all_that_changes_its_list(plan, first):
    wire = next(iter(plan.wires.values()))
    made = later(plan.with_changes(wires={**plan.wires, wire.id: replace(wire, built=True)}), first)
    assert made.changes.wires == () and {s.title for s in made.changes.sheets} == {"Bench list"}


def test_what_changed_is_said_in_words(plan, changed, second):
    by_name = {c.name: c for c in second.changes.wires}
    assert by_name.keys() == {"W2", "W6"} and second.changes.parts == ()
    ends = {w.label: w for w in plan.wires.values()}
    assert "0.75 mm² GN, from " in by_name["W2"].now and by_name["W2"].was.endswith(ends["W2"].colour)
    assert by_name["W6"].now == GONE and by_name["W6"].was.startswith("0.")
    said = " ".join(texts(second.pages[0]))
    assert "Changes since set A of 2026-03-14" in said and "This is set B" in said
    assert "W2" in said and "gone" in said


def test_only_changed_sheets_come_with_the_numbers_they_have_in_the_set(changed, first, second):
    whole = made_set(examine(changed, KINDS, today=FIRST), "A4", LATER, since=first.printed())
    count = len(whole.pages)
    numbers = [s.number for s in second.changes.sheets]
    printed = [t for p in second.pages for t in texts(p) if t.endswith(f" of {count}")]
    assert printed == [f"{n} of {count}" for n in (1, *numbers)]  # the summary comes along
    assert 0 < len(numbers) < count / 1.3
    kept = [s for s in whole.printed().sheets if s.number not in numbers]
    assert {s.digest for s in kept} <= {s.digest for s in first.printed().sheets}


def test_changed_lines_and_drawings_bear_the_letter_of_the_set(changed, second):
    wire = next(w for w in changed.wires.values() if w.label == "W2")
    marked = {p.picture.title.split(": ")[1].split(",")[0] for p in second.pages if _marks(p)}
    assert {"Bench list", "Circuit drawing"} <= marked
    assert any(s.anchor == "circuits" for s in second.sections) and wire_mark(wire.id)
    for page in second.pages:
        for mark in _marks(page):
            others = [w for w in words(page) if w is not mark]
            assert not any(overlap(words_box(mark), words_box(o), 0.3) for o in others)


def _marks(page):
    return [w for w in words(page) if w.text == "B" and w.size_mm < 2.2 and w.weight == "bold"]


def test_labels_are_printed_anew_for_changed_wires_only(second):
    labels = [p for p in second.pages if "Wire labels" in p.picture.title]
    assert len(labels) == 1
    assert sum(t.startswith("W2 ") for t in texts(labels[0])) == 4  # both ends, each twice
    assert not any(t.startswith(("W1 ", "W6 ")) for t in texts(labels[0]))


def test_a_moved_part_and_a_new_name_are_told(plan, first):
    part = next(p for p in plan.parts.values() if p.designation == "M1")
    parts = {**plan.parts, part.id: replace(part, x_mm=part.x_mm + 40.0)}
    made = later(plan.with_changes(parts=parts), first)
    (change,) = made.changes.parts
    assert change.name == "-M1" and change.was == "40 mm from here"
    parts[part.id] = replace(part, designation="M9")
    made = later(plan.with_changes(parts=parts), first)
    assert [(c.name, c.was) for c in made.changes.parts] == [("-M9", "-M1")]
    assert made.changes.wires  # their ends have another name now


def test_the_next_set_counts_from_this_one(changed, second):
    again = later(changed, second)
    assert second.printed().letter == "B" and again.pages == () and again.changes.letter == "B"


def test_tiles_and_labels_do_not_make_a_set_another(plan, first):
    made = later(plan, first, tiling=Tiling(10.0))
    assert made.changes.sheets == () and made.pages == ()


def test_a_part_of_a_set_does_not_count_as_printed(plan, first):
    situation = examine(plan, KINDS, today=FIRST)
    assert first.whole
    assert not made_set(situation, only=("bench",)).whole
    assert not made_set(situation, scene="Timber siding").whole


def test_letters_leave_out_those_that_look_like_numbers():
    letters = [revision_letter(n) for n in range(1, 27)]
    assert letters[:9] == ["A", "B", "C", "D", "E", "F", "G", "H", "J"]
    assert letters[23:26] == ["Z", "AA", "AB"] and not {"I", "O"} & set(letters)


def test_the_record_beside_the_plan_reads_back(first, tmp_path):
    plan = tmp_path / "siding.underboard"
    assert read_printed(plan) is None
    assert write_printed(first.printed(), plan).name == "siding.printed.json"
    assert read_printed(plan) == first.printed()


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"format": "x", "version": 1, "set": {"day": "x"}}', "\xff"]
)
def test_a_damaged_record_is_refused_in_one_sentence(text, tmp_path):
    plan = tmp_path / "siding.underboard"
    printed_path(plan).write_text(text, encoding="latin-1")
    with pytest.raises(
        ValueError, match=r"^siding\.printed\.json, what was printed last, cannot be read; .*\.$"
    ):
        read_printed(plan)


ODD = ['<&">', "🚂🔥", "מנורה על הרציף", "x" * 200, "=cmd", "line\nbreak", "a\u202eb", "W\u0000"]


@pytest.mark.parametrize("odd", ODD)
def test_odd_labels_do_no_harm_to_changes_and_tiles(odd):
    plan = quay()
    before = made_set(examine(plan, KINDS, outlooks=False), "A4", FIRST).printed()
    parts = {i: replace(p, label=odd) for i, p in plan.parts.items()}
    wires = {i: replace(w, label=odd[:20] + str(n)) for n, (i, w) in enumerate(plan.wires.items())}
    situation = examine(plan.with_changes(parts=parts, wires=wires, title=odd), KINDS, outlooks=False)
    made = made_set(situation, "A4", LATER, since=before, changed_only=True)
    tiles = made_set(situation, "A4", LATER, only=("tiles",), tiling=Tiling(5.0))
    assert len(made.changes.wires) == len(wires) and len(made.changes.parts) == len(parts)
    for pages in (made.pages, tiles.pages):
        assert pdf_bytes(pages).startswith(b"%PDF")
        for page in pages:
            for one in words(page):
                assert words_box(one)[2] <= page.picture.width_mm - 9.9 or len(one.text) == 1


def parts_sheet(made):
    return next(p for p in made.pages if "Parts list" in texts(p) and "Spare" in texts(p))


def test_a_row_of_the_parts_list_is_marked_when_it_names_other_parts(plan, first):
    """One turnout motor more: its row bears the triangle, the rows of what stayed do not."""
    motor = next(p for p in plan.parts.values() if p.kind == "stall-motor")
    more = replace(motor, id="more", designation="M9", x_mm=motor.x_mm + 200.0, label="")
    made = later(plan.with_changes(parts={**plan.parts, "more": more}), first, only=["parts"])
    said = words(parts_sheet(made))
    (mark,) = (w for w in said if w.text == "B" and w.size_mm < 2.2 and w.align == "centre")
    (row,) = (w for w in said if "M9" in w.text)
    assert mark.at[1] == pytest.approx(row.at[1], abs=2.0)


def test_a_row_of_the_parts_list_is_marked_when_a_part_of_it_is_gone(plan, first):
    lamp = next(p for p in plan.parts.values() if p.designation == "P6")
    kept = {i: p for i, p in plan.parts.items() if i != lamp.id}
    wires = {i: w for i, w in plan.wires.items() if lamp.id not in (w.start.part, w.end.part)}
    made = later(plan.with_changes(parts=kept, wires=wires), first, only=["parts"])
    said = words(parts_sheet(made))
    marks = [w for w in said if w.text == "B" and w.size_mm < 2.2 and w.align == "centre"]
    assert len(marks) == 1


def test_a_part_that_only_moved_marks_no_row_of_the_parts_list(plan, first):
    motor = next(p for p in plan.parts.values() if p.kind == "stall-motor")
    moved = replace(motor, x_mm=motor.x_mm + 50.0)
    made = made_set(
        examine(plan.with_changes(parts={**plan.parts, motor.id: moved}), KINDS, today=FIRST),
        "A4",
        LATER,
        since=first.printed(),
        only=["parts"],
    )
    assert not [w for w in words(parts_sheet(made)) if w.text == "B" and w.size_mm < 2.2]
