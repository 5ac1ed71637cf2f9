"""The keyboard on the bench: walk, nudge by the spacing, turn over, draw, write, take away."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent

from app.bench.bench import FaceItem
from app.bench.face_carrying import do_and_choose
from app.bench.face_gestures import shifted
from app.bench.face_pointer import FaceDo, FaceWrite
from app.bench.face_view import FaceView
from app.canvas.keys import ARROWS, PLAIN, WITH_CTRL, WITH_SHIFT, ZOOM_KEYS, pressed
from wiring.edits.duplicate import duplicate
from wiring.edits.face_items import copy_items, remove_items
from wiring.edits.panel_spacing import in_steps, onto_spacing, spacing_of
from wiring.edits.remove import remove
from wiring.edits.turn import turn

Key = Qt.Key
FINE_MM = 1.0
OURS_WITH_CTRL = ((Key.Key_A, WITH_CTRL), (Key.Key_D, WITH_CTRL))
TO_GESTURE = {
    (Key.Key_Backspace, PLAIN): "back",
    (Key.Key_Return, PLAIN): "enter",
    (Key.Key_Enter, PLAIN): "enter",
    (Key.Key_R, PLAIN): "turn",
    (Key.Key_R, WITH_SHIFT): "turn back",
}
KEYS = (
    "B turns the panel over, D draws a track line, L puts a legend, Tab goes from thing to thing, "
    "arrows move by the spacing, Esc goes back to the plan."
)


class TypedFace(FaceView):
    """Gives keys to the gesture that runs, or to what is chosen."""

    def event(self, event: QEvent) -> bool:
        """Take plain keys before the window's shortcuts, and Tab before it moves the focus."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            plain = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier in (PLAIN, WITH_SHIFT)
            if plain or pressed(event) in OURS_WITH_CTRL:
                event.accept()
                return True
        elif event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            step = {Key.Key_Tab: 1, Key.Key_Backtab: -1}.get(Key(event.key()))
            if step is not None and not self.acting.runs and self._walk(step):
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Give a key to the gesture, or to what is chosen."""
        combination = pressed(event)
        key = combination[0]
        if self.panel is None or self.typing.isVisible():
            event.accept()  # an arrow that the line has no use for must not nudge what is chosen
        elif key == Key.Key_Escape:
            self.escape()
        elif self.acting.runs and combination in TO_GESTURE:
            self.acting.send(self.pointer_here("key")._replace(key=TO_GESTURE[combination]))  # type: ignore[arg-type]
        elif key in ARROWS:
            self._arrow(key, fine=combination[1] == WITH_SHIFT)
        elif combination in ZOOM_KEYS:
            self.look(self.camera.zoomed(ZOOM_KEYS[combination], (self.width() / 2, self.height() / 2)))
        elif key == Key.Key_Home:
            self.fit()
        else:
            self._plain(combination)  # what means nothing here must mean nothing to the plan beneath either

    def _plain(self, combination: tuple[Qt.Key, Qt.KeyboardModifier]) -> None:
        does: dict[tuple[Qt.Key, Qt.KeyboardModifier], Callable[[], object]] = {
            (Key.Key_B, PLAIN): lambda: self.bench.turn_over(not self.bench.behind),
            (Key.Key_D, PLAIN): self._begin_line_here,
            (Key.Key_L, PLAIN): self._begin_text_here,
            (Key.Key_V, PLAIN): self.begin_select,
            (Key.Key_G, PLAIN): lambda: self.arrange("onto"),
            (Key.Key_X, PLAIN): lambda: self.arrange("across"),
            (Key.Key_Y, PLAIN): lambda: self.arrange("down"),
            (Key.Key_T, PLAIN): lambda: self.throw(tuple(sorted(self.selection.ids))),
            (Key.Key_Space, PLAIN): lambda: self.throw(tuple(sorted(self.selection.ids))),
            (Key.Key_R, PLAIN): lambda: self.turn_parts(90.0),
            (Key.Key_R, WITH_SHIFT): lambda: self.turn_parts(-90.0),
            (Key.Key_Delete, PLAIN): self.remove_chosen,
            (Key.Key_Backspace, PLAIN): self.remove_chosen,
            (Key.Key_Return, PLAIN): self.retype,
            (Key.Key_F2, PLAIN): self.retype,
            (Key.Key_A, WITH_CTRL): self.choose_all,
            (Key.Key_D, WITH_CTRL): self.duplicate,
        }
        does.get(combination, lambda: None)()

    def arrange(self, how: str) -> None:
        """Bring the chosen parts "onto" the spacing, or into equal steps "across" or "down"."""
        sight = self.sight()
        if sight is None:
            return
        own = [p.id for p in sight.parts]
        ids = [i for i in own if i in self.selection.ids]
        panel_id = self.bench.panel
        if how == "onto":
            self.session.do(onto_spacing(panel_id, ids or own))
        else:
            self.session.do(in_steps(panel_id, ids, "across" if how == "across" else "down"))

    def duplicate(self) -> None:
        """Set copies of what is chosen one spacing farther on, and choose them."""
        around = self.around()
        step = spacing_of(around.plan, around.panel)
        if self.bench.items:
            lines = sorted(i.number for i in self.bench.items if i.sort == "line")
            texts = sorted(i.number for i in self.bench.items if i.sort == "text")
            do_and_choose(
                self.session,
                self.selection,
                self.bench,
                FaceDo(copy_items(self.bench.panel, lines, texts, step, step), pick_new=True),
            )
        elif self.selection.ids:
            do_and_choose(
                self.session,
                self.selection,
                self.bench,
                FaceDo(duplicate(sorted(self.selection.ids), 2 * step, 0.0), pick_new=True),
            )

    def remove_chosen(self) -> None:
        """Take away the parts, or the lines and legends, that are chosen."""
        items = self.bench.items
        if items:
            lines = [i.number for i in items if i.sort == "line"]
            texts = [i.number for i in items if i.sort == "text"]
            self.bench.choose(())
            self.session.do(remove_items(self.bench.panel, lines, texts))
        if self.selection.ids:
            self.session.do(remove(self.selection.ids))

    def choose_all(self) -> None:
        """Choose all parts, lines and legends of the face."""
        sight = self.sight()
        if sight is not None:
            self.bench.choose(self._items())
            self.selection.select(p.id for p in sight.parts)

    def _items(self) -> list[FaceItem]:
        panel = self.panel
        if panel is None:
            return []
        lines = [FaceItem("line", i) for i in range(len(panel.lines))]
        return [*lines, *(FaceItem("text", i) for i in range(len(panel.texts)))]

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
        step = FINE_MM if fine else spacing_of(around.plan, around.panel)
        dx, dy = ARROWS[key]
        if self.acting.tool != "select":
            scale = self.camera.scale
            self.at_px = self.at_px[0] + dx * step * scale, self.at_px[1] + dy * step * scale
            self.acting.send(self.pointer_here("move"))
            return
        across = -dx if self.bench.behind else dx
        edit = shifted(around, self.selection.ids, self.bench.items, (across * step, dy * step))
        if edit is None:
            self.look(self.camera.panned(-dx * 60.0, -dy * 60.0))
        else:
            self.session.do(edit._replace(label="Nudge on the face"), joins_last=True)

    def turn_parts(self, degrees: float) -> None:
        """Turn the chosen parts."""
        parts = [i for i in self.selection.ids if i in self.session.plan.parts]
        if parts:
            self.session.do(turn(parts, degrees))

    def _begin_line_here(self) -> None:
        self._come_in()
        self.begin_line()

    def _begin_text_here(self) -> None:
        self._come_in()
        self.begin_text()

    def _come_in(self) -> None:
        """Bring a pointer that is beside the face to its middle, so that keys can go on from there."""
        sight = self.sight()
        if sight is None:
            return
        x, y = sight.camera.to_face(*self.at_px)
        panel = sight.panel
        if not (0 <= x <= panel.width_mm and 0 <= y <= panel.height_mm):
            self.at_px = sight.camera.to_px((panel.width_mm / 2, panel.height_mm / 2))

    def retype(self) -> None:
        """Type the chosen legend anew."""
        texts = sorted(i.number for i in self.bench.items if i.sort == "text")
        panel = self.panel
        if texts and panel is not None:
            text = panel.texts[texts[0]]
            self.acting.carry_out(FaceWrite((text.x_mm, text.y_mm), texts[0]))

    def _walk(self, step: int) -> bool:
        """Go to the next part, line or legend; False past the last one."""
        sight = self.sight()
        if sight is None:
            return False
        things: list[str | FaceItem] = [*(p.id for p in sight.parts), *self._items()]
        chosen = [i for i, t in enumerate(things) if t in self.selection.ids or t in self.bench.items]
        at = (chosen[-1 if step > 0 else 0] + step) if chosen else (0 if step > 0 else len(things) - 1)
        if not 0 <= at < len(things):
            return False
        thing = things[at]
        self.bench.choose((thing,) if isinstance(thing, FaceItem) else ())
        self.selection.select((thing,) if isinstance(thing, str) else ())
        return True
