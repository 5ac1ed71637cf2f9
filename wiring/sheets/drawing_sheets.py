"""The circuit drawings as sheets, at full size or larger where there is room; small ones share a sheet."""

from collections.abc import Collection, Sequence

from wiring.findings.situation import Situation
from wiring.pictures.metrics import fitted, wrapped
from wiring.pictures.picture import Anchor, Item, Picture, Words
from wiring.pictures.transform import moved, scaled
from wiring.plan.designations import part_label
from wiring.plan.names import WireId
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.section import Leaf, Section, body_size

_HEAD_MM = 9.0
_BETWEEN_MM = 6.0  # from one drawing to the title of the next on the same sheet
_TITLE_MM = 4.6
_LARGEST = 1.5  # small drawings are enlarged this much at most, so that sheets look alike
_ENLARGED = 1.25  # on paper that has more room than a drawing needs
_WORTH = 1.15  # two drawings share a sheet where neither would be this much larger by itself


def drawing_sections(
    situation: Situation, paper: str, wires: Collection[WireId] | None = None, symbols: str | None = None
) -> tuple[Section, ...]:
    """Return the circuit drawings, or those that show one of some wires; nothing without a fed circuit.

    `symbols` is "iec" or "ieee", the plan's own unless told.
    """
    from wiring.drawings.circuit_drawing import circuit_drawings, not_fed

    plan, kinds = situation.plan, situation.kinds
    page = sheet(paper, landscape=True)
    room = _room(page)
    drawings = circuit_drawings(plan, kinds, situation.positions, situation.figures, symbols, room)
    if wires is not None:
        drawings = tuple(d for d in drawings if not set(wires).isdisjoint(d.wires))
    if not drawings:
        return ()
    leaves = [_leaf(page, some) for some in _shared_out(page, [d.picture for d in drawings])]
    left, top, _, _ = page.body
    leaves[0] = leaves[0]._replace(items=(Anchor("circuits", (left, top)), *leaves[0].items))
    loose = not_fed(plan, kinds, situation.figures) if wires is None else ()
    if loose:
        names = ", ".join(part_label(plan, p) for p in loose)
        leaves[-1] = _with_foot(leaves[-1], f"Not fed by any supply, so in no drawing: {names}.")
    return (Section("Circuit drawings", "circuits", tuple(leaves)),)


def _room(page: Sheet) -> tuple[float, float]:
    """Return how large a drawing is to be: on large paper it holds more, and is enlarged as well."""
    from wiring.drawings.circuit_drawing import MARGIN_MM, SHEET_MM

    width, height = body_size(page)
    across, down = width - 2 * MARGIN_MM, height - _HEAD_MM - 2 * MARGIN_MM
    return max(SHEET_MM[0], across / _ENLARGED), max(SHEET_MM[1], down / _ENLARGED)


def _shared_out(page: Sheet, pictures: Sequence[Picture]) -> list[list[Picture]]:
    """Return the drawings sheet by sheet, in order: small ones share one where this costs them no size."""
    sheets: list[list[Picture]] = []
    for picture in pictures:
        longer = [*sheets[-1], picture] if sheets else []
        alone = min((_factor(page, [p]) for p in longer), default=0.0)
        if longer and _factor(page, longer) * _WORTH >= alone and _factor(page, longer) >= 1.0:
            sheets[-1] = longer
        else:
            sheets.append([picture])
    return sheets


def _factor(page: Sheet, pictures: Sequence[Picture]) -> float:
    """Return how much drawings one above the other are enlarged, or made smaller, to fill a sheet."""
    width, height = body_size(page)
    heads = _HEAD_MM * len(pictures) + _BETWEEN_MM * (len(pictures) - 1)
    room = (height - heads) / sum(p.height_mm for p in pictures)
    return min(_LARGEST, width / max(p.width_mm for p in pictures), room)


def _leaf(page: Sheet, pictures: Sequence[Picture]) -> Leaf:
    left, top, _, _ = page.body
    width, _ = body_size(page)
    factor = _factor(page, pictures)
    items: list[Item] = []
    for picture in pictures:
        title = fitted(picture.title, width, _TITLE_MM, "semibold")
        items.append(Words(title, (left, top + _TITLE_MM), _TITLE_MM, weight="semibold"))
        top += _HEAD_MM
        at = (left - picture.left_mm * factor, top - picture.top_mm * factor)
        items.extend(moved(scaled(picture.items, factor), at))
        top += picture.height_mm * factor + _BETWEEN_MM
    return Leaf(page, tuple(items), "Circuit drawing", bookmark="; ".join(p.title for p in pictures))


def _with_foot(leaf: Leaf, text: str) -> Leaf:
    """Return the sheet with a few lines of text to the left of its title block."""
    left, _, _, bottom = leaf.sheet.frame
    room = leaf.sheet.title_block[0] - left - 10.0
    lines = wrapped(text, room, 2.6)[:4]
    first = bottom - 18.0
    words = tuple(Words(line, (left + 5.0, first + i * 4.0), 2.6, "quiet") for i, line in enumerate(lines))
    return leaf._replace(items=(*leaf.items, *words))
