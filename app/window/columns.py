"""Widgets one below the other without gaps, the largest taking the room."""

from PySide6.QtWidgets import QVBoxLayout, QWidget


def column(parent: QWidget, *widgets: QWidget) -> QWidget:
    """Return a widget that holds these; of two the first grows, else the last."""
    holder = QWidget(parent)
    rows = QVBoxLayout(holder)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(0)
    for widget in widgets:
        rows.addWidget(widget)
    rows.setStretchFactor(widgets[0] if len(widgets) == 2 else widgets[-1], 1)
    return holder
