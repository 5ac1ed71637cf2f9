"""The band over a plan view that says from which side it is seen, and the mark of the fascia."""

from wiring.drawings.plan_fit import Box, Fit, around
from wiring.pictures.metrics import fitted, width_mm
from wiring.pictures.picture import NO_PEN, Item, Path, Pen, Point, Words

BAND_MM = 9.0
FASCIA_MM = 7.0
_SIDES = {"left": "right", "right": "left"}


def fascia_side(fascia: str, below: bool) -> str:
    """Return on which side of the drawing the fascia lies; seen from below, left and right swap."""
    side = fascia if fascia in ("top", "bottom", "left", "right") else "bottom"
    return _SIDES.get(side, side) if below else side


# what is said of a view, and what is said where there is little room
_ABOVE = ("Seen standing over the layout and looking down.", "Seen looking down.")
_BELOW = (
    "Seen lying underneath and looking up: left and right are swapped.",
    "Looking up: left and right are swapped.",
    "Left and right are swapped.",
    "Mirrored.",
)
_BEHIND = (
    "The back of the panel, seen from inside the layout: left and right are swapped.",
    "Its back: left and right are swapped.",
    "Left and right are swapped.",
    "Mirrored.",
)


def band(width: float, below: bool, name: str = "", *, behind: bool = False) -> tuple[Item, ...]:
    """Return the band, a box `width` mm wide from (0, 0): solid for the view from below, open for above.

    A view of one area only bears its name. `behind` is for the back of a panel, mirrored like one from below.
    """
    title = "FROM BEHIND" if behind else "FROM BELOW" if below else "ABOVE"
    box_w = width_mm(title, 5.0, "bold") + 8.0
    high = BAND_MM - 1.5
    plate = Path(
        ((0.0, 0.0), (box_w, 0.0), (box_w, high), (0.0, high)),
        Pen("ink", 0.5),
        "ink" if below else "paper",
        closed=True,
    )
    room = width - box_w - (56.0 if name else 28.0)
    choices = [f"{name}. {t}" if name else t for t in (_BEHIND if behind else _BELOW if below else _ABOVE)]
    says = next((c for c in choices if width_mm(c, 3.4) <= room), choices[-1])
    says = fitted(says, room, 3.4)
    return (
        plate,
        Words(title, (4.0, high / 2), 5.0, "paper" if below else "ink", "bold", stand="middle"),
        Words(says, (box_w + 4.0, high / 2), 3.4, "ink", stand="middle"),
        *_eye(width - 12.0, high, below),
        Path(((0.0, high), (width, high)), Pen("ink", 0.5)),
    )


def _eye(x: float, high: float, below: bool) -> tuple[Item, ...]:
    """Return a board seen from its edge, and the arrow of the look on it."""
    board_y = 1.6 if below else high - 1.9
    from_y, to_y = (high - 0.9, board_y + 1.2) if below else (0.7, board_y - 0.6)
    head = 0.9 if to_y > from_y else -0.9
    return (
        Path(
            ((x - 7, board_y), (x + 7, board_y), (x + 7, board_y + 0.8), (x - 7, board_y + 0.8)),
            NO_PEN,
            "quiet",
            True,
        ),
        Path(((x, from_y), (x, to_y - head)), Pen("copper", 0.7)),
        Path(((x - 1.1, to_y - head * 1.6), (x + 1.1, to_y - head * 1.6), (x, to_y)), NO_PEN, "copper", True),
    )


def locator(plan_board: tuple[Point, ...], window: Box, width: float, below: bool) -> tuple[Item, ...]:
    """Return a small outline of the whole board in the band, with the window that is shown filled."""
    if len(plan_board) < 3:
        return ()
    left, top, right, bottom = around((*plan_board, (window[0], window[1]), (window[2], window[3])))
    high, wide = BAND_MM - 2.6, 26.0
    scale = min(wide / max(right - left, 1.0), high / max(bottom - top, 1.0))
    fit = Fit(scale, ((left + right) / 2, (top + bottom) / 2), (width - 36.0, (BAND_MM - 1.5) / 2), below)
    x1, y1, x2, y2 = window
    corners = ((x1, y1), (x2, y1), (x2, y2), (x1, y2))
    return (
        Path(tuple(fit.at(p) for p in corners), NO_PEN, "copper", closed=True),
        Path(tuple(fit.at(p) for p in plan_board), Pen("quiet", 0.3), closed=True),
    )


def fascia_mark(bounds: Box, fit: Fit, fascia: str, *, far: bool = False) -> tuple[Item, ...]:
    """Return the copper line along the fascia's edge of the plan, with its words outside.

    `far` is for a view of one area only, whose edge is not the fascia's own.
    """
    (x1, y1), (x2, y2) = fit.at((bounds[0], bounds[1])), fit.at((bounds[2], bounds[3]))
    left, right, top, bottom = min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2)
    side = fascia_side(fascia, fit.below)
    gap, off = 2.0, 4.4
    pen = Pen("copper", 0.5, (3.0, 2.0)) if far else Pen("copper", 1.2)
    text = "The fascia lies this way" if far else "FASCIA: you stand here"
    middle_x, middle_y = (left + right) / 2, (top + bottom) / 2
    if side in ("top", "bottom"):
        y = bottom + gap if side == "bottom" else top - gap
        at = (middle_x, y + (off - gap if side == "bottom" else gap - off))
        words = Words(text, at, 3.0, "copper", "semibold", "centre", "middle")
        return Path(((left, y), (right, y)), pen), words
    x = right + gap if side == "right" else left - gap
    at = (x + (off - gap if side == "right" else gap - off), middle_y)
    words = Words(
        text, at, 3.0, "copper", "semibold", "centre", "middle", turn_deg=90 if side == "right" else -90
    )
    return Path(((x, top), (x, bottom)), pen), words
