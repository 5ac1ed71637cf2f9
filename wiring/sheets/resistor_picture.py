"""A resistor as it lies on the bench: its body and its bands."""

from collections.abc import Mapping, Sequence

from wiring.pictures.picture import NO_PEN, Item, Path, Pen

LENGTH_MM = 17.0
# The colours of IEC 60062 as they print; the words beside always say them too.
_RGB: Mapping[str, str] = {
    "black": "#1a1a1a", "brown": "#6f4322", "red": "#c62828", "orange": "#ef7f1a", "yellow": "#f5d327",
    "green": "#2e8b3d", "blue": "#1f5fae", "violet": "#7b4fa0", "grey": "#8a8d90", "white": "#ffffff",
    "gold": "#b8933a", "silver": "#c3c7cb", "pink": "#f09ab4",
}  # fmt: skip
_BODY_MM, _HIGH_MM, _BAND_MM = 12.5, 3.0, 1.15
_BODY_RGB = "#e9dcc0"


def resistor_picture(bands: Sequence[str], x: float, y: float) -> tuple[Item, ...]:
    """Return the resistor from (x, y) to the right; the last band, the tolerance, stands apart."""
    left, half = x + (LENGTH_MM - _BODY_MM) / 2, _HIGH_MM / 2
    items: list[Item] = [
        Path(((x, y), (x + LENGTH_MM, y)), Pen("quiet", 0.4)),
        _box(left, left + _BODY_MM, y, half, Pen("ink", 0.2), _BODY_RGB),
    ]
    step = (_BODY_MM - 4.0) / max(len(bands) - 1, 1)
    for number, colour in enumerate(bands):
        last = number == len(bands) - 1
        at = left + _BODY_MM - 1.8 if last else left + 1.3 + number * step * 0.9
        items.append(_box(at, at + _BAND_MM, y, half, Pen("ink", 0.08), _RGB[colour]))
    return tuple(items)


def _box(left: float, right: float, y: float, half: float, pen: Pen, fill: str) -> Path:
    corners = ((left, y - half), (right, y - half), (right, y + half), (left, y + half))
    return Path(corners, pen if pen.width_mm else NO_PEN, fill, closed=True)
