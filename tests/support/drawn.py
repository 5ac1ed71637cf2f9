"""What a drawing must never show: words on words, lines through words, lines that cross or meet unmarked."""

import math
from itertools import pairwise

from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.picture import Disc, Path, Words

NEAR = 0.02
WIDEST_STROKE_MM = 8.6  # of a symbol; a rail is longer


def words_on_words(picture):
    items = [(w, words_box(w)) for w in picture.items if isinstance(w, Words) and w.text.strip()]
    items.sort(key=lambda pair: pair[1][0])
    found = []
    for i, (one, box) in enumerate(items):
        for other, other_box in items[i + 1 :]:
            if other_box[0] >= box[2]:
                break
            if overlap(box, other_box):
                found.append((one.text, other.text, one.at))
    return found


def lines_through_words(picture):
    boxes = [(w, words_box(w)) for w in picture.items if isinstance(w, Words) and w.text.strip()]
    found = []
    for start, end in _strokes(picture):
        low, high = min(start[0], end[0]), max(start[0], end[0])
        for words, box in boxes:
            if low < box[2] and high > box[0] and _enters(start, end, box):
                found.append((words.text, start, end))
    return found


def crossings(picture):
    """Points where a level and an upright conductor cross, or meet without a dot."""
    level, upright = [], []
    for start, end in _conductors(picture):
        if abs(start[1] - end[1]) < NEAR and abs(start[0] - end[0]) > WIDEST_STROKE_MM:
            level.append((start[1], *sorted((start[0], end[0]))))
        elif abs(start[0] - end[0]) < NEAR:
            upright.append((start[0], *sorted((start[1], end[1]))))
    dots = [d.centre for d in picture.items if isinstance(d, Disc) and d.fill in ("ink", "paper")]
    found = []
    for y, left, right in level:
        for x, top, bottom in upright:
            within = left + NEAR < x < right - NEAR and top - NEAR < y < bottom + NEAR
            touches = left - NEAR < x < right + NEAR and top + NEAR < y < bottom - NEAR
            if (within or touches) and not any(math.dist(d, (x, y)) < NEAR for d in dots):
                found.append((x, y))
    return found


def outside(picture):
    """Words that stick out of the picture."""
    left, top = picture.left_mm, picture.top_mm
    right, bottom = left + picture.width_mm, top + picture.height_mm
    boxes = [(w.text, words_box(w)) for w in picture.items if isinstance(w, Words)]
    return [t for t, b in boxes if b[0] < left or b[1] < top or b[2] > right or b[3] > bottom]


def _conductors(picture):
    for item in picture.items:
        if isinstance(item, Path) and len(item.points) == 2 and item.pen.width_mm == 0.25:
            yield item.points


def _strokes(picture):
    for item in picture.items:
        if isinstance(item, Path) and item.pen.width_mm > 0:
            points = (*item.points, item.points[0]) if item.closed else item.points
            yield from pairwise(points)
        elif isinstance(item, Disc):
            ring = [
                (
                    item.centre[0] + item.radius_x_mm * math.cos(a * math.pi / 12),
                    item.centre[1] + item.radius_y_mm * math.sin(a * math.pi / 12),
                )
                for a in range(25)
            ]
            yield from pairwise(ring)


def _enters(start, end, box, margin=0.05):
    """Whether a stroke passes through the inside of a rectangle (Liang and Barsky's clipping)."""
    left, top, right, bottom = box[0] + margin, box[1] + margin, box[2] - margin, box[3] - margin
    dx, dy = end[0] - start[0], end[1] - start[1]
    enter, leave = 0.0, 1.0
    for p, q in (
        (-dx, start[0] - left),
        (dx, right - start[0]),
        (-dy, start[1] - top),
        (dy, bottom - start[1]),
    ):
        if p == 0:
            if q < 0:
                return False
        elif p < 0:
            enter = max(enter, q / p)
        else:
            leave = min(leave, q / p)
    return enter < leave
