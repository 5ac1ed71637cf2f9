"""What the view knows: the plan in arrays, the newest answer, the camera and the colours."""

from collections.abc import Iterable, Mapping, Sequence

from app.canvas.backdrop_box import backdrop_box
from app.canvas.camera import Camera, fitted
from app.canvas.focus import Focus, seen
from app.canvas.geometry import Box, Geometry
from app.canvas.gestures.pointer import Around
from app.canvas.lit_lamps import LitLamps
from app.canvas.painting.change_region import stays_inside
from app.canvas.painting.changed_places import ChangedPlaces, Place, Sort
from app.canvas.painting.shades import Shades, shades
from app.canvas.painting.wire_signs import ARROWS_FROM
from app.canvas.picture_keeper import PictureKeeper
from app.canvas.sight import Sight
from app.session import PlanChanged, Session
from app.solving import Answer, Lit
from wiring.circuit.figures import Figures
from wiring.findings.finding import Finding, Rank
from wiring.pictures.theme import LIGHT, Theme
from wiring.plan.plan import Plan

EMPTY_MM = Box(0.0, 0.0, 1200.0, 700.0)  # what an empty plan shows: a good table
LARGEST_FIT = 3.0  # pixels per millimetre; a single lamp need not fill the screen
FIT_RIM_PX = 56.0
GRID_MM = {"metric": 5.0, "us": 25.4 / 4}


class ViewState:
    """Follows the session; changed only by the view."""

    def __init__(self, session: Session) -> None:
        self.session = session
        self.pictures = PictureKeeper(session)
        self.geometry = Geometry(session.plan, session.kinds)
        self.camera = Camera()
        self._fitted: Box | None = None  # what the camera was pointed at last
        self.shades: Shades = shades(LIGHT)
        self.answer: Answer | None = None
        self.worst: Mapping[str, Finding] = {}
        self._figures: tuple[int, Figures] | None = None  # the newest, and the plan's revision they are of
        self.wire_size: str | None = None
        self.wire_colour = ""  # as its circuit has it
        self.focus: Focus | None = None
        self._seen: tuple[tuple[int, int], frozenset[str]] | None = None
        self._positions: dict[str, str] | None = None
        self._lamps = LitLamps()
        self._ranks: dict[str, Rank] = {}  # of the flags in the still picture
        self._changed = ChangedPlaces()
        self._told = 0  # counts answers, throws and themes, so that the still picture knows
        self._followed = session.revision

    @property
    def key(self) -> tuple[int, int]:
        """Another value whenever something that stands still has to be painted anew."""
        return self.session.revision, self._told

    @property
    def positions(self) -> dict[str, str]:
        """Positions as the session has them, asked for once until they change."""
        if self._positions is None:
            self._positions = self.session.positions
        return self._positions

    def follow(self, change: PlanChanged) -> None:
        """Take over a change of the plan."""
        parts, before = change.changes.parts, (self._followed, self._told)
        if change.cause == "open" or parts.added or parts.removed or _turned_otherwise(change):
            self._positions = None
        if change.cause == "open":
            self.geometry.open(change.new)
            self.answer, self._figures, self.worst = None, None, {}
            self._lamps, self._ranks = LitLamps(), {}
            self.focus = None
        else:
            box = self.geometry.follow(change.new, change.changes)
            if self.focus is None and stays_inside(change):
                places = [Place(box)] if box is not None else []
                self._changed.note(before, (change.revision, self._told), places)
        self._followed = change.revision

    def stirred_since(self, key: object) -> Sequence[Place] | None:
        """Return where what stands still has changed since another `key`; None when that may be anywhere."""
        return self._changed.since(key, self.key)

    def learn(self, answer: Answer) -> None:
        """Take over new figures and findings."""
        self.answer = answer
        self.worst = _gravest(answer.situation.findings)
        ranks = {one: finding.rank for one, finding in self.worst.items()}
        old, self._ranks = self._ranks, ranks
        self._take_figures(answer.revision, answer.situation.figures, _unlike(old, ranks))

    def light_up(self, lit: Lit) -> None:
        """Take over new figures whose findings are still being looked for; flags stay till then."""
        self._take_figures(lit.revision, lit.figures, [])

    def note_throw(self) -> None:
        """Remember that switches stand otherwise."""
        old, self._positions = self._positions, None
        if old is None:
            self._told += 1
        else:
            self._stir("sign", _unlike(old, self.positions))

    def _take_figures(self, revision: int, figures: Figures, flagged: Sequence[str]) -> None:
        """Have painted anew what looks otherwise: lamps and flags; of arrows the picture itself knows."""
        is_new = self._figures is None or self._figures[1] is not figures
        self._figures = revision, figures
        session, scale = self.session, self.camera.scale
        lamps = self._lamps.follow(figures, session.plan, session.kinds, scale) if is_new else []
        if lamps or self.focus is not None or (is_new and scale >= ARROWS_FROM):
            self._stir("sign", lamps)
        if flagged:
            self._stir("flag", flagged)

    def _stir(self, sort: Sort, ids: Sequence[str]) -> None:
        """Have the still picture painted anew where those parts and wires lie."""
        before = self._followed, self._told
        self._told += 1
        if self.focus is None:
            places = [Place(box, sort) for box in self.geometry.boxes_of(ids)]
            self._changed.note(before, (self._followed, self._told), places)

    def wear(self, theme: Theme) -> None:
        """Take other colours."""
        self.shades = shades(theme)
        self._told += 1

    def look_at(self, focus: Focus | None) -> None:
        """Dim everything that does not belong to a focus, or nothing."""
        self.focus = focus
        self._seen = None
        self._told += 1

    def _lit(self) -> frozenset[str] | None:
        if self.focus is None:
            return None
        figures = self._figures[1] if self._figures is not None else None
        if self._seen is None or self._seen[0] != self.key:
            self._seen = self.key, seen(self.session.plan, self.focus, figures)
        return self._seen[1]

    def sight(self, width_px: float, height_px: float, ratio: float, *, lands: bool = False) -> Sight:
        """Return all that the painters look at."""
        newest, session = self._figures, self.session
        return Sight(
            session.plan,
            session.kinds,
            self.geometry,
            self.camera,
            self.shades,
            width_px,
            height_px,
            ratio,
            self.positions,
            newest[1] if newest is not None else None,
            self.worst,
            stale=newest is None or newest[0] != session.revision,
            lit=self._lit(),
            focus_words=self.focus.words if self.focus is not None else "",
            picture=self.pictures.levels(),
            lands=lands,
        )

    def around(self, selected: frozenset[str], ground: str = "") -> Around:
        """Return all that a gesture looks at."""
        session = self.session
        habits = session.plan.habits
        return Around(
            session.plan,
            session.kinds,
            self.geometry,
            selected,
            ground,
            self.positions,
            self.camera.scale,
            grid_mm=GRID_MM.get(habits.units, 5.0),
            wire_size=self.wire_size or habits.wire_size,
            wire_colour=self.wire_colour,
        )

    def fit(self, box: Box | None, width_px: float, height_px: float) -> None:
        """Point the camera at a box, or at a good table when there is none."""
        self._fitted = box or EMPTY_MM
        self.camera = fitted(self._fitted, width_px, height_px, FIT_RIM_PX, LARGEST_FIT)

    def fit_again(self, width_px: float, height_px: float) -> None:
        """Point the camera at what it showed and at what is new since: another size brings nothing nearer."""
        boxes = [box for box in (self._fitted, self.everything()) if box is not None]
        self.fit(_union(boxes), width_px, height_px)

    def everything(self) -> Box | None:
        """Return the box round all there is on the plan."""
        boxes = [box for box in (self.geometry.everything(), area_box(self.session.plan)) if box is not None]
        return _union(boxes)


