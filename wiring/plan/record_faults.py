"""What is wrong with one part or one wire, in plain sentences; an empty tuple means it is sound."""

import math
from collections.abc import Collection, Iterator, Mapping
from datetime import date

from wiring.catalogue.kind import Kind, Setting, Value
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.limits import (
    LONGEST_NAME,
    LONGEST_WIRE_M,
    designation_is_fair,
    id_is_fair,
    place_is_fair,
    text_is_fair,
)
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.quantities.not_understood import NotUnderstood
from wiring.standards.colours import RESERVED, colour
from wiring.standards.wire_size import read_size


def part_faults(part: Part, scenes: Collection[str], panels: Collection[str]) -> Iterator[str]:
    """Say what is wrong with a part that can be seen without knowing its kind."""
    name = f"-{part.designation}" if designation_is_fair(part.designation) else f"Part {part.id}"
    if not designation_is_fair(part.designation):
        yield (
            f"{name} needs a designation of at most 16 letters and digits without spaces, such as E4, "
            f"not “{part.designation}”."
        )
    if not place_is_fair(part.x_mm, part.y_mm):
        yield f"{name} lies outside the plan; its x and y must be within a kilometre (1 000 000 mm)."
    if not (math.isfinite(part.turn_deg) and abs(part.turn_deg) <= 3600):
        yield f"{name} is turned by {part.turn_deg:g} degrees; the turn must lie between −3600 and 3600."
    if not text_is_fair(part.label, LONGEST_NAME):
        yield f"The label of {name} must be at most {LONGEST_NAME} readable characters."
    if not text_is_fair(part.note):
        yield f"The note on {name} must be at most 2000 readable characters."
    if not (part.kind and text_is_fair(part.kind, LONGEST_NAME)):
        yield f"{name} does not say what kind of part it is."
    if part.scene and part.scene not in scenes:
        yield f"{name} belongs to the scene {part.scene}, which the plan does not have."
    if part.panel and part.panel not in panels:
        yield f"{name} sits on the panel {part.panel}, which the plan does not have."
    if part.group and not id_is_fair(part.group):
        yield f"{name} is in the group “{part.group[:40]}”, which cannot be an id: a letter, then digits."
    for setting, value in part.settings.items():
        if not _value_is_fair(value):
            yield f"The setting {setting} of {name} must be a number or a short text."


def kind_faults(part: Part, kind: Kind) -> Iterator[str]:
    """Say what on a part does not fit its kind: settings and position."""
    settings = {s.name: s for s in kind.settings}
    for name, value in part.settings.items():
        setting = settings.get(name)
        if setting is None:
            yield f"-{part.designation} ({kind.title}) has no setting called {name}."
        else:
            fault = value_fault(value, setting)
            if fault:
                yield f"-{part.designation}: {fault}"
    if part.position and all(part.position != p.name for p in kind.positions):
        yield f"-{part.designation} ({kind.title}) has no position called {part.position}."


def value_fault(value: Value, setting: Setting) -> str:
    """Say why a value does not suit a setting, in its SI unit; "" when it does."""
    if setting.quantity == "choice":
        if value in setting.choices:
            return ""
        return f"{setting.title} must be one of {', '.join(setting.choices)}, not {value}."
    if setting.quantity == "text":
        return _text_fault(value, setting)
    if not isinstance(value, int | float) or not math.isfinite(value):
        return f"{setting.title} must be a number."
    return _number_fault(value, setting)


def _text_fault(value: Value, setting: Setting) -> str:
    if not (isinstance(value, str) and text_is_fair(value, LONGEST_NAME)):
        return f"{setting.title} must be a text of at most {LONGEST_NAME} characters."
    if setting.name == "fitted" and value and not _is_date(value):
        return f"{setting.title} must be a date such as 2026-03-01, or nothing."
    return ""


