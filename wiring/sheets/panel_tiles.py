"""The face of a panel at full size on sheets that overlap: those that hold a hole, and what lies between."""

from wiring.drawings.plan_clip import Box
from wiring.pictures.picture import Anchor, Item, Path, Pen, Words
from wiring.pictures.transform import moved
from wiring.sheets.panel_template import Face, face_items
from wiring.sheets.paper import Sheet
from wiring.sheets.section import Leaf, body_size

HEAD_MM = 9.0
_OVERLAP_MM = 10.0
EDGE = Pen("quiet", 0.2, (2.0, 1.0))
_AIR_MM = 2.0  # round the face on its sheet

Cell = tuple[int, int]  # row, column


def template_mark(panel_id: str) -> str:
    """Return the name of the mark on the first sheet that shows a panel's face at full size."""
    return f"panel template {panel_id}"


def face_tiles(face: Face, page: Sheet) -> list[Leaf]:
    """Return the sheets of one face, row by row; one that only shows a bare edge is not printed."""
    left, top, _, _ = page.body
    width, height = body_size(page)
    room = (width, height - HEAD_MM)
    wide = face.area.right - face.area.left + 2 * _AIR_MM
    high = face.area.bottom - face.area.top + 2 * _AIR_MM
    across, down = _count(wide, room[0]), _count(high, room[1])
    clips = {(r, c): _clip(r, c, room) for r in range(down) for c in range(across)}
    printed = _printed(face, clips)
    leaves: list[Leaf] = []
    for row, column in printed:
        clip = clips[row, column]
        place = f", sheet {'ABCDEFGH'[row % 8]}{column + 1}" if across * down > 1 else ""
        says = f"{face.area.name}, front, full size{place}"
        below = row + 1 < down and (row + 1, column) not in printed
        told = f"{says}; below this is no hole" if below else says
        head = Words(told, (left, top + 4.6), 4.6, weight="semibold")
        marks = _overlaps(room, right=(row, column + 1) in printed, below=(row + 1, column) in printed)
        drawn = (*moved(face_items(face, clip), (-clip[0], -clip[1])), *marks)
        first = (Anchor(template_mark(face.panel.id), (left, top)),) if not leaves else ()
        items = (*first, head, *moved(drawn, (left, top + HEAD_MM)))
        leaves.append(Leaf(page, items, f"{face.area.name}, template", "1:1", bookmark=says))
    return leaves


def _clip(row: int, column: int, room: tuple[float, float]) -> Box:
    x = column * (room[0] - _OVERLAP_MM) - _AIR_MM
    y = row * (room[1] - _OVERLAP_MM) - _AIR_MM
    return x, y, x + room[0], y + room[1]


def _printed(face: Face, clips: dict[Cell, Box]) -> list[Cell]:
    """Return the cells with a hole, and those between two of a row, without which these cannot be joined."""
    drilled = {
        cell
        for cell, (x1, y1, x2, y2) in clips.items()
        if any(x1 <= h.x_mm <= x2 and y1 <= h.y_mm <= y2 for h in face.holes)
    }
    columns = {row: [c for r, c in drilled if r == row] for row, _ in drilled}
    return [(r, c) for r, c in clips if r in columns and min(columns[r]) <= c <= max(columns[r])]


def _overlaps(room: tuple[float, float], *, right: bool, below: bool) -> list[Item]:
    """Return the lines the edge of the sheet to the right, and of the one below, is laid on."""
    lines: list[Item] = []
    if right:
        x = room[0] - _OVERLAP_MM
        lines.append(Path(((x, 0.0), (x, room[1])), EDGE))
    if below:
        y = room[1] - _OVERLAP_MM
        lines.append(Path(((0.0, y), (room[0], y)), EDGE))
    return lines


def _count(length: float, room: float) -> int:
    """Return how many overlapping stretches of a room cover a length."""
    return 1 if length <= room else 1 + int(-(-(length - room) // (room - _OVERLAP_MM)))
