"""The tray finds parts by what people call them, in groups by purpose, and hands over what is taken."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import type_into

from app.tray.shelf_model import KIND_MIME, ShelfModel, rows
from app.typed_words import says
from wiring.catalogue.known_names import PURPOSES
from wiring.catalogue.shelf import builtin_kinds


def shown(model: ShelfModel) -> list[str]:
    return [row.kind.key for row in model.rows if row.kind]


def test_every_kind_stands_once_below_its_purpose():
    kinds = builtin_kinds()
    found = list(rows(kinds))
    assert sorted(r.kind.key for r in found if r.kind) == sorted(kinds)
    headings = [r.purpose for r in found if r.kind is None]
    assert headings == list(PURPOSES)
    assert all(r.kind.purpose == r.purpose for r in found if r.kind)


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("fuse", "fuse"),
        ("SERVO", "servo"),
        ("warm strip", "led-strip-warm-white"),
        ("warmwhite", "led-strip-warm-white"),
        ("LED-strip", "led-strip-warm-white"),
    ],
)
def test_a_search_finds_by_words_in_any_order_and_case(words, key):
    model = ShelfModel(builtin_kinds())
    model.search(words)
    assert key in shown(model)
    assert len(shown(model)) < len(builtin_kinds())


@pytest.mark.parametrize(
    ("words", "title"),
    [
        ("switch", "Toggle switch, on – off"),
        ("lamp", "Grain lamp, 12 V"),
        ("discharge", "Capacitor-discharge unit"),
        ("power pack", "Regulated supply, 12 V DC"),
        ("resistor", "Resistor"),
    ],
)
def test_enter_means_what_is_called_so_before_what_only_has_to_do_with_it(words, title):
    model = ShelfModel(builtin_kinds())
    model.search(words)
    assert model.rows[model.best()].words == title


def test_words_typed_without_their_space_mean_what_is_called_so(editor, qtbot):
    tray = editor.window.tray
    with qtbot.waitSignal(tray.wanted) as told:
        type_into(tray.search, "grainlamp")
    assert editor.session.kinds[told.args[0]].title.startswith("Grain lamp")


def test_joined_words_do_not_make_a_word_of_the_end_of_one_and_the_beginning_of_the_next():
    assert (
        says("warm white", "warmwhite")
        and says("on–off switch", "on-off")
        and says("warm-white", "warm white")
    )
    assert not says("for us of use", "fuse") and not says("warm white", "mwhite") and not says("warm", "-")


def test_a_closed_group_opens_for_a_search():
    model = ShelfModel(builtin_kinds())
    model.toggle("protect")
    assert "fuse" not in shown(model)
    model.search("fuse")
    assert "fuse" in shown(model)
    model.search("")
    assert "fuse" not in shown(model)


def test_a_dragged_row_carries_its_kind():
    model = ShelfModel(builtin_kinds())
    number = next(n for n, r in enumerate(model.rows) if r.kind and r.kind.key == "servo")
    data = model.mimeData([model.index(number)])
    assert bytes(data.data(KIND_MIME).data()) == b"servo"


def test_enter_in_the_search_takes_the_first_kind_found(editor, qtbot):
    tray = editor.window.tray
    with qtbot.waitSignal(tray.wanted) as told:
        type_into(tray.search, "servo")
    assert told.args == ["servo"]
    assert editor.window.plan_view.tool == "place"


def test_a_click_on_a_kind_begins_to_place_it_and_a_click_sets_it_down(editor, qtbot):
    tray, view = editor.window.tray, editor.window.plan_view
    tray.search.setText("servo")
    place = tray.list.visualRect(tray.model.index(1)).center()
    QTest.mouseClick(tray.list.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert view.tool == "place"
    QTest.mouseMove(view, view.rect().center())
    QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=view.rect().center())
    assert [p.kind for p in editor.session.plan.parts.values()] == ["servo"]


def test_a_search_without_result_says_what_to_try(editor):
    tray = editor.window.tray
    tray.search.setText("zeppelin")
    assert tray.model.rows == ()
    assert "Try" in tray._nothing.text()
    assert tray._nothing.isVisible()


def test_enter_takes_the_kind_that_is_called_so_before_one_that_only_has_the_word(editor, qtbot):
    tray = editor.window.tray
    with qtbot.waitSignal(tray.wanted) as told:
        type_into(tray.search, "Resistor")
    assert editor.session.kinds[told.args[0]].title.casefold().startswith("resistor")
    assert shown(tray.model)[0] != told.args[0]


def test_down_goes_past_the_kind_that_enter_would_take(editor, qtbot):
    tray = editor.window.tray
    tray.search.setFocus()
    QTest.keyClicks(tray.search, "lamp")
    first = tray.list.currentIndex().row()
    QTest.keyClick(tray.search, Qt.Key.Key_Down)
    assert tray.list.hasFocus()
    assert tray.list.currentIndex().row() == first + 1
    with qtbot.waitSignal(tray.wanted) as told:
        QTest.keyClick(tray.list, Qt.Key.Key_Return)
    assert told.args == [tray.model.rows[first + 1].kind.key]
