"""A small window beside the plan: what Underboard is."""

from importlib.metadata import PackageNotFoundError, version
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QVBoxLayout

from app.theme.icons import app_icon

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

WIDE = 420


def show_about(window: "MainWindow") -> None:
    """Say what the program is and which version runs."""
    dialog = QDialog(window)
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.setWindowTitle("About Underboard")
    mark = QLabel(dialog)
    mark.setPixmap(app_icon().pixmap(72, 72))
    words = QLabel(
        "Underboard plans, checks and prints the low-voltage wiring of a model railway.\n\n"
        "It reckons with published figures and plain physics, but it cannot see your layout: what you build, "
        "measure it before you leave it alone.",
        dialog,
    )
    words.setWordWrap(True)
    title = QLabel(f"Underboard {_version()}", dialog)
    title.setProperty("look", "title")
    column = QVBoxLayout(dialog)
    column.setContentsMargins(18, 18, 18, 14)
    column.setSpacing(10)
    for label in (mark, title, words):
        column.addWidget(label)
    column.setAlignment(mark, Qt.AlignmentFlag.AlignLeft)
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close, dialog)
    buttons.rejected.connect(dialog.close)
    column.addWidget(buttons)
    dialog.ensurePolished()  # the height is that of the words as they are worn
    dialog.resize(WIDE, column.totalHeightForWidth(WIDE))
    dialog.show()  # the plan stays at hand


def _version() -> str:
    try:
        return version("underboard")
    except PackageNotFoundError:
        return ""
