"""What is seen of a face, as items in millimetres from its upper left corner, before it is turned over."""

import math
from collections.abc import Iterator

from app.bench.face_hit import terminal_places
from app.bench.face_sight import FaceSight
from app.bench.face_wires import courses, label_items, wire_items
from app.canvas.painting.part_painter import part_state
from wiring.catalogue.kind import Kind
from wiring.drawings.panel_face import decoration, legend, line_colour
from wiring.drawings.panel_parts import front_part
from wiring.drawings.signs.all_signs import sign
from wiring.drawings.signs.terminals import RADIUS_MM, terminals
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.pictures.transform import moved, turned
from wiring.plan.panel_bodies import is_mounted
from wiring.plan.panel_places import to_face
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at
from wiring.sheets.panel_template import hole_mm

NAME_PX, PIN_PX = 11.0, 9.5  # size of letters on the screen, whatever the scale
PINS_FROM = 2.4  # pixels per millimetre from which terminals bear their names


def front_items(sight: FaceSight) -> tuple[Item, ...]:
    """Return track diagram, legends and what sits in the face, as the hand sees them."""
    items: list[Item] = [*decoration(sight.panel)]
    for part in sight.parts:
        items += part_items(sight, part)
        items.append(_name(sight, part))
    return tuple(items)


def back_items(sight: FaceSight) -> tuple[Item, ...]:
    """Return bodies, wires and terminals, with the track diagram showing through in pencil."""
    items: list[Item] = []
    for line in sight.panel.lines:
        items.append(Path(line.points, Pen("faint", line.width_mm), opacity=0.7))
        items.append(Path(line.points, Pen(line_colour(line.colour), 0.2, (2.0, 1.5)), opacity=0.5))
    for text in sight.panel.texts:
        items.append(legend(text)._replace(colour="faint", ground=""))
    for part in sight.at_back:
        items += part_items(sight, part)
    items += wire_items(sight, courses(sight))
    for part in sight.at_back:
        items += part_terminals(sight, part)
    return tuple(items)


def back_words(sight: FaceSight) -> tuple[Words, ...]:
    """Return the names of parts, terminals and wires, each clear of the others."""
    words = [_name(sight, part) for part in sight.at_back]
    words += [pin for part in sight.at_back for pin in _pins(sight, part)]
    dots = terminal_places(sight).values()
    return (*words, *label_items(sight, courses(sight), words, dots))


def part_items(sight: FaceSight, part: Part) -> tuple[Item, ...]:
    """Return the sign of one part where it stands on the face."""
    kind = sight.kinds[part.kind]
    state = part_state(sight.whole, part, kind)._replace(below=sight.camera.behind)
    at = to_face(sight.panel, (part.x_mm, part.y_mm))
    look = sign if sight.camera.behind else front_part
    return moved(turned(look(kind, part, state), part.turn_deg), at)


def part_terminals(sight: FaceSight, part: Part, radius_mm: float = RADIUS_MM) -> tuple[Item, ...]:
    """Return the copper dots of one part where they are."""
    at = to_face(sight.panel, (part.x_mm, part.y_mm))
    return moved(turned(terminals(sight.kinds[part.kind], radius_mm), part.turn_deg), at)


def _name(sight: FaceSight, part: Part) -> Words:
    """Return the designation beside a part's body, from behind where no terminals are, with its hole."""
    kind = sight.kinds[part.kind]
    size = NAME_PX / sight.camera.scale
    x, y = to_face(sight.panel, (part.x_mm, part.y_mm))
    angle = math.radians(part.turn_deg)
    cos, sin = abs(math.cos(angle)), abs(math.sin(angle))
    half_w = (kind.width_mm * cos + kind.height_mm * sin) / 2
    half_h = (kind.width_mm * sin + kind.height_mm * cos) / 2
    if not sight.camera.behind:
        # beside the upper right corner: track lines run through the middle of lenses and buttons
        at = (x + half_w + size * 0.5, y - half_h - size * 0.1)
        return Words(f"-{part.designation}", at, size, "quiet", "regular", "left", "base")
    text = f"-{part.designation}{_hole_words(kind)}"
    below = Words(
        text, (x, y + half_h + size * 0.75), size, "quiet", "regular", "centre", "middle", ground="raised"
    )
    places = (
        below,
        below._replace(at=(x, y - half_h - size * 0.75)),
        below._replace(at=(x - half_w - size * 0.5, y), align="right"),
        below._replace(at=(x + half_w + size * 0.5, y), align="left"),
    )
    dots = [to_face(sight.panel, terminal_at(part, kind, t.name)) for t in kind.terminals]
    return next((words for words in places if _is_clear(words, dots)), below)


def _is_clear(words: Words, dots: list[Point]) -> bool:
    """Return whether words keep clear of terminals and of their names above them."""
    left, top, right, bottom = words_box(words)
    air = RADIUS_MM + words.size_mm * 0.2
    return not any(
        left - air < x < right + air and top - air < y < bottom + air + words.size_mm for x, y in dots
    )


def _hole_words(kind: Kind) -> str:
    """Return the hole to drill, as drawings write a diameter; "" for what sits in none."""
    across = hole_mm(kind) if is_mounted(kind) else 0.0
    return f"  ⌀{across:g}" if across else ""


def _pins(sight: FaceSight, part: Part) -> Iterator[Words]:
    if sight.camera.scale < PINS_FROM:
        return
    size = PIN_PX / sight.camera.scale
    kind = sight.kinds[part.kind]
    for terminal in kind.terminals:
        x, y = to_face(sight.panel, terminal_at(part, kind, terminal.name))
        away = 1.4 + size * 0.5
        yield Words(
            terminal.name, (x, y - away), size, "ink", "semibold", "centre", "middle", ground="raised"
        )
