"""What is wrong with the face of a panel, in plain sentences."""

import math
from collections.abc import Iterator

from wiring.plan.limits import LONGEST_NAME, place_is_fair, text_is_fair
from wiring.plan.panel import FaceLine, FaceText, Panel
from wiring.standards.colours import COLOURS

WIDEST_LINE_MM, HIGHEST_TEXT_MM = 50.0, 100.0
LARGEST_SPACING_MM, DEEPEST_ROOM_MM = 500.0, 2000.0
MOST_ITEMS = 500  # of each sort; a face with more is no face but a slip


def face_faults(panel: Panel) -> Iterator[str]:
    """Say what is wrong with the spacing, the room behind, the lines and the legends of a panel."""
    name = f"the panel {panel.name.strip() or panel.id}"
    if not (panel.spacing_mm == 0 or 1.0 <= panel.spacing_mm <= LARGEST_SPACING_MM):
        yield f"The spacing of {name} must be 1 to {LARGEST_SPACING_MM:g} mm, or 0 for the plan's own grid."
    if not 0.0 <= panel.room_mm <= DEEPEST_ROOM_MM:
        yield f"The room behind {name} must be between 0 and {DEEPEST_ROOM_MM:g} mm."
    if max(len(panel.lines), len(panel.texts)) > MOST_ITEMS:
        yield f"There are more than {MOST_ITEMS} lines or legends on {name}; take some away."
    for line in panel.lines:
        yield from _line_faults(line, name)
    for text in panel.texts:
        yield from _text_faults(text, name)


def _line_faults(line: FaceLine, name: str) -> Iterator[str]:
    if len(line.points) < 2:
        yield f"A track line on {name} needs at least two points."
    if not all(place_is_fair(*point) for point in line.points):
        yield f"A track line on {name} lies outside the plan."
    if not 0.2 <= line.width_mm <= WIDEST_LINE_MM:
        yield f"A track line on {name} must be between 0.2 and {WIDEST_LINE_MM:g} mm wide."
    yield from _colour_faults(line.colour, f"The colour of a track line on {name}")


def _text_faults(text: FaceText, name: str) -> Iterator[str]:
    if not (text.text.strip() and text_is_fair(text.text, LONGEST_NAME)) or "\n" in text.text:
        yield f"A legend on {name} needs one line of at most {LONGEST_NAME} characters."
    if not (place_is_fair(text.x_mm, text.y_mm) and math.isfinite(text.turn_deg)):
        yield f"A legend on {name} lies outside the plan."
    elif abs(text.turn_deg) > 3600:
        yield f"The turn of a legend on {name} must lie between −3600 and 3600 degrees."
    if not 0.5 <= text.high_mm <= HIGHEST_TEXT_MM:
        yield f"The capitals of a legend on {name} must be between 0.5 and {HIGHEST_TEXT_MM:g} mm high."
    yield from _colour_faults(text.colour, f"The colour of a legend on {name}")


def _colour_faults(letters: str, subject: str) -> Iterator[str]:
    if letters not in COLOURS or COLOURS[letters].stripe_rgb:
        yield f"{subject} must be one colour of IEC 60757, such as BK, WH or RD, not “{letters[:20]}”."
