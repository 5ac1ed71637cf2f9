"""What keys do with a wireway or joist that is selected."""

from collections.abc import Mapping

from app.canvas.rerouting import with_wireway_followed
from app.ground_keys import joist_index
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.joists import change_joist, remove_joist
from wiring.edits.wireways import remove_wireway, shift_wireway
from wiring.plan.plan import Plan


def ground_removed(ground: str) -> Edit:
    """Return the edit that takes the wireway or joist away."""
    index = joist_index(ground)
    return remove_joist(index) if index >= 0 else remove_wireway(ground)


def ground_shifted(plan: Plan, ground: str, dx_mm: float, dy_mm: float, kinds: Mapping[str, Kind]) -> Edit:
    """Return the edit that shifts the wireway, with the wires along it, or the joist."""
    index = joist_index(ground)
    if index < 0:
        return with_wireway_followed(shift_wireway(ground, dx_mm, dy_mm), kinds, ground)
    (ax, ay), (bx, by) = plan.joists[index].start, plan.joists[index].end
    edit = change_joist(index, start=(ax + dx_mm, ay + dy_mm), end=(bx + dx_mm, by + dy_mm))
    return edit._replace(label="Move joist")
