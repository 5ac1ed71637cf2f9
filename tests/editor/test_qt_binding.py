"""The Qt binding must not give away references of None: a faulty release ends the program in a paint loop."""

import sys

from PySide6.QtGui import QImage, QPainter, QPen


def test_void_calls_of_qt_do_not_lose_references_of_none(qapp):
    image = QImage(10, 10, QImage.Format.Format_ARGB32)
    painter, pen = QPainter(image), QPen()
    before = sys.getrefcount(None)
    for _ in range(500):
        painter.setPen(pen)
    lost = before - sys.getrefcount(None)
    painter.end()
    assert lost < 250
