"""A slim strip at the foot of the plan to find anything by its label while it is being typed."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLineEdit, QToolButton

from app.canvas.choice_strip import HEIGHT
from app.canvas.found import Found, found
from app.canvas.painting.ground_marks import ground_box
from app.canvas.surface import Surface
from app.selection import Selection
from app.session import PlanChanged, Session
from app.theme.elided import Elided
from app.theme.icons import icon
from app.theme.sizes import fix_height, least_width

HINT = "E4, W12, quay, “lamp by the crane”"


class FindStrip(QFrame):
    """Shows each find on the plan as it is typed; Enter goes to the next, Escape puts the strip away."""

    def __init__(self, session: Session, selection: Selection, view: Surface) -> None:
        super().__init__(view)
        self.setObjectName("choices")
        self.setAutoFillBackground(True)
        self.setAccessibleName("Find on the plan")
        self._session, self._selection, self._view = session, selection, view
        self._found: tuple[Found, ...] = ()
        self._at = 0
        self.line = QLineEdit(self)
        self.line.setAccessibleName("Designation, label or name")
        self.line.setPlaceholderText(HINT)
        least_width(self.line, 240)
        self.line.textChanged.connect(self._typed)
        self.line.installEventFilter(self)
        self.words = Elided(self)
        self.words.setProperty("look", "quiet")
        away = QToolButton(self)
        away.setIcon(icon("close"))
        away.setAccessibleName("Put the search away")
        away.clicked.connect(self.put_away)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 12, 0)
        row.setSpacing(10)
        row.addWidget(self.line)
        row.addWidget(self.words, 1)
        row.addWidget(away)
        fix_height(self, HEIGHT)
        self.setCursor(Qt.CursorShape.ArrowCursor)
        view.installEventFilter(self)
        session.changed.connect(self._follow)
        self.hide()

    def begin(self) -> None:
        """Show the strip and wait for words."""
        self._place()
        self.show()
        self.raise_()
        self.line.setFocus()
        self.line.selectAll()
        self._typed(self.line.text())

    def put_away(self) -> None:
        """Hide the strip; what was found stays selected."""
        self.hide()
        self._view.setFocus()

    def _follow(self, change: PlanChanged) -> None:
        """Look again through a plan that was changed; nothing is asked of another plan yet."""
        if change.cause == "open":
            self.line.clear()
            if self.isVisible():
                self.put_away()
        elif self.isVisible():
            self._look_again()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take Enter and Escape from the line; stay along the lower edge of the view."""
        if watched is self._view and event.type() is QEvent.Type.Resize:
            self._place()
        elif watched is self.line and isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            if event.key() == Qt.Key.Key_Escape:
                self.put_away()
                return True
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                back = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
                self._go(-1 if back else 1)
                return True
        return False

    def _typed(self, text: str) -> None:
        self._found = found(self._session.plan, self._session.kinds, text)
        self._at = 0
        if self._found:
            self._show()
        else:
            self._tell()

    def _look_again(self) -> None:
        """Count anew what fits; what is selected and where one looks stays."""
        self._found = found(self._session.plan, self._session.kinds, self.line.text())
        self._at = min(self._at, max(len(self._found) - 1, 0))
        self._tell()

    def _go(self, step: int) -> None:
        if self._found:
            self._at = (self._at + step) % len(self._found)
            self._show()

    def _show(self) -> None:
        one = self._found[self._at]
        there = self._there(one)
        ground = "" if there else one.ground
        self._tell()
        self._selection.select(there, ground)
        self._view.bring_into_sight(there, [ground_box(self._session.plan, ground)])

    def _there(self, one: Found) -> list[str]:
        plan = self._session.plan
        return [i for i in one.ids if i in plan.parts or i in plan.wires]

    def _tell(self) -> None:
        """Say what is shown, and how many there are."""
        typed = self.line.text().strip()
        if not self._found:
            self.words.setText(f"Nothing on this plan is called “{typed}”." if typed else "")
            return
        one, number = self._found[self._at], len(self._found)
        count = f"  {self._at + 1} of {number}, Enter: next" if number > 1 else ""
        self.words.setText(f"{one.words}{count}" if self._there(one) else f"{one.words} is empty.{count}")

    def _place(self) -> None:
        self.setGeometry(0, self._view.height() - HEIGHT, self._view.width(), HEIGHT)
