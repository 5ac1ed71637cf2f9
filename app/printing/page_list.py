"""Small pictures of the sheets, to choose one by."""

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QFrame, QListView, QWidget

from app.theme.paint_picture import paint_picture
from wiring.pictures.pdf import Page
from wiring.pictures.theme import PAPER

LONG_SIDE = 132
WIDTH = 178


class PageList(QListView):
    """One row a sheet; a thumbnail is painted when its row is first seen."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Sheets")
        self.setFixedWidth(WIDTH)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setFlow(QListView.Flow.TopToBottom)
        self.setWrapping(False)
        self.setMovement(QListView.Movement.Static)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setIconSize(QSize(LONG_SIDE, LONG_SIDE))
        self.setGridSize(QSize(WIDTH - 16, LONG_SIDE + 44))
        self.setWordWrap(True)
        self.setSpacing(0)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._rows = QStandardItemModel(self)
        self.setModel(self._rows)

    def show_pages(self, pages: Sequence[Page]) -> None:
        """Show these sheets and keep the chosen one."""
        kept = max(self.currentIndex().row(), 0)
        self._rows.clear()
        for number, page in enumerate(pages, start=1):
            item = QStandardItem(_thumbnail(page, self.devicePixelRatioF()), _title(page, number))
            item.setEditable(False)
            self._rows.appendRow(item)
        if pages:
            self.setCurrentIndex(self._rows.index(min(kept, len(pages) - 1), 0))


def _title(page: Page, number: int) -> str:
    return f"{number}  {page.bookmark or page.picture.title}".rstrip()


def _thumbnail(page: Page, ratio: float) -> QIcon:
    picture = page.picture
    scale = LONG_SIDE / max(picture.width_mm, picture.height_mm, 1.0)
    width, height = round(picture.width_mm * scale), round(picture.height_mm * scale)
    pixmap = QPixmap(round(width * ratio), round(height * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(QColor(PAPER["paper"]))
    painter = QPainter(pixmap)
    painter.save()
    painter.scale(scale, scale)
    paint_picture(painter, picture, PAPER)
    painter.restore()
    painter.setPen(QColor(PAPER["faint"]))
    painter.drawRect(0, 0, width - 1, height - 1)
    painter.end()
    return QIcon(pixmap)
