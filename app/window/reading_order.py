"""The order in which Tab goes: area by area, and within each as one reads, whatever was made first."""

from collections.abc import Iterable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget

SAME_ROW_PX = 14  # middles no farther apart than this stand in one row


def reading_order(areas: Iterable[QWidget]) -> list[QWidget]:
    """Return what takes the focus by Tab in those areas."""
    return [widget for area in areas if area.isVisible() for widget in _within(area)]


def go_on(areas: Iterable[QWidget], now: QWidget | None, step: int) -> bool:
    """Give the focus to the next or last one, round and round; False when there is none."""
    row = reading_order(areas)
    if not row:
        return False
    at = row.index(now) + step if now in row else (0 if step > 0 else -1)
    reason = Qt.FocusReason.TabFocusReason if step > 0 else Qt.FocusReason.BacktabFocusReason
    row[at % len(row)].setFocus(reason)
    return True


def _within(area: QWidget) -> list[QWidget]:
    placed = sorted(
        ((_middle(widget, area), widget) for widget in (area, *area.findChildren(QWidget)) if _takes(widget)),
        key=lambda p: (p[0].y(), p[0].x()),
    )
    rows: list[list[tuple[QPoint, QWidget]]] = []
    for place, widget in placed:
        if rows and place.y() - rows[-1][0][0].y() <= SAME_ROW_PX:
            rows[-1].append((place, widget))
        else:
            rows.append([(place, widget)])
    return [widget for row in rows for _, widget in sorted(row, key=lambda p: p[0].x())]


def _takes(widget: QWidget) -> bool:
    if not widget.isVisible():  # asked first: most widgets stand on pages that are not shown
        return False
    by_tab = bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
    return by_tab and widget.isEnabled() and widget.focusProxy() is None


def _middle(widget: QWidget, area: QWidget) -> QPoint:
    """Return the middle of a low widget, a place near the top left of a tall one."""
    return widget.mapTo(area, QPoint(widget.width() // 2, min(widget.height() // 2, 16)))
