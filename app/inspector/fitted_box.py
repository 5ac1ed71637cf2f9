"""A box of choices that knows how wide what it shows is, and drops down as wide as its widest line."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QComboBox, QStyle, QStyleOptionComboBox, QWidget

from app.inspector.one_value import SEVERAL

SHORTEST = 6  # letters it needs room for at least
ICON_GAP = 4  # as the toolkit leaves it between icon and words
LIST_AIR = 28  # beside the words of the list that drops down, for its edges and a scroll bar


class FittedBox(QComboBox):
    """May be narrow; whoever holds it asks what it needs."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setMinimumContentsLength(SHORTEST)
        self.setPlaceholderText(SEVERAL)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

    @property
    def words(self) -> str:
        """What is to be read in it."""
        return self.currentText()

    def needed_px(self) -> int:
        """Return the width at which nothing of what is chosen is cut."""
        option = QStyleOptionComboBox()
        QComboBox.initStyleOption(self, option)  # not a shortened one
        icon = 0 if option.currentIcon.isNull() else option.iconSize.width() + ICON_GAP
        inner = QSize(self.fontMetrics().horizontalAdvance(self.words) + icon, self.fontMetrics().height())
        kind = QStyle.ContentsType.CT_ComboBox
        return self.style().sizeFromContents(kind, option, inner, self).width()

    def showPopup(self) -> None:
        """Drop down wide enough for every line."""
        self.view().setMinimumWidth(self.view().sizeHintForColumn(0) + LIST_AIR)
        super().showPopup()
