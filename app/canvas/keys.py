"""Keys on the drawing surface: nudge, turn, throw, walk from part to part, and words to a running gesture."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent

from app.canvas.acting import PlanActing
from app.canvas.deeds import QUARTER_DEG, Deeds
from app.canvas.gestures.pointer import GestureKey

Key = Qt.Key

ARROWS = {Key.Key_Left: (-1, 0), Key.Key_Right: (1, 0), Key.Key_Up: (0, -1), Key.Key_Down: (0, 1)}
NUDGE_MM, FINE_MM = 10.0, 1.0
US_NUDGE_MM, US_FINE_MM = 25.4 / 2, 25.4 / 16
WITH_SHIFT = Qt.KeyboardModifier.ShiftModifier
WITH_CTRL = Qt.KeyboardModifier.ControlModifier
PLAIN = Qt.KeyboardModifier.NoModifier

# (key, modifiers) -> what it is called; the view asks for these before the window's own shortcuts get them.
TO_GESTURE: dict[tuple[Key, Qt.KeyboardModifier], GestureKey] = {
    (Key.Key_R, PLAIN): "turn",
    (Key.Key_R, WITH_SHIFT): "turn back",
    (Key.Key_Backspace, PLAIN): "back",
    (Key.Key_Space, PLAIN): "flip",
    (Key.Key_Return, PLAIN): "enter",
    (Key.Key_Enter, PLAIN): "enter",
}
ZOOM_KEYS = {
    (Key.Key_Plus, PLAIN): 1.25,
    (Key.Key_Plus, WITH_SHIFT): 1.25,
    (Key.Key_Equal, PLAIN): 1.25,
    (Key.Key_Minus, PLAIN): 0.8,
}
TO_SELECTION: dict[tuple[Key, Qt.KeyboardModifier], str] = {
    (Key.Key_R, PLAIN): "turn",
    (Key.Key_R, WITH_SHIFT): "turn back",
    (Key.Key_T, PLAIN): "throw",
    (Key.Key_Space, PLAIN): "throw",
    (Key.Key_Delete, PLAIN): "remove",
    (Key.Key_Backspace, PLAIN): "remove",
    (Key.Key_A, WITH_CTRL): "select all",
    (Key.Key_D, WITH_CTRL): "duplicate",
    (Key.Key_C, WITH_CTRL): "copy",
    (Key.Key_X, WITH_CTRL): "cut",
    (Key.Key_V, WITH_CTRL): "paste",
}


def pressed(event: QKeyEvent) -> tuple[Key, Qt.KeyboardModifier]:
    """Return key and modifiers of an event, the number pad counted as ordinary keys."""
    return Key(event.key()), event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier


def types_text(event: QKeyEvent) -> bool:
    """Return whether a key writes a character."""
    plain = event.modifiers() & (WITH_CTRL | Qt.KeyboardModifier.AltModifier) == PLAIN
    return plain and len(event.text()) == 1 and event.text().isprintable()


def arrow_mm(combination: tuple[Key, Qt.KeyboardModifier], units: str) -> tuple[float, float]:
    """Return how far an arrow key shifts, in millimetres; with Shift a little only."""
    key, modifiers = combination
    steps = (US_NUDGE_MM, US_FINE_MM) if units == "us" else (NUDGE_MM, FINE_MM)
    by = steps[modifiers == WITH_SHIFT]
    dx, dy = ARROWS[key]
    return dx * by, dy * by


def is_ours(event: QKeyEvent, acting: PlanActing) -> bool:
    """Return whether the surface wants a key for itself although the window has it as a shortcut."""
    combination = pressed(event)
    if combination[0] == Key.Key_Escape:
        return acting.runs
    if acting.preview.types and types_text(event):
        return True
    return combination in TO_SELECTION or (acting.runs and combination in TO_GESTURE)


class SelectionKeys:
    """Carries out the keys that act on the selection."""

    def __init__(self, deeds: Deeds) -> None:
        self._deeds = deeds
        self._does = {
            "turn": lambda: deeds.turn(QUARTER_DEG),
            "turn back": lambda: deeds.turn(-QUARTER_DEG),
            "throw": deeds.throw,
            "remove": deeds.remove,
            "select all": deeds.select_all,
            "duplicate": deeds.duplicate,
            "copy": self.copy,
            "cut": self.cut,
            "paste": self.paste,
        }

    def press(self, event: QKeyEvent, units: str) -> bool:
        """Carry out a key; False when it means nothing here."""
        key, modifiers = pressed(event)
        if key in ARROWS and modifiers in (PLAIN, WITH_SHIFT):
            self._deeds.nudge(*arrow_mm((key, modifiers), units))
            return True
        name = TO_SELECTION.get((key, modifiers))
        if name is None:
            return False
        self._does[name]()
        return True

    def copy(self) -> None:
        """Put the selected parts on the clipboard."""
        text = self._deeds.copied()
        if text:
            QGuiApplication.clipboard().setText(text)

    def cut(self) -> None:
        """Put the selected parts on the clipboard and take them off the plan."""
        self.copy()
        self._deeds.remove()

    def paste(self) -> None:
        """Set down the parts on the clipboard."""
        self._deeds.paste(QGuiApplication.clipboard().text())
