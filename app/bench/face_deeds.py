"""What keys, menus and the window do with what is chosen on a face; each is one step of the history."""

from collections.abc import Callable, Iterable
from typing import Literal

from PySide6.QtGui import QGuiApplication

from app.bench.bench import Bench, FaceItem
from app.bench.face_arrange import LINES, SPACED, SWAPPED, Box, lined_up, spaced_out
from app.bench.face_carrying import do_and_choose
from app.bench.face_moving import shifted
from app.bench.face_pointer import FaceAround, FaceDo
from app.bench.face_sight import item_box
from app.bench.face_wires import courses
from app.canvas.gestures.throw import momentary_position, next_position
from app.selection import Selection
from app.session import Session
from wiring.edits.face_fragment import copied_from_face, paste_on_face
from wiring.edits.face_shift import mirror_on_face, remove_from_face, shift_each_on_face
from wiring.edits.lay_anew import lay_anew
from wiring.edits.panel_spacing import in_steps, onto_spacing, spacing_of
from wiring.edits.tables import counted
from wiring.edits.turn import turn
from wiring.plan.panel_bodies import body_of
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point

LINE_UP = "Choose at least two things on the face to line them up."
SPACE = "Choose at least three things on the face to space them evenly."


class FaceDeeds:
    """Acts on the parts, wires, track lines and legends that are chosen."""

    def __init__(
        self, session: Session, selection: Selection, bench: Bench, around: Callable[[], FaceAround]
    ) -> None:
        self._session, self._selection, self._bench, self._around = session, selection, bench, around
        self.does: dict[str, Callable[[], object]] = {
            "turn": lambda: self.turn(90.0),
            "turn back": lambda: self.turn(-90.0),
            "throw": self.throw,
            "remove": self.remove,
            "select_all": self.choose_all,
            "duplicate": self.duplicate,
            "copy": self.copy,
            "cut": self.cut,
            "onto": self.onto_spacing,
            "across": lambda: self._in_steps(0),
            "down": lambda: self._in_steps(1),
            "mirror_across": lambda: self._mirror(0),
            "mirror_down": lambda: self._mirror(1),
            **{name: self._lining_up(name) for name in LINES},
            **{name: self._spacing_out(axis) for name, axis in SPACED.items()},
        }

    @property
    def parts(self) -> tuple[str, ...]:
        """The chosen parts, in plan order."""
        return tuple(i for i in self._session.plan.parts if i in self._selection.ids)

    @property
    def lines(self) -> tuple[int, ...]:
        """The chosen track lines, by number."""
        return tuple(sorted(i.number for i in self._bench.items if i.sort == "line"))

    @property
    def texts(self) -> tuple[int, ...]:
        """The chosen legends, by number."""
        return tuple(sorted(i.number for i in self._bench.items if i.sort == "text"))

    def nudge(self, by: Point) -> bool:
        """Shift what is chosen a little; False when nothing is. Nudges in a row are undone together."""
        edit = shifted(self._around(), self._selection.ids, self._bench.items, by)
        if edit is not None:
            self._session.do(edit._replace(label=f"Nudge {self._name()}"), joins_last=True)
        return edit is not None

    def turn(self, degrees: float) -> None:
        """Turn the chosen parts."""
        if self.parts:
            self._session.do(turn(self.parts, degrees, kinds=self._session.kinds))

    def throw(self, ids: Iterable[str] | None = None) -> None:
        """Put switches into their next position, live; a push button does not stay."""
        session = self._session
        for part_id in self.parts if ids is None else ids:
            part = session.plan.parts.get(part_id)
            kind = session.kinds.get(part.kind) if part is not None else None
            if kind is None or momentary_position(kind) is not None:
                continue
            position = next_position(kind, session.positions.get(part_id, ""))
            if position is not None:
                session.throw(part_id, position)

    def remove(self) -> None:
        """Take away what is chosen."""
        ids, lines, texts = self._selection.ids, self.lines, self.texts
        if ids or lines or texts:
            self._bench.choose(())  # numbers mean other things once some are gone
            self._session.do(remove_from_face(self._bench.panel, ids, lines, texts))

    def copied(self) -> str:
        """Return what is chosen as text for the clipboard; "" for nothing, or for wires alone."""
        return copied_from_face(
            self._session.plan, self._bench.panel, self._selection.ids, self.lines, self.texts
        )

    def copy(self) -> None:
        """Put what is chosen on the clipboard."""
        if text := self.copied():
            QGuiApplication.clipboard().setText(text)

    def cut(self) -> None:
        """Put what is chosen on the clipboard and take it off the face."""
        if self.copied():
            self.copy()
            self.remove()

    def paste(self, at: Point) -> None:
        """Set down what the clipboard holds with its middle at or near a place of the face, and choose it."""
        text = QGuiApplication.clipboard().text()
        edit = paste_on_face(text, self._bench.panel, at, kinds=self._session.kinds)
        self._do(FaceDo(edit, pick_new=True))

    def duplicate(self) -> None:
        """Set copies of what is chosen one spacing farther on, clear of other bodies, and choose them."""
        around, text = self._around(), self.copied()
        if not text:
            return
        step = spacing_of(around.plan, around.panel)
        across = -step if self._bench.behind else step
        by = (across, 0.0) if self.parts else (across, step)
        edit = paste_on_face(
            text, self._bench.panel, by=by, label="Duplicate on the face", kinds=self._session.kinds
        )
        self._do(FaceDo(edit, pick_new=True))

    def lay_anew(self) -> None:
        """Lay the chosen wires anew, clear of bodies and of other wires."""
        wires = [i for i in self._session.plan.wires if i in self._selection.ids]
        self._session.do(lay_anew(wires, kinds=self._session.kinds))

    def choose_all(self) -> None:
        """Choose all parts, lines and legends of the face, from behind the wires too."""
        sight = self._around().sight
        self._bench.choose(items_of(self._around()))
        wires = courses(sight) if sight.camera.behind else ()
        self._selection.select((*(p.id for p in sight.parts), *wires))

    def onto_spacing(self) -> None:
        """Bring the chosen parts, or all there are, onto the spacing."""
        own = [p.id for p in self._around().sight.parts]
        ids = [i for i in own if i in self._selection.ids]
        self._session.do(onto_spacing(self._bench.panel, ids or own, kinds=self._session.kinds))

    def _in_steps(self, axis: int) -> None:
        own = [p.id for p in self._around().sight.parts if p.id in self._selection.ids]
        way: Literal["across", "down"] = "down" if axis else "across"
        self._session.do(in_steps(self._bench.panel, own, way, kinds=self._session.kinds))

    def _mirror(self, axis: int) -> None:
        edit = mirror_on_face(
            self._bench.panel,
            self.parts,
            self.lines,
            self.texts,
            "down" if axis else "across",
            kinds=self._session.kinds,
        )
        self._session.do(edit)

    def _lining_up(self, line: str) -> Callable[[], None]:
        def act() -> None:
            boxes, around = self._boxes(edges=line not in ("row", "column")), self._around()
            step = spacing_of(around.plan, around.panel)
            if len(boxes) < 2:
                self._session.refused.emit(LINE_UP)
                return
            seen = SWAPPED.get(line, line) if self._bench.behind else line
            shifts = lined_up(boxes, seen, lambda at: round(at / step) * step)
            self._shift("Line up {}", shifts)

        return act

    def _spacing_out(self, axis: int) -> Callable[[], None]:
        def act() -> None:
            boxes = self._boxes(edges=False)
            if len(boxes) < 3:
                self._session.refused.emit(SPACE)
                return
            self._shift("Space {} evenly", spaced_out(boxes, axis))

        return act

    def _shift(self, label: str, shifts: dict[str | FaceItem, Point]) -> None:
        moved = {key: by for key, by in shifts.items() if by != (0.0, 0.0)}
        items = {key: by for key, by in moved.items() if isinstance(key, FaceItem)}
        edit = shift_each_on_face(
            label.format(counted(len(shifts), "item")),
            self._bench.panel,
            {key: by for key, by in moved.items() if not isinstance(key, FaceItem)},
            {key.number: by for key, by in items.items() if key.sort == "line"},
            {key.number: by for key, by in items.items() if key.sort == "text"},
            kinds=self._session.kinds,
        )
        self._session.do(edit)

    def _boxes(self, *, edges: bool) -> dict[str | FaceItem, Box]:
        """Return the boxes of what is chosen, in mm of the face; without `edges` only lines have a size."""
        around = self._around()
        found: dict[str | FaceItem, Box] = {}
        for part in (around.plan.parts[i] for i in self.parts):
            x, y = to_face(around.panel, (part.x_mm, part.y_mm))
            box = (x, y, x, y)
            if edges and part.kind in around.kinds:
                body = body_of(part, around.kinds[part.kind]).box
                corners = to_face(around.panel, body[:2]), to_face(around.panel, body[2:])
                box = (*corners[0], *corners[1])
            found[part.id] = box
        for item in sorted(self._bench.items):
            found[item] = item_box(around.panel, item)
            if item.sort == "text" and not edges:
                text = around.panel.texts[item.number]
                found[item] = (text.x_mm, text.y_mm, text.x_mm, text.y_mm)
        return found

    def _name(self) -> str:
        """Return words for what is chosen, so that steps about different things are not joined."""
        plan, ids, count = self._session.plan, self._selection.ids, 0
        names = [f"-{plan.parts[i].designation}" for i in self.parts]
        names += [f"-{w.label}" for w in plan.wires.values() if w.id in ids]
        names += [f"track line {n + 1}" for n in self.lines]
        names += [f"“{self._around().panel.texts[n].text}”" for n in self.texts]
        count = len(names) - 1
        return names[0] if not count else f"{names[0]} and {count} more"

    def _do(self, act: FaceDo) -> None:
        do_and_choose(self._session, self._selection, self._bench, act)


def items_of(around: FaceAround) -> list[FaceItem]:
    """Return every track line and legend of the face."""
    lines = [FaceItem("line", i) for i in range(len(around.panel.lines))]
    return [*lines, *(FaceItem("text", i) for i in range(len(around.panel.texts)))]
