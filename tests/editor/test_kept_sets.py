"""A group of parts kept as a set: named in place, seen in the tray, turned and placed again, in any plan."""

import msgspec
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from support.editors import open_demo, part_id, wire_id
from support.gesture_runs import KINDS

from app.tray.set_files import SUFFIX, set_paths
from app.tray.shelf_model import ROW_ROLE
from app.window.kept_sets import show_sets
from wiring.edits.place_part import place
from wiring.plan.plan import Plan

Key = Qt.Key
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def shop(editor):
    """The editor with a set kept by hand: two lamps, a strip and the wires between them."""
    open_demo(editor)
    show_sets(editor.window)
    editor.selection.select([part_id(editor, "E1"), part_id(editor, "E2"), part_id(editor, "X1")])
    editor.window.acts["keep_set"].trigger()
    typed(editor, "Lit shop: small/")
    return editor


def typed(editor, words, key=Key.Key_Return):
    line = editor.window.plan_view.typing.line
    line.selectAll()
    QTest.keyClicks(line, words)
    QTest.keyClick(line, key)


def entries(editor) -> dict:
    menu = editor.window.submenus["sets"]
    menu.aboutToShow.emit()
    return {action.text(): action for action in menu.actions()}


def row_of(editor, name):
    model = editor.window.tray.model
    for number, row in enumerate(model.rows):
        if row.kept is not None and row.kept.name == name:
            return model.index(number)
    return None


def click_row(editor, index):
    tray = editor.window.tray.list
    tray.scrollTo(index)
    QTest.mouseClick(tray.viewport(), LEFT, pos=tray.visualRect(index).center())


def test_a_set_is_kept_and_set_down_in_another_plan_with_its_wires(shop):
    assert "“Lit shop small” is kept" in shop.notices.last.text
    shop.session.open(Plan(), None)
    click_row(shop, row_of(shop, "Lit shop small"))
    view = shop.window.plan_view
    assert view.tool == "set"
    for x in (200, 400):
        QTest.mouseMove(view, QPoint(x, 300))
        QTest.mouseClick(view, LEFT, pos=QPoint(x, 300))
    kinds = [p.kind for p in shop.session.plan.parts.values()]
    assert kinds.count("led-warm-white") == 4 and len(shop.session.plan.wires) == 4
    assert shop.session.undo_label == "Place Lit shop small"
    QTest.keyClick(view, Key.Key_Escape)
    QTest.keyClick(view, Key.Key_Escape)
    assert view.tool == "select"


def test_the_menu_places_it_too_and_r_turns_it_in_the_hand(shop):
    shop.session.open(Plan(), None)
    entries(shop)["Lit shop small"].trigger()
    view = shop.window.plan_view
    for x in (200, 500):
        QTest.mouseMove(view, QPoint(x, 300))
        if x == 200:
            QTest.mouseClick(view, LEFT, pos=QPoint(x, 300))
            QTest.keyClick(view, Key.Key_R)
            assert view._acting.preview.turn_deg == 90
        else:
            QTest.mouseClick(view, LEFT, pos=QPoint(x, 300))
    strips = [p for p in shop.session.plan.parts.values() if p.designation.startswith("X")]
    lamps = [p for p in shop.session.plan.parts.values() if p.kind == "led-warm-white"]
    assert [p.turn_deg for p in strips] == [0, 90]
    across = [abs(lamps[0].x_mm - lamps[1].x_mm), abs(lamps[0].y_mm - lamps[1].y_mm)]
    turned = [abs(lamps[2].x_mm - lamps[3].x_mm), abs(lamps[2].y_mm - lamps[3].y_mm)]
    assert turned == pytest.approx(across[::-1]) and across[0] > 10
    QTest.keyClick(view, Key.Key_Escape)
    QTest.keyClick(view, Key.Key_Escape)


def test_the_tray_paints_it_and_finds_it_by_name(shop):
    tray = shop.window.tray
    index = row_of(shop, "Lit shop small")
    tray.list.scrollTo(index)
    rect = tray.list.visualRect(index)
    painted = tray.list.viewport().grab(rect).toImage()
    colours = {painted.pixel(x, y) for x in range(12, 54) for y in range(4, rect.height() - 4)}
    assert len(colours) > 20
    QTest.keyClicks(tray.search, "lit sh")
    assert [r.kept.name for r in tray.model.rows if r.kept] == ["Lit shop small"]
    assert tray.model.data(tray.model.index(1), ROW_ROLE).kept is not None
    tray.search.clear()


