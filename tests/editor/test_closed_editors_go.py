"""An editor that is closed leaves nothing behind: its objects are collected and the memory does not grow."""

import gc
import resource
from pathlib import Path
from weakref import ref

import pytest
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication
from support.editors import close_editor, made_editor, open_demo, settle

EDITORS, WARM = 4, 2
MOST_GROWTH_MB = 1.0  # an editor that stayed took ten


@pytest.fixture
def read_aloud():
    """As if a screen reader ran, which makes Qt ask for what stands on the plan."""
    QAccessible.setActive(True)
    yield
    QAccessible.setActive(False)


def resident_mb() -> float:
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * resource.getpagesize() / 1e6


def used_and_closed(folder: Path) -> dict[str, ref]:
    """Use an editor a little, close it, and return what must be gone by then."""
    editor = made_editor(folder)
    window = editor.window
    plan = open_demo(editor)
    editor.selection.select(list(plan.parts)[:1])
    told = QAccessible.queryAccessibleInterface(window.plan_view)
    assert told.child(0).text(QAccessible.Text.Name)
    kept = {
        name: ref(one)
        for name, one in {
            "editor": editor,
            "window": window,
            "plan": window.plan_view,
            "bench": window.plan_view.bench,
            "inspector": window.inspector,
            "session": editor.session,
            "selection": editor.selection,
            "look": editor.look,
            "notices": editor.notices,
            "solving": editor.solving,
        }.items()
    }
    close_editor(editor)
    return kept


def test_editors_opened_and_closed_are_collected_and_take_no_memory(qapp, tmp_path, read_aloud):
    widgets = len(QApplication.allWidgets())
    warm_mb = 0.0
    for count in range(EDITORS):
        kept = used_and_closed(tmp_path)
        gc.collect()
        settle()
        assert [name for name, one in kept.items() if one() is not None] == []
        assert len(QApplication.allWidgets()) <= widgets
        if count == WARM - 1:
            warm_mb = resident_mb()
    assert (resident_mb() - warm_mb) / (EDITORS - WARM) < MOST_GROWTH_MB
