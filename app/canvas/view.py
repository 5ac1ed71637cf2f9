"""The plan as the window sees it: what it may be told, and how it follows session and selection."""

from collections.abc import Iterable

from PySide6.QtCore import QPoint
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QWidget

from app.bench.panel_bench import PanelBench
from app.canvas.backdrop_sight import BackdropSight
from app.canvas.camera import Camera
from app.canvas.find_strip import FindStrip
from app.canvas.focus import Focus, of_selection
from app.canvas.geometry import Box
from app.canvas.gestures.place import place_part
from app.canvas.gestures.pull_wire import pull_wire
from app.canvas.hands.tooled_surface import TooledSurface
from app.canvas.hits.hit import Hit
from app.canvas.painting.frame import Frame
from app.canvas.painting.ground_marks import ground_box
from app.canvas.told_parts import speak_for_plans, tell_focus
from app.canvas.words import hit_words, selection_words
from app.selection import Selection
from app.session import PlanChanged, Session
from app.solving import Answer, Lit, Solving
from wiring.pictures.theme import Theme
from wiring.plan.places import Point
from wiring.plan.plan import Plan


class PlanView(TooledSurface):
    """The plan from above; it changes the plan only through the session."""

    def __init__(self, session: Session, selection: Selection, parent: QWidget | None = None) -> None:
        super().__init__(session, selection, parent)
        self.search = FindStrip(session, selection, self)
        self.bench = PanelBench(session, selection, self)
        speak_for_plans()
        session.changed.connect(self._follow)
        BackdropSight(session, lambda: self.sight().visible, self.show_all)
        session.thrown.connect(self._thrown)
        selection.changed.connect(self._selected)

    # what the window tells the view

    def listen_to(self, solving: Solving) -> None:
        """Show lamps as soon as they are known, and let the rest be worked out once they are painted."""
        solving.working.connect(lambda _yes: self.update())  # the next frame is on its way meanwhile
        solving.lit.connect(self.light_up)
        self.painted.connect(solving.go_on)

    def set_answer(self, answer: Answer) -> None:
        """Show new figures and findings."""
        self._state.learn(answer)
        self.bench.refresh()
        self.update()

    def light_up(self, lit: Lit) -> None:
        """Show new figures; what is found in them follows."""
        self._state.light_up(lit)
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Wear other colours."""
        self._state.wear(theme)
        self.bench.refresh()
        self.update()

    def zoom(self, factor: float, at_px: Point | None = None) -> None:
        """Look from nearer or farther, at the panel on the bench if there is one."""
        if self.bench.is_open:
            self.bench.zoom(factor)
        else:
            super().zoom(factor, at_px)

    def show_all(self) -> None:
        """Bring the whole plan, or the whole panel on the bench, into sight."""
        if self.bench.is_open:
            self.bench.face.fit()
        else:
            super().show_all()

    def set_wire_choice(self, size: str, colour: str) -> None:
        """Set size and colour of the wires pulled from now on."""
        self._state.wire_size, self._state.wire_colour = size, colour
        if self._acting.tool == "wire":
            self._acting.interrupt()
        self.bench.look_of_wires()

    def begin_place(self, kind_key: str) -> None:
        """Take a new part in hand; a click sets it down, and the next one follows until Escape."""
        kind = self._session.kinds.get(kind_key)
        if self.bench.is_open:
            self.bench.begin_place(kind_key)
        elif kind is not None:
            self._acting.take(
                "place",
                lambda around, last: place_part(around, kind, last.ghost.turn_deg if last.ghost else 0.0),
            )
            self._come_in()

    def begin_wire(self) -> None:
        """Pull wires from terminal to terminal until Escape, behind a panel that lies on the bench."""
        if self.bench.is_open:
            self.bench.begin_wire()
            return
        self._acting.take("wire", lambda around, _last: pull_wire(around))

    def begin_find(self) -> None:
        """Find anything on the plan by its label."""
        self.bench.open("")
        self.search.begin()

    @property
    def focus(self) -> Focus | None:
        """What is looked at alone; None when everything is."""
        return self._state.focus

    def look_at(self, focus: Focus | None) -> None:
        """Show only what belongs to a scene, supply, colour or wireway; None shows everything again."""
        self._state.look_at(focus)
        self.wished.emit(f"Only “{focus.words}” is shown. O: everything again." if focus is not None else "")
        self.update()

    def toggle_focus(self) -> None:
        """Look at what is selected alone and at the way to it, or at everything again."""
        ids = self._selection.ids
        if self.focus is not None or not ids:
            self.look_at(None)
        else:
            words = selection_words(self.sight(), ids)
            self.look_at(of_selection(self._session.plan, self._session.kinds, ids, words))

    def do(self, name: str) -> None:
        """Do to what is selected what the table of keys calls by that name."""
        self._keys.do(name)
        self.update()

    def leave_tool(self) -> None:
        """Leave what is under way and the tool, wherever the keyboard is; what is selected stays."""
        self.setFocus()
        while self._acting.cancel():
            pass

    def look_from(self, camera: Camera) -> None:
        """Look again from where one looked before."""
        if camera != self._state.camera:
            self._look(camera)

    def remove_selected(self) -> None:
        """Take away what is selected."""
        self._deeds.remove()

    def begin_select(self) -> None:
        """Go back to selecting and moving."""
        self.bench.face.begin_select()
        self._acting.take("select", None)

    def show_ids(self, ids: Iterable[str]) -> None:
        """Bring parts and wires into sight, as little as needed."""
        ids = tuple(ids)
        self.bench.leave_unless(ids)
        self.bring_into_sight(ids)

    # what others may ask

    def words(self, hit: Hit | None) -> str:
        """Return one line about what `pointed` has told; "" for nothing."""
        return hit_words(self.sight(), hit) if hit is not None else ""

    @property
    def plan(self) -> Plan:
        """The plan that is shown."""
        return self._session.plan

    @property
    def chosen(self) -> frozenset[str]:
        """All that is selected, of the ground too."""
        return self._roaming.chosen

    @property
    def only(self) -> str:
        """The one thing that is selected; "" for none or several."""
        return next(iter(self.chosen)) if len(self.chosen) == 1 else ""

    def box_of(self, one: str) -> Box | None:
        """Return where a thing lies, in millimetres; None for what has no place."""
        return self._state.geometry.around((one,)) or ground_box(self.plan, one)

    @property
    def tool(self) -> str:
        """The tool in hand: "select", "wire" or "place"."""
        return self._acting.tool

    @property
    def is_busy(self) -> bool:
        """Whether a gesture is under way."""
        return self._acting.runs

    def hit_at(self, x_px: float, y_px: float) -> Hit:
        """Return what lies under a pixel."""
        return self._hit(x_px, y_px)

    @property
    def repaints(self) -> int:
        """How often the still picture was painted anew; for measurements."""
        return self._frame.still.painted

    def px(self, x_mm: float, y_mm: float) -> QPoint:
        """Return the pixel over a place of the plan."""
        x, y = self._state.camera.to_px(x_mm, y_mm)
        return QPoint(round(x), round(y))

    # listening

    def _follow(self, change: PlanChanged) -> None:
        self._state.follow(change)
        if change.cause == "open":
            self._frame = Frame()  # what the painters kept belongs to the other plan
            self.begin_select()
            self._roaming.let_go()
            self.show_all()
        elif self._acting.runs:
            self._acting.interrupt()
        self._hover(None)  # what was said of it may have another name now
        self.update()

    def _thrown(self, _positions: object) -> None:
        self._state.note_throw()
        self.update()

    def _selected(self, ids: frozenset[str]) -> None:
        words = selection_words(self.sight(), ids, self._selection.grounds)
        self.setAccessibleDescription(words)
        if QAccessible.isActive():
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, words))
            tell_focus(self)
        self.update()
