"""What a screen reader says of what is chosen on a face."""

from app.bench.bench import FaceItem
from app.bench.face_fit import misfit_words
from app.bench.face_sight import FaceSight
from app.canvas.words import part_words, wire_words
from wiring.edits.tables import counted
from wiring.plan.panel_places import to_face
from wiring.quantities.face_lengths import length_words

SIDES = {False: "Front of {}", True: "{} from behind, left and right are swapped"}


def chosen_words(sight: FaceSight) -> str:
    """Return what is chosen, where it stands and whether it fits; with nothing chosen which side is up."""
    plan = sight.plan
    parts = [i for i in sight.selected if i in plan.parts]
    wires = [i for i in sight.selected if i in plan.wires]
    if len(parts) + len(wires) + len(sight.items) == 1:
        return f"{_one(sight, parts, wires)} selected"
    counts = (
        (len(parts), "part"),
        (len(wires), "wire"),
        (sum(item.sort == "line" for item in sight.items), "track line"),
        (sum(item.sort == "text" for item in sight.items), "legend"),
    )
    said = [f"1 {word}" if number == 1 else counted(number, word) for number, word in counts if number]
    side = SIDES[sight.camera.behind].format(sight.panel.name)
    return f"{' and '.join(said)} selected" if said else f"{side}, nothing selected"


def _one(sight: FaceSight, parts: list[str], wires: list[str]) -> str:
    if wires:
        return wire_words(sight.whole, wires[0])
    if parts:
        part = sight.plan.parts[parts[0]]
        place = _place(sight, to_face(sight.panel, (part.x_mm, part.y_mm)))
        wrong = misfit_words(sight, parts)
        return f"{part_words(sight.whole, part.id)}, {place}{f'. {wrong}' if wrong else ''}"
    return item_words(sight, next(iter(sight.items)))


def item_words(sight: FaceSight, item: FaceItem) -> str:
    """Return words for a track line or a legend."""
    if item.sort == "line":
        line = sight.panel.lines[item.number]
        return f"Track line {item.number + 1}, {_length(sight, line.width_mm)} wide, {line.colour}"
    text = sight.panel.texts[item.number]
    return f"Legend “{text.text}”, {_place(sight, (text.x_mm, text.y_mm))}"


def _place(sight: FaceSight, at: tuple[float, float]) -> str:
    return f"{_length(sight, at[0])} from the left, {_length(sight, at[1])} from the top"


def _length(sight: FaceSight, mm: float) -> str:
    return length_words(mm, us=sight.plan.habits.units == "us")
