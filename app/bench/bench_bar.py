"""The bar over the bench: which side is up, which tool is in hand, and the way back to the plan."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.theme.sizes import fix_height

HEIGHT, SIDE, GAP, APART = 44, 12, 6, 14
Row = tuple[QWidget | None, ...]
STRETCH = None  # what is right of it lies at the right
TOOLS = (  # to select and to wire, there are buttons over the bench already
    ("line", "Track line", "Draw a stretch of the track diagram  D"),
    ("text", "Legend", "Put words on the face  L"),
)
ARRANGED = (
    ("onto", "Onto the spacing\tG"),
    ("across", "At equal steps across\tX"),
    ("down", "At equal steps down\tY"),
    ("row", "Middles in a row\tH"),
    ("column", "Middles in a column\tShift+H"),
    ("space_across", "Space evenly across\tE"),
    ("space_down", "Space evenly down\tShift+E"),
    ("mirror_across", "Swap left and right\tCtrl+M"),
    ("mirror_down", "Swap top and bottom\tCtrl+Shift+M"),
)
SIDES = (
    (False, "Front", "The face as you stand before it  B"),
    (True, "From behind", "The back, mirrored  B"),
)


class BenchBar(QFrame):
    """Tells what is wished; the bench decides."""

    side_wanted = Signal(bool)  # whether the back is to be up
    tool_wanted = Signal(str)
    back_wanted = Signal()
    arranging_wanted = Signal(str)  # a name of ARRANGED

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("choices")
        self.setAutoFillBackground(True)
        self.setAccessibleName("Panel bench")
        back = QPushButton("Back to the plan", self)
        back.setObjectName("leaveBench")
        back.setToolTip("Back to the plan  Esc")
        back.clicked.connect(self.back_wanted)
        self._title = QLabel(self)
        self._title.setProperty("look", "heading")
        self._title.setTextFormat(Qt.TextFormat.PlainText)
        self._tools, tools = self._group(TOOLS, self._tool)
        self._sides, sides = self._group(
            [(str(side), words, tip) for side, words, tip in SIDES],
            lambda i: self.side_wanted.emit(bool(i)),
        )
        self._back, self._side_buttons, self._tool_buttons = back, sides, (*tools, self._arrange_button())
        self._gap = QWidget(self)  # between tools and sides
        self._gap.setFixedWidth(APART)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        self._rows: list[QHBoxLayout] = []
        self._holders: list[QWidget] = []
        for _ in range(3):
            holder = QWidget(self)
            fix_height(holder, HEIGHT)
            row = QHBoxLayout(holder)
            row.setContentsMargins(SIDE, 0, SIDE, 0)
            row.setSpacing(GAP)
            rows.addWidget(holder)
            self._rows.append(row)
            self._holders.append(holder)
        self._fill()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Take more rows where one is too narrow for all the words."""
        super().resizeEvent(event)
        self._fill()

    def changeEvent(self, event: QEvent) -> None:
        """The same when the words have another size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "_holders"):
            self._fill()

    def _fill(self) -> None:
        """Put everything into as few rows as its words fit; the title, told on the face too, may go."""
        order = next((rows for rows in self._ways() if self._fits(rows)), self._ways()[-1])
        self._title.setVisible(any(self._title in row for row in order))
        for row, holder, widgets in zip(self._rows, self._holders, (*order, (), ()), strict=False):
            while row.count():
                row.takeAt(0)
            for widget in widgets:
                if widget is None:
                    row.addStretch(1)
                else:
                    row.addWidget(widget)
            holder.setVisible(bool(widgets))

    def _ways(self) -> tuple[tuple[Row, ...], ...]:
        back, title, sides, tools = self._back, self._title, self._side_buttons, self._tool_buttons
        return (
            ((back, title, STRETCH, *tools, self._gap, *sides),),
            ((back, title, STRETCH, *sides), (*tools, STRETCH)),
            ((back, STRETCH, *sides), (*tools, STRETCH)),
            ((back, STRETCH), (*sides, STRETCH, tools[-1]), (*tools[:-1], STRETCH)),
        )

    def _fits(self, rows: tuple[Row, ...]) -> bool:
        return all(_wide(row) <= self.width() for row in rows)

    def show_panel(self, name: str, *, behind: bool) -> None:
        """Show which panel lies there, and which side is up."""
        self._title.setText(name)
        self._fill()
        self._check(self._sides, int(behind))

    def show_tool(self, tool: str) -> None:
        """Show which of these tools is in hand, if one is."""
        names = [name for name, _, _ in TOOLS]
        self._check(self._tools, names.index(tool) if tool in names else -1)

    def _arrange_button(self) -> QToolButton:
        button = QToolButton(self)
        button.setText("Arrange")
        button.setObjectName("bench_arrange")
        button.setToolTip("Bring what is chosen onto the panel's spacing, into line or to equal steps")
        button.setAccessibleName("Arrange what is chosen")
        button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        menu = QMenu(button)
        for name, words in ARRANGED:
            menu.addAction(words, partial(self.arranging_wanted.emit, name)).setObjectName(name)
        button.setMenu(menu)
        return button

    def _tool(self, index: int) -> None:
        self.tool_wanted.emit(TOOLS[index][0])

    def _group(
        self, buttons: Sequence[tuple[str, str, str]], told: Callable[[int], None]
    ) -> tuple[QButtonGroup, list[QToolButton]]:
        group, made = QButtonGroup(self), []
        for index, (name, words, tip) in enumerate(buttons):
            button = QToolButton(self)
            button.setText(words)
            button.setToolTip(tip)
            button.setAccessibleName(tip.split("  ")[0])
            button.setObjectName(f"bench_{name}")
            button.setCheckable(True)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            group.addButton(button, index)
            made.append(button)
        group.idClicked.connect(told)
        return group, made

    def _check(self, group: QButtonGroup, index: int) -> None:
        group.setExclusive(False)
        for button in group.buttons():
            button.setChecked(group.id(button) == index)
        group.setExclusive(True)


def _wide(row: Row) -> int:
    """Return what a row needs in pixels."""
    hints = [max(one.sizeHint().width(), one.minimumWidth()) for one in row if one is not None]
    return sum(hints) + GAP * (len(row) - 1) + 2 * SIDE
