"""Keys on the drawing surface: which of them mean what, read from the table that the list of keys shows."""

from collections.abc import Callable

from PySide6.QtCore import QKeyCombination, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence

from app.canvas.gestures.pointer import GestureKey, Preview
from app.canvas.hands.acting import PlanActing
from app.canvas.hands.deeds import QUARTER_DEG, Deeds
from app.canvas.hands.key_table import PLAN_KEYS
from app.canvas.hands.roaming import Roaming

Key = Qt.Key
Combination = tuple[Key, Qt.KeyboardModifier]

ARROWS = {Key.Key_Left: (-1, 0), Key.Key_Right: (1, 0), Key.Key_Up: (0, -1), Key.Key_Down: (0, 1)}
NUDGE_MM, FINE_MM = 10.0, 1.0
US_NUDGE_MM, US_FINE_MM = 25.4 / 2, 25.4 / 16
WITH_SHIFT = Qt.KeyboardModifier.ShiftModifier
WITH_CTRL = Qt.KeyboardModifier.ControlModifier
PLAIN = Qt.KeyboardModifier.NoModifier


def combination(text: str) -> Combination:
    """Return key and modifiers of a key as the table writes it: ``Shift+R``."""
    one: QKeyCombination = QKeySequence(text)[0]  # type: ignore[index]  # the stubs do not know that it can be
    return one.key(), one.keyboardModifiers()


def _named(*when: str) -> dict[Combination, str]:
    return {combination(k): row.name for row in PLAN_KEYS if row.when in when for k in row.keys}


GESTURE_NAMES: dict[str, GestureKey] = {name: name for name in ("turn", "turn back", "back", "flip", "enter")}
# The view asks for these before the window's own shortcuts get them.
TO_GESTURE: dict[Combination, GestureKey] = {
    keys: GESTURE_NAMES[name] for keys, name in _named("in hand").items() if name in GESTURE_NAMES
}
ROW_KEYS = frozenset(keys for keys, name in _named("in hand").items() if name == "row")
FACTORS = {"nearer": 1.25, "farther": 0.8}
ZOOM_KEYS = {keys: FACTORS[name] for keys, name in _named("always").items() if name in FACTORS}
# What the view does itself, not the deeds of the selection.
OF_THE_VIEW = (
    "next",
    "previous",
    "menu",
    "nearer",
    "farther",
    "show all",
    "leave",
    "shift",
    "shift a little",
)
TO_SELECTION: dict[Combination, str] = {
    keys: name for keys, name in _named("always", "chosen").items() if name not in OF_THE_VIEW
}
MENU_KEYS = frozenset(keys for keys, name in _named("always").items() if name == "menu")


def pressed(event: QKeyEvent) -> Combination:
    """Return key and modifiers of an event, the number pad counted as ordinary keys."""
    return Key(event.key()), event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier


def types_text(event: QKeyEvent) -> bool:
    """Return whether a key writes a character."""
    plain = event.modifiers() & (WITH_CTRL | Qt.KeyboardModifier.AltModifier) == PLAIN
    return plain and len(event.text()) == 1 and event.text().isprintable()


def is_for_gesture(event: QKeyEvent, preview: Preview) -> bool:
    """Return whether a key writes a character the gesture reads."""
    return preview.types and types_text(event) and (not preview.begins or event.text() in preview.begins)


def arrow_mm(combination: Combination, units: str) -> tuple[float, float]:
    """Return how far an arrow key shifts, in millimetres; with Shift a little only."""
    key, modifiers = combination
    steps = (US_NUDGE_MM, US_FINE_MM) if units == "us" else (NUDGE_MM, FINE_MM)
    by = steps[modifiers == WITH_SHIFT]
    dx, dy = ARROWS[key]
    return dx * by, dy * by


def is_ours(event: QKeyEvent, acting: PlanActing) -> bool:
    """Return whether the surface wants a key for itself although the window has it as a shortcut."""
    one = pressed(event)
    if one[0] == Key.Key_Escape:
        return acting.runs
    if is_for_gesture(event, acting.preview):
        return True
    return one in TO_SELECTION or one in MENU_KEYS or (acting.runs and (one in TO_GESTURE or one in ROW_KEYS))


class SelectionKeys:
    """Carries out the keys that act on the selection."""

    def __init__(self, deeds: Deeds, roaming: Roaming, open_it: Callable[[], None]) -> None:
        self._deeds, self._roaming = deeds, roaming
        self._does: dict[str, Callable[[], object]] = {
            "turn": lambda: deeds.turn(QUARTER_DEG),
            "turn back": lambda: deeds.turn(-QUARTER_DEG),
            "throw": deeds.throw,
            "remove": deeds.remove,
            "select_all": deeds.select_all,
            "take next": lambda: roaming.go(1, adds=True),
            "take previous": lambda: roaming.go(-1, adds=True),
            "leave out": roaming.leave_out,
            "next sort": lambda: roaming.go_to_sort(1),
            "previous sort": lambda: roaming.go_to_sort(-1),
            "whole": deeds.take_whole,
            "next grip": lambda: roaming.take_grip(1),
            "previous grip": lambda: roaming.take_grip(-1),
            "open": open_it,
            "duplicate": deeds.duplicate,
            "copy": self.copy,
            "cut": self.cut,
            "paste": self.paste,
        }

    def press(self, event: QKeyEvent, units: str) -> bool:
        """Carry out a key; False when it means nothing here."""
        one = pressed(event)
        if one[0] in ARROWS and one[1] in (PLAIN, WITH_SHIFT):
            by = arrow_mm(one, units)
            if not self._roaming.shift_grip(*by):
                self._deeds.nudge(*by)
            return True
        name = TO_SELECTION.get(one)
        if name is not None:
            self.do(name)
        return name is not None

    def do(self, name: str) -> None:
        """Do what the table of keys calls by that name."""
        self._does[name]()

    def copy(self) -> bool:
        """Put the selected parts and joists on the clipboard; False when there are none."""
        text = self._deeds.copied()
        if text:
            QGuiApplication.clipboard().setText(text)
        return bool(text)

    def cut(self) -> None:
        """Put the selected parts and joists on the clipboard and take them off the plan."""
        if self.copy():
            self._deeds.remove()

    def paste(self) -> None:
        """Set down the parts on the clipboard."""
        self._deeds.paste(QGuiApplication.clipboard().text())
