"""Lays a card out in one go, so that no frame is painted with rows half moved."""

from weakref import WeakKeyDictionary

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QLayout, QWidget
from shiboken6 import isValid

_layouts: WeakKeyDictionary[QWidget, list[QLayout]] = WeakKeyDictionary()  # of each card, innermost first


def lay_out(card: QWidget, *, same_rows: bool = False) -> None:
    """Give every row of a card its place, inner layouts first, then the card its height.

    Left to itself, Qt passes a change of height outwards by one layout at each turn of its event loop. With
    the `same_rows` as before only what stands in them is another thing; looking for them takes longest.
    """
    layouts = _layouts.get(card) if same_rows else None
    if layouts is None:
        layouts = _layouts[card] = card.findChildren(QLayout)[::-1]
    is_new = [layout.activate() for layout in layouts if isValid(layout)]
    pile = card.parentWidget()
    if pile is not None and (any(is_new) or not same_rows):
        QApplication.sendEvent(pile, QEvent(QEvent.Type.LayoutRequest))
