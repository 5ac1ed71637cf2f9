"""The sheets view: small pages to choose from, one page at size, what to print, and the ways onto paper."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from app.drawing.picture_view import PictureView
from app.inspector.committing import committed
from app.making import Making
from app.printing.choices import Choices
from app.printing.made_sheets import made_of
from app.printing.named_words import named_at
from app.printing.no_sheets import NoSheets, why_none
from app.printing.page_bar import PageBar
from app.printing.page_list import PageList
from app.printing.print_pages import paint_pages
from app.printing.printed_record import PrintedRecord
from app.printing.set_words import boxed_words, counted_words
from app.printing.wish import read_wish, wish_text
from app.proposed_file import proposed_file
from app.session import Session
from app.settings import Remembered
from app.solving import Answer
from app.theme.box_name import name_box
from app.theme.look import Look
from app.window.actions import Actions
from wiring.edits.set_plan import set_habits
from wiring.files.refusals import NotSaved
from wiring.files.store import write_whole
from wiring.pictures.pdf import Page
from wiring.pictures.picture import Picture
from wiring.sheets.paper import PAPERS

if TYPE_CHECKING:
    from wiring.sheets.sheet_set import MadeSet

MAKING = "Making the sheets…"
FAILED = "The sheets of this plan could not be made; the plan itself is safe. The log says more."
_KEPT = "what_to_print"


class SheetsPage(QWidget):
    """Makes the sheets when they are looked at, printed or saved."""

    told = Signal(str)
    named = Signal(object)  # ids of what was clicked twice, to be shown on the plan

    def __init__(
        self, session: Session, look: Look, actions: Actions, parent: QWidget, *, at_once: bool = False
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._answer: Answer | None = None
        self._asked: tuple[object, ...] = ()
        self._shown: tuple[object, ...] = ()  # what the sheets that are shown were made of
        self._remembered: Remembered | None = None
        self._made: MadeSet | None = None
        self._fault = ""
        self.record = PrintedRecord(session)
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self._show_made)
        self.paper = QComboBox(self)
        self.paper.addItems(list(PAPERS))
        name_box(self.paper, "Paper")
        self.paper.activated.connect(lambda _index: session.do(set_habits(paper=self.paper.currentText())))
        self._words = QLabel(self)
        self._words.setProperty("look", "quiet")
        self.none = NoSheets(self)
        self.list = PageList(look, self)
        self.list.selectionModel().currentChanged.connect(self._show_page)
        self.picture = PictureView(look, self, as_page=True)
        self.picture.setAccessibleName("The chosen sheet")
        self.picture.setToolTip("Two clicks on a part’s or a wire’s name show it on the plan.")
        self.picture.clicked_twice.connect(self._name)
        self.choices = Choices(lambda s: committed(session, set_habits(symbols=s)), self)
        self.choices.changed.connect(self._wished)
        self.choices.remember.connect(self._remember)
        self._lay_out(actions)

    @property
    def pages(self) -> tuple[Page, ...]:
        """The sheets that are shown."""
        return self._made.pages if self._made is not None else ()

    def keep_in(self, remembered: Remembered) -> None:
        """Keep what is printed from one day to the next, and begin with what was kept."""
        self._remembered = remembered
        self.choices.show_wish(read_wish(remembered.text(_KEPT)))

    def show_answer(self, answer: Answer) -> None:
        """Have the sheets of an answer made; they wait for the battery outlooks, which stand on them."""
        plan = answer.situation.plan
        self.paper.setCurrentText(plan.habits.paper)
        self._answer = answer
        since = self.record.last
        self.choices.show_plan(plan, dict(answer.situation.kinds), since)
        wish = self.choices.wish
        wanted = (answer, wish, since)
        if self._asked and self._asked[0] is answer and self._asked[1:] == wanted[1:]:
            return
        self._words.setText(MAKING)
        if not answer.complete:
            return
        self._asked = wanted
        self.making.ask(lambda: (wanted, made_of(answer.situation, wish, since)))

    def made_now(self) -> "MadeSet | None":
        """Return the sheets of the plan as it is now, made at once if they are not there yet."""
        from wiring.findings.situation import examine

        session = self._session
        newest = self._answer is not None and self._answer.revision == session.revision
        if not newest or not self._asked or self._shown is not self._asked:
            situation = examine(session.plan, session.kinds)
            self._take(made_of(situation, self.choices.wish, self.record.last))
        return self._made

    def save_pdf(self) -> None:
        """Ask for a name and write the sheets as a PDF."""
        proposed = proposed_file(self._session.path, self._session.plan.title, ".pdf")
        name, _ = QFileDialog.getSaveFileName(self, "Save the sheets", str(proposed), "PDF (*.pdf)")
        if name:
            self.write_pdf(Path(name) if name.endswith(".pdf") else Path(f"{name}.pdf"))

    def write_pdf(self, path: Path) -> None:
        """Write the sheets to a file and say so, or say why not."""
        from wiring.pictures.pdf import pdf_bytes

        made = self._something()
        if made is None:
            return
        plan = self._session.plan
        try:
            write_whole(pdf_bytes(made.pages, plan.title, plan.author), path)
        except NotSaved as refusal:
            self._session.faulted.emit(str(refusal))
            return
        self.told.emit(f"The sheets were written to {path}.{boxed_words(made.pages)}")

    def print_sheets(self) -> None:
        """Let the person choose a printer, print, and remember what was printed."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        made = self._something()
        if made is None:
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setFullPage(True)
        printer.setDocName(self._session.plan.title)
        if QPrintDialog(printer, self).exec() != QDialog.DialogCode.Accepted:
            return
        if not paint_pages(printer, printer.resolution(), made.pages):
            self._session.refused.emit("The printer did not take the sheets; save them as a PDF instead.")
        elif made.whole:
            self._remember()

    def _something(self) -> "MadeSet | None":
        """Return the sheets, or say why there are none."""
        made = self.made_now()
        if made is not None and made.pages:
            return made
        self._session.refused.emit(why_none(self._fault, self._made))
        return None

    def _remember(self) -> None:
        made = self.made_now()
        if made is None:
            self._session.refused.emit(why_none(self._fault, self._made))
            return
        done, sentence = self.record.remember(made)
        (self.told if done else self._session.refused).emit(sentence)
        if self._answer is not None:
            self.show_answer(self._answer)

    def _wished(self) -> None:
        if self._remembered is not None:
            self._remembered.keep_text(_KEPT, wish_text(self.choices.wish))
        if self._answer is not None:
            self.show_answer(self._answer)

    def _show_made(self, result: object) -> None:
        self._shown, made = result if isinstance(result, tuple) else ((), FAILED)
        self._take(made)
        number = len(self.pages)
        self._words.setText(counted_words(number, self.choices.wish) if number else "")
        why = "" if number else why_none(self._fault, self._made)
        self.none.say(why, (self.list, self.picture), (*self._onto_paper, self.choices.keep), self.choosing)
        self.list.show_pages(self.pages)
        self.picture.show_picture(self._chosen(), keep_place=True)

    def _take(self, made: object) -> None:
        self._fault = made if isinstance(made, str) else ""
        self._made = None if made is None or isinstance(made, str) else made  # type: ignore[assignment]

    def _chosen(self) -> Picture | None:
        row = self.list.currentIndex().row()
        return self.pages[row].picture if 0 <= row < len(self.pages) else None

    def _show_page(self, _now: QModelIndex, _before: QModelIndex) -> None:
        self.picture.show_picture(self._chosen())

    def _name(self, x_mm: float, y_mm: float) -> None:
        """Tell which part or wire was clicked twice."""
        page = self._chosen()
        ids = named_at(page, x_mm, y_mm, self._session.plan) if page is not None else ()
        if ids:
            self.named.emit(ids)

    def _show_choices(self, yes: bool) -> None:
        """Show or hide what there is to choose; the keys do not go astray with it."""
        held = QApplication.focusWidget()
        if not yes and held is not None and self.choices.isAncestorOf(held):
            self.list.setFocus()
        self.choices.setVisible(yes)

    def _lay_out(self, actions: Actions) -> None:
        bar = PageBar(actions, self.paper, self._words, self)
        self.choosing, self._onto_paper = bar.choosing, bar.onto_paper
        self.choosing.toggled.connect(self._show_choices)
        rule = QFrame(self)
        rule.setProperty("look", "upright")
        below = QHBoxLayout()
        below.setContentsMargins(0, 0, 0, 0)
        below.setSpacing(0)
        below.addWidget(self.none, 1)
        below.addWidget(self.list)
        below.addWidget(self.picture, 1)
        below.addWidget(rule)
        below.addWidget(self.choices)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(bar)
        column.addLayout(below, 1)
