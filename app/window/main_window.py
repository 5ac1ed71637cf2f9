"""The window: places its parts and connects who tells whom, in the order things must happen."""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QMainWindow, QSplitter, QWidget

from app.canvas.view import PlanView
from app.drawing.circuit_page import CircuitPage
from app.findings.strip import FindingsStrip
from app.inspector.inspector import Inspector
from app.notices import Notices
from app.outlook.battery_page import BatteryPage
from app.printing.sheets_page import SheetsPage
from app.selection import Selection
from app.session import PlanChanged, Session
from app.settings import Remembered
from app.solving import Answer, Solving
from app.theme.look import Look
from app.theme.words import softly
from app.tray.tray import Tray
from app.window.actions import VIEWS, ZOOMS, Actions
from app.window.columns import column
from app.window.committed_typing import commit_typing
from app.window.first_steps import FirstSteps, is_drawn_on
from app.window.header import Header
from app.window.menus import fill
from app.window.notice_bar import NoticeBar
from app.window.open_save import Documents
from app.window.pages import Pages
from app.window.plan_page import PlanPage
from app.window.reading_order import go_on
from app.window.tie_actions import tie
from app.window.trail import Trail
from wiring.edits.set_plan import set_plan
from wiring.plan.plan import UNTITLED

COLUMNS, FIRST_SIZE, LEAST_SIZE, FRAME = (244, 736, 340), (1360, 860), (1024, 600), (8, 40)


