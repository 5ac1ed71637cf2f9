"""The list of keys cuts no key, and its rows are as high as their words need."""

import pytest
from PySide6.QtTest import QTest
from support.editors import settle

from app.window.keys_list import KeysList, show_keys


@pytest.fixture(params=(1.0, 1.6))
def keys(request, editor):
    editor.look.write_at(request.param)
    show_keys(editor.window)
    settle()
    settle()
    yield editor.window.findChild(KeysList)
    for one in editor.window.findChildren(KeysList):
        one.close()
    editor.look.write_at(1.0)
    settle()


def lines(table, row, column) -> int:
    height = table.sizeHintForRow(row)
    assert height <= table.rowHeight(row)
    metrics = table.fontMetrics()
    room = table.columnWidth(column) - 2 * 8 - 8  # the rules' padding, and Qt's own beside the words
    words = table.item(row, column).text()
    return 1 if metrics.horizontalAdvance(words) <= room else 2


def test_every_key_stands_whole_beside_what_it_does(keys):
    table, metrics = keys.table, keys.table.fontMetrics()
    assert table.rowCount() > 60
    for row in range(table.rowCount()):
        needed = metrics.horizontalAdvance(table.item(row, 1).text())
        assert needed + 16 <= table.columnWidth(1), table.item(row, 1).text()
    assert table.columnWidth(0) > table.columnWidth(1)
    assert sum(table.columnWidth(n) for n in range(3)) <= table.viewport().width()


def has_even_rows(table) -> bool:
    single = {
        table.rowHeight(row)
        for row in range(table.rowCount())
        if lines(table, row, 0) == 1 and lines(table, row, 2) == 1
    }
    return len(single) == 1 and single.pop() < 2 * table.fontMetrics().height() + 10


def test_rows_of_one_line_are_all_as_high(keys):
    assert has_even_rows(keys.table)


def test_they_stay_so_when_it_is_made_wider_and_while_one_searches(keys):
    before = sum(keys.table.rowHeight(row) for row in range(keys.table.rowCount()))
    keys.resize(keys.width() + 260, keys.height())
    settle()
    assert has_even_rows(keys.table)
    assert sum(keys.table.rowHeight(row) for row in range(keys.table.rowCount())) <= before
    QTest.keyClicks(keys.search, "ctrl")
    settle()
    assert keys.table.rowCount() > 20 and has_even_rows(keys.table)
