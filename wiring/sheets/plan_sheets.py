"""The sheets that show the plan: from above, from below, and area by area where the whole is crowded."""

from collections.abc import Mapping, Sequence
from types import TracebackType

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import NO_FIGURES
from wiring.drawings.plan_areas import Area, panel_window
from wiring.drawings.plan_band import BAND_MM
from wiring.drawings.plan_fit import scale_words
from wiring.drawings.plan_lookup import PlanLookup
from wiring.drawings.plan_view import plan_fit, plan_view
from wiring.drawings.plan_windows import Window, windows
from wiring.findings.situation import Situation
from wiring.pictures.picture import Anchor
from wiring.plan.plan import Plan
from wiring.sheets.panel_front import back_mark
from wiring.sheets.panel_template import faces
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.plan_map import plan_map, window_mark
from wiring.sheets.second_process import SecondProcess
from wiring.sheets.section import Leaf, Section, body_size, picture_leaf

# A whole plan is crowded when it is drawn smaller than this, or has more wires than this.
_LEAST_SCALE = 1 / 12
_MOST_WIRES = 30
_MANY_AREAS = 60  # from here on a second process is worth its start
_MOST_NAMES = 60  # a crowded plan of more parts does not name them on the sheets that show it whole


class _Drawn:
    """What is drawn from: a plan with its figures, as far as plan sheets need them, and the paper."""

    def __init__(self, situation: Situation, paper: str) -> None:
        figures = NO_FIGURES._replace(parts=dict(situation.figures.parts))
        self.situation = Situation(situation.plan, situation.kinds, situation.positions, figures, {}, ())
        self.paper = paper
        self.lookup = PlanLookup(situation.plan, situation.kinds)


class PlanSheets:
    """The plan from above and from below, and area by area where it is crowded; of one scene its area only.

    Many areas are begun in a second process at once.
    """

    def __init__(self, situation: Situation, paper: str, scene: str | None = None) -> None:
        self._page = sheet(paper, landscape=True)
        self._drawn = _Drawn(situation, paper)
        self._shown: tuple[Window, ...] | None = None
        if is_crowded(situation, self._page):
            bodies = [body_size(p) for p in (self._page, sheet(paper))]
            found = windows(situation.plan, situation.kinds, bodies)
            self._shown = tuple(w for w in found if scene in (None, w.place))
        self._beside = SecondProcess(_area_leaf, self._drawn, self._shown or (), enough=_MANY_AREAS)

    def __enter__(self) -> "PlanSheets":
        return self

    def __exit__(self, *_: type[BaseException] | BaseException | TracebackType | None) -> None:
        self._beside.__exit__()

    def sections(self) -> tuple[Section, ...]:
        """Return them all: what the second process has not come to is drawn here."""
        situation, page, shown = self._drawn.situation, self._page, self._shown
        sections = [
            Section("Plan from above", "above", (_leaf(situation, page, shown, below=False),)),
            Section("Plan from below", "below", (_leaf(situation, page, shown, below=True),)),
        ]
        if shown:
            leaves = self._areas(shown)
            leaves[0] = _marked(leaves[0], "areas")
            sections.append(Section("Areas from below", "areas", tuple(leaves)))
        return tuple(sections)

    def _areas(self, shown: Sequence[Window]) -> list[Leaf]:
        """Return the areas: this process draws from the last towards the one the other is at."""
        here: list[Leaf] = []
        last = len(shown)
        while last and not self._beside.reaches(last - 1):
            last -= 1
            here.insert(0, _area_leaf(self._drawn, shown[last]))
        there = self._beside.first(last)
        return [*there, *(_area_leaf(self._drawn, w) for w in shown[len(there) : last]), *here]


def _area_leaf(drawn: _Drawn, window: Window) -> Leaf:
    """Return the sheet of one area."""
    leaf = _detail(
        drawn.situation, drawn.paper, window.area, drawn.lookup, behind=window.behind, place=window.place
    )
    return _marked(leaf, window_mark(window))


