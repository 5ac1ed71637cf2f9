"""The circuit drawings as sheets: one to a sheet, at full size or larger where there is room."""

from collections.abc import Collection

from wiring.findings.situation import Situation
from wiring.pictures.metrics import fitted, wrapped
from wiring.pictures.picture import Anchor, Item, Words
from wiring.pictures.transform import moved, scaled
from wiring.plan.designations import part_label
from wiring.plan.names import WireId
from wiring.sheets.paper import sheet
from wiring.sheets.section import Leaf, Section, body_size

_HEAD_MM = 9.0
_LARGEST = 1.3  # small drawings are enlarged this much at most, so that sheets look alike


def drawing_sections(
    situation: Situation, paper: str, wires: Collection[WireId] | None = None
) -> tuple[Section, ...]:
    """Return the circuit drawings, or those that show one of some wires; nothing without a fed circuit."""
    from wiring.drawings.circuit_drawing import circuit_drawings, not_fed

    plan, kinds = situation.plan, situation.kinds
    drawings = circuit_drawings(plan, kinds, situation.positions, situation.figures)
    if wires is not None:
        drawings = tuple(d for d in drawings if not set(wires).isdisjoint(d.wires))
    if not drawings:
        return ()
    page = sheet(paper, landscape=True)
    left, top, _, _ = page.body
    width, height = body_size(page)
    leaves: list[Leaf] = []
    for number, drawing in enumerate(drawings):
        picture = drawing.picture
        factor = min(_LARGEST, width / picture.width_mm, (height - _HEAD_MM) / picture.height_mm)
        at = (left - picture.left_mm * factor, top + _HEAD_MM - picture.top_mm * factor)
        title = fitted(drawing.title, width, 4.6, "semibold")
        head: list[Item] = [Words(title, (left, top + 4.6), 4.6, weight="semibold")]
        if number == 0:
            head.append(Anchor("circuits", (left, top)))
        leaves.append(
            Leaf(
                page,
                (*head, *moved(scaled(picture.items, factor), at)),
                "Circuit drawing",
            )
        )
    loose = not_fed(plan, kinds, situation.figures) if wires is None else ()
    if loose:
        names = ", ".join(part_label(plan, p) for p in loose)
        leaves[-1] = _with_foot(leaves[-1], f"Not fed by any supply, so in no drawing: {names}.")
    return (Section("Circuit drawings", "circuits", tuple(leaves)),)


def _with_foot(leaf: Leaf, text: str) -> Leaf:
    """Return the sheet with a few lines of text to the left of its title block."""
    left, _, _, bottom = leaf.sheet.frame
    room = leaf.sheet.title_block[0] - left - 10.0
    lines = wrapped(text, room, 2.6)[:4]
    first = bottom - 18.0
    words = tuple(Words(line, (left + 5.0, first + i * 4.0), 2.6, "quiet") for i, line in enumerate(lines))
    return leaf._replace(items=(*leaf.items, *words))
