"""The foot of a plan view: its scale with a bar, the colours of its wires, and what could not be shown."""

from collections import Counter
from collections.abc import Collection, Sequence

from wiring.drawings.plan_fit import scale_words
from wiring.drawings.wire_colour import stripe_items, wire_colour
from wiring.pictures.metrics import fitted, width_mm, words_box
from wiring.pictures.picture import NO_PEN, Item, Path, Pen, Words
from wiring.plan.wire import Wire

ROW_MM = 5.6
_TEXT_MM = 2.8
_FOOT_MM = 304.8
_METRIC_STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000)
_US_STEPS_IN = (0.25, 0.5, 1, 2, 3, 6, 12, 24, 36, 60, 120, 240, 600, 1200)


def legend_rows(wires: Collection[Wire], width: float) -> int:
    """Return how many rows the legend of a view of those wires takes at a width."""
    return 1 + len(_colour_rows(wires, width))


def legend(
    wires: Collection[Wire], units: str, width: float, scale: float, notes: Sequence[str] = ()
) -> tuple[Item, ...]:
    """Return the legend, from (0, 0) down; its first row is the scale, then the colours."""
    items: list[Item] = [*scale_bar(units, scale)]
    if notes:
        room = width - max(words_box(i)[2] for i in items if isinstance(i, Words)) - 4.0
        said = fitted(" ".join(notes), room, 2.6, "italic")
        items.append(Words(said, (width, ROW_MM / 2), 2.6, "quiet", "italic", "right", "middle"))
    for row, cells in enumerate(_colour_rows(wires, width), start=1):
        y = ROW_MM * (row + 0.5)
        for x, letters, text in cells:
            spec = wire_colour(letters)
            box = ((x, y - 0.9), (x + 7.0, y - 0.9), (x + 7.0, y + 0.9), (x, y + 0.9))
            items.append(Path(box, Pen("ink", 0.2), spec.rgb, closed=True))
            items += stripe_items(((x, y), (x + 7.0, y)), spec, 0.9, 1.4)
            items.append(Words(text, (x + 8.2, y), _TEXT_MM, stand="middle"))
    return tuple(items)


def scale_bar(units: str, scale: float) -> tuple[Item, ...]:
    """Return the scale in words and a bar of round length, 25 to 60 mm long on paper."""
    words = f"Scale {scale_words(scale)}"
    x = width_mm(words, 3.2, "semibold") + 4.0
    if units == "us":
        steps = [(s * 25.4, f"{s:g} in" if s % 12 else f"{s / 12:g} ft") for s in _US_STEPS_IN]
    else:
        steps = [(float(s), f"{s} mm" if s < 1000 else f"{s / 1000:g} m") for s in _METRIC_STEPS]
    length, name = next((s for s in steps if s[0] * scale >= 22.0), steps[-1])
    long = length * scale
    y = ROW_MM / 2
    items: list[Item] = [Words(words, (0.0, y), 3.2, weight="semibold", stand="middle")]
    for i in range(4):
        a, b = x + long * i / 4, x + long * (i + 1) / 4
        corners = ((a, y - 0.7), (b, y - 0.7), (b, y + 0.7), (a, y + 0.7))
        items.append(Path(corners, NO_PEN, "ink" if i % 2 == 0 else "paper", closed=True))
    frame = ((x, y - 0.7), (x + long, y - 0.7), (x + long, y + 0.7), (x, y + 0.7))
    items.append(Path(frame, Pen("ink", 0.2), closed=True))
    items.append(Words(name, (x + long + 2.0, y), _TEXT_MM, stand="middle"))
    return tuple(items)


def _colour_rows(wires: Collection[Wire], width: float) -> list[list[tuple[float, str, str]]]:
    counts = Counter(w.colour for w in wires)
    rows: list[list[tuple[float, str, str]]] = []
    x = width
    for letters, count in counts.items():
        spec = wire_colour(letters)
        text = f"{letters} {spec.name} ({count})"
        need = 8.2 + width_mm(text, _TEXT_MM) + 5.0
        if x + need > width and (x > 0 or not rows):
            rows.append([])
            x = 0.0
        rows[-1].append((x, letters, text))
        x += need
    return rows
