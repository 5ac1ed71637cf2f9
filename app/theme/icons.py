"""The icons of the program: one family, coloured at paint time with whatever ink the window wears."""

from functools import cache

from PySide6.QtCore import QByteArray, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QIconEngine, QPainter, QPalette, QPixmap
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QApplication

from app.data_files import data_folder

APP_SIZES = (16, 24, 32, 48, 64, 128, 256)


class _InkEngine(QIconEngine):
    """Paints one drawing in the colour that text on a button has at that moment."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name

    def clone(self) -> QIconEngine:
        return _kept(_InkEngine(self._name))

    def paint(self, painter: QPainter, rect: QRect, mode: QIcon.Mode, state: QIcon.State) -> None:
        renderer(self._name, _ink(mode).name()).render(painter, QRectF(rect))

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        pixmap = QPixmap(size)
        if pixmap.isNull():  # asked for by a button that has no room yet
            return pixmap
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        self.paint(painter, QRect(0, 0, size.width(), size.height()), mode, state)
        painter.end()
        return pixmap


# Qt does not hold on to the Python half of an engine; without this list icons lose their paint method.
_ENGINES: list[_InkEngine] = []


def _kept(engine: _InkEngine) -> _InkEngine:
    _ENGINES.append(engine)
    return engine


@cache
def icon(name: str) -> QIcon:
    """Return the icon of that name, which follows the look of the window."""
    return QIcon(_kept(_InkEngine(name)))


@cache
def renderer(name: str, colour: str) -> QSvgRenderer:
    """Return a drawing of the family in a colour; KeyError-free: an unknown name paints nothing."""
    path = data_folder("icons") / f"{name}.svg"
    text = path.read_text(encoding="utf-8") if path.is_file() else "<svg xmlns='http://www.w3.org/2000/svg'/>"
    return QSvgRenderer(QByteArray(text.replace("currentColor", colour).encode()))


@cache
def app_icon() -> QIcon:
    """Return the program's own mark in the sizes desktops ask for."""
    made = QIcon()
    mark = QSvgRenderer(str(data_folder("icons") / "app.svg"))
    for size in APP_SIZES:
        pixmap = QPixmap(size, size)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        mark.render(painter)
        painter.end()
        made.addPixmap(pixmap)
    return made


def _ink(mode: QIcon.Mode) -> QColor:
    palette = QApplication.palette()
    if mode == QIcon.Mode.Disabled:
        return palette.color(QPalette.ColorGroup.Disabled, QPalette.ColorRole.ButtonText)
    return palette.color(QPalette.ColorRole.ButtonText)
