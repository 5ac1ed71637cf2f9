"""Takes the hand off a card before it shows something else: nothing begun for one thing reaches the next."""

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QAbstractButton, QAbstractSlider, QApplication, QComboBox, QWidget

from app.inspector.field_row import FieldRow

_BESIDE = QPointF(-9.0, -9.0)  # a release there is no click


def let_go(card: QWidget, *, commits: bool) -> None:
    """Close open lists, end presses, and commit what is being typed, or drop it when it cannot be now."""
    _close_lists(card)
    _end_presses(card)
    rows = card.findChildren(FieldRow)
    if not commits:
        _put_back(rows)
    focus = QApplication.focusWidget()
    if focus is not None and card.isAncestorOf(focus):
        focus.clearFocus()  # which commits, as leaving a field does
    _put_back(rows)


def _put_back(rows: list[FieldRow]) -> None:
    for row in rows:
        row.put_back()


def _close_lists(card: QWidget) -> None:
    popup = QApplication.activePopupWidget()
    if popup is None or not _within(popup, card):
        return
    box = popup.parentWidget()
    # A list is put away by its own box, which takes the focus back from it; a menu closes by itself.
    if isinstance(box, QComboBox):
        box.hidePopup()
    else:
        popup.close()


def _within(widget: QWidget | None, card: QWidget) -> bool:
    while widget is not None and widget is not card:
        widget = widget.parentWidget()
    return widget is card


def _end_presses(card: QWidget) -> None:
    if QApplication.mouseButtons() == Qt.MouseButton.NoButton:
        return
    for sort in (QAbstractButton, QAbstractSlider):
        for widget in card.findChildren(sort):
            _release_beside(widget)


def _release_beside(widget: QWidget) -> None:
    left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
    place = QPointF(widget.mapToGlobal(_BESIDE.toPoint()))
    release = QMouseEvent(
        QEvent.Type.MouseButtonRelease, _BESIDE, place, left, none, Qt.KeyboardModifier.NoModifier
    )
    QApplication.sendEvent(widget, release)