def _is_date(text: str) -> bool:
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _number_fault(value: float, setting: Setting) -> str:
    if setting.quantity == "count" and value != int(value):
        return f"{setting.title} must be a whole number, not {value:g}."
    if setting.lowest is not None and value < setting.lowest:
        return f"{setting.title} must be at least {_worded(setting.lowest, setting)}."
    if setting.highest is not None and value > setting.highest:
        return f"{setting.title} must be at most {_worded(setting.highest, setting)}."
    return ""


def _worded(value: float, setting: Setting) -> str:
    if setting.quantity == "count":
        return f"{value:g}"
    from wiring.quantities.wording import worded

    return worded(value, setting.quantity)


def wire_faults(wire: Wire, plan: Plan) -> Iterator[str]:
    """Say what is wrong with a wire that can be seen without knowing the kinds of its parts."""
    name = f"-{wire.label}" if designation_is_fair(wire.label) else f"Wire {wire.id}"
    if not designation_is_fair(wire.label):
        yield (
            f"{name} needs a label of at most 16 letters and digits without spaces, such as W4, "
            f"not “{wire.label}”."
        )
    for ref in (wire.start, wire.end):
        if ref.part not in plan.parts:
            yield f"{name} ends on the part {ref.part}, which the plan does not have."
        elif not (ref.terminal and text_is_fair(ref.terminal, LONGEST_NAME)):
            yield f"{name} does not say which terminal it ends on."
    if wire.start == wire.end:
        yield f"{name} runs from a terminal to the same terminal."
    if wire.length_m is not None and not (
        math.isfinite(wire.length_m) and 0 < wire.length_m <= LONGEST_WIRE_M
    ):
        yield f"The length of {name} must be more than nothing and at most {LONGEST_WIRE_M:g} m."
    if not all(place_is_fair(*bend) for bend in wire.bends):
        yield f"{name} has a bend outside the plan; x and y must be within a kilometre (1 000 000 mm)."
    for way in wire.along:
        if way not in plan.wireways:
            yield f"{name} is led along the wireway {way}, which the plan does not have."
    if not text_is_fair(wire.note):
        yield f"The note on {name} must be at most 2000 readable characters."
    yield from _conductor_faults(name, wire)


def _conductor_faults(name: str, wire: Wire) -> Iterator[str]:
    fault = size_fault(wire.size)
    if fault:
        yield f"The size of {name} is not understood: {fault}"
    fault = colour_fault(wire.colour)
    if fault:
        yield f"The colour of {name} is not understood: {fault}"


def size_fault(size: str) -> str:
    """Say why a text is no wire size; "" when it is one."""
    try:
        read_size(size)
    except NotUnderstood as why:
        return str(why)
    return ""


def colour_fault(letters: str) -> str:
    """Say why letters are no wire colour; "" when they are one."""
    try:
        colour(letters)
    except KeyError:
        if letters.strip().upper() in (RESERVED, RESERVED[2:] + RESERVED[:2]):
            return "green and yellow together are kept for the earth wire of the mains; choose another."
        return f"“{letters[:20]}” are no letters of IEC 60757; write for example BK, RD or BUWH."
    return ""


def colours_faults(supply: PartId, colours: CircuitColours) -> Iterator[str]:
    """Say what is wrong with the wire colours of one supply."""
    for letters in (colours.plus, colours.minus, colours.switched):
        fault = colour_fault(letters) if letters else ""
        if fault:
            yield f"A wire colour of the supply {supply[:40]} is not understood: {fault}"


def end_faults(wire: Wire, plan: Plan, kinds: Mapping[str, Kind]) -> Iterator[str]:
    """Say which end of a wire names a terminal that the part's kind does not have."""
    for ref in (wire.start, wire.end):
        part = plan.parts.get(ref.part)
        kind = kinds.get(part.kind) if part else None
        if part and kind and all(ref.terminal != t.name for t in kind.terminals):
            offered = ", ".join(t.name for t in kind.terminals)
            yield (
                f"-{wire.label} ends on terminal {ref.terminal} of -{part.designation} ({kind.title}), "
                f"which has only {offered}."
            )


def _value_is_fair(value: Value) -> bool:
    return text_is_fair(value, LONGEST_NAME) if isinstance(value, str) else math.isfinite(value)
