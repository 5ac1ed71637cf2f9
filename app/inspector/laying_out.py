"""Lays a card out in one go, so that no frame is painted with rows half moved."""

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QLayout, QWidget


def lay_out(card: QWidget) -> None:
    """Give every row of a card its place, inner layouts first, then the card its height.

    Left to itself, Qt passes a change of height outwards by one layout at each turn of its event loop.
    """
    for layout in reversed(card.findChildren(QLayout)):
        layout.activate()
    pile = card.parentWidget()
    if pile is not None:
        QApplication.sendEvent(pile, QEvent(QEvent.Type.LayoutRequest))
