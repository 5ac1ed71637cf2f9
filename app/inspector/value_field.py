"""A field for a value with a unit: it shows "18.2 mA" and takes whatever a person would write for it."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from app.inspector.one_value import SEVERAL as SEVERAL
from app.inspector.plain_number import plain_number
from app.inspector.typed_field import TypedField
from wiring.quantities.face_lengths import length_words

PLAIN = ("count", "lightness", "number")  # numbers without a unit
ON_FACE = "length on a face"  # in millimetres or inches, as rules and drills count, and so is a bare number
READ_AS = {ON_FACE: "length"}
BARE = {("length", "us"): "foot", (ON_FACE, "us"): "inch", (ON_FACE, "metric"): "mm"}
INCH_M = 0.0254


class ValueField(TypedField):
    """Shows and reads one quantity; `apply` gets the value in its SI unit, None for an empty field."""

    def __init__(
        self,
        caption: str,
        quantity: str,
        apply: Callable[[float | None], str],
        parent: QWidget,
        *,
        units: str = "metric",
        may_be_empty: bool = False,
        bare: bool = False,
    ) -> None:
        super().__init__(caption, self._read, parent, bare=bare)
        self._quantity = quantity
        self._apply = apply
        self._units = units
        self._may_be_empty = may_be_empty
        self.align_right()

    def show_value(self, value: float | None, hint: str = "") -> None:
        """Show a value; None shows an empty field with the hint in it."""
        self.show_text("" if value is None else value_words(value, self._quantity, self._units), hint)

    def show_quantity(self, quantity: str) -> None:
        """Show and read another quantity from now on."""
        self._quantity = quantity

    def show_units(self, units: str) -> None:
        """Change the units it shows."""
        self._units = units

    def _read(self, typed: str) -> str:
        from wiring.quantities.reading import NotUnderstood, read

        if not typed.strip():
            return (
                self._apply(None)
                if self._may_be_empty
                else "Type a value here, or press Esc for the old one."
            )
        if self._quantity == "number":
            try:
                return self._apply(plain_number(typed))
            except ValueError as refusal:
                return str(refusal)
        quantity = "count" if self._quantity in PLAIN else READ_AS.get(self._quantity, self._quantity)
        try:
            value = read(typed, quantity, BARE.get((self._quantity, self._units), ""))
        except NotUnderstood as refusal:
            return str(refusal)
        return self._apply(value)


def value_words(value: float, quantity: str, units: str = "metric") -> str:
    """Return a value as the inspector shows it; it reads back as the same value."""
    from wiring.quantities.reading import NotUnderstood, read
    from wiring.quantities.wording import worded

    if quantity in PLAIN:
        return f"{value:g}"
    if quantity == ON_FACE:
        return length_words(value * 1000, us=True) if units == "us" else f"{value * 1000:.6g} mm"
    words = worded(value, quantity, units)
    if units == "metric" and float(f"{value:.3g}") == value:
        return words  # three digits are all it has; reading back would load the units for nothing
    try:
        same = abs(read(words, quantity) - value) <= 1e-3 * max(abs(value), 1e-12)
    except NotUnderstood:
        same = False
    # A field must not round what was typed: 1234 mAh would come back as 1.23 Ah.
    if same:
        return words
    return (
        _feet_and_inches(value) if units == "us" and quantity == "length" else _exact(value, quantity, words)
    )


def _feet_and_inches(length_m: float) -> str:
    feet, inches = divmod(length_m / INCH_M, 12)
    return f"{feet:.0f} ft {inches:.2f} in" if feet else f"{inches:.2f} in"


def _exact(value: float, quantity: str, words: str) -> str:
    from wiring.quantities.reading import NotUnderstood, read

    unit = words.lstrip("-+−0123456789.,' \"")
    try:
        one = read(f"1 {unit}", quantity)
        return f"{value / one:.6g} {unit}"
    except (NotUnderstood, ZeroDivisionError):
        return words
