"""A monkey at the inspector: random presses, typing, lists, choices, edits and undo, with real events.

It may be run by hand, in a real window or without a screen: `python tests/support/inspector_monkey.py 1 3000`
does three thousand acts of seed 1 and prints what it found wrong.
"""

import random
import sys
from collections import Counter
from collections.abc import Callable
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[1]), str(Path(__file__).parents[2])]

from PySide6.QtCore import QCoreApplication, QEvent, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QMenu, QWidget
from support.editors import open_demo
from support.rows_of_parts import row_of_parts

from app.inspector.part_card import PartCard
from app.inspector.typed_field import TypedField
from app.start import Editor
from wiring.edits.move import move
from wiring.edits.panels import add_panel
from wiring.edits.remove import remove
from wiring.edits.scenes import add_scene
from wiring.edits.set_plan import set_habits

LEFT, PLAIN = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
CTRL = Qt.KeyboardModifier.ControlModifier
KEYS = (
    Qt.Key.Key_Return,
    Qt.Key.Key_Escape,
    Qt.Key.Key_Tab,
    Qt.Key.Key_Backtab,
    Qt.Key.Key_Down,
    Qt.Key.Key_Up,
)
KEYS_TOO = (Qt.Key.Key_Space, Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_End)
WORDS = ("12", "1k5", "plenty", "-3", "", "E1", "0.5 A", "Kiosk", "3 m", "5 ft 2 in", "1,000", "x" * 60)


class Monkey:
    """One pair of hands; what it does hangs on its seed alone."""

    def __init__(self, editor: Editor, seed: int) -> None:
        self.editor, self.draw = editor, random.Random(seed)
        self.held: QPoint | None = None
        self.done: Counter[str] = Counter()
        self.acts: tuple[tuple[int, Callable[[], None]], ...] = (
            (6, self.press), (6, self.release), (3, self.move_hand), (6, self.type), (5, self.key),
            (3, self.undo_key), (2, self.undo), (2, self.redo), (8, self.choose), (2, self.choose_many),
            (2, self.clear), (2, self.take_away), (2, self.edit), (4, self.open_list), (4, self.in_list),
            (2, self.click_canvas), (1, self.throw), (1, self.units), (1, self.new_scene), (1, self.bench),
            (6, self.breathe), (1, self.wheel), (1, self.line_menu),
        )  # fmt: skip

    def act(self) -> None:
        """Do one thing, then look whether all is well."""
        weights = [weight for weight, _ in self.acts]
        _, act = self.draw.choices(self.acts, weights)[0]
        self.done[act.__name__] += 1
        act()
        if self.draw.random() < 0.7:
            self.check()

    def check(self) -> None:
        """The card in sight is the right one, alone, and shows what the plan has."""
        inspector, plan = self.editor.window.inspector, self.editor.session.plan
        card = inspector.card
        assert [c for c in inspector._cards.values() if not c.isHidden()] == [card]
        assert inspector._shown == inspector._wanted()
        assert card.ids == inspector._shown[1]
        for row in card.findChildren(TypedField):
            assert row.line.isModified() or row.line.text() == row._shown, row.line.objectName()
        if isinstance(card, PartCard):
            kinds = {plan.parts[i].kind for i in card.ids}
            assert [self.editor.session.kinds[k].title for k in kinds] == [card._subtitle.text()]
            label = card._texts["label"]
            if len(card.ids) == 1 and not label.line.isModified():
                assert label.line.text() == plan.parts[card.ids[0]].label

    def _handle(self):
        popup = QApplication.activePopupWidget()
        return (popup or self.editor.window).windowHandle()

    def _widgets(self, sort: type = QWidget) -> list[QWidget]:
        window = self.editor.window
        there = (w for w in window.inspector.card.findChildren(sort) if w.isVisible() and w.isEnabled())
        return [w for w in there if not isinstance(w, QLabel) and w.window() is window]

    def _some(self, sort: type = QWidget) -> QWidget | None:
        there = self._widgets(sort)
        return self.draw.choice(there) if there else None

    def press(self) -> None:
        one = self._some()
        if one is None or self.held is not None or QApplication.activePopupWidget() is not None:
            return
        self.editor.window.inspector._area.ensureWidgetVisible(one)
        place = one.mapTo(self.editor.window, one.rect().center())
        if self.editor.window.inspector.geometry().isNull() or not self.editor.window.rect().contains(place):
            return
        QTest.mousePress(self.editor.window.windowHandle(), LEFT, PLAIN, place)
        self.held = place

    def release(self) -> None:
        if self.held is not None:
            QTest.mouseRelease(self._handle(), LEFT, PLAIN, self.held)
            self.held = None

    def move_hand(self) -> None:
        if self.held is not None:
            step = QPoint(self.draw.randint(-20, 20), self.draw.randint(-8, 8))
            QTest.mouseMove(self._handle(), self.held + step)
            self.held += step if self.draw.random() < 0.5 else QPoint()

    def type(self) -> None:
        line = self._some(QLineEdit)
        if line is None or QApplication.activePopupWidget() is not None:
            return
        line.setFocus()
        line.selectAll()
        QTest.keyClicks(line, self.draw.choice(WORDS))
        if self.draw.random() < 0.3:
            QTest.keyClick(line, Qt.Key.Key_Return)

    def key(self) -> None:
        keys = KEYS + KEYS_TOO if isinstance(QApplication.focusWidget(), QLineEdit | QComboBox) else KEYS
        self._strike(self.draw.choice(keys))

    def _strike(self, key: Qt.Key, modifiers: Qt.KeyboardModifier = PLAIN) -> None:
        popup = QApplication.activePopupWidget()
        if isinstance(popup, QMenu):
            popup.close()  # a key would end its window in the midst of the stroke
            return
        QTest.keyPress(self._handle(), key, modifiers)
        QTest.keyRelease(self._handle(), key, modifiers)  # another window, where the key has closed a list

    def undo_key(self) -> None:
        self._strike(Qt.Key.Key_Z, CTRL)

    def undo(self) -> None:
        self.editor.session.undo()

    def redo(self) -> None:
        self.editor.session.redo()

    def choose(self) -> None:
        plan = self.editor.session.plan
        there = [*plan.parts, *plan.wires]
        if there:
            self.editor.selection.select((self.draw.choice(there),))

    def choose_many(self) -> None:
        plan = self.editor.session.plan
        there = [list(plan.parts), list(plan.wires), [*plan.parts, *plan.wires]][self.draw.randrange(3)]
        self.editor.selection.select(self.draw.sample(there, min(len(there), self.draw.randint(2, 9))))

    def clear(self) -> None:
        self.editor.selection.clear()

    def take_away(self) -> None:
        if self.editor.selection.ids and len(self.editor.session.plan.parts) > 6:
            self.editor.session.do(remove(self.editor.selection.ids))

    def edit(self) -> None:
        parts = list(self.editor.session.plan.parts)
        if parts:
            self.editor.session.do(move([self.draw.choice(parts)], 5, 0))

    def open_list(self) -> None:
        box = self._some(QComboBox)
        if box is not None and self.held is None:
            box.setFocus()
            box.showPopup()

    def in_list(self) -> None:
        popup = QApplication.activePopupWidget()
        if popup is None:
            return
        keys = (Qt.Key.Key_Down, Qt.Key.Key_Up, Qt.Key.Key_Return, Qt.Key.Key_Escape)
        if self.draw.random() < 0.5:
            self._strike(self.draw.choice(keys))
        else:
            place = QPoint(self.draw.randint(2, popup.width() - 2), self.draw.randint(2, popup.height() - 2))
            QTest.mouseClick(popup.windowHandle(), LEFT, PLAIN, place)

    def click_canvas(self) -> None:
        view = self.editor.window.plan_view
        if view.isVisible() and self.held is None and QApplication.activePopupWidget() is None:
            place = QPoint(self.draw.randint(60, view.width() - 9), self.draw.randint(60, view.height() - 60))
            QTest.mouseClick(
                self.editor.window.windowHandle(), LEFT, PLAIN, view.mapTo(self.editor.window, place)
            )

    def throw(self) -> None:
        session = self.editor.session
        if session.positions:
            part = self.draw.choice(list(session.positions))
            positions = session.kinds[session.plan.parts[part].kind].positions
            session.throw(part, self.draw.choice(positions).name)

    def units(self) -> None:
        self.editor.session.do(set_habits(units=self.draw.choice(("metric", "us"))))

    def new_scene(self) -> None:
        new = self.draw.choice((add_scene, add_panel))
        if len(self.editor.session.plan.scenes) + len(self.editor.session.plan.panels) < 9:
            self.editor.session.do(new(f"N{self.draw.randrange(999)}", 0, 0, 200, 200))

    def bench(self) -> None:
        panels = ["", *self.editor.session.plan.panels]
        self.editor.window.inspector._bench.lay(self.draw.choice(panels))

    def breathe(self) -> None:
        QApplication.processEvents()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)

    def wheel(self) -> None:
        one = self._some(QComboBox)
        if one is not None:
            QTest.wheelEvent(
                one.window().windowHandle(),
                one.mapTo(self.editor.window, one.rect().center()),
                QPoint(0, -120),
            )

    def line_menu(self) -> None:
        line = self._some(QLineEdit)
        if line is not None and self.held is None and QApplication.activePopupWidget() is None:
            place = line.mapTo(self.editor.window, line.rect().center())
            QTest.mouseClick(self.editor.window.windowHandle(), Qt.MouseButton.RightButton, PLAIN, place)

    def come_to_rest(self) -> None:
        """Let go of everything."""
        self.release()
        while (popup := QApplication.activePopupWidget()) is not None:
            popup.close()
            QApplication.processEvents()
        self.breathe()
        self.check()


