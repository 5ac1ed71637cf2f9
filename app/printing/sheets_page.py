"""The sheets view: small pages to choose from, one page at size, and the ways onto paper."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFileDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from app.drawing.picture_view import PictureView
from app.making import Making
from app.printing.page_list import PageList
from app.printing.print_pages import paint_pages
from app.session import Session
from app.solving import Answer
from app.theme.icon_button import icon_button
from app.theme.look import Look
from app.window.actions import ZOOMS, Actions
from wiring.edits.set_plan import set_habits
from wiring.pictures.pdf import Page
from wiring.pictures.picture import Picture
from wiring.plan.positions import in_use

if TYPE_CHECKING:
    from wiring.findings.situation import Situation

PAPERS = ("A4", "Letter")
MAKING = "Making the sheets…"
FAILED = "The sheets of this plan could not be made; the plan itself is safe. The log says more."
EMPTY = "The sheets are made from the plan; place something first."


class SheetsPage(QWidget):
    """Makes the sheets when they are looked at, printed or saved."""

    told = Signal(str)

    def __init__(
        self, session: Session, look: Look, actions: Actions, parent: QWidget, *, at_once: bool = False
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._asked: Answer | None = None
        self._pages_of = -1  # the revision they were made of
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self._show_pages)
        self.pages: tuple[Page, ...] = ()
        self.paper = QComboBox(self)
        self.paper.addItems(PAPERS)
        self.paper.setAccessibleName("Paper")
        self.paper.activated.connect(lambda _index: session.do(set_habits(paper=self.paper.currentText())))
        save, send = QPushButton("Save PDF…", self), QPushButton("Print…", self)
        save.setProperty("look", "main")
        save.clicked.connect(actions["save_pdf"].trigger)
        send.clicked.connect(actions["print"].trigger)
        self._words = QLabel(self)
        self._words.setProperty("look", "quiet")
        self.list = PageList(look, self)
        self.list.selectionModel().currentChanged.connect(self._show_page)
        self.picture = PictureView(look, self, as_page=True)
        self.picture.setAccessibleName("The chosen sheet")
        bar = QFrame(self)
        bar.setObjectName("pageBar")
        bar.setFixedHeight(48)
        row = QHBoxLayout(bar)
        row.setContentsMargins(16, 0, 12, 0)
        row.setSpacing(8)
        row.addWidget(QLabel("Paper", bar))
        row.addWidget(self.paper)
        row.addWidget(self._words)
        row.addStretch(1)
        for name in ZOOMS:
            row.addWidget(icon_button(actions[name], bar))
        row.addSpacing(10)
        row.addWidget(send)
        row.addWidget(save)
        below = QHBoxLayout()
        below.setContentsMargins(0, 0, 0, 0)
        below.setSpacing(0)
        below.addWidget(self.list)
        below.addWidget(self.picture, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(bar)
        column.addLayout(below, 1)

    def show_answer(self, answer: Answer) -> None:
        """Have the sheets of an answer made; they wait for the battery outlooks, which stand on them."""
        self.paper.setCurrentText(answer.situation.plan.habits.paper)
        if answer is self._asked:
            return
        self._words.setText(MAKING)
        if not answer.complete:
            return
        self._asked = answer
        self.making.ask(lambda: (answer.revision, pages_of(answer.situation)))

    def made_pages(self) -> tuple[Page, ...]:
        """Return the sheets of the plan as it is now, made at once if they are not there yet."""
        from wiring.findings.situation import examine

        session = self._session
        if self._pages_of != session.revision:
            return pages_of(examine(session.plan, session.kinds))
        return self.pages

    def save_pdf(self) -> None:
        """Ask for a name and write the sheets as a PDF."""
        name, _ = QFileDialog.getSaveFileName(
            self, "Save the sheets", str(self._proposed(".pdf")), "PDF (*.pdf)"
        )
        if name:
            self.write_pdf(Path(name) if name.endswith(".pdf") else Path(f"{name}.pdf"))

    def write_pdf(self, path: Path) -> None:
        """Write the sheets to a file and say so, or say why not."""
        from wiring.pictures.pdf import write_pdf

        pages = self.made_pages()
        if not pages:
            self._session.refused.emit(EMPTY)
            return
        plan = self._session.plan
        try:
            write_pdf(pages, path, title=plan.title, author=plan.author)
        except OSError as fault:
            why = fault.strerror or "the disk refused"
            self._session.refused.emit(f"The sheets could not be written to {path}: {why}.")
            return
        self.told.emit(f"The sheets were written to {path}.")

    def print_sheets(self) -> None:
        """Let the person choose a printer, and print."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        pages = self.made_pages()
        if not pages:
            self._session.refused.emit(EMPTY)
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setFullPage(True)
        printer.setDocName(self._session.plan.title)
        dialog = QPrintDialog(printer, self)
        if dialog.exec() == QDialog.DialogCode.Accepted and not paint_pages(
            printer, printer.resolution(), pages
        ):
            self._session.refused.emit("The printer did not take the sheets; save them as a PDF instead.")

    def _show_pages(self, result: object) -> None:
        self._pages_of, self.pages = result if isinstance(result, tuple) else (-1, ())
        number = len(self.pages)
        counted = "1 sheet" if number == 1 else f"{number} sheets"
        self._words.setText(FAILED if result is None else counted if self.pages else EMPTY)
        self.list.show_pages(self.pages)
        self.picture.show_picture(self._chosen(), keep_place=True)

    def _chosen(self) -> Picture | None:
        row = self.list.currentIndex().row()
        return self.pages[row].picture if 0 <= row < len(self.pages) else None

    def _show_page(self, _now: QModelIndex, _before: QModelIndex) -> None:
        self.picture.show_picture(self._chosen())

    def _proposed(self, suffix: str) -> Path:
        path = self._session.path
        return path.with_suffix(suffix) if path else Path.home() / f"{self._session.plan.title}{suffix}"


def pages_of(situation: "Situation") -> tuple[Page, ...]:
    """Return the sheets, with every switch as it stands in use whatever has been thrown on the screen."""
    from wiring.findings.situation import examine
    from wiring.sheets.sheet_set import sheet_set

    plan, kinds = situation.plan, situation.kinds
    if not plan.parts:
        return ()
    if dict(situation.positions) != in_use(plan, kinds):
        situation = examine(plan, kinds)
    return tuple(sheet_set(situation, plan.habits.paper))
