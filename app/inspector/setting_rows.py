"""Rows for the settings of a kind; the same rows serve every kind, so that choosing another part is quick."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from app.inspector.choice_field import ChoiceField
from app.inspector.field_row import FieldRow
from app.inspector.typed_field import TypedField
from app.inspector.value_field import SEVERAL, ValueField
from wiring.catalogue.kind import Setting, Value

DATE_HINT = "2026-03-01"
Put = Callable[[Setting, Value | None], str]  # sets it; returns "" or why it cannot be


class SettingRows(QWidget):
    """One row a setting, in their order."""

    def __init__(self, put: Put, parent: QWidget) -> None:
        super().__init__(parent)
        self._put = put
        self._slots: list[_Slot] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(7)

    def show_settings(self, settings: Sequence[Setting]) -> bool:
        """Show rows for these settings; True when rows had to be made for them."""
        made = False
        for number, setting in enumerate(settings):
            if number == len(self._slots):
                self._slots.append(_Slot(self._put, self))
            made |= self._slots[number].take(setting, self._column, self._first_place(number))
        for slot in self._slots[len(settings) :]:
            slot.rest()
        self.setVisible(bool(settings))
        return made

    def show_values(self, values: Sequence[Value | None], units: str) -> None:
        """Show the values in the order of the settings; None for parts that differ."""
        for slot, value in zip(self._slots, values, strict=False):
            slot.show_value(value, units)

    def _first_place(self, number: int) -> int:
        return sum(len(slot.rows) for slot in self._slots[:number])


class _Slot:
    """A place for one setting: a row of each sort it ever had to be, one of them in sight."""

    def __init__(self, put: Put, parent: QWidget) -> None:
        self.rows: dict[type[FieldRow], ValueField | TypedField | ChoiceField] = {}
        self._put = put
        self._parent = parent
        self._setting: Setting | None = None
        self._row: ValueField | TypedField | ChoiceField | None = None

    def take(self, setting: Setting, column: QVBoxLayout, place: int) -> bool:
        """Be the row of a setting; True when it had to be made."""
        sort = ChoiceField if setting.choices else TypedField if setting.quantity == "text" else ValueField
        made = sort not in self.rows
        if made:
            self.rows[sort] = self._made(sort)
            column.insertWidget(place, self.rows[sort])
        row = self.rows[sort]
        if row is not self._row:
            self.rest()
        self._setting, self._row = setting, row
        row.show_caption(setting.title)
        row.editor.setObjectName(f"setting_{setting.name}")
        row.setToolTip(_tip(setting))
        if isinstance(row, ChoiceField):
            row.offer([(c, c) for c in setting.choices])
        elif isinstance(row, ValueField):
            row.show_quantity(setting.quantity)
        row.show()
        return made

    def rest(self) -> None:
        """Be out of sight."""
        if self._row is not None:
            self._row.hide()
            self._row.editor.setObjectName("")
        self._row = None

    def show_value(self, value: Value | None, units: str) -> None:
        """Show what the plan has; None where parts differ."""
        row, setting = self._row, self._setting
        if setting is None:
            return
        if isinstance(row, ChoiceField):
            row.show_value(None if value is None else str(value))
        elif isinstance(row, ValueField):
            stands = setting.nought if value == 0 else ""
            row.show_units(units)
            hint = SEVERAL if value is None else stands or "typical"
            row.show_value(None if value is None or stands else float(value), hint)
        elif row is not None:
            date_hint = DATE_HINT if setting.name == "fitted" else ""
            row.show_text("" if value is None else str(value), SEVERAL if value is None else date_hint)

    def _made(self, sort: type[FieldRow]) -> ValueField | TypedField | ChoiceField:
        if sort is ChoiceField:
            return ChoiceField("", (), self._set, self._parent)
        if sort is ValueField:
            return ValueField("", "", self._set, self._parent, may_be_empty=True)
        return TypedField("", lambda typed: self._set(typed.strip()), self._parent)

    def _set(self, value: Value | None) -> str:
        return "" if self._setting is None else self._put(self._setting, value)


def _tip(setting: Setting) -> str:
    """Return what a setting is and where its typical value is from."""
    full = f"{setting.full or setting.title}."
    return f"{full} Typical value from: {setting.source}." if setting.source else full
