"""A field for the colour of paint on a panel: one colour, as a swatch beside its letters and its name."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from app.inspector.field_row import FieldRow
from app.inspector.fitted_box import FittedBox
from app.inspector.wire_choice import swatch
from wiring.standards.colours import COLOURS


class FaceColourField(FieldRow):
    """Offers the single colours of IEC 60757; a choice goes to `apply` at once."""

    def __init__(self, caption: str, apply: Callable[[str], str], parent: QWidget) -> None:
        self.box = FittedBox()
        super().__init__(caption, self.box, parent)
        self._apply = apply
        for letters, found in COLOURS.items():
            if not found.stripe_rgb:
                self.box.addItem(swatch(letters), f"{letters}  {found.name}", letters)
        self.box.activated.connect(self._chosen)

    def show_value(self, letters: str | None) -> None:
        """Show a colour; None for several that differ."""
        self.box.setCurrentIndex(-1 if letters is None else self.box.findData(letters))

    def _chosen(self) -> None:
        self.show_fault(self._apply(str(self.box.currentData())))
