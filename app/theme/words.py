"""How large the words of the window are: one factor over the sizes it was drawn with."""

LEAST, MOST = 1.0, 1.6
STEPS = (1.0, 1.1, 1.25, 1.4, 1.6)
LINE_PX = 16.0  # height of a line of words at factor 1

_worn = LEAST


def factor() -> float:
    """Return the factor words have now."""
    return _worn


def wear_factor(chosen: float) -> None:
    """Write at that factor from now on, within what the window has room for."""
    global _worn
    _worn = min(max(chosen, LEAST), MOST)


def scaled(px: float) -> int:
    """Return a size of letters, or a width that words need, at the factor of now; in pixels."""
    return round(px * _worn)


def softly(px: float) -> int:
    """Return a width that grows half as much as the words, which may be broken into lines; in pixels."""
    return round(px * (1.0 + _worn) / 2.0)


def lined(px: float, lines: float = 1.0) -> int:
    """Return the height of what holds so many lines of words: the air about them stays; in pixels."""
    return round(px + lines * LINE_PX * (_worn - 1.0))


def next_step(now: float, own: float, *, up: bool) -> float:
    """Return the next larger or smaller factor; `own`, that of the desktop, is a step too."""
    steps = sorted({*STEPS, own})
    beyond = [s for s in steps if (s > now + 0.02 if up else s < now - 0.02)]
    if not beyond:
        return now
    return beyond[0] if up else beyond[-1]
