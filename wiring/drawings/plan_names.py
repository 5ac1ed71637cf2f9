"""The words on a plan view: names of places, designations of parts, labels at the ends of wires."""

from collections.abc import Iterable, Mapping, Sequence
from functools import partial
from typing import NamedTuple

from wiring.drawings.panel_on_plan import painted
from wiring.drawings.plan_areas import panel_areas
from wiring.drawings.plan_clip import Piece, overlap_of, pieces
from wiring.drawings.plan_fit import Box, Fit, around
from wiring.drawings.plan_ground import outlines, place_names
from wiring.drawings.plan_labels import labelled
from wiring.drawings.plan_leaders import led_label, spots_along, spots_round
from wiring.drawings.plan_parts import Placed
from wiring.drawings.plan_room import Room
from wiring.drawings.plan_wires import Run
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Item, Point, Words
from wiring.plan.designations import part_label, terminal_label
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan

PART_MM, WIRE_MM = 3.4, 3.2  # 9 points at least: read lying under a layout
_PART_REACHES = (0.4, 2.0, 4.0, 7.0, 11.0, 16.0, 22.0)
# more labels than this are not led away from what they name: their lines would hide the plan
_MOST_LED = 150
_WIRE_REACHES = (0.3, 1.8, 4.0, 7.0, 11.0)


# words and their colour, where they had best stand, the wire from that end inward
_EndText = tuple[str, str, Box, Sequence[Point]]


class Named(NamedTuple):
    """The words, and how many parts and wire ends found no room for theirs."""

    items: tuple[Item, ...]
    parts_missing: int
    wires_missing: int


def named(
    plan: Plan,
    fit: Fit,
    room: Room,
    clip: Box,
    placed: Mapping[PartId, Placed],
    drawn: Iterable[tuple[Run, Piece]],
    *,
    wire_labels: bool,
    part_mm: float = PART_MM,
    wire_mm: float = WIRE_MM,
) -> Named:
    """Return all words of a view, placed so that none lies on a sign or another word."""
    drawn = tuple(drawn)
    _mark(plan, fit, room, clip, placed, drawn)
    places = place_names(plan, fit, room, clip)
    parts, parts_missing = _part_names(plan, room, placed, part_mm)
    ends, ends_missing = _wire_names(room, _ends(plan, drawn), wire_mm) if wire_labels else ([], 0)
    return Named((*places, *parts, *ends), parts_missing, ends_missing)


def _part_names(
    plan: Plan, room: Room, placed: Mapping[PartId, Placed], size_mm: float
) -> tuple[list[Item], int]:
    """Return the names of parts, and how many found no room."""
    items: list[Item] = []
    unnamed: list[PartId] = []
    beside = partial(labelled, reaches_mm=_PART_REACHES, semibold=True, over_all=True)
    for part_id, spot in placed.items():
        found = beside(room, part_label(plan, part_id), spot.box, size_mm)
        items += found
        if not found:
            unnamed.append(part_id)
    if len(unnamed) > _MOST_LED:
        return items, len(unnamed)
    missing = 0
    for part_id in unnamed:
        name, around = part_label(plan, part_id), spots_round(placed[part_id].box)
        found = led_label(room, name, around, size_mm, "ink", semibold=True)
        items += found
        missing += not found
    return items, missing


def _wire_names(room: Room, ends: Sequence[_EndText], size_mm: float) -> tuple[list[Item], int]:
    """Return the words at ends of wires, and how many found no room."""
    items: list[Item] = []
    crowded: list[tuple[str, str, Sequence[Point]]] = []
    for text, colour, at, wire in ends:
        found = labelled(room, text, at, size_mm, reaches_mm=_WIRE_REACHES, colour=colour)
        items += found
        if not found:
            crowded.append((text, colour, wire))
    if len(crowded) > 2 * _MOST_LED:
        return items, len(crowded)
    missing = 0
    for text, colour, wire in crowded:  # last, when all that has a place beside its wire stands there
        found = led_label(room, text, spots_along(wire), size_mm, colour)
        items += found
        missing += not found
    return items, missing


def _mark(
    plan: Plan,
    fit: Fit,
    room: Room,
    clip: Box,
    placed: Mapping[PartId, Placed],
    drawn: tuple[tuple[Run, Piece], ...],
) -> None:
    """Mark what words must not lie on, and what they had better not."""
    for spot in placed.values():
        room.take(spot.box)
    for panel, area in zip(plan.panels.values(), panel_areas(plan), strict=True):
        if overlap_of(around((fit.at(area[1:3]), fit.at(area[3:]))), clip) is None:
            continue
        for item in painted(panel, fit, clip):
            if isinstance(item, Words):  # legends on its face, that lie under the wiring
                room.take(words_box(item))
    for _, piece in drawn:
        room.draw(piece.points)
    for line in outlines(plan, fit):
        for piece in pieces(line, clip):
            room.draw(piece.points)


def _ends(plan: Plan, drawn: tuple[tuple[Run, Piece], ...]) -> list[_EndText]:
    """Return what is written at each end of each wire, the ends on terminals first."""
    own: list[_EndText] = []
    cut: list[_EndText] = []
    for run, piece in drawn:
        if not (piece.from_start or piece.to_end):
            continue  # it only passes through
        text = f"{run.wire.label} {run.wire.colour}"
        for inward, whole, ref in (
            (piece.points, piece.from_start, run.wire.start),
            (piece.points[::-1], piece.to_end, run.wire.end),
        ):
            near = _near_end(inward[0], inward[1])
            if whole:
                own.append((text, "ink", near, inward))
            else:
                cut.append((f"{run.wire.label} to {_label(plan, ref)}", "quiet", near, inward))
    return [*own, *cut]


def _label(plan: Plan, ref: TerminalRef) -> str:
    return terminal_label(plan, ref) if ref.part in plan.parts else ref.terminal


def _near_end(tip: Point, inner: Point) -> Box:
    """Return a small box on the wire, a few millimetres in from its end, that its label stands beside."""
    dx, dy = inner[0] - tip[0], inner[1] - tip[1]
    size = max((dx * dx + dy * dy) ** 0.5, 1e-9)
    far = min(5.0, size / 2)
    x, y = tip[0] + dx / size * far, tip[1] + dy / size * far
    return x - 0.5, y - 0.5, x + 0.5, y + 0.5
