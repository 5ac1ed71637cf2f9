"""What a gesture on the bench is told and what it shows; as on the plan, but in millimetres of the face."""

from collections.abc import Generator, Mapping
from typing import Literal, NamedTuple

from app.bench.bench import FaceItem, Pencil
from app.bench.face_hit import FaceHit
from app.bench.face_sight import FaceSight
from app.canvas.gestures.pointer import Around, GestureKey, Throw
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.panel_spacing import spacing_of
from wiring.plan.names import TerminalRef
from wiring.plan.panel import Panel
from wiring.plan.panel_places import on_spacing
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

DRAG_FROM_PX = 4.0


class FacePointer(NamedTuple):
    """One event of mouse or keyboard."""

    phase: Literal["press", "move", "release", "double", "key"]
    at: Point
    hit: FaceHit
    adds: bool = False  # Shift
    free: bool = False  # Ctrl: off the spacing
    key: GestureKey = ""
    text: str = ""  # a character typed while the gesture reads what is typed


class FaceAround(NamedTuple):
    """What a gesture may look at; a snapshot taken when it starts."""

    sight: FaceSight
    pencil: Pencil
    whole: Around  # what a gesture on the plan would look at, its grid that of the face

    @property
    def plan(self) -> Plan:
        """The plan as it is."""
        return self.sight.plan

    @property
    def panel(self) -> Panel:
        """The panel on the bench."""
        return self.sight.panel

    @property
    def kinds(self) -> Mapping[str, Kind]:
        """The catalogue."""
        return self.sight.kinds

    @property
    def items(self) -> tuple[FaceItem, ...]:
        """Every track line and legend of the face."""
        lines, texts = range(len(self.panel.lines)), range(len(self.panel.texts))
        return *(FaceItem("line", i) for i in lines), *(FaceItem("text", i) for i in texts)

    def place(self, pointer: FacePointer) -> Point:
        """Return where the pointer means: on the spacing unless it is free."""
        return pointer.at if pointer.free else on_spacing(pointer.at, spacing_of(self.plan, self.panel))

    def travelled(self, a: Point, b: Point) -> bool:
        """Return whether the pointer has gone far enough to mean a drag."""
        return max(abs(a[0] - b[0]), abs(a[1] - b[1])) * self.sight.camera.scale >= DRAG_FROM_PX


class FacePreview(NamedTuple):
    """What is shown while a gesture runs; it changes nothing."""

    plan: Plan | None = None  # how the plan would be
    ghost: Part | None = None  # a part not yet placed, in plan mm
    outline: tuple[Point, ...] = ()  # a track line not yet finished
    band: tuple[Point, Point] | None = None
    line: tuple[Point, ...] = ()  # a wire not yet connected
    look: tuple[str, str] | None = None  # its size and colour, where they are not those in hand
    landing: TerminalRef | None = None  # where it would end
    lands: bool = False  # a wire is being pulled: terminals stand out
    held: tuple[str, str] | None = None  # a push button held down, and its position meanwhile
    hint: str = ""
    types: bool = False  # the gesture reads characters that are typed
    cursor: Literal["", "grab", "cross", "point", "no"] = ""

    @property
    def begun(self) -> bool:
        """Whether something is drawn, so that Escape leaves that and not yet the tool."""
        return bool(self.plan or self.band or self.held or self.line or len(self.outline) > 1)


class FaceDo(NamedTuple):
    """Carry out an edit; with `pick_new` what it adds is chosen."""

    edit: Edit
    pick_new: bool = False


class FacePick(NamedTuple):
    """Select exactly these parts and wires, and choose exactly these lines and legends."""

    ids: frozenset[str] = frozenset()
    items: frozenset[FaceItem] = frozenset()


class FaceWrite(NamedTuple):
    """Let a legend be typed at a place: a new one, or the one of that index."""

    at: Point
    number: int = -1


FaceAct = FaceDo | FacePick | FaceWrite | Throw
FaceGesture = Generator[FacePreview, FacePointer, FaceAct | None]