def plans(editor: Editor, number: int) -> None:
    """Open one of the plans it plays with."""
    if number % 3 == 0:
        editor.session.open(row_of_parts(), None)
    else:
        open_demo(editor, ("quay", "harbour")[number % 3 - 1])


def by_hand(seed: int, acts: int) -> None:
    """Run long, and say what went wrong."""
    import faulthandler
    import tempfile
    import traceback

    from support.editors import made_editor

    faulthandler.enable()
    faults: list[str] = []
    QApplication.instance() or QApplication([])
    editor = made_editor(Path(tempfile.mkdtemp()), at_once=False)
    sys.excepthook = lambda *what: faults.append("".join(traceback.format_exception(*what)))
    monkey = Monkey(editor, seed)
    for number in range(acts):
        try:
            if number % 400 == 0:
                monkey.come_to_rest()
                plans(editor, seed + number // 400)
            monkey.act()
        except Exception:
            faults.append(f"act {number}\n{traceback.format_exc()}")
            if len(faults) > 5:
                break
    try:
        monkey.come_to_rest()
    except Exception:
        faults.append(f"at the end\n{traceback.format_exc()}")
    told = f"seed {seed}: {acts} acts, {dict(monkey.done)}, {len(faults)} faults"
    sys.stdout.write("\n".join([told, *faults, ""]))
    sys.stdout.flush()


if __name__ == "__main__":
    import os

    by_hand(int(sys.argv[1]), int(sys.argv[2]))
    os._exit(0)
