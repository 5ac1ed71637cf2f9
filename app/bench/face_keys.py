"""The keyboard on the bench: walk, nudge by the spacing, turn over, draw, write, arrange, copy, take away."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent

from app.bench.bench import FaceItem
from app.bench.face_hit import FaceHit, next_terminal
from app.bench.face_sight import FaceSight
from app.bench.face_view import FaceView
from app.bench.face_wires import courses
from app.bench.face_wiring import bend_on_face
from app.canvas.hands.key_table import BENCH_KEYS
from app.canvas.hands.keys import (
    ARROWS,
    FINE_MM,
    PLAIN,
    TO_GESTURE,
    US_FINE_MM,
    WITH_SHIFT,
    ZOOM_KEYS,
    Combination,
    combination,
    pressed,
    types_text,
)
from wiring.edits.panel_spacing import spacing_of

Key = Qt.Key
PAN_PX = 60.0
TOOLS = ("turn over", "line", "text", "select", "wire")
OF_THE_VIEW = ("next", "previous", "shift", "shift a little", "leave", "nearer", "farther", "show all")


def _obeyed(names: Callable[[str], bool]) -> dict[Combination, str]:
    rows = (row for row in BENCH_KEYS if row.when in ("always", "chosen") and names(row.name))
    return {combination(key): row.name for row in rows for key in row.keys}


# What is chosen, by the names the window has for it too; the same keys as on the plan where there is one.
TO_CHOSEN = _obeyed(lambda name: name not in (*TOOLS, *OF_THE_VIEW))
TO_TOOLS = _obeyed(TOOLS.__contains__)
KEYS = (
    "B turns the panel over, W pulls a wire behind it, D draws a track line, L puts a legend, "
    "Tab goes from thing to thing, arrows move by the spacing, Ctrl+C and Ctrl+V copy and paste, "
    "Esc goes back to the plan."
)


class TypedFace(FaceView):
    """Gives keys to the gesture that runs, or to what is chosen."""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take what is meant for the face before the window's shortcuts and Qt's own answers.

        Not `event` itself: a fault in a handler below an overridden `event` would end the whole program.
        """
        return watched is self and self.takes_first(event)

    def takes_first(self, event: QEvent) -> bool:
        """Take plain keys before the window's shortcuts, and Tab before it moves the focus."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            plain = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier in (PLAIN, WITH_SHIFT)
            if (plain and not _is_windows(event)) or pressed(event) in TO_CHOSEN:
                event.accept()
                return True
        elif event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = {Key.Key_Tab: 1, Key.Key_Backtab: -1}.get(Key(event.key()))
            if step is not None and self._walk(step):
                return True
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Give a key to the gesture, or to what is chosen."""
        one = pressed(event)
        key = one[0]
        if self.panel is None or self.typing.isVisible():
            event.accept()  # an arrow that the line has no use for must not nudge what is chosen
        elif key == Key.Key_Escape:
            self.escape()
        elif self.acting.preview.types and types_text(event):
            self.acting.send(self.pointer_here("key")._replace(text=event.text()))
        elif self.acting.runs and one in TO_GESTURE:
            self.acting.send(self.pointer_here("key")._replace(key=TO_GESTURE[one]))
        elif key in ARROWS and one[1] in (PLAIN, WITH_SHIFT):
            self._arrow(key, fine=one[1] == WITH_SHIFT)
        elif one in ZOOM_KEYS:
            self.look(self.camera.zoomed(ZOOM_KEYS[one], (self.width() / 2, self.height() / 2)))
        elif key == Key.Key_Home:
            self.fit()
        elif one in TO_TOOLS:
            self.take(TO_TOOLS[one])
        else:  # what means nothing here must mean nothing to the plan beneath either
            self.act(TO_CHOSEN.get(one, ""))

    def take(self, tool: str) -> None:
        """Take a tool in hand by key, or turn the panel over."""
        self.come_in()
        does: dict[str, Callable[[], None]] = {
            "turn over": lambda: self.bench.turn_over(not self.bench.behind),
            "line": self.begin_line,
            "text": self.begin_text,
            "select": self.begin_select,
            "wire": self.begin_wire,
        }
        does[tool]()

    def act(self, name: str) -> bool:
        """Do what keys, menus and the window call by that name to what is chosen; False for no such."""
        if name == "paste":
            self.come_in()
            self.deeds.paste(self.pointer_here("move").at)
        elif name == "rename":
            self.retype()
        elif name in self.deeds.does:
            self.deeds.does[name]()
        else:
            return False
        return True

    def bend(self, hit: FaceHit) -> None:
        """Put a bend into the wire that was hit."""
        act = bend_on_face(self.around(), hit.wire, hit.at)
        if act is not None:
            self.acting.carry_out(act)

    def escape(self) -> None:
        """Leave the gesture, then what is chosen, then the bench."""
        if self.acting.cancel():
            return
        if self.selection.ids or self.bench.items:
            self.bench.choose(())
            self.selection.clear()
        else:
            self.bench.lay("")

    def _arrow(self, key: Qt.Key, *, fine: bool) -> None:
        """Steer what is in hand, or nudge what is chosen; from behind too, left is left on the screen."""
        around = self.around()
        fine_mm = US_FINE_MM if around.plan.habits.units == "us" else FINE_MM
        step = fine_mm if fine else spacing_of(around.plan, around.panel)
        dx, dy = ARROWS[key]
        if self.acting.tool != "select":
            step = step if fine or self.acting.tool != "wire" else around.whole.grid_mm
            scale = self.camera.scale
            self.at_px = self.at_px[0] + dx * step * scale, self.at_px[1] + dy * step * scale
            self.acting.send(self.pointer_here("move"))
            return
        across = -dx if self.bench.behind else dx
        if not self.deeds.nudge((across * step, dy * step)):
            self.look(self.camera.panned(-dx * PAN_PX, -dy * PAN_PX))

    def come_in(self) -> None:
        """Bring a pointer that is beside the face to its middle, so that keys can go on from there."""
        sight = self.sight()
        if sight is None:
            return
        x, y = sight.camera.to_face(*self.at_px)
        panel = sight.panel
        if not (0 <= x <= panel.width_mm and 0 <= y <= panel.height_mm):
            self.at_px = sight.camera.to_px((panel.width_mm / 2, panel.height_mm / 2))

    def _walk(self, step: int) -> bool:
        """Go to the next thing, or with the wire in hand to the next terminal; False past the last thing."""
        sight = self.sight()
        if sight is not None and self.acting.tool == "wire":
            return self._to_terminal(sight, step)
        if sight is None or self.acting.runs:
            return False
        wires = courses(sight) if self.bench.behind else ()
        seen = sight.at_back if self.bench.behind else sight.parts
        things: list[str | FaceItem] = [*(p.id for p in seen), *self.around().items, *wires]
        chosen = [i for i, t in enumerate(things) if t in self.selection.ids or t in self.bench.items]
        at = (chosen[-1 if step > 0 else 0] + step) if chosen else (0 if step > 0 else len(things) - 1)
        if not 0 <= at < len(things):
            return False
        thing = things[at]
        self.bench.choose((thing,) if isinstance(thing, FaceItem) else ())
        self.selection.select((thing,) if isinstance(thing, str) else ())
        return True

    def _to_terminal(self, sight: FaceSight, step: int) -> bool:
        """Bring the wire in hand to the next terminal."""
        place = next_terminal(sight, self.acting.preview.landing, step)
        if place is not None:
            self.at_px = sight.camera.to_px(place)
            self.acting.send(self.pointer_here("move"))
        return place is not None


def _is_windows(event: QKeyEvent) -> bool:
    """Return whether a key without Ctrl belongs to the window wherever the focus is: F1, F7 and so on."""
    return Key.Key_F1 <= event.key() <= Key.Key_F12 and event.key() != Key.Key_F2