def test_its_name_is_changed_in_its_row_and_escape_leaves_it(shop):
    tray = shop.window.tray.list
    for key, name in ((Key.Key_Escape, "Lit shop small"), (Key.Key_Return, "Bakery")):
        index = row_of(shop, "Lit shop small")
        tray.setCurrentIndex(index)
        tray.setFocus()
        QTest.keyClick(tray, Key.Key_F2)
        (line,) = [w for w in tray.viewport().findChildren(QLineEdit) if w.isVisible()]
        assert line.text() == "Lit shop small"
        line.selectAll()
        QTest.keyClicks(line, "Bakery")
        QTest.keyClick(line, key)
        QApplication.processEvents()
        assert row_of(shop, name) is not None
    folder = shop.window.remembered.sets_folder
    assert [p.name for p in set_paths(folder)] == [f"Bakery{SUFFIX}"]


def test_one_is_taken_away_and_put_back(shop):
    menu = shop.window.tray.set_menu(row_of(shop, "Lit shop small"))
    {a.text(): a for a in menu.actions()}["Take it away"].trigger()
    assert row_of(shop, "Lit shop small") is None and entries(shop)["None kept yet"]
    shop.notices.last.act()
    assert row_of(shop, "Lit shop small") is not None


def test_a_name_that_is_taken_or_empty_is_refused_beside_the_line(shop):
    shop.selection.select([part_id(shop, "E1")])
    shop.window.acts["keep_set"].trigger()
    for words in ("Lit shop small", "///"):
        typed(shop, words)
        assert shop.window.plan_view.typing.isVisible()
        assert shop.window.plan_view.typing._fault.text().endswith(".")
    typed(shop, "x", Key.Key_Escape)
    assert len(set_paths(shop.window.remembered.sets_folder)) == 1


def test_no_part_selected_and_a_damaged_set_are_told(shop):
    told = []
    shop.session.refused.connect(told.append)
    shop.selection.select([wire_id(shop, "W1")])
    shop.window.acts["keep_set"].trigger()
    folder = shop.window.remembered.sets_folder
    (folder / f"Old shed{SUFFIX}").write_text("words", encoding="utf-8")
    entries(shop)["Old shed"].trigger()
    assert told == [
        "Select the parts that belong to the set first.",
        "The set “Old shed” cannot be read; keep it anew.",
    ]
    shop.session.refused.disconnect(told.append)


def proposed(editor, ids):
    editor.selection.select(ids)
    editor.window.acts["keep_set"].trigger()
    name = editor.window.plan_view.typing.line.text()
    typed(editor, "x", Key.Key_Escape)
    return name


def test_the_name_proposed_is_the_buildings_else_what_the_labels_have_in_common(editor):
    plan = Plan()
    labels = {"p1": "Porch lamp", "p2": "Signal cabin", "p3": "Plug"}
    for n, kind in enumerate(("lamp-12v", "building-led", "terminal-strip-4")):
        plan = place(KINDS[kind], 200.0 * n, 0).apply(plan)
    parts = {i: msgspec.structs.replace(p, label=labels[i]) for i, p in plan.parts.items()}
    editor.session.open(plan.with_changes(parts=parts), None)
    assert proposed(editor, ["p1", "p2", "p3"]) == "Signal cabin"
    assert proposed(editor, ["p1", "p3"]) == "Plug"  # the larger of the two
    open_demo(editor)
    assert proposed(editor, [part_id(editor, "E1"), part_id(editor, "E2")]) == "quay lamp"
    assert proposed(editor, [part_id(editor, "E1")]) == "quay lamp 1"
    editor.window.acts["keep_set"].trigger()
    QTest.keyClick(editor.window.plan_view.typing.line, Key.Key_Return)
    assert proposed(editor, [part_id(editor, "E1")]) == "quay lamp 1, 2"
