"""The rows of the findings: flag, what is wrong, why it matters, what would mend it."""

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QStandardItem, QStandardItemModel
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from app.findings.flag import paint_flag, rank_word
from app.findings.row_layout import INDENT, LINE, TOP, row_layout
from app.theme.fonts import screen_font
from app.theme.look import Look
from app.theme.words import lined, scaled
from wiring.findings.finding import Finding
from wiring.findings.mend_all import AllOfSort, sorts

FINDING_ROLE = Qt.ItemDataRole.UserRole
ALL_ROLE = Qt.ItemDataRole.UserRole + 1  # all findings of its sort, in every row of a sort that has several
ALL_WORDS_ROLE = Qt.ItemDataRole.UserRole + 2  # on the button that mends them, in the first of those rows


class FindingModel(QStandardItemModel):
    """The findings, worst first."""

    def show_findings(self, findings: Sequence[Finding]) -> None:
        """Replace the rows, unless they say the same already."""
        if [self.item(n).data(FINDING_ROLE) for n in range(self.rowCount())] == list(findings):
            return
        self.clear()
        several, begun = sorts(findings), set[str]()
        for finding in findings:
            item = QStandardItem(finding.what)
            item.setData(finding, FINDING_ROLE)
            spoken = f"{rank_word(finding.rank)}: {finding.what} {finding.why} {finding.mend}"
            if finding.act is not None:
                spoken += f" Press Ctrl+Return for: {finding.act.words}."
            of: AllOfSort | None = several.get(finding.rule) if finding.act is not None else None
            if of is not None:
                spoken += f" Press Ctrl+Shift+Return for: {of.words}."
                item.setData(of, ALL_ROLE)
                item.setData("" if finding.rule in begun else of.words, ALL_WORDS_ROLE)
                begun.add(finding.rule)
            item.setData(spoken, Qt.ItemDataRole.AccessibleTextRole)
            item.setEditable(False)
            self.appendRow(item)


class FindingPainter(QStyledItemDelegate):
    """Paints one finding on as many lines as its words need."""

    def __init__(self, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Ask for the room its words need."""
        view = self.parent()
        width = view.viewport().width() if isinstance(view, QListView) else 600
        finding: Finding = index.data(FINDING_ROLE)
        return QSize(200, row_layout(finding, width, index.data(ALL_WORDS_ROLE) or "").height)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint one row."""
        finding: Finding = index.data(FINDING_ROLE)
        rect: QRect = option.rect
        state: QStyle.StateFlag = option.state
        s, word = self._look.surfaces, rank_word(finding.rank)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ground = QRectF(rect).adjusted(6, 1, -6, -1)
        painter.setPen(QColor(s.copper) if state & QStyle.StateFlag.State_HasFocus else Qt.PenStyle.NoPen)
        chosen, hovered = state & QStyle.StateFlag.State_Selected, state & QStyle.StateFlag.State_MouseOver
        painter.setBrush(QColor(s.chosen if chosen else s.hover if hovered else s.header))
        painter.drawRoundedRect(ground, 6, 6)
        box = QRectF(rect.left() + 15, rect.top() + 9 + (lined(LINE) - LINE) / 2, 16, 16)
        paint_flag(painter, box, word, self._look.theme[word], s.header)
        layout = row_layout(finding, rect.width(), index.data(ALL_WORDS_ROLE) or "")
        top = float(rect.top() + TOP)
        if chosen:  # told by a bar too, and in ink: grey words are faint on the ground of what is chosen
            painter.fillRect(
                QRectF(ground.left(), ground.top() + 4, 3, ground.height() - 8), QColor(s.copper)
            )
        rest = s.ink if chosen else s.quiet
        for lines, weight, colour in ((layout.what, "semibold", s.ink), (layout.rest, "regular", rest)):
            painter.setFont(screen_font(13, weight))
            painter.setPen(QColor(colour))
            for line in lines:
                painter.drawText(QPointF(rect.left() + INDENT, top + scaled(14)), line)
                top += lined(LINE)
        painter.restore()
