"""Paints a row of the tray: a heading, or a part's own sign and its name."""

import re
from collections.abc import Callable, Mapping

from PySide6.QtCore import QModelIndex as Index
from PySide6.QtCore import QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPixmap
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from app.theme.fonts import screen_font
from app.theme.icons import renderer
from app.theme.look import Look
from app.theme.paint_picture import paint_items
from app.theme.words import lined
from app.tray.set_files import KeptSet
from app.tray.set_picture import set_picture
from app.tray.shelf_model import ROW_ROLE, Row, ShelfModel
from wiring.catalogue.kind import Kind

HEADING_HEIGHT = 38
ROW_HEIGHT = 40
SIGN_BOX = QSize(42, 30)
LARGEST_SCALE = 2.4  # pixels a millimetre; a grain-of-rice lamp must not look as large as a supply
AIR_PX = 6
_PAD = 12
_BEFORE_UNIT = re.compile(r"(?<=\d) (?=(?:V|A|mA|mm|W|Hz)\b)")


class RowPainter(QStyledItemDelegate):
    """Paints with the colours of the look that is worn."""

    def __init__(self, look: Look, kinds: Mapping[str, Kind], parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self._kinds, self._list = look, kinds, parent
        self._signs: dict[tuple[str, bool, float], QPixmap] = {}

    def sizeHint(self, option: QStyleOptionViewItem, index: Index | QPersistentModelIndex) -> QSize:
        """Ask for the room its words need."""
        row: Row = index.data(ROW_ROLE)
        if row.is_heading:
            return QSize(
                120, max(lined(HEADING_HEIGHT), self._high(row.words, _heading_rect, "semibold") + 14)
            )
        return QSize(120, max(lined(ROW_HEIGHT, 2), self._high(row.words, _words_rect) + AIR_PX))

    def _high(self, words: str, rect: Callable[[QRect], QRect], weight: str = "regular") -> int:
        """Return how high a name is, broken into lines as it will be."""
        view = self._list
        room = rect(QRect(0, 0, view.viewport().width() if isinstance(view, QListView) else 200, 1000))
        metrics = QFontMetrics(screen_font(12.5, weight))
        return metrics.boundingRect(room, Qt.TextFlag.TextWordWrap, whole_units(words)).height()

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index | QPersistentModelIndex
    ) -> None:
        """Paint one row."""
        row: Row = index.data(ROW_ROLE)
        rect: QRect = option.rect
        state: QStyle.StateFlag = option.state
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_ground(painter, rect, state)
        if row.kept is not None:
            self._paint_set(painter, rect, row.kept)
        elif row.kind is None:
            model = index.model()
            self._paint_heading(
                painter, rect, row, not isinstance(model, ShelfModel) or model.is_open(row.purpose)
            )
        else:
            self._paint_kind(painter, rect, row.kind)
        painter.restore()

    def _paint_ground(self, painter: QPainter, rect: QRect, state: QStyle.StateFlag) -> None:
        s = self._look.surfaces
        ground = QRectF(rect).adjusted(5, 1, -5, -1)
        painter.setPen(Qt.PenStyle.NoPen)
        if state & QStyle.StateFlag.State_Selected:
            painter.setBrush(QColor(s.chosen))
            painter.drawRoundedRect(ground, 6, 6)
        elif state & QStyle.StateFlag.State_MouseOver:
            painter.setBrush(QColor(s.hover))
            painter.drawRoundedRect(ground, 6, 6)
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QColor(s.copper))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(ground.adjusted(0.5, 0.5, -0.5, -0.5), 6, 6)

    def _paint_heading(self, painter: QPainter, rect: QRect, row: Row, is_open: bool) -> None:
        s = self._look.surfaces
        middle = rect.center().y() + 4
        renderer(f"purpose-{row.purpose}", s.copper).render(
            painter, QRectF(rect.left() + _PAD, middle - 9, 18, 18)
        )
        painter.setFont(screen_font(12.5, "semibold"))
        painter.setPen(QColor(s.ink))
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap
        room = _heading_rect(rect)
        words = QRectF(room.left(), middle - rect.height() / 2, room.width(), rect.height())
        painter.drawText(words, flags, row.words)
        arrow = QRectF(rect.right() - _PAD - 14, middle - 7, 14, 14)
        if not is_open:
            painter.translate(arrow.center())
            painter.rotate(-90)
            painter.translate(-arrow.center())
        renderer("chevron", s.quiet).render(painter, arrow)

    def updateEditorGeometry(
        self, editor: QWidget, option: QStyleOptionViewItem, index: Index | QPersistentModelIndex
    ) -> None:
        """Let a name be typed where it stands."""
        rect: QRect = option.rect
        editor.setGeometry(_words_rect(rect).adjusted(-6, 6, 6, -6))

    def _paint_kind(self, painter: QPainter, rect: QRect, kind: Kind) -> None:
        self._paint_row(painter, rect, self._sign(kind, self._list.devicePixelRatioF()), kind.title)

    def _paint_set(self, painter: QPainter, rect: QRect, kept: KeptSet) -> None:
        ratio = self._list.devicePixelRatioF()
        key = (f"{kept.path}:{hash(kept.text)}", self._look.dark, ratio)
        if key not in self._signs and kept.fragment is not None:
            theme = self._look.theme
            self._signs[key] = set_picture(kept.fragment, self._kinds, theme, SIGN_BOX, ratio)
        self._paint_row(painter, rect, self._signs.get(key), kept.name)

    def _paint_row(self, painter: QPainter, rect: QRect, picture: QPixmap | None, title: str) -> None:
        if picture is not None:
            painter.drawPixmap(rect.left() + _PAD, rect.center().y() - SIGN_BOX.height() // 2, picture)
        painter.setFont(screen_font(12.5))
        painter.setPen(QColor(self._look.surfaces.ink))
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(_words_rect(rect), flags, whole_units(title))

    def _sign(self, kind: Kind, ratio: float) -> QPixmap:
        key = (kind.key, self._look.dark, ratio)
        if key not in self._signs:
            self._signs[key] = self._painted_sign(kind, ratio)
        return self._signs[key]

    def _painted_sign(self, kind: Kind, ratio: float) -> QPixmap:
        from wiring.drawings.signs.all_signs import sign

        pixmap = QPixmap(SIGN_BOX * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        scale = min(
            SIGN_BOX.width() / max(kind.width_mm, 1),
            SIGN_BOX.height() / max(kind.height_mm, 1),
            LARGEST_SCALE,
        )
        painter = QPainter(pixmap)
        painter.translate(SIGN_BOX.width() / 2, SIGN_BOX.height() / 2)
        painter.scale(scale * 0.94, scale * 0.94)
        paint_items(painter, sign(kind), self._look.theme)
        painter.end()
        return pixmap


def whole_units(words: str) -> str:
    """Return words in which no number is parted from its unit when they are broken into lines."""
    return _BEFORE_UNIT.sub("\u00a0", words)


def _words_rect(rect: QRect) -> QRect:
    return QRect(rect).adjusted(_PAD + SIGN_BOX.width() + 10, 0, -_PAD, 0)


def _heading_rect(rect: QRect) -> QRect:
    return QRect(rect).adjusted(_PAD + 26, 0, -_PAD - 16, 0)
