"""A strip of LEDs: a band as long as it is set to be, divided where it may be cut."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, box, line, number
from wiring.drawings.signs.lens_colours import lens_colour
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part

_CUT = Pen("quiet", 0.25, (0.8, 0.6))


def strip_span(kind: Kind, part: Part | None) -> tuple[float, float]:
    """Return where the band begins and ends along x, mm from the part's centre: it begins at the feed."""
    length_mm = 1000.0 * number(kind, part, "length", kind.width_mm / 1000.0)
    left = -kind.width_mm / 2
    return left, left + max(length_mm, kind.height_mm)


def strip(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the band, its cuts and one small light in each third of a section."""
    left, right = strip_span(kind, part)
    high = kind.height_mm
    section = 1000.0 * number(kind, part, "section", 0.05)
    sections = max(1, min(200, round((right - left) / section))) if section > 0 else 1
    step = (right - left) / sections
    lit = state.lightness is not None and state.lightness >= 1.0
    items: list[Item] = [box(((left + right) / 2, 0), right - left, high, pen=EDGE)]
    chip = min(high * 0.42, step / 4.5)
    for i in range(sections):
        x = left + i * step
        if i:
            items.append(line((x, -high / 2), (x, high / 2), pen=_CUT))
        items += [
            box(
                (x + step * third, 0),
                chip,
                chip,
                pen=Pen("ink", 0.2),
                fill="lit" if lit else lens_colour(kind),
            )
            for third in (1 / 6, 1 / 2, 5 / 6)
        ]
    return tuple(items)
