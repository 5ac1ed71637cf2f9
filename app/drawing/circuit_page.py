"""The circuit view: one drawing for each fed circuit; a click on a part selects it everywhere."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QShowEvent
from PySide6.QtWidgets import QComboBox, QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.drawing.circuit_view import CircuitView
from app.drawing.told import told
from app.making import Making
from app.selection import Selection
from app.solving import Answer
from app.theme.box_name import name_box
from app.theme.icon_button import icon_button
from app.theme.look import Look
from app.theme.sizes import fix_height, least_width

if TYPE_CHECKING:
    from wiring.drawings.circuit_drawing import Drawing

DRAWING = "Drawing the circuits…"
FAILED = "The circuits of this plan could not be drawn; the plan itself is safe. The log says more."
NOTHING = (
    "No circuit is drawn until a supply or a battery feeds something. Wire a lamp to one and look again."
)


class CircuitPage(QWidget):
    """Shows one drawing at a time."""

    picked = Signal(object)  # ids
    opened = Signal(str)  # the id to be shown on the plan

    def __init__(
        self,
        selection: Selection,
        look: Look,
        zooms: Sequence[QAction],
        parent: QWidget,
        *,
        at_once: bool = False,
    ) -> None:
        super().__init__(parent)
        self._selection = selection
        self._drawings: tuple[Drawing, ...] = ()
        self._asked: Answer | None = None
        self._shown: Answer | None = None
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self._show_drawings)
        self.choice = QComboBox(self)
        name_box(self.choice, "Circuit")
        least_width(self.choice, 320)
        self.choice.currentIndexChanged.connect(lambda _index: self._show_chosen())
        self._words = QLabel(NOTHING, self)
        self._words.setWordWrap(True)
        self._words.setProperty("look", "quiet")
        self._words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.picture = CircuitView(look, self)
        self.picture.setAccessibleName("Circuit drawing")
        self.picture.tell = self._told
        self.picture.picked.connect(self.picked)
        self.picture.opened.connect(self.opened)
        self.picture.pointed.connect(self._tell)
        self._reading = QLabel("", self)
        self._reading.setObjectName("circuitReading")
        self._reading.setProperty("look", "quiet")
        selection.changed.connect(lambda _ids: self._follow())
        bar = QFrame(self)
        bar.setObjectName("pageBar")
        fix_height(bar, 40)
        row = QHBoxLayout(bar)
        row.setContentsMargins(12, 0, 10, 0)
        row.setSpacing(4)
        row.addWidget(self.choice)
        row.addSpacing(8)
        row.addWidget(self._reading, 1)
        for action in zooms:
            row.addWidget(icon_button(action, bar))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(bar)
        column.addWidget(self._words, 1)
        column.addWidget(self.picture, 1)
        self._show_chosen()

    def show_answer(self, answer: Answer) -> None:
        """Have the circuits of an answer drawn, once; what is shown stays until they are."""
        if answer is self._asked:
            return
        self._asked = answer
        if not self._drawings:
            self._words.setText(DRAWING)
        self.making.ask(lambda: _drawn(answer))

    def begin_anew(self) -> None:
        """Show the first drawing of another plan, and all of it."""
        self.choice.setCurrentIndex(0 if self._drawings else -1)
        self.picture.show_all()

    def shows(self, one: str) -> bool:
        """Whether a part or wire is in one of the drawings; also while they are still being drawn."""
        return not self._drawings or any(p.id == one for d in self._drawings for p in d.places)

    def _show_drawings(self, result: object) -> None:
        self._shown, self._drawings = result if isinstance(result, tuple) else (None, ())
        self._words.setText(NOTHING if result is not None else FAILED)
        kept = self.choice.currentIndex()
        self.choice.blockSignals(True)
        self.choice.clear()
        self.choice.addItems([d.title for d in self._drawings])
        self.choice.setCurrentIndex(min(max(kept, 0), len(self._drawings) - 1))
        self.choice.blockSignals(False)
        self._show_chosen()
        if self.hasFocus():
            self.picture.setFocus()

    def _show_chosen(self) -> None:
        index = self.choice.currentIndex()
        drawing = self._drawings[index] if 0 <= index < len(self._drawings) else None
        self._words.setVisible(drawing is None)
        self.picture.setVisible(drawing is not None)
        self.choice.setVisible(len(self._drawings) > 0)
        self.picture.show_picture(drawing.picture if drawing else None, keep_place=True)
        self.picture.show_places(drawing.places if drawing else ())
        self._mark()

    def showEvent(self, event: QShowEvent) -> None:
        """Turn to the drawing that shows what was selected elsewhere."""
        super().showEvent(event)
        self._follow()

    def _follow(self) -> None:
        """Turn to the first drawing that shows what is selected, unless the one on show does."""
        ids = self._selection.ids
        showing = [n for n, d in enumerate(self._drawings) if any(p.id in ids for p in d.places)]
        if showing and self.choice.currentIndex() not in showing:
            self.choice.setCurrentIndex(showing[0])
        self._mark()
        if showing and not self.picture.hasFocus():
            self.picture.bring_chosen_into_sight()

    def _mark(self) -> None:
        self.picture.show_chosen(self._selection.ids)
        self._tell("")

    def _tell(self, pointed: str) -> None:
        """Write the reading of what the pointer is on, else of the one thing that is selected."""
        ids = self._selection.ids
        one = pointed or (next(iter(ids)) if len(ids) == 1 else "")
        self._reading.setText(self._told(one))
        self.picture.setAccessibleDescription(self._told(one))

    def _told(self, one: str) -> str:
        return told(self._shown.situation, one) if one and self._shown is not None else ""


def _drawn(answer: Answer) -> "tuple[Answer, tuple[Drawing, ...]]":
    from wiring.drawings.circuit_drawing import circuit_drawings

    now = answer.situation
    return answer, circuit_drawings(now.plan, now.kinds, now.positions, now.figures)
