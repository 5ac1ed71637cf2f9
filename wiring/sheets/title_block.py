"""The title block of a sheet, with the data fields of ISO 7200."""

from typing import NamedTuple

from wiring.pictures.metrics import fitted, width_mm
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.sheets.paper import Sheet

_RULE = Pen("ink", 0.35)
_CAPTION_MM, _FIELD_MM, _TITLE_MM = 2.5, 3.3, 4.6
_LEAST_MM = 3.0  # of a text that would not go into its field at its full size


class TitleFields(NamedTuple):
    """What the title block says."""

    title: str
    kind: str  # of the document: "Bench list"
    drawn_by: str
    date: str
    number: int | str
    of: int | str  # how many sheets the set has
    scale: str = ""
    side: str = ""  # "ABOVE" or "FROM BELOW" on sheets that show the plan
    revision: str = ""  # the letter of the set, once a set was printed


def title_block(sheet: Sheet, fields: TitleFields) -> tuple[Item, ...]:
    """Return the block with its rules; a text too long for its field is set smaller, then cut."""
    left, top, right, bottom = sheet.title_block
    wide, middle = right - left, (top + bottom) / 2
    items: list[Item] = [
        Path(((left, top), (right, top), (right, bottom), (left, bottom)), Pen("ink", 0.7), "paper", True),
        Path(((left, middle), (right, middle)), _RULE),
    ]
    upper = ((0.62, "Title", fields.title), (0.38, "Document", fields.kind))
    index = ((0.07, "Set", fields.revision),) if fields.revision else ()
    lower = (
        (0.25, "Drawn by", fields.drawn_by or "–"),
        (0.17 - sum(share for share, _, _ in index), "Checked by", ""),
        *index,
        (0.20, "Date", fields.date),
        (0.13, "Scale", fields.scale or "–"),
        (0.11, "Paper", sheet.name),
        (0.14, "Sheet", f"{fields.number} of {fields.of}"),
    )
    for y, row in ((top, upper), (middle, lower)):
        x = left
        for i, (share, caption, text) in enumerate(row):
            cell = share * wide
            if i:
                items.append(Path(((x, y), (x, y + (bottom - top) / 2)), _RULE))
            items += _field(x, y, cell, caption, text, large=y == top)
            x += cell
    return tuple(items)


def _field(x: float, y: float, wide: float, caption: str, text: str, *, large: bool) -> tuple[Item, ...]:
    size = _TITLE_MM if large else _FIELD_MM
    room, needed = wide - 3.0, width_mm(text, size, "semibold")
    if needed > room:
        size = max(size * room / needed * 0.999, _LEAST_MM)
    shown = fitted(text, room, size, "semibold")
    return (
        Words(caption, (x + 1.5, y + 1.2), _CAPTION_MM, "quiet", stand="top"),
        Words(shown, (x + 1.5, y + (8.8 if large else 8.3)), size, weight="semibold"),
    )
