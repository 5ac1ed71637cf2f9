"""Leads the Tab key through the fields of a card from top to bottom, whenever they were made."""

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLayout, QWidget

from app.theme.held_room import HeldRoom


def order_tabs(card: QWidget) -> None:
    """Let Tab visit the widgets of a card in the order its layouts have them, hidden ones too."""
    before: QWidget | None = None
    for widget in stops(card.layout()):
        if before is not None:
            QWidget.setTabOrder(before, widget)
        before = widget


def stops(layout: QLayout | None) -> Iterator[QWidget]:
    """Walk the widgets of a layout that take the focus by Tab, and those of the layouts in it."""
    for item in (layout.itemAt(n) for n in range(layout.count())) if layout is not None else ():
        if item is None:
            continue
        widget = item.widget()
        if widget is None:
            yield from stops(item.layout())
            continue
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
            yield widget
        if isinstance(widget, HeldRoom):
            yield widget.held
        yield from stops(widget.layout())
