"""Writes a battery's course to a file: as a picture, or as the rows behind it."""

import csv
import io
from datetime import timedelta
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize
from PySide6.QtGui import QImage, QImageWriter, QPainter
from PySide6.QtSvg import QSvgGenerator

from app.outlook.curve_view import CurveView
from wiring.files.refusals import NotSaved
from wiring.files.store import write_whole
from wiring.studies.outlook import Outlook

SIZE = QSize(1100, 620)
FINER = 2  # pixels of a picture for each on the screen
FILTERS = "Drawing (*.svg);;Picture (*.png);;Rows for a spreadsheet (*.csv)"
SUFFIXES = (".svg", ".png", ".csv")


def write_course(path: Path, outlook: Outlook, view: CurveView) -> str:
    """Write what the ending of the name asks for; return "" or why it could not be written."""
    make = {".svg": _as_svg, ".png": _as_png}.get(path.suffix.lower())
    try:
        write_whole(make(outlook, view) if make is not None else course_csv(outlook).encode(), path)
    except NotSaved as refusal:
        return str(refusal)
    return ""


def course_csv(outlook: Outlook) -> str:
    """Return every sample: hours lit, days, the day where one is known, volts, light of 100 when fresh."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\n")
    rows.writerow(("hours lit", "days", "day", "volts", "light of 100"))
    curve, start = outlook.curve, outlook.counted_from
    for n, (hours, days, volts) in enumerate(zip(curve.hours, curve.days, curve.volts, strict=True)):
        day = (start + timedelta(days=int(days))).isoformat() if start is not None else ""
        light = f"{curve.lightness[n]:.1f}" if curve.lightness else ""
        rows.writerow((f"{hours:.3f}", f"{days:.3f}", day, f"{volts:.3f}", light))
    return text.getvalue()


def _as_svg(outlook: Outlook, view: CurveView) -> bytes:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    generator.setSize(SIZE)
    generator.setViewBox(QRectF(0, 0, SIZE.width(), SIZE.height()))
    generator.setTitle(outlook.words)
    painter = QPainter(generator)
    view.paint_on(painter, QRectF(0, 0, SIZE.width(), SIZE.height()))
    painter.end()
    return bytes(buffer.data().data())


def _as_png(outlook: Outlook, view: CurveView) -> bytes:
    image = QImage(SIZE * FINER, QImage.Format.Format_ARGB32)
    image.setText("Title", outlook.words)
    painter = QPainter(image)
    painter.scale(FINER, FINER)
    view.paint_on(painter, QRectF(0, 0, SIZE.width(), SIZE.height()))
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return bytes(buffer.data().data())
