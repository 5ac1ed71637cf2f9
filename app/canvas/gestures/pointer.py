"""What a gesture is told and what it shows: pointer events in, previews out, one act at the end.

A gesture is a generator. It is started with `next`, sent one Pointer after the other, yields a Preview each
time, and returns an Act, or None when nothing is to be done. Closing it (Escape, focus loss, another tool)
leaves no trace, because nothing but its return value ever changes the plan.
"""

from collections.abc import Generator, Mapping
from typing import Literal, NamedTuple

from app.canvas.geometry import Box, Geometry
from app.canvas.gestures.snapping import on_grid
from app.canvas.hits.hit import Hit
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.plan.joist import Joist
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

DRAG_FROM_PX = 4.0  # a press that travels less is a click


Phase = Literal["press", "move", "release", "double", "key"]
GestureKey = Literal["", "turn", "turn back", "back", "flip", "enter"]


class Pointer(NamedTuple):
    """One event of mouse, pen or keyboard, in plan millimetres."""

    phase: Phase
    at: Point
    hit: Hit
    adds: bool = False  # Shift: add to what is selected
    free: bool = False  # Ctrl: no snapping
    key: GestureKey = ""
    text: str = ""  # a character typed while the gesture reads what is typed
    choice: int = -1  # index of what was chosen in the strip of choices


class Around(NamedTuple):
    """What a gesture may look at; a snapshot taken when it starts."""

    plan: Plan
    kinds: Mapping[str, Kind]
    geometry: Geometry
    selected: frozenset[str] = frozenset()
    ground: str = ""  # what of the ground is selected, when nothing else is
    positions: Mapping[PartId, str] = {}
    scale: float = 1.0  # pixels per millimetre
    grid_mm: float = 5.0
    grid_from: Point = (0.0, 0.0)  # a place that lies on the grid
    wire_size: str = "22 AWG"
    wire_colour: str = "BK"  # "" for the one its circuit has
    grounds: frozenset[str] = frozenset()  # all of the ground that is selected

    def on_grid(self, at: Point) -> Point:
        """Return the nearest point of the grid."""
        x, y = on_grid((at[0] - self.grid_from[0], at[1] - self.grid_from[1]), self.grid_mm)
        return x + self.grid_from[0], y + self.grid_from[1]


class Preview(NamedTuple):
    """What is shown while a gesture runs; it changes nothing."""

    plan: Plan | None = None  # how the plan would be, at least what is touched of it
    touched: frozenset[str] = frozenset()  # ids that differ in it
    ghost: Part | None = None  # a part not yet placed
    turn_deg: float = 0.0  # by which a set in the hand is turned
    line: tuple[Point, ...] = ()  # a wire not yet connected
    look: tuple[str, str] | None = None  # its size and colour, where they are not those in hand
    landing: TerminalRef | None = None  # where it would end
    lands: bool = False  # a wire is being pulled: terminals stand out
    band: tuple[Point, Point] | None = None
    frame: Box | None = None  # a scene or panel as it would lie
    outline: tuple[Point, ...] = ()  # a board or track not yet finished
    bar: Joist | None = None  # a joist as it would lie
    bars: tuple[Joist, ...] = ()  # joists that are moved along with others
    guides: tuple[tuple[Point, Point], ...] = ()  # lines that show what the place is in line with
    held: tuple[PartId, str] | None = None  # a push button held down, and its position meanwhile
    hint: str = ""
    types: bool = False  # the gesture reads characters that are typed
    begins: str = ""  # those that begin what it reads, while nothing is typed; "" for any
    chosen: int = -1  # index of the choice that is shown, where the gesture offers some
    refused: str = ""  # why that choice cannot be carried out
    cursor: Literal["", "grab", "cross", "turn", "point", "no"] = ""

    @property
    def begun(self) -> bool:
        """Whether something is drawn, so that Escape leaves that and not yet the tool."""
        drawn = (self.line, self.plan, self.held, self.band, self.frame, self.outline, self.bar, self.bars)
        return any(drawn)


class Do(NamedTuple):
    """Carry out an edit; with `pick_new` what it adds is selected, else what is to be picked, if anything."""

    edit: Edit
    pick_new: bool = False
    pick: frozenset[str] = frozenset()


class Pick(NamedTuple):
    """Select exactly these, and one or several things of the ground."""

    ids: frozenset[str]
    ground: str = ""
    grounds: frozenset[str] = frozenset()  # where there are several, or some beside parts and wires


class Throw(NamedTuple):
    """Put a switch into a position, live, and select it."""

    part: PartId
    position: str


Act = Do | Pick | Throw
Gesture = Generator[Preview, Pointer, Act | None]


def travelled(around: Around, a: Point, b: Point) -> bool:
    """Return whether the pointer has gone far enough from a to b to mean a drag."""
    return max(abs(a[0] - b[0]), abs(a[1] - b[1])) * around.scale >= DRAG_FROM_PX
