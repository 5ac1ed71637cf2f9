"""The circuit view: one drawing for each fed circuit; a click on a part selects it everywhere."""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QComboBox, QFrame, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.drawing.named_places import Box, named_places, nearest
from app.drawing.picture_view import PictureView
from app.making import Making
from app.selection import Selection
from app.solving import Answer
from app.theme.icon_button import icon_button
from app.theme.look import Look

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
        self._places: Mapping[str, tuple[Box, ...]] = {}
        self._asked: Answer | None = None
        self._shown: Answer | None = None
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self._show_drawings)
        self.choice = QComboBox(self)
        self.choice.setAccessibleName("Circuit")
        self.choice.setMinimumWidth(320)
        self.choice.currentIndexChanged.connect(lambda _index: self._show_chosen())
        self._words = QLabel(NOTHING, self)
        self._words.setWordWrap(True)
        self._words.setProperty("look", "quiet")
        self._words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.picture = PictureView(look, self)
        self.picture.setAccessibleName("Circuit drawing")
        self.picture.clicked.connect(self._pick)
        selection.changed.connect(lambda _ids: self._mark())
        bar = QFrame(self)
        bar.setObjectName("pageBar")
        bar.setFixedHeight(40)
        row = QHBoxLayout(bar)
        row.setContentsMargins(12, 0, 10, 0)
        row.setSpacing(4)
        row.addWidget(self.choice)
        row.addStretch(1)
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
        if drawing is None or self._shown is None:
            self._places = {}
        else:
            self._places = named_places(self._shown.situation.plan, drawing.picture)
        self._mark()

    def _mark(self) -> None:
        self.picture.mark([box for i in self._selection.ids for box in self._places.get(i, ())])

    def _pick(self, x_mm: float, y_mm: float) -> None:
        found = nearest(self._places, x_mm, y_mm)
        self.picked.emit((found,) if found else ())


def _drawn(answer: Answer) -> "tuple[Answer, tuple[Drawing, ...]]":
    from wiring.drawings.circuit_drawing import circuit_drawings

    now = answer.situation
    return answer, circuit_drawings(now.plan, now.kinds, now.positions, now.figures)
