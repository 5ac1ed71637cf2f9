"""How well a press throws a turnout motor, one sentence on its card, worked out beside the window."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal
from PySide6.QtWidgets import QLabel, QWidget

from app.making import Making
from app.solving import Answer
from wiring.catalogue.kind import Kind

if TYPE_CHECKING:
    from wiring.studies.throws.words import Throw

REST_MS = 200  # how long the hand must rest before a pulse is worked out


class Throwing(QObject):
    """Works out pulses; it outlives the card that shows them. The newest question wins."""

    found = Signal(object)  # Throw, or None where it could not be worked out

    def __init__(self, parent: QObject, *, at_once: bool = False) -> None:
        super().__init__(parent)
        self._question: tuple[Answer, str] | None = None
        self.making = Making(self, at_once=at_once)
        self.making.made.connect(self.found)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(0 if at_once else REST_MS)
        self._rest.timeout.connect(self._begin)

    def ask(self, answer: Answer, motor: str) -> None:
        """Ask how one motor throws; worked out when the hand has rested."""
        self._question = (answer, motor)
        self._rest.start()

    def _begin(self) -> None:
        if self._question is not None:
            self.making.ask(partial(_worked_out, *self._question))


class ThrowLine(QLabel):
    """The sentence; hidden on cards of other parts and until it is known."""

    def __init__(self, throwing: Throwing, parent: QWidget) -> None:
        super().__init__(parent)
        self._throwing = throwing
        self._motor = ""
        self.setObjectName("throw_line")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setProperty("look", "caption")
        self.setWordWrap(True)
        self.setAccessibleName("How well it throws")
        self.setVisible(False)
        throwing.found.connect(self._show)

    def show_part(self, part_id: str, kind: Kind) -> None:
        """Be about this part from now on, if it is a motor; nothing is known of it yet."""
        self._motor = part_id if kind.behaviour == "twin_coil" else ""
        self.clear()
        self.setVisible(False)

    def follow(self, answer: Answer) -> None:
        """Keep up with the plan: grey until the new sentence is there."""
        if self._motor:
            self.setEnabled(False)
            self._throwing.ask(answer, self._motor)

    def _show(self, throw: "Throw | None") -> None:
        from wiring.studies.throws.words import throw_words

        if throw is None or throw.motor != self._motor:
            return
        self.setText(throw_words(throw))
        self.setEnabled(True)
        self.setVisible(True)


def _worked_out(answer: Answer, motor: str) -> "Throw":
    from wiring.studies.throws.words import throw_of

    situation = answer.situation
    return throw_of(situation.plan, situation.kinds, answer.positions, motor)
