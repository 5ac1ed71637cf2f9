"""The sheets that show the plan: from above, and from below as it is worked on."""

from wiring.drawings.plan_fit import scale_words
from wiring.drawings.plan_view import plan_fit, plan_view
from wiring.findings.situation import Situation
from wiring.sheets.paper import sheet
from wiring.sheets.section import Leaf, Section, body_size, picture_leaf


def plan_sections(situation: Situation, paper: str) -> tuple[Section, ...]:
    """Return the plan from above and from below."""
    return (
        Section("Plan from above", "above", (_leaf(situation, paper, below=False),)),
        Section("Plan from below", "below", (_leaf(situation, paper, below=True),)),
    )


def _leaf(situation: Situation, paper: str, *, below: bool) -> Leaf:
    page = sheet(paper, landscape=True)
    width, height = body_size(page)
    plan, kinds = situation.plan, situation.kinds
    picture = plan_view(
        plan,
        kinds,
        situation.positions,
        situation.figures,
        below=below,
        width_mm=width,
        height_mm=height,
    )
    laid = plan_fit(plan, kinds, width, height, below=below)
    return picture_leaf(
        page,
        picture,
        "Plan from below" if below else "Plan from above",
        anchor="below" if below else "above",
        scale=scale_words(laid[0].scale) if laid else "",
        side="FROM BELOW" if below else "ABOVE",
    )
