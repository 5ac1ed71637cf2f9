"""What keys, menus and the window do with what is chosen on a face; each is one step of the history."""

from collections.abc import Callable, Iterable
from typing import Literal

from PySide6.QtGui import QGuiApplication

from app.bench.bench import Bench
from app.bench.face_carrying import do_and_choose
from app.bench.face_lining import FaceLining
from app.bench.face_moving import shifted
from app.bench.face_pointer import FaceAround, FaceDo
from app.bench.face_things import all_of_things
from app.bench.face_wires import courses
from app.canvas.gestures.throw import momentary_position, next_position
from app.canvas.joining import JOINED_WITH_NONE, take_selected_apart
from app.selection import Selection
from app.session import Session
from wiring.edits.face_fragment import copied_from_face, paste_on_face
from wiring.edits.face_shift import mirror_on_face, remove_from_face
from wiring.edits.groups import join
from wiring.edits.lay_anew import lay_anew
from wiring.edits.panel_spacing import in_steps, onto_spacing, spacing_of
from wiring.edits.turn import turn
from wiring.plan.groups import things_of
from wiring.plan.places import Point


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
            "join": self.join,
            "take_apart": lambda: take_selected_apart(self._session, self._selection),
            "whole": self.take_whole,
            "onto": self.onto_spacing,
            "across": lambda: self._in_steps(0),
            "down": lambda: self._in_steps(1),
            "mirror_across": lambda: self._mirror(0),
            "mirror_down": lambda: self._mirror(1),
            **FaceLining(session, selection, bench, around).does,
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
        self._bench.choose(self._around().items)
        wires = courses(sight) if sight.camera.behind else ()
        self._selection.select((*(p.id for p in sight.parts), *wires))

    def join(self) -> None:
        """Make one thing of the chosen parts, and choose all of it that is on the bench."""
        if self._session.do(join(self._selection.ids)):
            self.take_whole()

    def take_whole(self) -> None:
        """Choose all on the bench that is joined with what is chosen; say so when nothing is."""
        if not things_of(self._session.plan, self.parts):
            self._session.refused.emit(JOINED_WITH_NONE)
        self._selection.select(all_of_things(self._around().sight, self._selection.ids))

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
