"""Turns an act a finding offers into the edit that does it: one table, a row an act."""

from collections.abc import Callable, Mapping
from datetime import date

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.into_lead import put_into_lead
from wiring.edits.into_leads import put_into_leads
from wiring.edits.joined import followed, in_turn
from wiring.edits.lay_along import lay_along
from wiring.edits.log_battery import log_battery
from wiring.edits.set_value import set_setting
from wiring.edits.set_wire import set_wire
from wiring.edits.swap_leads import swap_leads
from wiring.edits.tables import part_of
from wiring.edits.usual_values import usual_values
from wiring.edits.wireways import set_wireway
from wiring.findings.act import Act
from wiring.findings.offers import FUSE, RECTIFIER, RESISTOR
from wiring.plan.battery_log import CHARGED
from wiring.plan.changes import other_records
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.routing.along_wireways import routes
from wiring.studies.roles import THROUGH

Kinds = Mapping[str, Kind]
# What a setting is called in Undo.
SETTINGS = {
    "rating_a": "fuse rating",
    "speed": "fuse speed",
    "resistance": "resistance",
    "rated_power": "rated power",
    "rated_a": "rated current",
    "limit_a": "current limit",
    "max_a": "rated current",
    "capacitance": "capacitance",
}


def edit_for(act: Act, kinds: Kinds) -> Edit:
    """Return the edit that does an act, as one step with a name."""
    return EDITS[act.name](act, kinds)


def _set(act: Act, kinds: Kinds) -> Edit:
    words = dict.fromkeys(SETTINGS.get(name, name.replace("_", " ")) for name, _ in act.values)
    steps = [set_setting(act.parts, name, value, kinds=kinds) for name, value in act.values]
    return in_turn(f"Set {' and '.join(words)}", steps)


def _size(act: Act, _kinds: Kinds) -> Edit:
    return set_wire(act.wires, size=act.text("size"))


def _swap(act: Act, kinds: Kinds) -> Edit:
    return swap_leads(act.parts, act.text("one"), act.text("other"), kinds=kinds)


def _resistor(act: Act, kinds: Kinds) -> Edit:
    """Put each resistor on the side of the light with fewer wires, plus where they are as many."""

    def apply(plan: Plan) -> Plan:
        refs = [_free_side(plan, kinds, part) for part in act.parts]
        return put_into_lead(refs, kinds[RESISTOR], settings, "2", "1", kinds=kinds).apply(plan)

    settings = {name: act.number(name) for name in ("resistance", "rated_power")}
    label = "Put in resistor" if len(act.parts) == 1 else f"Put in {len(act.parts)} resistors"
    return _routed(Edit(label, apply), kinds)


def _free_side(plan: Plan, kinds: Kinds, part: str) -> TerminalRef:
    one, other = THROUGH[kinds[part_of(plan, part).kind].behaviour][0]
    sides = TerminalRef(part, one), TerminalRef(part, other)
    counts = [sum(ref in (w.start, w.end) for w in plan.wires.values()) for ref in sides]
    return sides[counts[1] < counts[0] and counts[1] > 0]


def _fuse(act: Act, kinds: Kinds) -> Edit:
    refs = [TerminalRef(part, act.text("end")) for part in act.parts]
    edit = put_into_lead(refs, kinds[FUSE], {"rating_a": act.number("rating_a")}, "1", "2", kinds=kinds)
    return _routed(edit, kinds)


def _rectifier(act: Act, kinds: Kinds) -> Edit:
    """Put one behind an AC supply, the act telling which leg becomes plus, or one before each part."""

    def apply(plan: Plan) -> Plan:
        if act.values:
            pair = TerminalRef(act.parts[0], act.text("plus")), TerminalRef(act.parts[0], act.text("minus"))
            return put_into_leads([pair], kind, ("~1", "~2"), ("+", "-"), kinds=kinds).apply(plan)
        names = {p: THROUGH[kinds[part_of(plan, p).kind].behaviour][0] for p in act.parts}
        pairs = [(TerminalRef(p, one), TerminalRef(p, other)) for p, (one, other) in names.items()]
        return put_into_leads(pairs, kind, ("+", "-"), ("~1", "~2"), kinds=kinds).apply(plan)

    kind = kinds[RECTIFIER]
    return _routed(Edit(act.words, apply), kinds)


def _routed(edit: Edit, kinds: Kinds) -> Edit:
    """Return an edit after which the wires it changed follow their wireways again."""

    def following(old: Plan, new: Plan) -> Edit | None:
        led = [i for i in other_records(old.wires, new.wires) if new.wires[i].along]
        return lay_along(routes(new, kinds, led)) if led else None

    return followed(edit, following)


def _drill(act: Act, _kinds: Kinds) -> Edit:
    return set_wireway(act.text("wireway"), hole_mm=act.number("hole_mm"))


def _fitted(act: Act, kinds: Kinds) -> Edit:
    return set_setting(act.parts, "fitted", act.text("day"), title="day it was fitted", kinds=kinds)


def _charged(act: Act, _kinds: Kinds) -> Edit:
    day = date.fromisoformat(act.text("day"))
    edits = [log_battery(part, CHARGED, day) for part in act.parts]
    return in_turn(edits[0].label, edits)


def _usual(act: Act, kinds: Kinds) -> Edit:
    return usual_values(act.parts, kinds=kinds)


EDITS: Mapping[str, Callable[[Act, Kinds], Edit]] = {
    "set": _set,
    "size": _size,
    "swap": _swap,
    "resistor": _resistor,
    "fuse": _fuse,
    "rectifier": _rectifier,
    "drill": _drill,
    "fitted": _fitted,
    "charged": _charged,
    "usual": _usual,
}
