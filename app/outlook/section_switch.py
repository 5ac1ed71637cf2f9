"""A row of buttons of which one is down: which section of the page is shown."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QHBoxLayout, QToolButton, QWidget


class SectionSwitch(QFrame):
    """Chosen by pointer, by Tab and Space, or by the arrow keys inside it."""

    chosen = Signal(int)

    def __init__(self, name: str, titles: tuple[str, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("views")
        self.setAccessibleName(name)
        self._group = QButtonGroup(self)
        self.buttons: dict[str, QToolButton] = {}
        row = QHBoxLayout(self)
        row.setContentsMargins(3, 3, 3, 3)
        row.setSpacing(2)
        for number, title in enumerate(titles):
            button = QToolButton(self)
            button.setText(title)
            button.setCheckable(True)
            button.setAccessibleName(title)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            self._group.addButton(button, number)
            self.buttons[title] = button
            row.addWidget(button)
        self._group.button(0).setChecked(True)
        self._group.idToggled.connect(self._toggled)

    @property
    def index(self) -> int:
        """Which is down."""
        return self._group.checkedId()

    @property
    def pressed(self) -> QToolButton:
        """The button that is down."""
        return list(self.buttons.values())[self.index]

    def choose(self, index: int) -> None:
        """Press one."""
        self._group.button(index).setChecked(True)

    def _toggled(self, index: int, down: bool) -> None:
        if down:
            self.chosen.emit(index)
