"""The order in which Tab goes: area by area, and within each as one reads, whatever was made first."""

from collections.abc import Collection, Iterable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton, QWidget

SAME_ROW_PX = 14  # middles no farther apart than this stand in one row


def reading_order(areas: Iterable[QWidget]) -> list[QWidget]:
    """Return what takes the focus by Tab in those areas."""
    return [widget for area in areas if area.isVisible() for widget in _within(area)]


def go_on(areas: Collection[QWidget], now: QWidget | None, step: int) -> bool:
    """Give the focus to the next or last one, round and round; False when there is none."""
    row = reading_order(areas)
    if not row:
        return False
    gone = now is not None and now not in row and not (now.isVisible() and now.isEnabled())
    near = _beside(areas, now) if gone and now is not None else None
    if near is not None:
        at = row.index(near)
    else:
        at = row.index(now) + step if now in row else (0 if step > 0 else -1)
    reason = Qt.FocusReason.TabFocusReason if step > 0 else Qt.FocusReason.BacktabFocusReason
    row[at % len(row)].setFocus(reason)
    return True


def _beside(areas: Iterable[QWidget], gone: QWidget) -> QWidget | None:
    """Return what stands nearest to a widget that had the keys when it was hidden or switched off.

    A button is best: what is typed on without looking changes nothing there, as it would in a title.
    """
    home = next((area for area in areas if area.isVisible() and area.isAncestorOf(gone)), None)
    if home is None:
        return None
    place, there = _middle(gone, home), _within(home)
    near = [w for w in there if isinstance(w, QAbstractButton)] or there
    return min(near, key=lambda w: (_middle(w, home) - place).manhattanLength(), default=None)


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