class MainWindow(QMainWindow):
    """Everything on the screen."""

    def __init__(
        self,
        session: Session,
        selection: Selection,
        look: Look,
        notices: Notices,
        remembered: Remembered,
        *,
        at_once: bool = False,
    ) -> None:
        super().__init__()
        self.session, self.selection, self.look = session, selection, look
        self.notices, self.remembered = notices, remembered
        self.solving = Solving(session, at_once=at_once, parent=self)
        self.acts = Actions(self)
        self.documents = Documents(session, notices, remembered, self)
        self.rescues: Callable[[], tuple[tuple[str, Callable[[], object]], ...]] = tuple
        notices.listen_to(session)
        self.plan_view = PlanView(session, selection, self)
        self._lay_out(at_once)
        self.submenus = fill(self.header.menu_bar, self.acts)
        self.first_steps = FirstSteps(
            self.acts["board"], self.acts["picture"], self.submenus["examples"], self.plan_view
        )
        self.trail = Trail(self)
        self._connect()
        tie(self)
        self._wear(look.theme)
        self._tell_plan()
        self._restore_place()

    @property
    def view(self) -> str:
        """Which of the four views is shown."""
        return VIEWS[self.pages.currentIndex()]

    def show_view(self, name: str) -> None:
        """Show one of the four views."""
        commit_typing()
        if name != self.view:
            self.trail.leave()
            self.notices.acted()
        self.acts[name].setChecked(True)
        self.pages.setCurrentIndex(VIEWS.index(name))
        self.tray.setVisible(name == "plan" and self.acts["show_tray"].isChecked())
        self.strip.hint.setVisible(name == "plan")
        self.inspector.setVisible(name != "sheets" and self.acts["show_card"].isChecked())
        if self.solving.answer is not None:
            self._show_on_page(self.solving.answer)
        if name == "battery" and self.battery_page.battery:
            self.selection.select((self.battery_page.battery,))
        target = self.battery_page.landing if name == "battery" else self._focus_of[name]
        landing = target if target.isVisible() else self.pages.currentWidget()
        if landing is not None:
            landing.setFocus()

    def show_ids(self, ids: tuple[str, ...]) -> None:
        """Select parts and wires, and bring them into sight on the plan."""
        there = [i for i in ids if i in self.session.plan.parts or i in self.session.plan.wires]
        self.selection.select(there)
        if there and self.view == "plan":
            self.plan_view.show_ids(there)

    def _lay_out(self, at_once: bool) -> None:
        room = self.screen().availableSize() - QSize(*FRAME)  # laid round it
        self.setMinimumSize(QSize(*LEAST_SIZE).boundedTo(room))
        self.resize(QSize(*FIRST_SIZE).boundedTo(room))
        self.header = Header(self.acts, self)
        self.notice_bar = NoticeBar(self.notices, self.look, self)
        self.tray = Tray(self.session.kinds, self.look, self)
        self.acts["show_tray"].setChecked(room.width() > 0.55 * sum(COLUMNS))  # else the parts wait for F7
        self.tray.setVisible(self.acts["show_tray"].isChecked())
        self.inspector = Inspector(self.session, self.selection, self.look, self, at_once=at_once)
        self.strip = FindingsStrip(self.look, self)
        self.plan_page = PlanPage(self.plan_view, self.acts, self.look, self)
        zooms = [self.acts[n] for n in ZOOMS]
        self.circuit_page = CircuitPage(self.selection, self.look, zooms, self, at_once=at_once)
        self.battery_page = BatteryPage(self.session, self.look, self, at_once=at_once)
        self.sheets_page = SheetsPage(self.session, self.look, self.acts, self, at_once=at_once)
        self.sheets_page.keep_in(self.remembered)
        self.pages = Pages(self)
        self.pages.setObjectName("page")
        for page in (self.plan_page, self.circuit_page, self.battery_page, self.sheets_page):
            self.pages.addWidget(page)
        self._focus_of: dict[str, QWidget] = {
            "plan": self.plan_view,
            "circuit": self.circuit_page.picture,
            "sheets": self.sheets_page.picture,
        }
        middle = column(self, self.pages, self.strip)
        self.columns = QSplitter(Qt.Orientation.Horizontal, self)
        self.columns.setHandleWidth(1)
        self.columns.setChildrenCollapsible(False)
        for widget in (self.tray, middle, self.inspector):
            self.columns.addWidget(widget)
        self.columns.setStretchFactor(1, 1)
        self.columns.setSizes([softly(px) for px in COLUMNS])
        self.setCentralWidget(column(self, self.header, self.columns))
        self.notice_bar.lie_over(self.pages, self.plan_view.bench.bar)

    def _connect(self) -> None:
        session, solving = self.session, self.solving
        session.changed.connect(self._plan_changed)
        session.thrown.connect(lambda _positions: self._tell_thrown())
        session.saved_state.connect(lambda _unsaved: self._tell_plan())
        self.plan_view.listen_to(solving)
        solving.answered.connect(self._show_answer)
        solving.failed.connect(lambda words: self.notices.say(words, "danger"))
        self.look.changed.connect(self._wear)
        self.header.title.renamed.connect(lambda title: session.do(set_plan(title=title or UNTITLED)))
        self.tray.wanted.connect(self._begin_place)
        self.plan_view.wished.connect(self.strip.show_hint)
        self.plan_view.tool_changed.connect(self._tool_changed)
        self.sheets_page.told.connect(self.notices.say)
        self.battery_page.told.connect(self.notices.say)
        self.circuit_page.picked.connect(self.selection.select)
        self.battery_page.chosen.connect(lambda battery: self.selection.select((battery,)))

    def _begin_place(self, key: str) -> None:
        self.show_view("plan")
        self.plan_view.begin_place(key)
        self.plan_view.setFocus()

    def _tool_changed(self, tool: str) -> None:
        if tool != "place":
            self.tray.mark("")
        self.first_steps.follow(self.session.plan, tool)

    def _plan_changed(self, change: PlanChanged) -> None:
        plan = change.new
        undone = change.cause in ("undo", "redo") and bool(change.changes.ids)
        self.selection.keep_to(plan, change.changes.ids if undone else None)
        self._tell_plan()
        self._tell_thrown()
        if change.cause == "open":
            self.circuit_page.begin_anew()
            answer = self.solving.answer
            if answer is None or answer.situation.plan is not plan:
                self.strip.show_waiting()

    def _tell_plan(self) -> None:
        session = self.session
        self.header.title.show_title(session.plan.title)
        self.header.show_saved(session.unsaved, session.path is not None)
        self.setWindowTitle(f"{session.plan.title}[*]")
        self.setWindowModified(session.unsaved)
        self.first_steps.follow(session.plan, self.plan_view.tool)
        for word, step in (("Undo", session.undo_label), ("Redo", session.redo_label)):
            act, words = self.acts[word.lower()], f"{word} {step[:1].lower() + step[1:]}" if step else word
            act.setEnabled(step is not None)
            act.setText(f"&{words}")
            act.setToolTip(f"{words}  {act.shortcut().toString()}")

    def _tell_thrown(self) -> None:
        thrown = self.session.thrown_apart
        self.acts["put_back"].setEnabled(bool(thrown))
        self.plan_page.show_thrown(len(thrown))

    def _show_answer(self, answer: Answer) -> None:
        self.plan_view.set_answer(answer)
        self.inspector.show_answer(answer)
        empty, found = not is_drawn_on(answer.situation.plan), answer.situation.findings
        self.strip.show_findings(found, empty=empty, looking=not answer.complete)
        self._show_on_page(answer)

    def _show_on_page(self, answer: Answer) -> None:
        page = self.pages.currentWidget()
        if isinstance(page, CircuitPage | BatteryPage | SheetsPage):
            page.show_answer(answer)

    def _wear(self, theme: object) -> None:
        self.plan_view.set_theme(self.look.theme)
        self.remembered.look = self.look.name

    def _restore_place(self) -> None:
        kept = self.remembered.window()
        if kept is not None:
            self.restoreGeometry(kept[0])
            self.columns.restoreState(kept[1])

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Go on in reading order."""
        page = self.pages.currentWidget() or self.pages
        areas = (self.notice_bar, self.header, self.tray, page, self.strip, self.inspector)
        return go_on(areas, self.focusWidget(), 1 if forward else -1)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Put a notice away, or leave the tool in hand, on an Escape that nothing else has used."""
        if event.key() != Qt.Key.Key_Escape:
            super().keyPressEvent(event)
        elif not self.notice_bar.yield_to_escape() and self.view == "plan":
            self.plan_view.leave_tool()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before work is lost; remember the window's place."""
        commit_typing()
        if not self.documents.may_leave():
            event.ignore()
            return
        self.remembered.keep_window(self.saveGeometry(), self.columns.saveState())
        self.documents.close()
        self.solving.close()
        pages = (self.circuit_page.making, self.sheets_page.making, *self.battery_page.makings)
        for making in (*pages, self.inspector.trying.making, self.inspector.throwing.making):
            making.close()
        event.accept()
