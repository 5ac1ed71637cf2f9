"""Small pictures of the sheets, to choose one by."""

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QFrame, QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from app.theme.fonts import screen_font
from app.theme.look import Look
from app.theme.paint_picture import paint_picture
from app.theme.sizes import fix_width
from app.theme.words import lined, scaled
from wiring.pictures.pdf import Page
from wiring.pictures.theme import PAPER

LONG_SIDE = 128
WIDTH = 184
_AIR, _CAPTION = 10, 34
PAGE_ROLE = Qt.ItemDataRole.UserRole


class PageList(QListView):
    """One row a sheet; a thumbnail is painted when its row is first seen."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Sheets")
        fix_width(self, WIDTH)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setMouseTracking(True)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._rows = QStandardItemModel(self)
        self.setModel(self._rows)
        self._painter = _PagePainter(look, self)
        self.setItemDelegate(self._painter)
        look.changed.connect(self.viewport().update)

    def show_pages(self, pages: Sequence[Page]) -> None:
        """Show these sheets and keep the chosen one."""
        kept = max(self.currentIndex().row(), 0)
        self._painter.forget()
        self._rows.clear()
        title = ""
        for number, page in enumerate(pages, start=1):
            # A sheet without a bookmark goes on with what the one before began.
            caption = page.bookmark or f"{title}, continued"
            title = page.bookmark or title
            item = QStandardItem(f"{number}  {caption}")
            item.setData(page, PAGE_ROLE)
            item.setEditable(False)
            self._rows.appendRow(item)
        if pages:
            self.setCurrentIndex(self._rows.index(min(kept, len(pages) - 1), 0))


class _PagePainter(QStyledItemDelegate):
    def __init__(self, look: Look, parent: PageList) -> None:
        super().__init__(parent)
        self._look = look
        self._thumbnails: dict[int, QPixmap] = {}

    def forget(self) -> None:
        self._thumbnails.clear()

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Ask for the room of the picture and its caption."""
        return QSize(
            scaled(WIDTH) - 14,
            round(_thumbnail_size(index.data(PAGE_ROLE)).height()) + lined(_CAPTION, 2) + 2 * _AIR,
        )

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint one sheet."""
        rect: QRect = option.rect
        s = self._look.surfaces
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        chosen = option.state & QStyle.StateFlag.State_Selected
        hovered = option.state & QStyle.StateFlag.State_MouseOver
        if chosen or hovered:
            painter.setPen(
                QColor(s.copper) if option.state & QStyle.StateFlag.State_HasFocus else Qt.PenStyle.NoPen
            )
            painter.setBrush(QColor(s.chosen if chosen else s.hover))
            painter.drawRoundedRect(QRectF(rect).adjusted(6, 2, -6, -2), 6, 6)
        page: Page = index.data(PAGE_ROLE)
        size = _thumbnail_size(page)
        place = QRectF(
            rect.center().x() - size.width() / 2, rect.top() + _AIR, size.width(), size.height()
        ).toRect()
        painter.drawPixmap(place, self._thumbnail(index.row(), page))
        painter.setPen(QColor(s.hair))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(place)
        painter.setFont(screen_font(12))
        painter.setPen(QColor(s.ink))
        words = QRect(rect.left() + 12, place.bottom() + 4, rect.width() - 24, lined(_CAPTION, 2))
        painter.drawText(
            words,
            Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap,
            index.data(),
        )
        painter.restore()

    def _thumbnail(self, row: int, page: Page) -> QPixmap:
        if row not in self._thumbnails:
            view = self.parent()
            ratio = view.devicePixelRatioF() if isinstance(view, QWidget) else 1.0
            self._thumbnails[row] = _painted(page, ratio)
        return self._thumbnails[row]


def _thumbnail_size(page: Page) -> QSize:
    scale = LONG_SIDE / max(page.picture.width_mm, page.picture.height_mm, 1.0)
    return QSize(round(page.picture.width_mm * scale), round(page.picture.height_mm * scale))


def _painted(page: Page, ratio: float) -> QPixmap:
    pixmap = QPixmap(_thumbnail_size(page) * ratio)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(QColor(PAPER["paper"]))
    painter = QPainter(pixmap)
    scale = LONG_SIDE / max(page.picture.width_mm, page.picture.height_mm, 1.0)
    painter.scale(scale, scale)
    paint_picture(painter, page.picture, PAPER)
    painter.end()
    return pixmap
