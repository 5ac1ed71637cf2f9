"""The bar over the bench: which side is up, which tool is in hand, and the way back to the plan."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QToolButton,
    QWidget,
)

from app.theme.sizes import fix_height

HEIGHT = 44
TOOLS = (
    ("select", "Select", "Choose and move  V"),
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
        fix_height(self, HEIGHT)
        self.setAccessibleName("Panel bench")
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 0, 12, 0)
        row.setSpacing(6)
        back = QPushButton("Back to the plan", self)
        back.setObjectName("leaveBench")
        back.setToolTip("Back to the plan  Esc")
        back.clicked.connect(self.back_wanted)
        row.addWidget(back)
        self._title = QLabel(self)
        self._title.setProperty("look", "heading")
        self._title.setTextFormat(Qt.TextFormat.PlainText)
        row.addSpacing(6)
        row.addWidget(self._title)
        row.addStretch(1)
        self._tools = self._group(row, TOOLS, self._tool)
        row.addWidget(self._arrange_button())
        row.addSpacing(14)
        self._sides = self._group(
            row,
            [(str(side), words, tip) for side, words, tip in SIDES],
            lambda i: self.side_wanted.emit(bool(i)),
        )

    def show_panel(self, name: str, *, behind: bool) -> None:
        """Show which panel lies there, and which side is up."""
        self._title.setText(name)
        self._check(self._sides, int(behind))

    def show_tool(self, tool: str) -> None:
        """Show which tool is in hand; none while a part is being placed."""
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
        self,
        row: QHBoxLayout,
        buttons: "list[tuple[str, str, str]] | tuple[tuple[str, str, str], ...]",
        told: Callable[[int], None],
    ) -> QButtonGroup:
        group = QButtonGroup(self)
        for index, (name, words, tip) in enumerate(buttons):
            button = QToolButton(self)
            button.setText(words)
            button.setToolTip(tip)
            button.setAccessibleName(tip.split("  ")[0])
            button.setObjectName(f"bench_{name}")
            button.setCheckable(True)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            group.addButton(button, index)
            row.addWidget(button)
        group.idClicked.connect(told)
        return group

    def _check(self, group: QButtonGroup, index: int) -> None:
        group.setExclusive(False)
        for button in group.buttons():
            button.setChecked(group.id(button) == index)
        group.setExclusive(True)
