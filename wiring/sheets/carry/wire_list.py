"""Every wire in working order, a row each, place by place."""

from itertools import groupby

from wiring.findings.situation import Situation
from wiring.plan.names import TerminalRef
from wiring.sheets.bench_list import BenchRow, bench_rows
from wiring.sheets.carry.markup import Markup, own, tag
from wiring.sheets.carry.tick_keys import wire_key
from wiring.sheets.carry.wire_words import swatch, tick_box
from wiring.sheets.lengths import length_words
from wiring.sheets.places import ELSEWHERE, place_name
from wiring.sheets.strip_names import end_label


def wire_list(situation: Situation) -> Markup:
    """Return the list; a sentence instead when the plan has no wires."""
    rows = bench_rows(situation.plan, situation.kinds)
    if not rows:
        return tag("p", "The plan has no wires yet.", class_="none")
    groups = []
    for place, members in groupby(rows, key=lambda row: row.place):
        items = [_row(situation, row) for row in members]
        groups.append(
            tag("section", tag("h2", own(place)), tag("ol", *items), class_="group", data_place=place)
        )
    return tag("div", *groups)


def _row(situation: Situation, row: BenchRow) -> Markup:
    plan = situation.plan
    wire = plan.wires[row.wire]
    size = f"{row.size} solid" if row.solid else row.size
    facts = [size, f"cut {length_words(row.length_m, plan.habits.units)}"]
    # the note of a wire without one is the words of its far part, which the ends show already
    note = tag("span", own(wire.note), class_="remark") if wire.note else Markup()
    start, end = end_label(plan, row.start), end_label(plan, row.end)
    return tag(
        "li",
        tick_box(wire_key(wire), f"{row.label} is made", wire=row.wire, built=wire.built),
        tag(
            "button",
            tag("span", tag("b", own(row.label), class_="name"), swatch(row.colour), class_="line"),
            tag("span", tag("b", own(start)), Markup(" &rarr; "), tag("b", own(end)), class_="way"),
            tag("span", " · ".join(facts), class_="facts"),
            _end(situation, row.start, "from"),
            _end(situation, row.end, "to"),
            note,
            type="button",
            class_="pick",
        ),
        class_="row",
        data_wire=row.wire,
        data_turned=row.start != wire.start,
    )


def _end(situation: Situation, ref: TerminalRef, which: str) -> Markup:
    """Return where one end goes, with the words for its part and where that stands."""
    plan = situation.plan
    part = plan.parts.get(ref.part)
    if part is None:
        return tag("span", tag("b", own(end_label(plan, ref))), class_=f"end {which}")
    kind = situation.kinds.get(part.kind)
    words = part.label or (kind.title if kind is not None else part.kind)
    place = place_name(plan, part)
    where = "" if place == ELSEWHERE else f", {place}"
    return tag("span", tag("b", own(end_label(plan, ref))), " ", own(words + where), class_=f"end {which}")
