"""Pickers for a wire's size and colour; a colour is a swatch beside its IEC 60757 letters."""

from functools import cache

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QStyleOptionComboBox, QWidget

from app.inspector.fitted_box import FittedBox
from wiring.standards.colours import COLOURS, colour
from wiring.standards.conductors import SIZES

SWATCH = 16
_EDGE = "#84888e"  # stands off the fields of both looks and off black insulation


class _ChoiceBox(FittedBox):
    chosen = Signal()  # by the user's own hand, never by the program

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.activated.connect(self.chosen)
        self._known = 0  # values of the list itself; what comes after them belongs to one wire

    @property
    def value(self) -> str:
        """What is chosen."""
        return str(self.currentData() or "")

    def show_value(self, value: str) -> None:
        """Show a value; one the list does not know is added to it."""
        while self.count() > self._known and self.itemData(self.count() - 1) != value:
            self.removeItem(self.count() - 1)
        found = self.findData(value)
        if found < 0 and value:
            self._offer(value)
            found = self.findData(value)
        self.setCurrentIndex(found)

    def _offer(self, value: str) -> None:
        self.addItem(value, value)


class SizeBox(_ChoiceBox):
    """Conductor sizes, AWG and mm²."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Wire size")
        for size in SIZES:
            self._offer(size)
        self._known = self.count()
        self.show_value("22 AWG")


class ColourBox(_ChoiceBox):
    """Insulation colours, each as a swatch, its letters and, where there is room for all of it, its name."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Wire colour")
        for letters in COLOURS:
            self._offer(letters)
        self._known = self.count()
        self.show_value("BK")

    def offer_none(self, words: str) -> None:
        """Offer that no colour is chosen, before all others, and choose that."""
        self.insertItem(0, words, "")
        self._known += 1
        self.setCurrentIndex(0)

    def _offer(self, value: str) -> None:
        self.addItem(swatch(value), f"{value}  {colour(value).name}", value)

    def initStyleOption(self, option: QStyleOptionComboBox) -> None:
        """Show the letters alone rather than half a name."""
        super().initStyleOption(option)
        if self.value and self.width() < self.needed_px():
            option.currentText = self.value


@cache
def swatch(letters: str) -> QIcon:
    """Return a small picture of a wire's insulation; two-colour wire is shown half and half."""
    found = colour(letters)
    pixmap = QPixmap(SWATCH * 2, SWATCH * 2)
    pixmap.setDevicePixelRatio(2)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QColor(_EDGE))
    painter.setBrush(_colour(found.rgb))
    painter.drawRoundedRect(QRectF(1.5, 3.5, SWATCH - 3, SWATCH - 7), 3, 3)  # the rim fills whole pixels
    if found.stripe_rgb:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(_colour(found.stripe_rgb))
        painter.drawRect(QRectF(2, SWATCH / 2 - 1.5, SWATCH - 4, 3))
    painter.end()
    return QIcon(pixmap)


def _colour(rgb: str | tuple[int, int, int]) -> QColor:
    return QColor(rgb) if isinstance(rgb, str) else QColor(*rgb)
