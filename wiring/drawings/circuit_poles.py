"""Pieces of one part that are drawn apart: which others there are, told beside each and referred to.

The first piece of a part, a coil or a first pole, names all the others; each of these names the first.
"""

from collections.abc import Mapping, Sequence

from wiring.drawings.circuit_facts import REFERENCE_ROOM_MM, SMALL_MM, Facts
from wiring.drawings.circuit_pieces import INNER, Piece
from wiring.drawings.marks import pole_at, pole_see
from wiring.pictures.metrics import cap_mm, width_mm
from wiring.pictures.picture import Anchor, Item, Words
from wiring.plan.names import PartId

_SPACE_MM = 0.9


def pole_name(piece: Piece) -> str:
    """Return the terminal numbers of a piece: ``13-14``, ``11-12-14``, ``+ / -``."""
    names = [n for n in (piece.start, piece.end, piece.idle) if n and n != INNER]
    return ("-" if all(n.isalnum() for n in names) else " / ").join(sorted(names))


def poles_of(pieces: Sequence[Piece]) -> Mapping[PartId, tuple[Piece, ...]]:
    """Return the pieces of each part that has several; coils that meet inside a part are one."""
    found: dict[PartId, list[Piece]] = {}
    for piece in pieces:
        if INNER not in (piece.start, piece.end):
            found.setdefault(piece.part, []).append(piece)
    return {part: tuple(several) for part, several in found.items() if len(several) > 1}


def other_poles(facts: Facts, piece: Piece) -> tuple[Piece, ...]:
    """Return the pieces that are named beside a piece."""
    poles = facts.poles.get(piece.part, ())
    if not poles or piece not in poles:
        return ()
    return poles[1:] if piece is poles[0] or piece == poles[0] else poles[:1]


def pole_words(piece: Piece) -> str:
    """Return what is written before the place of a piece."""
    return f"see {pole_name(piece)}"


def pole_room_mm(facts: Facts, piece: Piece) -> float:
    """Return how wide the lines that name the other pieces are."""
    told = [width_mm(pole_words(other), SMALL_MM) for other in other_poles(facts, piece)]
    return max(told) + _SPACE_MM + REFERENCE_ROOM_MM if told else 0.0


def pole_line(other: Piece, x: float, top: float) -> list[Item]:
    """Return the line that names another piece, from x on, and the mark where its place is written."""
    words = pole_words(other)
    y = top + cap_mm(SMALL_MM) / 2
    past = x + width_mm(words, SMALL_MM) + _SPACE_MM
    return [
        Words(words, (x, top), SMALL_MM, "quiet", stand="top"),
        Anchor(pole_see(other.part, pole_name(other)), (past, y)),
        Anchor("", (past + REFERENCE_ROOM_MM, y)),
    ]


def pole_mark(facts: Facts, piece: Piece, at: tuple[float, float]) -> list[Item]:
    """Return the mark by which a piece that is drawn apart is found; none for a part in one piece."""
    return [Anchor(pole_at(piece.part, pole_name(piece)), at)] if piece.part in facts.poles else []
