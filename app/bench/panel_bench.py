"""Lays a panel over the plan at its own scale and takes it away again; the plan waits underneath."""

from collections.abc import Iterable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
)
from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.bench.bench import bench_of
from app.bench.bench_bar import BenchBar
from app.bench.bench_face import BenchFace
from app.bench.face_sight import beside_face
from app.bench.opening import panel_at_pointer, panel_of_selection
from app.canvas.gestures.pointer import Phase
from app.canvas.sight import Sight
from app.selection import Selection
from app.session import PlanChanged, Session

if TYPE_CHECKING:
    from app.canvas.view import PlanView

MIME = "application/x-underboard-kind"
ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class PanelBench(QWidget):
    """Covers the plan while a panel lies on the bench."""

    def __init__(self, session: Session, selection: Selection, view: "PlanView") -> None:
        super().__init__(view)
        self._session, self._selection, self._view = session, selection, view
        self.bench = bench_of(selection)
        self.bar = BenchBar(self)
        self.face = BenchFace(session, selection, self.bench, self._whole, view._around, self)
        self.setAcceptDrops(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        column.addWidget(self.face, 1)
        self.bar.back_wanted.connect(lambda: self.bench.lay(""))
        self.bar.side_wanted.connect(self.bench.turn_over)
        self.bar.tool_wanted.connect(self._take)
        self.bar.arranging_wanted.connect(self.face.act)
        self.face.wished.connect(view.wished)
        self.face.tool_changed.connect(self._tool_changed)
        self.bench.changed.connect(self._follow_bench)
        self.bench.tool_wanted.connect(self._take)
        session.changed.connect(self._follow)
        session.thrown.connect(lambda _positions: self.refresh())
        selection.changed.connect(lambda _ids: self.refresh())
        for changed in (selection.changed, self.bench.changed, session.changed):
            changed.connect(self.face.tell)
        view.tool_changed.connect(self._plan_tool_changed)
        view.installEventFilter(self)
        self._side = False
        self.hide()

    @property
    def is_open(self) -> bool:
        """Whether a panel lies on the bench."""
        return bool(self.bench.panel)

    def open(self, panel_id: str) -> None:
        """Lay a panel on the bench."""
        self.bench.lay(panel_id)

    def meant(self) -> str:
        """Return the panel of what is selected, or the only one; "" when none is meant."""
        return panel_of_selection(self._session.plan, self._selection.ids)

    def open_what_is_meant(self) -> bool:
        """Lay on the bench the panel that is meant; False when none is."""
        panel_id = self.meant()
        if panel_id:
            self.open(panel_id)
        return bool(panel_id)

    def begin_place(self, kind_key: str) -> None:
        """Place parts of a kind on the face; the first is seen before the pointer moves."""
        kind = self._session.kinds.get(kind_key)
        if kind is not None and self.face.panel is not None:
            self.face.come_in()
            self.face.begin_place(kind)
            self.face.acting.send(self.face.pointer_here("move"))
            self.face.setFocus()

    def leave_unless(self, ids: Iterable[str]) -> None:
        """Go back to the plan unless all of these sit on the panel on the bench."""
        sight = self.face.sight()
        own = {p.id for p in sight.parts} if sight is not None else set()
        if self.is_open and not set(ids) <= own:
            self.bench.lay("")

    def begin_wire(self) -> None:
        """Pull wires behind the face."""
        self.face.begin_wire()
        self.face.setFocus()

    def look_of_wires(self) -> None:
        """Take another size or colour for the wire in hand."""
        if self.face.acting.tool == "wire":
            self.face.acting.interrupt()

    def do(self, name: str) -> bool:
        """Do what an act of the window means on the bench; False when it means nothing here."""
        return self.isVisible() and self.face.act(name)

    def zoom(self, factor: float) -> None:
        """Look at the face from nearer or farther, about its middle on the screen."""
        middle = self.face.width() / 2, self.face.height() / 2
        self.face.look(self.face.camera.zoomed(factor, middle))

    def refresh(self) -> None:
        """Show new figures, positions or colours."""
        if self.is_open:
            self.face.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Open on a double click on a face and on Enter; stay as large as the plan."""
        if event.type() is QEvent.Type.Resize:
            self._place()
        elif event.type() is QEvent.Type.MouseButtonDblClick and isinstance(event, QMouseEvent):
            meant = panel_at_pointer(self._session.plan, self._view, event)
            if meant:
                self.open(meant)
                return True
        elif event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and event.key() in ENTER:
            return not self._view.is_busy and self.open_what_is_meant()
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let no key of the bar go on to the plan beneath; Escape does what it does on the face."""
        event.accept()
        if event.key() == Qt.Key.Key_Escape:
            self.face.setFocus()
            self.face.escape()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Let no menu of the plan beneath come up over the bar."""
        event.accept()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a part from the tray in hand."""
        if event.mimeData().hasFormat(MIME):
            self.begin_place(bytes(event.mimeData().data(MIME).data()).decode("utf-8", "replace"))
            event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Let its ghost follow."""
        self._drag("move", event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Set it down."""
        self._drag("press", event)
        self.face.begin_select()
        self.face.setFocus()

    def _drag(self, phase: Phase, event: QDropEvent) -> None:
        place = self.face.mapFrom(self, event.position().toPoint())
        self.face.at_px = float(place.x()), float(place.y())
        self.face.acting.send(self.face.pointer_here(phase))
        event.acceptProposedAction()

    def _whole(self, width: float, height: float) -> Sight:
        return self._view.sight()._replace(width_px=width, height_px=height)

    def _take(self, tool: str) -> None:
        self.face.take(tool)
        self.face.setFocus()

    def _tool_changed(self, tool: str) -> None:
        self.bar.show_tool(tool)
        if tool != "place" and self.is_open:
            self._view.tool_changed.emit(tool)

    def _plan_tool_changed(self, tool: str) -> None:
        if tool not in ("select", "place", self.face.acting.tool):
            self.bench.lay("")

    def _follow(self, change: PlanChanged) -> None:
        if change.cause == "open":
            self.bench.lay("")
        if not self.is_open:
            return
        self.face.forget_pointer()
        self.bench.keep_to(change.new.panels.get(self.bench.panel))
        if self.face.acting.runs and self.is_open:
            self.face.acting.interrupt()
        old = change.old.panels.get(self.bench.panel)
        new = change.new.panels.get(self.bench.panel)
        if old is not None and new is not None:
            self.bar.show_panel(new.name, behind=self.bench.behind)
            grown = (old.width_mm, old.height_mm) != (new.width_mm, new.height_mm)
            if self.face.left_alone and (
                grown or beside_face(change.old, old) != beside_face(change.new, new)
            ):
                self.face.fit()
        self.refresh()

    def _follow_bench(self) -> None:
        panel = self.face.panel
        if panel is None:
            if not self.isHidden():
                self.face.acting.take("select", None)
                self.hide()
                self._view.setFocusProxy(None)  # type: ignore[arg-type]
                self._view.setFocus()
            return
        if self.isHidden():
            self._begin(panel.id)
        self.bar.show_panel(panel.name, behind=self.bench.behind)
        if self._side != self.bench.behind:
            self._side = self.bench.behind
            if self.face.left_alone:
                self.face.fit()  # a plug beside the face is on the other side now
            if not self.bench.behind and self.face.acting.tool == "wire":
                self.face.begin_select()  # terminals are behind
            elif self.face.acting.runs:
                self.face.acting.interrupt()
        self.face.update()

    def _begin(self, panel_id: str) -> None:
        own = {p.id for p in self._session.plan.parts.values() if p.panel == panel_id}
        self._selection.select(self._selection.ids & own)
        self._side = self.bench.behind
        self._place()
        self.show()
        self.raise_()
        self.face.fit()
        self.bar.show_tool("select")
        self._view.setFocusProxy(self.face)  # whoever hands the plan the focus means what covers it
        self.face.setFocus()

    def _place(self) -> None:
        self.setGeometry(0, 0, self._view.width(), self._view.height())
