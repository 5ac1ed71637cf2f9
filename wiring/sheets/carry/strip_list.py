"""The terminal charts: what goes on each terminal of every strip, block and plug."""

from wiring.catalogue.kind import Kind
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.carry.markup import Markup, own, tag
from wiring.sheets.carry.tick_keys import tick_key, wire_key
from wiring.sheets.carry.wire_words import swatch, tick_box
from wiring.sheets.places import place_name
from wiring.sheets.strip_charts import charted_parts
from wiring.sheets.strip_names import end_label


def strip_list(situation: Situation) -> Markup:
    """Return a chart for each; a sentence instead when the plan has none."""
    plan, kinds = situation.plan, situation.kinds
    charts = [_chart(plan, kinds[part.kind], part) for part in charted_parts(plan, kinds)]
    if not charts:
        return tag("p", "The plan has no terminal strip, block or plug.", class_="none")
    return tag("div", *charts)


def _chart(plan: Plan, kind: Kind, part: Part) -> Markup:
    place = place_name(plan, part)
    rows: list[Markup] = []
    for terminal in kind.terminals:
        ref = TerminalRef(part.id, terminal.name)
        wires = plan.wires_at(ref)
        rows += [_wire(plan, ref, wire) for wire in wires] or [_free(terminal.name)]
    title = tag("h2", tag("b", own(part_label(plan, part.id))), " ", own(part.label or kind.title))
    under = tag("p", own(f"{kind.title}, {place}"), class_="under")
    return tag("section", title, under, tag("ol", *rows), class_="group chart", data_place=place)


def _wire(plan: Plan, ref: TerminalRef, wire: Wire) -> Markup:
    other = wire.end if wire.start == ref else wire.start
    says = f"{wire.label} is on terminal {ref.terminal}"
    return tag(
        "li",
        tick_box(tick_key("end", *ref, wire_key(wire)), says),
        tag(
            "button",
            tag("b", own(ref.terminal), class_="number"),
            tag("span", tag("b", own(wire.label), class_="name"), swatch(wire.colour), class_="line"),
            tag(
                "span",
                "to ",
                tag("b", own(end_label(plan, other))),
                " ",
                own(_words(plan, other)),
                class_="facts",
            ),
            type="button",
            class_="pick",
        ),
        class_="row",
        data_wire=wire.id,
    )


def _words(plan: Plan, ref: TerminalRef) -> str:
    part = plan.parts.get(ref.part)
    return part.label if part is not None else ""


def _free(name: str) -> Markup:
    number = tag("b", own(name), class_="number")
    return tag(
        "li", tag("div", number, tag("span", "free", class_="facts"), class_="pick"), class_="row free"
    )
