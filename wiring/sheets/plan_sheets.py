"""The sheets that show the plan: from above, from below, and area by area where the whole is crowded."""

from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
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
from wiring.sheets.section import Leaf, Section, body_size, picture_leaf

# A whole plan is crowded when it is drawn smaller than this, or has more wires than this.
_LEAST_SCALE = 1 / 12
_MOST_WIRES = 30
_MOST_NAMES = 60  # a crowded plan of more parts does not name them on the sheets that show it whole


def plan_sections(situation: Situation, paper: str, scene: str | None = None) -> tuple[Section, ...]:
    """Return the plan from above and from below, and the areas from below where the plan is crowded.

    For one scene, only its area of a crowded plan.
    """
    page = sheet(paper, landscape=True)
    shown: tuple[Window, ...] | None = None
    lookup = PlanLookup(situation.plan, situation.kinds)
    if is_crowded(situation, page):
        bodies = [body_size(p) for p in (page, sheet(paper))]
        found = windows(situation.plan, situation.kinds, bodies)
        shown = tuple(w for w in found if scene in (None, w.place))
    sections = [
        Section("Plan from above", "above", (_leaf(situation, page, shown, below=False),)),
        Section("Plan from below", "below", (_leaf(situation, page, shown, below=True),)),
    ]
    if shown:
        leaves = [_detail(situation, paper, w.area, lookup, behind=w.behind, place=w.place) for w in shown]
        leaves = [_marked(leaf, window_mark(w)) for leaf, w in zip(leaves, shown, strict=True)]
        leaves[0] = _marked(leaves[0], "areas")
        sections.append(Section("Areas from below", "areas", tuple(leaves)))
    return tuple(sections)


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
