"""A whole editor without a screen, with settings and rescue copies in a folder of its own."""

from functools import cache
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.printing.wish import Wish
from app.settings import Remembered
from app.start import Editor
from app.window.main_window import COLUMNS
from app.window.open_save import Choice
from wiring.files.store import load
from wiring.plan.plan import Plan

DEMOS = Path(__file__).parents[2] / "demo_layouts"


def made_editor(folder: Path, *, at_once: bool = True, size: tuple[int, int] = (1280, 800)) -> Editor:
    application = QApplication.instance() or QApplication([])
    editor = Editor(application, Remembered(folder / "editor.ini"), look="light", at_once=at_once)
    editor.window.documents.ask = lambda: Choice.LEAVE
    editor.window.resize(*size)
    editor.window.show()
    editor.solving.request()
    application.processEvents()
    return editor


def as_new(editor: Editor, folder: Path) -> Editor:
    """The same editor as if it had just been started: making one anew costs more than most tests."""
    window = editor.window
    editor.remembered.keep_in(folder / "editor.ini")
    window.documents.ask = lambda: Choice.LEAVE
    editor.selection.clear()
    editor.session.open(Plan(), None)
    editor.look.wear("light")
    editor.look.write_at(1.0)
    for act in ("show_tray", "show_card"):
        window.acts[act].setChecked(True)
    window.acts["select"].trigger()
    window.plan_page.wire_colour.show_value("")
    window.plan_view.set_wire_choice("", "")
    window.strip.unfold(False)
    window.tray.search.clear()
    window.tray.list.scrollToTop()
    window.plan_view.search.line.clear()
    window.plan_view.search.put_away()
    window.circuit_page.picture.show_all()
    window.battery_page.bar.as_table.setChecked(False)
    window.battery_page.bar.switch.choose(0)
    window.sheets_page.choices.show_wish(Wish())
    window.resize(1280, 800)
    window.plan_page.keep_room()  # as on a screen that the window fits on
    window.columns.setSizes(COLUMNS)
    window.show()
    QApplication.sendEvent(window.plan_view, QEvent(QEvent.Type.Leave))
    window.notice_bar.hide()
    editor.notices.last = None
    editor.solving.request()
    settle()
    return editor


def settle() -> None:
    """Let what is due happen, as the running event loop would: without it nothing is deleted by itself."""
    QApplication.processEvents()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


def close_editor(editor: Editor) -> None:
    editor.window.close()
    editor.close()
    editor.window.deleteLater()
    settle()


@cache
def demo(name: str) -> Plan:
    """Read once: a plan is a value, and what is worked out of it is known by it."""
    return load(DEMOS / f"{name}.underboard")


def open_demo(editor: Editor, name: str = "quay") -> Plan:
    editor.session.open(demo(name), None)
    settle()
    return editor.session.plan


def part_id(editor: Editor, designation: str) -> str:
    return next(p.id for p in editor.session.plan.parts.values() if p.designation == designation)


def wire_id(editor: Editor, label: str) -> str:
    return next(w.id for w in editor.session.plan.wires.values() if w.label == label)


def type_into(line, text: str, *, enter: bool = True) -> None:
    line.setFocus()
    line.selectAll()
    QTest.keyClicks(line, text)
    if enter:
        QTest.keyClick(line, Qt.Key.Key_Return)


def field(editor: Editor, name: str):
    """The line or box of the inspector's card with that object name."""
    from PySide6.QtWidgets import QWidget

    found = editor.window.inspector.card.findChild(QWidget, name)
    assert found is not None, name
    return found
