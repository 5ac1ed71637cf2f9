"""What is printed is chosen beside the sheets, with the mouse and by typing, and kept for the next day."""

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from support.editors import DEMOS, open_demo, settle

from app.printing.set_words import counted_words
from app.printing.wish import Wish, read_wish, wish_text
from wiring.edits.set_plan import set_plan
from wiring.edits.set_wire import set_wire
from wiring.files.store import load, save


@pytest.fixture
def sheets(editor):
    open_demo(editor)
    editor.window.sheets_page.choices.show_wish(Wish())
    editor.window.show_view("sheets")
    yield editor.window.sheets_page
    editor.window.sheets_page.choices.show_wish(Wish())


def click(box):
    QTest.mouseClick(box, Qt.MouseButton.LeftButton, pos=QPoint(8, box.height() // 2))


def titles(sheets):
    return [p.picture.title.split(": ")[1].split(", sheet ")[0] for p in sheets.pages]


def test_a_document_that_is_unticked_is_left_out(sheets):
    whole = len(sheets.pages)
    click(sheets.choices.boxes["labels"])
    assert len(sheets.pages) < whole and "Wire labels" not in titles(sheets)
    assert sheets.list.model().rowCount() == len(sheets.pages)
    click(sheets.choices.boxes["labels"])
    assert len(sheets.pages) == whole


def test_a_set_that_is_not_whole_says_so_while_the_choices_are_hidden(sheets):
    assert sheets._words.text() == f"{len(sheets.pages)} sheets"
    click(sheets.choices.boxes["bench"])
    sheets.choices.boxes["bench"].setFocus()
    sheets.choosing.click()
    assert not sheets.choices.isVisible() and sheets.list.hasFocus()
    assert sheets._words.text() == f"{len(sheets.pages)} sheets, 1 document left out"
    sheets.choosing.click()
    assert counted_words(1, Wish(frozenset({"bench", "cut"}), "Quay", changed_only=True)) == (
        "1 sheet, only what changed, only Quay, 2 documents left out"
    )


def test_letters_that_print_as_boxes_are_told(sheets, tmp_path):
    said: list[str] = []
    sheets.told.connect(said.append)
    sheets.write_pdf(tmp_path / "a.pdf")
    sheets._session.do(set_plan(title="Mühle, gęś, мельница"))
    sheets.write_pdf(tmp_path / "b.pdf")
    sheets._session.do(set_plan(title="日本の灯"))
    sheets.write_pdf(tmp_path / "c.pdf")
    sheets.told.disconnect(said.append)
    assert ["typeface" in words for words in said] == [False, False, True]
    assert "“日本の灯” has letters" in said[2]


def test_the_safety_notes_stay_and_say_why(sheets):
    box = sheets.choices.boxes["safety"]
    assert not box.isEnabled() and box.isChecked()
    assert "Batteries" in sheets.choices._stays.text()
    for name, other in sheets.choices.boxes.items():
        if name not in ("safety", "bench"):
            click(other)
    assert {t.split(",")[0] for t in titles(sheets)} == {"Safety notes", "Bench list"}


def test_a_scale_is_typed_and_what_is_none_is_told(sheets):
    line = sheets.choices.tiles.box.lineEdit()
    line.selectAll()
    QTest.keyClicks(line, "1:5")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert "Tile A2 from below" in titles(sheets)
    line.selectAll()
    QTest.keyClicks(line, "9:1")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert "no scale for tiles" in sheets.choices.tiles.fault
    assert "Tile A2 from below" in titles(sheets)  # as it was
    line.selectAll()
    QTest.keyClicks(line, "none")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert not any(t.startswith("Tile") for t in titles(sheets))


def test_one_place_only(sheets):
    box = sheets.choices.scene.box
    box.setCurrentIndex(box.findData("Quay panel"))
    box.activated.emit(box.currentIndex())
    assert sheets.pages and all(", Quay panel" in p.picture.title for p in sheets.pages)


def test_symbols_are_a_habit_of_the_plan(sheets, editor):
    box = sheets.choices.symbols.box
    box.setCurrentIndex(box.findData("ieee"))
    box.activated.emit(box.currentIndex())
    assert editor.session.plan.habits.symbols == "ieee"


def test_only_what_changed_since_the_remembered_set(sheets, editor, tmp_path):
    path = tmp_path / "quay.underboard"
    save(editor.session.plan, path)
    editor.session.open(editor.session.plan, path)
    sheets.show_answer(editor.solving.answer)
    only = sheets.choices.changed_only
    assert not only.isEnabled()
    QTest.mouseClick(sheets.choices.keep, Qt.MouseButton.LeftButton)
    assert "Remembered as set A" in editor.notices.last.text
    assert (tmp_path / "quay.printed.json").exists() and only.isEnabled()
    assert not editor.session.unsaved  # the plan itself is as it was
    click(only)
    assert sheets.pages == () and "Nothing has changed since set A" in sheets.none.text()
    wire = next(w for w in editor.session.plan.wires.values() if w.label == "W2")
    editor.session.do(set_wire([wire.id], colour="GN"))
    assert titles(sheets)[0] == "Changes" and "Bench list" in titles(sheets)


def test_a_part_of_a_set_is_not_remembered(sheets, editor):
    click(sheets.choices.boxes["labels"])
    QTest.mouseClick(sheets.choices.keep, Qt.MouseButton.LeftButton)
    assert "Only a whole set" in editor.notices.last.text and sheets.record.last is None


def test_what_was_chosen_is_kept_for_the_next_day(sheets, editor):
    click(sheets.choices.boxes["meter"])
    kept = read_wish(editor.remembered.text("what_to_print"))
    assert kept.left_out == {"meter"} and kept.only is not None


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"left_out": 3}', '{"left_out": [], "tiles": "x", "overlap_mm": 10}']
)
def test_choices_that_cannot_be_read_are_as_usual(text):
    assert read_wish(text) == Wish()


def test_choices_read_back():
    wish = Wish(frozenset({"cover", "labels"}), "", "1:7.5", 15.0)
    assert read_wish(wish_text(wish)) == wish


def test_what_is_saved_is_what_is_chosen_even_while_sheets_are_being_made(sheets, tmp_path, monkeypatch):
    """The sheets that are shown may be older than the last choice; a file never is."""
    monkeypatch.setattr(sheets.making, "ask", lambda _work: None)  # as if it took long
    click(sheets.choices.boxes["labels"])
    assert "Wire labels" in titles(sheets)
    sheets.write_pdf(tmp_path / "quay.pdf")
    text = "".join(p.extract_text() for p in PdfReader(tmp_path / "quay.pdf").pages[1:])
    assert "Bench list" in text and "Cut along the lines" not in text


def test_an_empty_plan_is_said_in_the_page_and_nothing_leads_onto_paper(editor):
    window = editor.window
    window.acts["sheets"].trigger()
    settle()
    sheets = window.sheets_page
    buttons = {b.text(): b for b in sheets.findChildren(QPushButton)}
    onto_paper = [buttons[words] for words in ("Save PDF…", "Print…", "Remember as printed")]
    assert sheets.none.isVisible() and "place something first" in sheets.none.text()
    assert sheets.none.geometry().center().y() > sheets.height() / 3  # in the page, not in its bar
    assert not sheets.list.isVisible() and not any(b.isEnabled() for b in onto_paper)
    editor.session.open(load(DEMOS / "quay.underboard"), None)
    editor.solving.request()
    settle()
    assert sheets.pages and not sheets.none.isVisible() and sheets.list.isVisible()
    assert all(b.isEnabled() for b in onto_paper)