def _marked(leaf: Leaf, mark: str) -> Leaf:
    """Return a sheet with a mark at the corner of its body."""
    left, top, _, _ = leaf.sheet.body
    return leaf._replace(items=(Anchor(mark, (left, top)), *leaf.items))


def is_crowded(situation: Situation, page: Sheet) -> bool:
    """Return whether one sheet is too small to label every wire of a plan."""
    laid = plan_fit(situation.plan, situation.kinds, *body_size(page))
    small = laid is not None and laid[0].scale < _LEAST_SCALE
    return bool(situation.plan.parts) and (small or len(situation.plan.wires) > _MOST_WIRES)


def _leaf(situation: Situation, page: Sheet, shown: Sequence[Window] | None, *, below: bool) -> Leaf:
    """Return the whole plan; where windows show it in detail, without labels of wires, or of parts too."""
    width, height = body_size(page)
    mapped = bool(shown) and len(situation.plan.parts) > _MOST_NAMES
    picture = plan_view(
        situation.plan,
        situation.kinds,
        situation.positions,
        situation.figures,
        below=below,
        width_mm=width,
        height_mm=height,
        wire_labels=shown is None,
        part_labels=not mapped,
    )
    laid = plan_fit(situation.plan, situation.kinds, width, height, below=below)
    if laid is not None and shown and mapped:
        over = plan_map(shown, laid[0], (0.0, BAND_MM, width, height), picture.items)
        picture = picture._replace(items=(*picture.items, *over))
    return picture_leaf(
        page,
        picture,
        "Plan from below" if below else "Plan from above",
        anchor="below" if below else "above",
        scale=scale_words(laid[0].scale) if laid else "",
        side="FROM BELOW" if below else "ABOVE",
    )


def _detail(
    situation: Situation, paper: str, area: Area, lookup: PlanLookup, *, behind: bool, place: str = ""
) -> Leaf:
    """Return one area on the sheet, upright or lying, that shows it larger."""
    pages = (sheet(paper, landscape=True), sheet(paper))
    scales = [_scale(situation, page, area, lookup) for page in pages]
    side = "FROM BEHIND" if behind else "FROM BELOW"
    page, scale = (pages[1], scales[1]) if scales[1] > scales[0] else (pages[0], scales[0])
    width, height = body_size(page)
    picture = plan_view(
        situation.plan,
        situation.kinds,
        situation.positions,
        situation.figures,
        below=True,
        width_mm=width,
        height_mm=height,
        window=area,
        behind=behind,
        lookup=lookup,
    )
    title = f"{area.name} {side.lower()}"
    leaf = picture_leaf(page, picture, title, scale=scale_words(scale), side=side)
    leaf = leaf._replace(bookmark=title)
    return _marked(leaf, back_mark(place or area.name)) if behind else leaf


def rear_areas(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[Area, ...]:
    """Return the windows round the panels that carry parts: their backs are shown."""
    return tuple(panel_window(plan, kinds, face.panel) for face in faces(plan, kinds))


def rear_leaves(situation: Situation, paper: str, scene: str | None) -> tuple[Leaf, ...]:
    """Return the backs of the panels where the plan has no sheets by area that show them; else nothing."""
    if is_crowded(situation, sheet(paper, landscape=True)):
        return ()
    backs = rear_areas(situation.plan, situation.kinds)
    lookup = PlanLookup(situation.plan, situation.kinds)
    return tuple(_detail(situation, paper, a, lookup, behind=True) for a in backs if scene in (None, a.name))


def _scale(situation: Situation, page: Sheet, area: Area, lookup: PlanLookup) -> float:
    laid = plan_fit(situation.plan, situation.kinds, *body_size(page), below=True, window=area, lookup=lookup)
    return laid[0].scale if laid is not None else 0.0
