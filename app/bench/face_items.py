"""What is seen of a face, as items in millimetres from its upper left corner, before it is turned over."""

import math
from collections.abc import Iterator

from app.bench.face_sight import FaceSight, part_box
from app.bench.face_wires import courses, label_items, wire_items
from app.canvas.part_painter import part_state
from wiring.drawings.panel_face import decoration, legend, line_colour
from wiring.drawings.panel_parts import front_part
from wiring.drawings.signs.all_signs import sign
from wiring.drawings.signs.terminals import RADIUS_MM, terminals
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.pictures.transform import moved, turned
from wiring.plan.panel_places import to_face
from wiring.plan.part import Part
from wiring.plan.places import terminal_at

NAME_PX, PIN_PX = 11.0, 9.5  # size of letters on the screen, whatever the scale
PINS_FROM = 3.2  # pixels per millimetre from which terminals bear their names


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
    found = courses(sight)
    items += wire_items(sight, found)
    words: list[Words] = []
    for part in sight.at_back:
        items += part_terminals(sight, part)
        words += [_name(sight, part), *_pins(sight, part)]
    items += words
    items += label_items(sight, found, words)
    return tuple(items)


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
    """Return the designation beside a part: beside its body, from behind clear of its lugs."""
    kind, behind = sight.kinds[part.kind], sight.camera.behind
    size = NAME_PX / sight.camera.scale
    x, y = to_face(sight.panel, (part.x_mm, part.y_mm))
    angle = math.radians(part.turn_deg)
    half = (abs(kind.width_mm * math.cos(angle)) + abs(kind.height_mm * math.sin(angle))) / 2
    text = f"-{part.designation}"
    if behind:
        at = (part_box(sight, part)[2] + size * 0.5, y)
        return Words(text, at, size, "quiet", "regular", "left", "middle", ground="raised")
    # beside the upper right corner: track lines run through the middle of lenses and buttons
    return Words(text, (x + half, y - half - size * 0.1), size, "quiet", "regular", "left", "base")


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
