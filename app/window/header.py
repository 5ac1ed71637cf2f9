"""The slim bar at the top: the menus, the plan's name, the four views, undo and redo, look and print."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QMenuBar, QSizePolicy, QToolButton, QWidget

from app.theme.icon_button import icon_button
from app.theme.icons import renderer
from app.theme.sizes import fix_height
from app.window.actions import VIEWS, Actions
from app.window.title_line import TitleLine

HEIGHT, VIEW_WIDTH = 46, 72
ICONS = ("undo", "redo", "", "look", "print")  # "" is a line between them


class Header(QFrame):
    """Holds no state: it shows what the window tells it."""

    def __init__(self, actions: Actions, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("header")
        fix_height(self, HEIGHT)
        self.menu_bar = QMenuBar(self)
        self.menu_bar.setNativeMenuBar(False)
        self.menu_bar.setAccessibleName("Menus")
        self.menu_bar.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Preferred)
        self.title = TitleLine(self)
        self.state = QLabel(self)
        self.state.setProperty("look", "caption")

        self.views = _view_switch(actions, self)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 0, 10, 0)
        row.setSpacing(6)
        left, right = QHBoxLayout(), QHBoxLayout()
        for side in (left, right):
            side.setSpacing(4)
        left.addWidget(_Mark(self))
        left.addWidget(self.menu_bar, 0, Qt.AlignmentFlag.AlignVCenter)
        left.addWidget(_upright(self))
        left.addWidget(self.title, 100)
        left.addWidget(self.state)
        left.addStretch(1)
        right.addStretch(1)
        self._icons = [icon_button(actions[n], self) if n else _upright(self) for n in ICONS]
        for widget in self._icons:
            right.addWidget(widget)
        row.addLayout(left, 1)
        row.addWidget(self.views, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addLayout(right, 1)

    def show_saved(self, unsaved: bool, has_file: bool) -> None:
        """Say whether there is work that no file holds."""
        if unsaved:
            self.state.setText("● Not saved yet" if not has_file else "● Unsaved changes")
        else:
            self.state.setText("Saved" if has_file else "")
        self._make_room()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave out what the menus and views have no room beside."""
        super().resizeEvent(event)
        self._make_room()

    def _make_room(self) -> None:
        droppable = (self.title, self.state)  # both stand in the frame of the window too
        for widget in (*droppable, *self._icons):
            widget.setVisible(True)
        for words in reversed(droppable):
            words.setVisible(self.minimumSizeHint().width() <= self.width())
        crowded = self.minimumSizeHint().width() > self.width()
        for widget in self._icons:  # all of them are in the menus too
            widget.setHidden(crowded)


def _view_switch(actions: Actions, parent: QWidget) -> QFrame:
    frame = QFrame(parent)
    frame.setObjectName("views")
    row = QHBoxLayout(frame)
    row.setContentsMargins(3, 3, 3, 3)
    row.setSpacing(2)
    for name in VIEWS:
        button = _ViewButton(frame)
        button.setDefaultAction(actions[name])
        button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        button.setText(actions[name].text().replace("&", ""))
        button.setAccessibleName(f"{button.text()} view")
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Fixed)
        row.addWidget(button)
    return frame


def _upright(parent: QWidget) -> QFrame:
    line = QFrame(parent)
    line.setProperty("look", "upright")
    line.setFixedHeight(20)
    return line


class _ViewButton(QToolButton):
    """As wide as its word, and never narrow."""

    def sizeHint(self) -> QSize:
        return super().sizeHint().expandedTo(QSize(VIEW_WIDTH, 0))


class _Mark(QWidget):
    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedSize(26, 26)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        renderer("mark", self.palette().buttonText().color().name()).render(painter, self.rect())
        painter.end()
