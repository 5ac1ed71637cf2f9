"""The most each supply ever gives, in any position of switches and motors: worked out when asked for."""

from collections.abc import Iterator
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from app.inspector.figures_table import Figure, FiguresTable
from app.making import Making
from app.solving import Answer
from wiring.plan.designations import part_label
from wiring.plan.positions import lasting
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from wiring.studies.positions.worst import Worst, WorstCase

READY, BUSY, DONE = "Try every position", "Trying every position…", ""
FAILED = "The positions could not be gone through; the log says more."
NAMED = 3  # more parts than that are counted, not named


class Trying(QObject):
    """Goes through the positions beside the window; it outlives the card that shows what was found."""

    changed = Signal()

    def __init__(self, parent: QObject, *, at_once: bool = False) -> None:
        super().__init__(parent)
        self.answer: Answer | None = None
        self.found: WorstCase | None = None
        self.state = READY
        self._asked = -1  # revision
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self._arrived)

    def follow(self, answer: Answer) -> None:
        """Keep up with the plan; what was found for another state of it goes."""
        self.answer = answer
        if answer.revision != self._asked and self.state != READY:
            self.state, self.found = READY, None
        self.changed.emit()

    def ask(self) -> None:
        """Begin."""
        if self.answer is None:
            return
        self._asked, self.state, self.found = self.answer.revision, BUSY, None
        self.changed.emit()
        self.making.ask(partial(_tried, self.answer))

    def _arrived(self, found: object) -> None:
        if self.state != BUSY:
            return
        if isinstance(found, tuple):
            self.answer, self.found = found
        self.state = FAILED if self.found is None else DONE
        self.changed.emit()


class EveryPosition(QWidget):
    """A button until it is pressed; then the figures, until the plan changes."""

    def __init__(self, trying: Trying, parent: QWidget) -> None:
        super().__init__(parent)
        self._trying = trying
        self.button = QPushButton(self)
        self.button.setProperty("look", "plain")
        self.button.setToolTip("Find the most each supply gives, whatever is thrown; takes some seconds")
        self.button.setAccessibleName(READY)
        self.button.clicked.connect(trying.ask)
        self.figures = FiguresTable(self)
        self.words = QLabel(self)
        self.words.setProperty("look", "caption")
        self.words.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(5)
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.figures)
        column.addWidget(self.words)
        trying.changed.connect(self._follow)
        self.refresh()

    def _follow(self) -> None:
        card = self.parentWidget()
        if card is not None and not card.isHidden():  # a card out of sight is brought up to date when shown
            self.refresh()

    def refresh(self) -> None:
        """Show what is known."""
        trying, answer, found = self._trying, self._trying.answer, self._trying.found
        self.setVisible(answer is not None and _has_choice(answer))
        self.button.setText(trying.state)
        self.button.setEnabled(trying.state != BUSY)
        self.button.setVisible(trying.state in (READY, BUSY))
        figures: tuple[Figure, ...] = ()
        words = ""
        if answer is not None and found is not None:
            figures = tuple(worst_figures(answer, found))
            words = "\n".join(when_words(answer, found))
        self.figures.show_figures(figures)
        self.words.setText(FAILED if trying.state == FAILED else words)
        self.words.setVisible(bool(self.words.text()))


def _has_choice(answer: Answer) -> bool:
    """Whether there is a supply, and anything that can be thrown."""
    plan, kinds = answer.situation.plan, answer.situation.kinds
    thrown = any(p.kind in kinds and len(kinds[p.kind].positions) > 1 for p in plan.parts.values())
    return thrown and bool(answer.situation.figures.supplies)


def worst_figures(answer: Answer, found: "WorstCase") -> Iterator[Figure]:
    """Walk the most each supply gives."""
    for part, worst in found.supplies.items():
        now = answer.situation.figures.supplies.get(part)
        over = part in found.limited or (now is not None and worst.amps > 1.001 * now.rated_a)
        least = "" if worst.exact else "at least "
        name = f"{part_label(answer.situation.plan, part)} at most"
        most = f"{least}{worded(worst.amps, 'current')}"
        yield Figure(name, f"{most}, too much" if over else most, True)


def when_words(answer: Answer, found: "WorstCase") -> Iterator[str]:
    """Walk how the switches stand then, one sentence a supply, and what is proved then."""
    from wiring.studies.positions.words import bound_words

    plan = answer.situation.plan
    for part, worst in found.supplies.items():
        yield " ".join(
            filter(None, (f"{part_label(plan, part)} {_when(answer, worst)}.", bound_words(worst)))
        )


def _when(answer: Answer, worst: "Worst") -> str:
    plan, now = answer.situation.plan, answer.situation.positions
    thrown = {p: stand for p, stand in worst.positions.items() if now.get(p) != stand}
    if not thrown:
        return "gives its most as things stand"
    if len(thrown) > NAMED:
        return f"gives its most with {len(thrown)} switches or motors thrown otherwise than now"
    stands = [f"{part_label(plan, p)} at “{stand}”" for p, stand in thrown.items()]
    return (
        f"gives its most with {' and '.join([', '.join(stands[:-1]), stands[-1]] if stands[:-1] else stands)}"
    )


def _tried(answer: Answer) -> "tuple[Answer, WorstCase]":
    from wiring.studies.positions.worst import worst_case

    plan, kinds = answer.situation.plan, answer.situation.kinds
    return answer, worst_case(plan, kinds, lasting(plan, kinds, answer.situation.positions))
