"""The words right of an upright symbol: designation, values, other poles, and where an idle throw leads."""

from wiring.drawings.circuit_facts import (
    DESIGNATION_MM,
    REFERENCE_ROOM_MM,
    SMALL_MM,
    TEXT_MM,
    Facts,
)
from wiring.drawings.circuit_pieces import Piece
from wiring.drawings.circuit_places import place_of
from wiring.drawings.circuit_poles import other_poles, pole_line
from wiring.drawings.marks import net_idle, wire_mark
from wiring.drawings.symbols.all_symbols import LENGTH_MM, THROW_ALONG_MM, THROW_ASIDE_MM
from wiring.pictures.metrics import cap_mm, width_mm
from wiring.pictures.picture import Anchor, Item, Path, Pen, Words

LINE_MM = 2.9  # from one line of words to the next
BESIDE_MM = 1.2  # from a line or symbol to the words beside it
_LEAD = Pen("ink", 0.25)


def words_beside(
    facts: Facts, piece: Piece, right_mm: float, down: bool, y: float, items: list[Item]
) -> float:
    """Add the words right of a symbol that starts at height y and return where they end."""
    number = max(width_mm(name, SMALL_MM) for name in (piece.start, piece.end))
    x = max(right_mm, 0.8 + number) + BESIDE_MM
    row = y + 3.6
    throw_y = y + (THROW_ALONG_MM if down else LENGTH_MM - THROW_ALONG_MM)
    if piece.idle and down:
        row = _throw(facts, piece, throw_y, items)
    items.append(Words(facts.designation(piece), (x, row), DESIGNATION_MM, weight="semibold", stand="top"))
    row += LINE_MM + cap_mm(DESIGNATION_MM) - cap_mm(TEXT_MM)
    lines = facts.words(piece)
    room = 1 if piece.idle and not down else len(lines)
    row = _lines(lines[:room], x, row, items)
    if piece.idle and not down:
        row = max(_throw(facts, piece, throw_y, items), row)
        row = _lines(lines[room:], x, row, items)
    for other in other_poles(facts, piece):
        items.extend(pole_line(other, x, row))
        row += LINE_MM
    return row - LINE_MM + cap_mm(TEXT_MM) + 1.5  # clear of a joint or a flag below


def _lines(lines: list[tuple[str, bool]], x: float, row: float, items: list[Item]) -> float:
    for words, quiet in lines:
        items.append(Words(words, (x, row), TEXT_MM, "quiet" if quiet else "ink", stand="top"))
        row += LINE_MM
    return row


def _throw(facts: Facts, piece: Piece, y: float, items: list[Item]) -> float:
    """Add the lead of the idle throw and where it goes; return where the next line of words may start."""
    words = facts.idle_words(piece)
    x = THROW_ASIDE_MM + 0.56
    told = [step.wire for step in facts.steps(piece.idle_ref) if step.wire is not None]
    drawn: list[Item] = []
    if len(words) > 1 or "→" in words[0]:
        items.append(Path(((x, y), (x + 1.6, y)), _LEAD))
    for row, text in enumerate(words):
        drawn.append(Words(text, (x + 2.2, y + row * LINE_MM), SMALL_MM, "quiet", stand="middle"))
    items.extend(drawn)
    for wire in told:
        items.extend((Anchor(wire_mark(wire.id), (x, y)), place_of(wire.id, drawn)))
    last = y + (len(words) - 1) * LINE_MM
    if facts.leads_on(piece):
        past = x + 2.2 + width_mm(words[-1], SMALL_MM) + 0.9
        items.append(Anchor(net_idle(facts.idle_target(piece)), (past, last)))
        items.append(Anchor("", (past + REFERENCE_ROOM_MM, last)))
    return last + 1.9
