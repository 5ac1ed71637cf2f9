"""What is to be read rather than ticked: safety notes and findings."""

from collections.abc import Mapping

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.pictures.picture import Point
from wiring.plan.names import PartId
from wiring.sheets.carry.markup import Markup, own, tag
from wiring.sheets.cover import RANK_WORDS
from wiring.sheets.safety import earned_notes

# The shape tells the rank: circle, diamond, triangle.
_FLAGS = {
    Rank.NOTE: "M8 2a6 6 0 1 0 .01 0Z",
    Rank.WEAK: "M8 1l7 7-7 7-7-7Z",
    Rank.DANGER: "M8 1l7.5 13.5H.5Z",
}


def safety_list(situation: Situation) -> Markup:
    """Return the notes the plan's own parts have earned."""
    sections = [
        tag(
            "section",
            tag("h2", note.title),
            tag("ul", *(tag("li", line) for line in note.lines)),
            class_="notes",
        )
        for note in earned_notes(situation.plan, situation.kinds)
    ]
    return tag("div", *sections)


def finding_list(situation: Situation, centres: Mapping[PartId, Point]) -> Markup:
    """Return the findings, worst first, or a sentence; `centres` says where the parts are drawn."""
    if not situation.findings:
        return tag(
            "p",
            "No findings: every check passes with the switches as they stand in a session.",
            class_="none",
        )
    rows = [_finding(f, centres) for f in sorted(situation.findings, key=lambda f: -f.rank)]
    return tag("ol", *rows, class_="findings")


def flag(rank: Rank) -> Markup:
    """Return the flag of a finding."""
    shape = tag("path", d=_FLAGS[rank])
    return tag("svg", shape, viewBox="0 0 16 16", class_=f"flag {rank.name.lower()}", aria_hidden="true")


def _finding(finding: Finding, centres: Mapping[PartId, Point]) -> Markup:
    points = [centres[part] for part in finding.parts if part in centres]
    return tag(
        "li",
        tag(
            "button",
            tag(
                "span",
                flag(finding.rank),
                tag("b", RANK_WORDS[finding.rank]),
                class_=f"rank {finding.rank.name.lower()}",
            ),
            tag("span", own(finding.what), class_="what"),
            tag("span", own(finding.why), class_="why"),
            tag("span", tag("b", "Mend: "), own(finding.mend), class_="mend"),
            type="button",
            class_="pick",
        ),
        class_="row finding",
        data_wires=" ".join(finding.wires) or False,
        data_marks=";".join(f"{x:.1f},{y:.1f},part" for x, y in points) or False,
    )
