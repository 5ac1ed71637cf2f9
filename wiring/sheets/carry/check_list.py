"""The meter checks: power off first, then the volts, each with the points it is taken between."""

from collections.abc import Callable
from itertools import groupby

from wiring.findings.situation import Situation
from wiring.pictures.picture import Point
from wiring.plan.names import TerminalRef
from wiring.quantities.wording import worded
from wiring.sheets.carry.markup import Markup, own, tag
from wiring.sheets.carry.tick_keys import tick_key
from wiring.sheets.carry.wire_words import tick_box
from wiring.sheets.meter_checks import DEAD_V, VoltCheck, check_words, positions_words, volt_checks
from wiring.sheets.meter_sheet import expectation
from wiring.sheets.ohm_checks import OhmCheck, ohm_checks

Where = Callable[[TerminalRef], Point | None]


def check_list(situation: Situation, where: Where) -> Markup:
    """Return both lists; `where` says at which point of the drawing a terminal lies."""
    ohms, volts = ohm_checks(situation), volt_checks(situation)
    sections: list[Markup] = []
    if ohms:
        sections.append(
            tag(
                "section",
                tag("h2", "1. Power off"),
                tag(
                    "p",
                    "Unplug every supply and take out the batteries. Meter on ohms or on the beeper. If a "
                    "contact that should be silent beeps, take off one of its wires and try again.",
                    class_="under",
                ),
                tag("ol", *map(_ohm_row, ohms)),
                class_="group",
            )
        )
    sections.append(
        tag("div", tag("h2", "2. Power on: volts"), *_before_volts(situation, bool(volts)), class_="lead")
    )
    for place, members in groupby(volts, key=lambda check: check.place):
        rows = [_volt_row(situation, check, where) for check in members]
        sections.append(
            tag("section", tag("h2", own(place)), tag("ol", *rows), class_="group", data_place=place)
        )
    return tag("div", *sections)


def _before_volts(situation: Situation, any_volts: bool) -> list[Markup]:
    if not any_volts:
        says = "No voltage could be worked out for this plan. The findings say why."
        return [tag("p", says, class_="under")]
    positions = positions_words(situation)
    stands = [f"Everything stands as in a session: {positions}."] if positions else []
    says = f"Meter on V DC where nothing else is said. Under {worded(DEAD_V, 'voltage')} counts as dead."
    return [tag("p", own(sentence), class_="under") for sentence in (*stands, says)]


def _ohm_row(check: OhmCheck) -> Markup:
    return tag(
        "li",
        tick_box(tick_key("ohm", check.where, check.expect), f"{check.where}: checked"),
        tag(
            "div",
            tag("span", own(check.expect), class_="line expect"),
            tag("span", own(check.where), class_="way"),
            tag("span", own(check.what), class_="facts"),
            class_="pick",
        ),
        class_="row",
    )


def _volt_row(situation: Situation, check: VoltCheck, where: Where) -> Markup:
    red, black = (check_words(situation.plan, ref) for ref in (check.red, check.black))
    expect, span = expectation(check)
    points = [
        (point, name) for ref, name in ((check.red, "red"), (check.black, "black")) if (point := where(ref))
    ]
    marks = ";".join(f"{x:.1f},{y:.1f},{name}" for (x, y), name in points)
    return tag(
        "li",
        tick_box(tick_key("volt", *check.red, *check.black, expect), f"{red} to {black}: reads {expect}"),
        tag(
            "button",
            tag("span", tag("b", expect), tag("small", f"good: {span}"), class_="line expect"),
            tag(
                "span",
                *(
                    tag("span", tag("i", class_=f"lead-{c}"), tag("b", own(t)), class_="probe")
                    for c, t in (("red", red), ("black", black))
                ),
                class_="way",
            ),
            tag("span", own(check.what), class_="facts"),
            type="button",
            class_="pick",
        ),
        class_="row",
        data_marks=marks or False,
    )
