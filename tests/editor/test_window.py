"""The window as a whole: views, title, undo, look, findings and notices."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import open_demo, part_id, type_into

from app.findings.finding_list import FINDING_ROLE
from app.notices import Notice
from app.settings import Remembered
from app.theme.surfaces import THEMES, surfaces
from app.window.actions import VIEWS
from wiring.edits.remove import remove
from wiring.edits.set_plan import set_plan
from wiring.plan.plan import Plan


def test_keys_change_the_view(editor):
    open_demo(editor)
    for number, name in enumerate(VIEWS, start=1):
        QTest.keyClick(editor.window, str(number), Qt.KeyboardModifier.ControlModifier)
        assert editor.window.view == name
        assert editor.window.acts[name].isChecked()


def test_undo_and_redo_say_what_they_would_do(editor):
    open_demo(editor)
    acts, session = editor.window.acts, editor.session
    assert not acts["undo"].isEnabled()
    session.do(remove([part_id(editor, "E1")]))
    assert acts["undo"].isEnabled()
    assert session.undo_label.lower() in acts["undo"].text()
    acts["undo"].trigger()
    assert not acts["undo"].isEnabled()
    assert session.plan.parts[next(iter(editor.selection.ids & set(session.plan.parts)))].designation == "E1"
    acts["redo"].trigger()
    assert "E1" not in {p.designation for p in session.plan.parts.values()}


def test_what_is_removed_is_no_longer_selected(editor):
    open_demo(editor)
    editor.selection.select([part_id(editor, "E1"), part_id(editor, "E2")])
    editor.session.do(remove([part_id(editor, "E1")]))
    assert editor.selection.ids == {part_id(editor, "E2")}


def test_delete_duplicate_and_turn_act_on_the_selection(editor):
    open_demo(editor)
    acts, session = editor.window.acts, editor.session
    assert not acts["remove"].isEnabled()
    lamp = part_id(editor, "E9")
    editor.selection.select([lamp])
    before = session.plan.parts[lamp].turn_deg
    acts["turn"].trigger()
    assert (session.plan.parts[lamp].turn_deg - before) % 360 == 90
    acts["duplicate"].trigger()
    assert len(session.plan.parts) == 16
    editor.selection.select([lamp])
    acts["remove"].trigger()
    assert lamp not in session.plan.parts


def test_a_title_typed_in_the_header_is_an_edit(editor):
    open_demo(editor)
    line = editor.window.header.title
    type_into(line, "Fish dock")
    assert editor.session.plan.title == "Fish dock"
    assert "Fish dock" in editor.window.windowTitle()
    QApplication.processEvents()
    assert line.text() == "Fish dock"
    editor.session.undo()
    QApplication.processEvents()
    assert line.text() == "Kelpwater quay"


def test_a_title_too_long_is_cut_short_but_typed_whole(editor):
    line, title = editor.window.header.title, "All the lamps along the old harbour and round the point"
    editor.session.open(Plan(title=title), None)
    QApplication.processEvents()
    assert line.text() != title and line.text().endswith("…")
    line.setFocus()
    assert line.text() == title
    QTest.keyClicks(line, "x")
    QTest.keyClick(line, Qt.Key.Key_Escape)
    assert editor.session.plan.title == title
    assert not editor.session.unsaved


def test_the_look_is_remembered(editor, tmp_path):
    assert editor.remembered.look == "light"
    editor.window.acts["look"].trigger()
    assert editor.look.dark
    assert Remembered(tmp_path / "editor.ini").look == "dark"


def contrast(one: str, other: str) -> float:
    def luminance(colour: str) -> float:
        parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
        linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("name", THEMES)
def test_words_stand_out_as_wcag_asks(name):
    """WCAG 2.2, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (edges of fields, 3 to 1)."""
    s = surfaces(THEMES[name])
    for ground in (s.side, s.header, s.field, s.paper, s.chosen):
        assert contrast(s.ink, ground) >= 7
    for colour in (s.quiet, s.copper, s.danger, s.weak, s.note):
        for ground in (s.side, s.header, s.field):
            assert contrast(colour, ground) >= 4.5, (colour, ground)
    assert contrast(s.on_copper, s.copper) >= 4.5
    assert contrast(s.edge, s.side) >= 3


def test_a_click_on_a_finding_selects_what_it_names(editor):
    open_demo(editor)
    strip = editor.window.strip
    strip.unfold()
    index = strip.model.index(0, 0)
    finding = index.data(FINDING_ROLE)
    QTest.mouseClick(
        strip.list.viewport(), Qt.MouseButton.LeftButton, pos=strip.list.visualRect(index).center()
    )
    assert editor.selection.ids == {*finding.parts, *finding.wires}


def test_counts_of_findings_are_words_not_colours(editor):
    open_demo(editor, "harbour")
    findings = editor.solving.answer.situation.findings
    shown = [label.text() for badge, label in editor.window.strip._counts.values() if badge.isVisible()]
    assert sum(int(words.split()[0]) for words in shown) == len(findings)


def test_a_refused_edit_is_told_in_the_window_and_can_be_put_away(editor):
    open_demo(editor)
    editor.session.refused.emit("That cannot be.")
    bar = editor.window.notice_bar
    assert (bar.isVisible(), bar.text) == (True, "That cannot be.")
    editor.notices.offer(Notice("And now?", "weak", "Do it", lambda: editor.notices.say("Done.")))
    bar._act.click()
    assert bar.text == "Done."


def test_placing_from_another_view_comes_back_to_the_plan(editor):
    open_demo(editor)
    editor.window.show_view("circuit")
    editor.window.tray.wanted.emit("servo")
    assert editor.window.view == "plan"
    assert editor.window.plan_view.tool == "place"


def test_the_wire_tool_offers_size_and_colour(editor):
    page, acts = editor.window.plan_page, editor.window.acts
    assert not page.wire_size.isVisible()
    acts["wire"].trigger()
    assert page.wire_size.isVisible() and page.wire_colour.isVisible()
    assert editor.window.plan_view.tool == "wire"
    acts["select"].trigger()
    assert not page.wire_size.isVisible()
    assert editor.window.plan_view.tool == "select"


def test_zooming_a_drawing_keeps_the_point_under_the_pointer(editor):
    open_demo(editor)
    editor.window.show_view("circuit")
    view = editor.window.circuit_page.picture
    about = QPointF(200, 150)
    before = view.millimetres(about)
    view.zoom(2.0, about)
    assert view.millimetres(about) == pytest.approx(before)
    view.zoom(1.5, QPointF(10, 20))
    assert view.millimetres(about) != pytest.approx(before)
    editor.window.acts["show_all"].trigger()
    assert view.millimetres(about) == pytest.approx(before)


def test_the_undo_button_tells_what_it_takes_back(editor):
    editor.session.do(set_plan(title="Mole end"))
    assert editor.window.acts["undo"].toolTip() == "Undo set title  Ctrl+Z"
    editor.session.undo()
    assert editor.window.acts["undo"].toolTip() == "Undo  Ctrl+Z"
    assert editor.window.acts["redo"].toolTip() == "Redo set title  Ctrl+Shift+Z"
