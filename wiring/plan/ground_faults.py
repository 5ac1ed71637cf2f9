"""What is wrong with joists, wireways and the backdrop of a plan, in plain sentences."""

import math
from collections.abc import Iterator
from pathlib import PurePosixPath

from wiring.plan.backdrop import Backdrop
from wiring.plan.joist import Joist
from wiring.plan.limits import LONGEST_NAME, place_is_fair, text_is_fair
from wiring.plan.wireway import Wireway

WIDEST_HOLE_MM, LONGEST_DROP_MM = 300.0, 3000.0
WIDEST_JOIST_MM, DEEPEST_JOIST_MM = 500.0, 2000.0
MEDIA = ("image/png", "image/jpeg", "image/svg+xml")
LARGEST_KEPT = 4 * 1024 * 1024  # characters of base64 in a plan: about 3 MB of picture


def wireway_faults(wireway: Wireway) -> Iterator[str]:
    """Say what is wrong with one wireway."""
    name = f"The wireway {wireway.name.strip() or wireway.id}"
    if not (wireway.name.strip() and text_is_fair(wireway.name, LONGEST_NAME)):
        yield f"The wireway {wireway.id} needs a name of at most {LONGEST_NAME} characters."
    if len(wireway.points) < 2:
        yield f"{name} needs at least two corners."
    if not all(place_is_fair(*point) for point in wireway.points):
        yield f"{name} has a corner outside the plan; x and y must be within a kilometre (1 000 000 mm)."
    if not 1.0 <= wireway.hole_mm <= WIDEST_HOLE_MM:
        yield f"The hole of {name.removeprefix('The ')} must be between 1 and {WIDEST_HOLE_MM:g} mm wide."
    drops = (wireway.drop_mm, wireway.fascia_drop_mm or 0.0)
    if not all(0.0 <= drop <= LONGEST_DROP_MM for drop in drops):
        yield f"The drop of {name.removeprefix('The ')} must be between 0 and {LONGEST_DROP_MM:g} mm."


def joist_faults(joist: Joist) -> Iterator[str]:
    """Say what is wrong with one joist."""
    if not (place_is_fair(*joist.start) and place_is_fair(*joist.end)):
        yield "A joist has an end outside the plan; x and y must be within a kilometre (1 000 000 mm)."
    elif joist.start == joist.end:
        yield "A joist needs two ends apart from each other."
    if not 1.0 <= joist.width_mm <= WIDEST_JOIST_MM:
        yield f"A joist must be between 1 and {WIDEST_JOIST_MM:g} mm wide."
    if not 1.0 <= joist.depth_mm <= DEEPEST_JOIST_MM:
        yield f"A joist must be between 1 and {DEEPEST_JOIST_MM:g} mm deep."


def backdrop_faults(backdrop: Backdrop) -> Iterator[str]:
    """Say what is wrong with the picture under the plan."""
    if backdrop.media not in MEDIA:
        yield "The picture under the plan must be a PNG, JPEG or SVG."
    if bool(backdrop.data) == bool(backdrop.path):
        yield "The picture under the plan must be kept either in the plan or beside it."
    if len(backdrop.data) > LARGEST_KEPT:
        yield "The picture in the plan is larger than 3 MB; keep it beside the plan instead."
    if backdrop.path and not _is_beside(backdrop.path):
        yield "The picture under the plan must lie in the plan's folder or in one inside it."
    sizes = (backdrop.width_px, backdrop.height_px, backdrop.mm_per_px)
    if not all(math.isfinite(s) and 0 < s <= 1e6 for s in sizes):
        yield "The picture under the plan must have a width, a height and a scale above nothing."
    if not (place_is_fair(backdrop.x_mm, backdrop.y_mm) and abs(backdrop.turn_deg) <= 3600):
        yield "The picture under the plan lies outside the plan."
    if not 0.0 <= backdrop.strength <= 1.0:
        yield "How strong the picture under the plan shows must lie between 0 and 1."


def _is_beside(path: str) -> bool:
    parts = PurePosixPath(path).parts
    return text_is_fair(path, 260) and "\\" not in path and not path.startswith("/") and ".." not in parts
