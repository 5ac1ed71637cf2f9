"""Paints a picture in millimetres on a Qt painter; screen, preview and printer all pass here.

The painter must be scaled so that one unit is one millimetre. Text is painted with the font at 100 pixels and
scaled, never by point size, so that a letter has the same place at every zoom and on paper.
"""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from app.theme.fonts import PAINT_PIXELS, picture_font, picture_width
from wiring.pictures.metrics import GROUND_PAD_EM
from wiring.pictures.picture import Disc, Item, Path, Pen, Picture, Words
from wiring.pictures.theme import Theme, resolve
from wiring.pictures.typefaces import printable

# In em, from the fonts' own tables; a test holds them to what wiring.pictures.metrics reads there. They are
# written down because reading the tables loads the PDF library, which the window must not wait for.
CAP_EM = {"regular": 0.7165, "italic": 0.7165, "semibold": 0.72, "bold": 0.723}
ASCENT_EM, DESCENT_EM = 0.805, 0.195
_SHIFTS = {"left": 0.0, "centre": 0.5, "right": 1.0}
_DROPS = {"base": 0.0, "middle": 0.5, "top": 1.0}  # of the height of a capital


def paint_picture(painter: QPainter, picture: Picture, theme: Theme) -> None:
    """Paint a picture with its left top corner at the painter's origin."""
    painter.save()
    painter.translate(-picture.left_mm, -picture.top_mm)
    paint_items(painter, picture.items, theme)
    painter.restore()


def paint_items(painter: QPainter, items: Iterable[Item], theme: Theme) -> None:
    """Paint items where they lie; links and anchors leave no mark."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for item in items:
        if isinstance(item, Path):
            _paint_path(painter, item, theme)
        elif isinstance(item, Disc):
            _paint_disc(painter, item, theme)
        elif isinstance(item, Words):
            paint_words(painter, item, theme)


def pen_for(pen: Pen, theme: Theme) -> QPen:
    """Return the Qt pen, in millimetres, with round joins and flat-looking ends."""
    if pen.width_mm <= 0:
        return QPen(Qt.PenStyle.NoPen)
    made = QPen(QColor(resolve(pen.colour, theme)), pen.width_mm)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    made.setCapStyle(Qt.PenCapStyle.RoundCap)
    if pen.dashes_mm:
        made.setCapStyle(Qt.PenCapStyle.FlatCap)
        # Qt counts dashes in pen widths and wants an even number of them.
        dashes = pen.dashes_mm if len(pen.dashes_mm) % 2 == 0 else pen.dashes_mm * 2
        made.setDashPattern([max(d / pen.width_mm, 1e-3) for d in dashes])
    return made


def outline(path: Path) -> QPainterPath:
    """Return the Qt path of a polyline, polygon or run of Bézier steps."""
    made = QPainterPath()
    if not path.points:
        return made
    if path.smooth:
        made.moveTo(*path.points[0])
        for index in range(1, len(path.points) - 2, 3):
            first, second, end = path.points[index : index + 3]
            made.cubicTo(*first, *second, *end)
    else:
        made.addPolygon(QPolygonF([QPointF(x, y) for x, y in path.points]))
    if path.closed:
        made.closeSubpath()
    return made


def _paint_path(painter: QPainter, path: Path, theme: Theme) -> None:
    before = painter.opacity()
    painter.setOpacity(before * path.opacity)
    pen = pen_for(path.pen, theme)
    if path.fill:
        painter.setPen(pen)
        painter.setBrush(QColor(resolve(path.fill, theme)))
        painter.drawPath(outline(path))
    elif path.smooth or path.closed:
        painter.strokePath(outline(path), pen)
    else:
        painter.setPen(pen)
        painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in path.points]))
    painter.setOpacity(before)


def _paint_disc(painter: QPainter, disc: Disc, theme: Theme) -> None:
    before = painter.opacity()
    painter.setOpacity(before * disc.opacity)
    painter.setPen(pen_for(disc.pen, theme))
    painter.setBrush(QColor(resolve(disc.fill, theme)) if disc.fill else Qt.BrushStyle.NoBrush)
    painter.drawEllipse(QPointF(*disc.centre), disc.radius_x_mm, disc.radius_y_mm)
    painter.setOpacity(before)


def paint_words(painter: QPainter, words: Words, theme: Theme) -> None:
    """Paint one line of text."""
    text = printable(words.text)
    if not text:
        return
    scale = words.size_mm / PAINT_PIXELS
    width = picture_width(text, words.weight) * PAINT_PIXELS
    left, base = -_SHIFTS[words.align] * width, _DROPS[words.stand] * CAP_EM[words.weight] * PAINT_PIXELS
    painter.save()
    painter.translate(*words.at)
    painter.rotate(words.turn_deg)
    painter.scale(scale, scale)
    if words.ground:
        pad = GROUND_PAD_EM * PAINT_PIXELS
        box = QRectF(left, base - ASCENT_EM * PAINT_PIXELS, width, (ASCENT_EM + DESCENT_EM) * PAINT_PIXELS)
        painter.fillRect(box.adjusted(-pad, -pad, pad, pad), QColor(resolve(words.ground, theme)))
    painter.setFont(picture_font(words.weight))
    painter.setPen(QColor(resolve(words.colour, theme)))
    painter.drawText(QPointF(left, base), text)
    painter.restore()
