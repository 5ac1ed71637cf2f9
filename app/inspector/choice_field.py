"""A field that offers a few things to choose from."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QWidget

from app.inspector.field_row import FieldRow
from app.inspector.fitted_box import FittedBox

Option = tuple[str, str]  # value, words


class ChoiceField(FieldRow):
    """Shows one of several; a choice goes to `apply` at once."""

    def __init__(
        self, caption: str, options: Sequence[Option], apply: Callable[[str], str], parent: QWidget
    ) -> None:
        self.box = FittedBox()
        super().__init__(caption, self.box, parent)
        self._apply = apply
        self._options: tuple[Option, ...] = ()
        self.offer(options)
        self.box.activated.connect(self._chosen)

    def offer(self, options: Sequence[Option]) -> None:
        """Change what there is to choose from."""
        if self._options == tuple(options):
            return
        self._options = tuple(options)
        self.box.clear()
        for value, words in options:
            self.box.addItem(words, value)

    def show_value(self, value: str | None) -> None:
        """Show a value; None, for several that differ, shows nothing chosen."""
        self.box.setCurrentIndex(-1 if value is None else self.box.findData(value))

    def _chosen(self) -> None:
        self.show_fault(self._apply(str(self.box.currentData())))
