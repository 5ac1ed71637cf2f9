"""Figures that run move nothing round them; those of another sort take the room they need."""

import pytest
from PySide6.QtWidgets import QWidget

from app.inspector.figures_table import Figure, FiguresTable


@pytest.fixture
def table(qtbot):
    box = QWidget()
    qtbot.addWidget(box)
    table = FiguresTable(box)
    box.resize(300, 200)
    box.show()
    yield table
    box.close()


def rooms(table: FiguresTable) -> list[int]:
    return [value.width() for _, value in table._rows]


def needed(table: FiguresTable) -> list[int]:
    return [value.fontMetrics().horizontalAdvance(value.text()) for _, value in table._rows]


def test_a_running_figure_keeps_the_room_it_had(table):
    table.show_figures([Figure("Across it", "4.25 mV"), Figure("Through it", "210 mA")])
    before = rooms(table)
    assert all(room >= need for room, need in zip(before, needed(table), strict=True))
    table.show_figures([Figure("Across it", "12 V"), Figure("Through it", "0 A")])
    assert rooms(table) == before
    assert [v.text() for _, v in table._rows] == ["12 V", "0 A"]
    table.show_figures([Figure("Across it", "1 234.5 mV"), Figure("Through it", "0 A")])
    assert rooms(table)[0] >= needed(table)[0] > before[0]


def test_figures_of_another_sort_take_their_own_room(table):
    table.show_figures([Figure("Across it", "1 234.5 mV")])
    table.show_figures([Figure("Its light", "7 %")])
    assert rooms(table)[0] == pytest.approx(needed(table)[0], abs=2)


def test_larger_letters_get_larger_room(table):
    table.show_figures([Figure("Across it", "4.25 mV", strong=False)])
    plain = rooms(table)[0]
    value = table._rows[0][1]
    value.setStyleSheet(f"font-size: {2 * value.fontInfo().pixelSize()}px")
    assert rooms(table)[0] > 1.5 * plain
    assert rooms(table)[0] >= needed(table)[0]