def area_box(plan: Plan) -> Box | None:
    """Return the box round board, joists, tracks, scenes and panels; None when there are none."""
    lines = (plan.board, *plan.tracks, *(way.points for way in plan.wireways.values()))
    points = [point for line in lines for point in line]
    points += [end for joist in plan.joists for end in (joist.start, joist.end)]
    boxes = [Box(x, y, x, y) for x, y in points]
    boxes += [Box(s.x_mm, s.y_mm, s.x_mm + s.width_mm, s.y_mm + s.height_mm) for s in plan.scenes.values()]
    boxes += [Box(p.x_mm, p.y_mm, p.x_mm + p.width_mm, p.y_mm + p.height_mm) for p in plan.panels.values()]
    if plan.backdrop is not None:
        boxes.append(backdrop_box(plan.backdrop))
    return _union(boxes)


def _union(boxes: list[Box]) -> Box | None:
    if not boxes:
        return None
    return Box(
        min(b.left for b in boxes),
        min(b.top for b in boxes),
        max(b.right for b in boxes),
        max(b.bottom for b in boxes),
    )


def _turned_otherwise(change: PlanChanged) -> bool:
    """Return whether a part that was altered may stand in another position now."""
    pairs = ((change.old.parts[i], change.new.parts[i]) for i in change.changes.parts.altered)
    return any(old.position != new.position or old.kind != new.kind for old, new in pairs)


def _unlike(old: Mapping[str, object], new: Mapping[str, object]) -> list[str]:
    """Return the ids that have another value now, or none."""
    return [i for i in {**old, **new} if old.get(i) != new.get(i)]


def _gravest(findings: Iterable[Finding]) -> dict[str, Finding]:
    worst: dict[str, Finding] = {}
    for finding in findings:
        for one in (*finding.parts, *finding.wires):
            if one not in worst or worst[one].rank < finding.rank:
                worst[one] = finding
    return worst
