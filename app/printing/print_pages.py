"""Puts the sheets on a printer: the same pictures as the PDF, one millimetre to the millimetre."""

from collections.abc import Sequence

from PySide6.QtCore import QMarginsF, QSizeF
from PySide6.QtGui import QPagedPaintDevice, QPageLayout, QPageSize, QPainter

from app.theme.paint_picture import paint_picture
from wiring.pictures.pdf import Page
from wiring.pictures.theme import PAPER

MM_PER_INCH = 25.4


def page_layout(page: Page) -> QPageLayout:
    """Return a layout as large as the page, without margins: the sheets bring their own."""
    width, height = page.picture.width_mm, page.picture.height_mm
    upright = height >= width
    size = QPageSize(
        QSizeF(min(width, height), max(width, height)),
        QPageSize.Unit.Millimeter,
        "",
        QPageSize.SizeMatchPolicy.FuzzyMatch,
    )
    way = QPageLayout.Orientation.Portrait if upright else QPageLayout.Orientation.Landscape
    return QPageLayout(size, way, QMarginsF(0, 0, 0, 0), QPageLayout.Unit.Millimeter)


def paint_pages(device: QPagedPaintDevice, dots_per_inch: int, pages: Sequence[Page]) -> bool:
    """Paint the pages on a printer or another paged device; False when it would not begin."""
    if not pages:
        return False
    device.setPageLayout(page_layout(pages[0]))
    painter = QPainter()
    if not painter.begin(device):
        return False
    for number, page in enumerate(pages):
        if number:
            device.setPageLayout(page_layout(page))
            device.newPage()
        painter.save()
        painter.scale(dots_per_inch / MM_PER_INCH, dots_per_inch / MM_PER_INCH)
        paint_picture(painter, page.picture, PAPER)
        painter.restore()
    return painter.end()
