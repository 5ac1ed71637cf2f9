"""Widgets in a row, the last of them at the right; what has no room there goes into a row below."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget

Rows = list[list[QLayoutItem]]


class WrappingRow(QLayout):
    """As narrow as its widest widget needs; `at_right` is how many of the last stand at the right end."""

    def __init__(self, gap: int, at_right: int = 0, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gap, self._at_right = gap, at_right
        self._items: list[QLayoutItem] = []
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        """Take one more."""
        self._items.append(item)

    def count(self) -> int:
        """Return how many there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """Return one of them."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Give one of them away."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """None by itself."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """Its rows depend on its width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Return how high its rows are together."""
        rows = self._rows(width)
        return sum(map(_high, rows)) + self._gap * max(len(rows) - 1, 0)

    def sizeHint(self) -> QSize:
        """All in one row."""
        shown = self._shown()
        wide = sum(item.sizeHint().width() for item in shown) + self._gap * max(len(shown) - 1, 0)
        return QSize(wide, _high(shown))

    def minimumSize(self) -> QSize:
        """As wide as the widest of them."""
        shown = self._shown()
        return QSize(max((item.sizeHint().width() for item in shown), default=0), _high(shown))

    def setGeometry(self, rect: QRect) -> None:
        """Lay them."""
        super().setGeometry(rect)
        y = rect.y()
        for row in self._rows(rect.width()):
            high, x = _high(row), rect.x()
            wide = sum(item.sizeHint().width() for item in row) + self._gap * (len(row) - 1)
            for item in row:
                if self._items.index(item) == len(self._items) - self._at_right and item is not row[0]:
                    x += rect.width() - wide
                size = item.sizeHint()
                item.setGeometry(QRect(x, y + (high - size.height()) // 2, size.width(), size.height()))
                x += size.width() + self._gap
            y += high + self._gap

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _rows(self, width: int) -> Rows:
        rows: Rows = []
        used = 0
        shown, ends = self._shown(), self._items[len(self._items) - self._at_right :]
        for item in shown:
            wide = item.sizeHint().width()
            together = [i for i in shown if i in ends] if item in ends[:1] else [item]
            needed = sum(i.sizeHint().width() for i in together) + self._gap * len(together)
            if rows and used + needed <= width:
                rows[-1].append(item)
                used += self._gap + wide
            else:
                rows.append([item])
                used = wide
        return rows


def _high(items: list[QLayoutItem]) -> int:
    return max((item.sizeHint().height() for item in items), default=0)
