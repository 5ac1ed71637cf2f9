"""Writes a battery's course to a file: as a picture, or as the rows behind it."""

import csv
import io
from datetime import timedelta
from pathlib import Path

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgGenerator

from app.outlook.curve_view import CurveView
from wiring.studies.outlook import Outlook

SIZE = QSize(1100, 620)
FINER = 2  # pixels of a picture for each on the screen
FILTERS = "Drawing (*.svg);;Picture (*.png);;Rows for a spreadsheet (*.csv)"
SUFFIXES = (".svg", ".png", ".csv")


def write_course(path: Path, outlook: Outlook, view: CurveView) -> str:
    """Write what the ending of the name asks for; return "" or why it could not be written."""
    write = {".svg": _as_svg, ".png": _as_png}.get(path.suffix.lower())
    try:
        if write is not None:
            path.write_bytes(b"")  # asks the disk first: painters do not say what is wrong
            return "" if write(path, outlook, view) else f"{path} could not be written."
        path.write_text(course_csv(outlook), encoding="utf-8")
    except OSError as fault:
        return f"{path} could not be written: {fault.strerror or 'the disk refused'}."
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


def _as_svg(path: Path, outlook: Outlook, view: CurveView) -> bool:
    generator = QSvgGenerator()
    generator.setFileName(str(path))
    generator.setSize(SIZE)
    generator.setViewBox(QRectF(0, 0, SIZE.width(), SIZE.height()))
    generator.setTitle(outlook.words)
    painter = QPainter()
    if not painter.begin(generator):
        return False
    view.paint_on(painter, QRectF(0, 0, SIZE.width(), SIZE.height()))
    return painter.end()


def _as_png(path: Path, outlook: Outlook, view: CurveView) -> bool:
    image = QImage(SIZE * FINER, QImage.Format.Format_ARGB32)
    image.setText("Title", outlook.words)
    painter = QPainter(image)
    painter.scale(FINER, FINER)
    view.paint_on(painter, QRectF(0, 0, SIZE.width(), SIZE.height()))
    painter.end()
    return image.save(str(path))
