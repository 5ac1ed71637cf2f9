"""Where there are no sheets: one sentence in their place says why."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

if TYPE_CHECKING:
    from wiring.sheets.sheet_set import MadeSet

EMPTY = "The sheets are made from the plan; place something first."


class NoSheets(QLabel):
    """Stands in for the widgets that show sheets; what leads onto paper is of no use meanwhile."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("look", "quiet")
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.hide()

    def say(self, why: str, showing: Sequence[QWidget], buttons: Sequence[QWidget], keys_to: QWidget) -> None:
        """Show why there are none, "" where there are some; the keys go on at `keys_to`."""
        held = any(widget.hasFocus() for widget in (*showing, *buttons))
        if why and held:
            keys_to.setFocus()
        self.setText(why)
        self.setVisible(bool(why))
        for widget in showing:
            widget.setVisible(not why)
        for button in buttons:
            button.setEnabled(not why)


def why_none(fault: str, made: "MadeSet | None") -> str:
    """Return the sentence that tells why there are no sheets."""
    if fault:
        return fault
    if made is not None and made.changes is not None:
        since = made.changes.since
        return f"Nothing has changed since set {since.letter} of {since.day}."
    return EMPTY
