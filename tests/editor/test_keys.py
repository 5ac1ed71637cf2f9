"""No key means two things, none belongs to the desktop, and all of them stand in the list."""

import re
from collections import Counter
from itertools import combinations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence, QShortcut
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QMenu
from support.editors import open_demo

from app.bench.face_keys import OF_THE_VIEW, TO_CHOSEN, TO_TOOLS
from app.canvas.hands.key_table import BENCH_KEYS, KEYS, PLAN_KEYS
from app.canvas.hands.keys import TO_GESTURE, TO_SELECTION, ZOOM_KEYS, combination
from app.window.actions import OF_THE_PLAN
from app.window.keys_list import KeysList, key_rows, show_keys

# What the plan obeys under the same key as the window is the same deed.
SAME = {"turn": "turn", "remove": "remove", "select_all": "select_all", "duplicate": "duplicate"} | {
    name: name for name in OF_THE_PLAN
}
# Keys that desktops and input methods take before a program sees them; from memory of common desktops.
TAKEN = re.compile(
    r"Alt\+(F\d+|Tab|Space|Esc)|Ctrl\+Alt\+.*|.*Meta\+.*|Alt\+Shift(\+.*)?|Ctrl\+Space|Ctrl\+Shift\+U|"
    r"Ctrl\+Esc|Ctrl\+Tab|Ctrl\+Shift\+Tab|Print|F11"
)


def window_keys(editor):
    """Every key of the window that acts wherever the focus is, with who has it."""
    window, found = editor.window, []
    for action in window.findChildren(QAction):
        if action.shortcutContext() != Qt.ShortcutContext.WidgetShortcut:
            found += [(k.toString(), action.objectName() or action.text()) for k in action.shortcuts()]
    found += [(s.key().toString(), s.objectName()) for s in window.findChildren(QShortcut)]
    for button in window.findChildren(QAbstractButton):
        if not button.shortcut().isEmpty():
            found.append((button.shortcut().toString(), button.objectName()))
    return found


def test_no_two_acts_of_the_window_share_a_key(editor):
    open_demo(editor)
    for view in ("circuit", "battery", "sheets", "plan"):
        editor.window.show_view(view)
    keys = window_keys(editor)
    assert len(keys) > 60
    assert {k: n for k, n in Counter(k for k, _ in keys).items() if n > 1} == {}


def test_a_key_of_the_plan_that_the_window_has_too_does_the_same(editor):
    owners = dict(window_keys(editor))
    owners |= {k.toString(): n for n in OF_THE_PLAN for k in editor.window.acts[n].shortcuts()}
    met = 0
    for row in PLAN_KEYS:
        for key in row.keys:
            owner = owners.get(QKeySequence(key).toString())
            if owner is not None and row.when != "in hand":
                assert SAME.get(row.name) == owner, key
                met += 1
    assert met >= 4


@pytest.mark.parametrize("table", [PLAN_KEYS, BENCH_KEYS])
def test_on_plan_and_bench_a_key_means_one_thing_at_a_time(table):
    for when in ({"always", "chosen"}, {"always", "nothing"}, {"in hand"}):
        keys = Counter(combination(k) for row in table if row.when in when for k in row.keys)
        assert {k for k, n in keys.items() if n > 1} == set(), when


def test_the_table_is_what_the_plan_obeys():
    listed = {combination(k) for row in PLAN_KEYS for k in row.keys}
    assert {*TO_SELECTION, *TO_GESTURE, *ZOOM_KEYS} <= listed


def test_the_table_of_the_bench_is_what_it_obeys():
    rows = [row for row in BENCH_KEYS if row.when in ("always", "chosen")]
    listed = {(row.name, combination(k)) for row in rows for k in row.keys}
    obeyed = {(name, keys) for table in (TO_CHOSEN, TO_TOOLS) for keys, name in table.items()}
    assert obeyed <= listed
    assert {name for name, _ in listed - obeyed} == set(OF_THE_VIEW)


@pytest.mark.parametrize(
    ("key", "is_taken"),
    [("Alt+F4", True), ("Alt+Shift+R", True), ("Ctrl+Alt+U", True), ("Ctrl+Shift+R", False), ("F8", False)],
)
def test_what_desktops_take_is_known(key, is_taken):
    assert bool(TAKEN.fullmatch(key)) is is_taken


def test_no_key_belongs_to_the_desktop_or_to_a_menu(editor):
    keys = [k for k, _ in window_keys(editor)]
    keys += [QKeySequence(k).toString() for row in KEYS for k in row.keys]
    assert [k for k in keys if TAKEN.fullmatch(k)] == []
    letters = [letter_of(action.text()) for action in editor.window.header.menu_bar.actions()]
    assert all(letters) and len(set(letters)) == len(letters)
    assert not {f"Alt+{letter.upper()}" for letter in letters} & set(keys)


def letter_of(text: str) -> str:
    found = re.search(r"&([^&])", text.replace("&&", ""))
    return found[1].lower() if found else ""


def menus(editor):
    bar = editor.window.header.menu_bar
    waiting = [a.menu() for a in bar.actions()]
    while waiting:
        menu = waiting.pop()
        yield menu
        waiting += [a.menu() for a in menu.actions() if isinstance(a.menu(), QMenu)]


def test_every_line_of_a_menu_has_a_letter_of_its_own(editor):
    own = {id(m) for m in editor.window.submenus.values() if not m.actions()}
    for menu in menus(editor):
        if id(menu) in own:
            continue
        texts = [a.text() for a in menu.actions() if not a.isSeparator()]
        letters = {text: letter_of(text) for text in texts}
        twice = [(a, b) for a, b in combinations(texts, 2) if letters[a] and letters[a] == letters[b]]
        assert twice == [], menu.title()
        assert [t for t in texts if not letters[t]] == [], menu.title()


def test_the_list_names_every_key_and_is_searched(editor, qtbot):
    rows = key_rows(editor.window)
    listed = {QKeySequence(k).toString() for row in rows for k in row.keys}
    assert {k for k, _ in window_keys(editor)} <= listed
    assert all(row.words and row.where for row in rows)
    where = {row.words: row.where for row in rows}
    assert where["Turn the panel over"] == "On the panel bench"
    assert where["Turn a quarter"] == "On plan and panel bench, with something selected"
    show_keys(editor.window)
    keys = editor.window.findChild(KeysList)
    assert not keys.isModal() and keys.table.rowCount() == len(rows)
    QTest.keyClicks(keys.search, "turn quarter")
    told = [keys.table.item(n, 0).text() for n in range(keys.table.rowCount())]
    assert "Turn a quarter" in told and len(told) < 8
    keys.search.clear()
    QTest.keyClicks(keys.search, "mirror")  # known by another word
    told = [keys.table.item(n, 0).text() for n in range(keys.table.rowCount())]
    assert any(t.endswith("Swap left and right") for t in told)
    QTest.keyClicks(keys.search, "xyzzy")
    assert keys.table.rowCount() == 0
    QTest.keyClick(keys, Qt.Key.Key_Escape)
    assert not keys.isVisible()
