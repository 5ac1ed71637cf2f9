"""A quiet button for an act that has an icon."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QToolButton, QWidget

ICON = QSize(19, 19)


def icon_button(action: QAction, parent: QWidget) -> QToolButton:
    """Return the button; its name and tip are those of the act, also when it says what it would undo."""
    button = QToolButton(parent)
    button.setDefaultAction(action)
    button.setIconSize(ICON)
    button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonIconOnly)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def name() -> None:
        button.setAccessibleName(action.text().replace("&", ""))

    action.changed.connect(name)
    name()
    return button
