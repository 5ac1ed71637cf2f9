"""Two small windows: what Underboard is, and which keys it knows."""

from importlib.metadata import PackageNotFoundError, version
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QLabel,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
)

from app.theme.icons import app_icon
from app.window.actions import DRAWN

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

CANVAS_KEYS = (
    ("Go from part to part on the plan", "Tab, Shift+Tab"),
    ("Move what is selected by 10 mm, by 1 mm", "Arrows, Shift+Arrows"),
    ("Throw the selected switch", "T, Space"),
    ("Set down a part, start or end a wire", "Enter"),
    ("Copy, cut, paste", "Ctrl+C, Ctrl+X, Ctrl+V"),
    ("Leave what is under way, then the tool", "Esc"),
)

# What stands in a submenu needs the submenu's word when it stands in a list.
_SAID = {"export": "Export: ", **dict.fromkeys(DRAWN, "Draw: ")}


def show_keys(window: "MainWindow") -> None:
    """Show every key the window knows."""
    dialog = keys_dialog(window)
    dialog.exec()


def keys_dialog(window: "MainWindow") -> QDialog:
    """Return the list of keys, read from the acts themselves."""
    rows = [
        (
            _SAID.get(a.objectName().split("_")[0], "") + _words(a.text()),
            ", ".join(k.toString(QKeySequence.SequenceFormat.NativeText) for k in a.shortcuts()),
        )
        for a in window.acts.values()
        if a.shortcuts()
    ]
    rows += [("Show or hide the findings", "Ctrl+I"), *CANVAS_KEYS]
    dialog = QDialog(window)
    dialog.setWindowTitle("Keys")
    dialog.resize(470, 560)
    table = QTableWidget(len(rows), 2, dialog)
    table.setAccessibleName("Keys")
    table.setHorizontalHeaderLabels(["What it does", "Keys"])
    table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
    table.verticalHeader().hide()
    table.setShowGrid(False)
    table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
    table.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
    table.horizontalHeader().setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
    for row, cells in enumerate(rows):
        for column, text in enumerate(cells):
            table.setItem(row, column, QTableWidgetItem(text))
    _close_row(dialog, table)
    return dialog


def show_about(window: "MainWindow") -> None:
    """Say what the program is and which version runs."""
    dialog = QDialog(window)
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
    column = _close_row(dialog, mark, title, words)
    column.setAlignment(mark, Qt.AlignmentFlag.AlignLeft)
    dialog.resize(420, 260)
    dialog.exec()


def _close_row(dialog: QDialog, *widgets: QLabel | QTableWidget) -> QVBoxLayout:
    column = QVBoxLayout(dialog)
    column.setContentsMargins(18, 18, 18, 14)
    column.setSpacing(10)
    for widget in widgets:
        column.addWidget(widget)
    buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close, dialog)
    buttons.rejected.connect(dialog.reject)
    column.addWidget(buttons)
    return column


def _words(text: str) -> str:
    return text.replace("&", "").rstrip("…")


def _version() -> str:
    try:
        return version("underboard")
    except PackageNotFoundError:
        return ""
