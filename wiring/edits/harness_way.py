"""Where a panel's harness runs: a trunk behind the face, out over one edge, fanned out to the plug."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from typing import Literal, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.laying import Laying
from wiring.edits.square_way import Box
from wiring.plan.panel import Panel
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

Side = Literal["top", "bottom", "left", "right"]
TURNS: Mapping[Side, float] = {"top": 270.0, "bottom": 90.0, "left": 180.0, "right": 0.0}
TRUNK_MM = -10.0  # how far inside the edge the trunk runs
FAN_MM = 12.0  # outside the edge, where the bundle opens towards the ways
PLUG_MM = 44.0  # from the edge to the middle of the plug
BEYOND_MM = 8.0  # the bundle leaves the face this far beyond its outermost wire
STEP_MM, MOST_STEPS, ROWS = 10.0, 40, 3  # how a free place for the plug is sought
LONG = 1.5  # a face this many times as wide as high is left over its upper or lower edge
RISER_MM = 2.4  # nearer than this, two wires side by side look like one


class Frame(NamedTuple):
    """A panel as seen from the edge its wires leave over: along it, and out from it."""

    panel: Panel
    side: Side
    end: float = (
        1.0  # beyond which end of its wires the bundle leaves if it can: 1.0 the last, -1.0 the first
    )

    @property
    def turn_deg(self) -> float:
        """How a plug is turned so that its ways a face the panel."""
        return TURNS[self.side]

    @property
    def span(self) -> tuple[float, float]:
        """Where the edge begins and ends."""
        p = self.panel
        if self.side in ("top", "bottom"):
            return p.x_mm, p.x_mm + p.width_mm
        return p.y_mm, p.y_mm + p.height_mm

    @property
    def depth(self) -> float:
        """How far it is from the edge to the opposite one."""
        return self.panel.height_mm if self.side in ("top", "bottom") else self.panel.width_mm

    def along(self, at: Point) -> float:
        """Return how far along the edge a place of the plan lies."""
        return at[0] if self.side in ("top", "bottom") else at[1]

    def out(self, at: Point) -> float:
        """Return how far outside the edge a place of the plan lies; negative on the face."""
        p = self.panel
        return {
            "top": p.y_mm - at[1],
            "bottom": at[1] - p.y_mm - p.height_mm,
            "left": p.x_mm - at[0],
            "right": at[0] - p.x_mm - p.width_mm,
        }[self.side]

    def place(self, along: float, out: float) -> Point:
        """Return the place of the plan that lies so far along the edge and out of it."""
        p = self.panel
        return {
            "top": (along, p.y_mm - out),
            "bottom": (along, p.y_mm + p.height_mm + out),
            "left": (p.x_mm - out, along),
            "right": (p.x_mm + p.width_mm + out, along),
        }[self.side]


class Course(NamedTuple):
    """The corners of the harness, and the bends of each of its wires from the panel to the plug."""

    wireway: tuple[Point, ...]
    bends: tuple[tuple[Point, ...], ...]


def frame_of(
    plan: Plan, panel: Panel, wires: Iterable[Wire], inside: Collection[str], kinds: Mapping[str, Kind]
) -> Frame:
    """Return the frame of the long edge, or of any on a squarish face, that most far ends lie beyond.

    Over a long edge the trunk runs clear of the rows of parts; where as many lie beyond both, their middle
    decides.
    """
    far = [plan.parts[r.part] for w in wires for r in (w.start, w.end) if r.part not in inside]
    x = sum(p.x_mm for p in far) / len(far) - panel.x_mm - panel.width_mm / 2
    y = sum(p.y_mm for p in far) / len(far) - panel.y_mm - panel.height_mm / 2
    wide, high = max(panel.width_mm, 1.0), max(panel.height_mm, 1.0)
    levels = wide >= LONG * high or (high < LONG * wide and abs(y) / high >= abs(x) / wide)
    if levels:
        # a panel's name stands at its upper left, so the right end is the usual one
        up = _most_before([p.y_mm for p in far], panel.y_mm, panel.height_mm, y)
        return Frame(panel, "top" if up else "bottom", -1.0 if x < -wide / 4 else 1.0)
    left = _most_before([p.x_mm for p in far], panel.x_mm, panel.width_mm, x)
    return Frame(panel, "left" if left else "right", -1.0 if y < -high / 4 else 1.0)


def _most_before(places: Sequence[float], edge_mm: float, size_mm: float, middle: float) -> bool:
    """Return whether more places lie before a face than behind it, or as many and their middle does."""
    before, behind = (sum(p < edge_mm for p in places), sum(p > edge_mm + size_mm for p in places))
    return before > behind if before != behind else middle < 0


def spot_for(laying: Laying, frame: Frame, kind: Kind, spots: Sequence[float]) -> Point:
    """Return a free place for a plug: beyond the first or the last wire, then farther along and out."""
    half_long = kind.height_mm / 2
    half_wide = max(max(abs(t.x_mm) for t in kind.terminals), kind.width_mm / 2)
    ends = [(max(spots) + BEYOND_MM, 1.0), (min(spots) - BEYOND_MM, -1.0)]
    ends.sort(key=lambda end: end[1] != frame.end)
    for row in range(ROWS):
        out = PLUG_MM + row * 2 * (half_wide + STEP_MM)
        for step in range(MOST_STEPS):
            for along, way in ends:
                middle = along + way * step * STEP_MM
                a = frame.place(middle - half_long - 2, out - half_wide - 2)
                b = frame.place(middle + half_long + 2, out + half_wide + 2)
                box = min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])
                if laying.is_free(box):
                    return frame.place(middle, out)
    return frame.place(ends[0][0], PLUG_MM)


def gathered(
    frame: Frame, starts: Sequence[Point], plug: Point, terminals: Sequence[Point], bodies: Sequence[Box]
) -> Course:
    """Return the course of wires from their terminals over the trunk to where they fan out to a plug.

    Terminals and bodies are those of the panel's parts, which the wires keep clear of.
    """
    exit_at = frame.along(plug)
    risers: list[tuple[float, float]] = []  # along, and how deep it begins
    bends = []
    blocks = [_in_frame(frame, body) for body in bodies]
    for start in starts:
        along, out = frame.along(start), frame.out(start)
        rise = _riser(frame, along, out, risers, terminals, blocks)
        risers.append((rise, out))
        jog = (frame.place(rise, out),) if rise != along else ()
        trunk = (frame.place(rise, TRUNK_MM), frame.place(exit_at, TRUNK_MM), frame.place(exit_at, FAN_MM))
        bends.append((*jog, *trunk))
    reach = [exit_at, *(r for r, _ in risers)]
    # the trunk ends at the exit; wires beyond the exit come back to it along the same line
    far = max(reach, key=lambda s: abs(s - exit_at))
    other = max(
        (s for s in reach if (s - exit_at) * (far - exit_at) < 0),
        default=None,
        key=lambda s: abs(s - exit_at),
    )
    corners = [frame.place(far, TRUNK_MM), frame.place(exit_at, TRUNK_MM), frame.place(exit_at, FAN_MM)]
    if other is not None:
        corners = [frame.place(far, TRUNK_MM), frame.place(other, TRUNK_MM), *corners[1:]]
    return Course(tuple(corners), tuple(bends))


def _riser(
    frame: Frame,
    along: float,
    out: float,
    risers: Sequence[tuple[float, float]],
    terminals: Sequence[Point],
    blocks: Sequence[Box],
) -> float:
    """Return where a wire may rise to the trunk clear of other wires, of terminals and bodies on its way."""
    steps = [0.0, *(sign * 3.0 * k for k in range(1, 9) for sign in (1.0, -1.0))]
    for step in steps:
        here = along + step
        beside = [r for r, _ in risers if abs(r - here) < RISER_MM]
        through = [
            t
            for t in terminals
            if abs(frame.along(t) - here) < RISER_MM and out + 0.5 < frame.out(t) < TRUNK_MM
        ]
        over = [b for b in blocks if b[0] - 1 < here < b[2] + 1 and b[3] > out + 0.5 and b[1] < TRUNK_MM]
        if not beside and not through and not over:
            return here
    return along


def _in_frame(frame: Frame, box: Box) -> Box:
    """Return a box as first and last place along the edge, least and most out of it."""
    a, b = (box[0], box[1]), (box[2], box[3])
    along, out = sorted((frame.along(a), frame.along(b))), sorted((frame.out(a), frame.out(b)))
    return along[0], out[0], along[1], out[1]
