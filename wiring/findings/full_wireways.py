"""Wireways whose holes are too small for the wires led through them."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import drill as to_drill
from wiring.findings.situation import Situation
from wiring.findings.words import percent, wire_names
from wiring.quantities.wording import worded
from wiring.routing.bundles import bundles

LONGEST_NAME = 32  # letters, so that the sentence stays readable


def find(situation: Situation) -> Iterator[Finding]:
    """Find wireways in which the wires fill more of the narrowest hole than lets them be pulled through."""
    plan = situation.plan
    units = plan.habits.units
    for bundle in bundles(plan) if plan.wireways else ():
        if bundle.fits:
            continue
        name = bundle.wireway.name[:LONGEST_NAME]
        hole, drill = (worded(d / 1000.0, "length", units) for d in (bundle.wireway.hole_mm, bundle.hole_mm))
        yield Finding(
            "full-wireway",
            Rank.WEAK,
            f"{wire_names(plan, bundle.wires)} fill {percent(bundle.fill)} of the {hole} hole of “{name}”.",
            f"A bundle that fills more than {percent(bundle.allowed)} is hard to pull through and to add to.",
            f"Drill it to {drill}, or lead some wires another way.",
            (),
            bundle.wires,
            to_drill(situation, bundle.wireway, bundle.hole_mm),
        )
