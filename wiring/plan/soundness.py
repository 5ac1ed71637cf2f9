"""The rules every plan keeps, whoever made it: ids, ends of wires, designations, numbers within reach."""

import math
import re
from collections import Counter
from collections.abc import Iterator, Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.battery_log_faults import log_faults, price_faults
from wiring.plan.ground_faults import backdrop_faults, joist_faults, wireway_faults
from wiring.plan.limits import (
    LARGEST_NUMBER,
    LONGEST_NAME,
    id_is_fair,
    place_is_fair,
    size_is_fair,
    text_is_fair,
)
from wiring.plan.panel import Panel
from wiring.plan.panel_faults import face_faults
from wiring.plan.plan import Habits, Line, Plan
from wiring.plan.record_faults import (
    colours_faults,
    end_faults,
    kind_faults,
    part_faults,
    size_fault,
    wire_faults,
)
from wiring.plan.scene import Scene, UsePattern
from wiring.plan.sentences import one_line

HABIT_CHOICES = {
    "units": ("metric", "us"),
    "fascia": ("bottom", "top", "left", "right"),
    "paper": ("A4", "Letter", "A3"),
    "symbols": ("iec", "ieee"),
}
LONGEST_CURRENCY = 12
HABIT_BOUNDS = {
    "slack_m": (0.0, 10.0),
    "ambient_c": (-40.0, 80.0),
    "drop_limit": (0.001, 0.9),
    "dim_lightness": (1.0, 100.0),
}
USE_BOUNDS = {
    "hours_per_session": (0.0, 24.0),
    "sessions_per_month": (0.0, 1000.0),
    "sessions_per_charge": (0, 1000),
}
_NUMBERED = re.compile(r"[pwsnyg]([0-9]{1,15})")


def unsound(plan: Plan, kinds: Mapping[str, Kind] | None = None) -> tuple[str, ...]:
    """Return one plain sentence per rule the plan breaks; empty when it is sound.

    With `kinds`, settings, positions and terminals are compared with what each part's kind has. A part
    whose kind is not in `kinds` is no breach: see :func:`missing_kinds`.
    """
    return tuple(map(one_line, _breaches(plan, kinds or {})))


def missing_kinds(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[str, ...]:
    """Return one plain sentence per kind that the plan uses and the catalogue lacks."""
    lacking: dict[str, list[str]] = {}
    for part in plan.parts.values():
        if part.kind not in kinds:
            lacking.setdefault(part.kind, []).append(f"-{part.designation}")
    return tuple(_lacking(kind, names) for kind, names in lacking.items())


def _lacking(kind: str, names: list[str]) -> str:
    them = f"{_some(names)} {'is one; it stays' if len(names) == 1 else 'are such; they stay'}"
    return one_line(
        f"The catalogue has no kind “{kind}”, and {them} in the plan but out of every figure until you add "
        "that kind to your catalogue folder."
    )


def _some(names: list[str]) -> str:
    return ", ".join(names) if len(names) <= 6 else f"{', '.join(names[:5])} and {len(names) - 5} more"


def least_next_number(plan: Plan) -> int:
    """Return the lowest `next_number` that gives no id of the plan a second time."""
    groups = {part.group for part in plan.parts.values() if part.group}
    ids = (*plan.parts, *plan.wires, *plan.scenes, *plan.panels, *plan.wireways, *groups)
    return max((int(m[1]) for m in map(_NUMBERED.fullmatch, ids) if m), default=0) + 1


def _breaches(plan: Plan, kinds: Mapping[str, Kind]) -> Iterator[str]:
    yield from _id_breaches(plan)
    yield from _name_breaches(plan)
    for scene in plan.scenes.values():
        yield from area_faults(scene)
    for panel in plan.panels.values():
        yield from area_faults(panel)
    for wireway in plan.wireways.values():
        yield from wireway_faults(wireway)
    if plan.backdrop is not None:
        yield from backdrop_faults(plan.backdrop)
    for part in plan.parts.values():
        yield from part_faults(part, plan.scenes, plan.panels)
        kind = kinds.get(part.kind)
        if kind is not None:
            yield from kind_faults(part, kind)
    for wire in plan.wires.values():
        yield from wire_faults(wire, plan)
        yield from end_faults(wire, plan, kinds)
    yield from plan_faults(plan)


def _id_breaches(plan: Plan) -> Iterator[str]:
    tables: tuple[Mapping[str, object], ...] = (
        *(plan.scenes, plan.panels, plan.parts, plan.wires),
        plan.wireways,
    )
    for table in tables:
        for key, record in table.items():
            if key != getattr(record, "id", None):
                yield f"The record kept under {key} calls itself {getattr(record, 'id', None)}."
            if not id_is_fair(key):
                yield f"“{key[:40]}” cannot be an id; an id is a letter followed by letters and digits."
    for twice in _repeated(key for table in tables for key in table):
        yield f"The id {twice} is given twice."
    if not least_next_number(plan) <= plan.next_number <= LARGEST_NUMBER:
        yield "The plan's next number is lower than an id already given, or too large."


def _name_breaches(plan: Plan) -> Iterator[str]:
    for twice in _repeated(p.designation for p in plan.parts.values()):
        yield f"Two parts are called -{twice}; every part needs a designation of its own."
    for twice in _repeated(w.label for w in plan.wires.values()):
        yield f"Two wires are called -{twice}; every wire needs a label of its own."


def _repeated(names: Iterator[str]) -> list[str]:
    return [name for name, times in Counter(names).items() if times > 1]


def area_faults(area: Scene | Panel) -> Iterator[str]:
    """Say what is wrong with a scene or a panel."""
    word = "scene" if isinstance(area, Scene) else "panel"
    if not (area.name.strip() and text_is_fair(area.name, LONGEST_NAME)):
        yield f"The {word} {area.id} needs a name of at most {LONGEST_NAME} characters."
    if not (place_is_fair(area.x_mm, area.y_mm) and size_is_fair(area.width_mm, area.height_mm)):
        yield f"The {word} {area.name or area.id} lies outside the plan or has a negative width or height."
    if isinstance(area, Scene):
        yield from use_faults(area.use, f"of the scene {area.name or area.id}")
    else:
        yield from face_faults(area)


def use_faults(use: UsePattern, whose: str) -> Iterator[str]:
    """Say what is wrong with a use pattern; `whose` ends the sentence's subject."""
    for name, (low, high) in USE_BOUNDS.items():
        value = getattr(use, name)
        if not low <= value <= high:
            yield f"The {name.replace('_', ' ')} {whose} must lie between {low:g} and {high:g}."
    if not all(1 <= month <= 12 for month in use.months_off):
        yield f"The months off {whose} must be numbers from 1 (January) to 12 (December)."


def plan_faults(plan: Plan) -> Iterator[str]:
    """Say what is wrong with what the plan holds beside its parts and wires."""
    if not (text_is_fair(plan.title, LONGEST_NAME) and text_is_fair(plan.author, LONGEST_NAME)):
        yield f"The plan's title and author must be at most {LONGEST_NAME} readable characters each."
    yield from _habit_faults(plan.habits)
    yield from use_faults(plan.use, "of the plan")
    for entry in plan.battery_log:
        yield from log_faults(entry)
    yield from price_faults(plan.prices)
    for supply, colours in plan.circuit_colours.items():
        yield from colours_faults(supply, colours)
    for joist in plan.joists:
        yield from joist_faults(joist)
    for line, name in ((plan.board, "board"), *((t, "track") for t in plan.tracks)):
        if not _line_is_fair(line):
            yield f"A corner of the {name} lies outside the plan; x and y must be within a kilometre."


def _habit_faults(habits: Habits) -> Iterator[str]:
    for name, choices in HABIT_CHOICES.items():
        if getattr(habits, name) not in choices:
            yield f"The habit {name} must be one of {', '.join(choices)}."
    fault = size_fault(habits.wire_size)
    if fault:
        yield f"The usual wire size is not understood: {fault}"
    if not text_is_fair(habits.currency, LONGEST_CURRENCY):
        yield f"The currency of the prices must be at most {LONGEST_CURRENCY} readable characters."
    for name, (low, high) in HABIT_BOUNDS.items():
        value = getattr(habits, name)
        if not (math.isfinite(value) and low <= value <= high):
            yield f"The habit {name} must lie between {low:g} and {high:g}."


def _line_is_fair(line: Line) -> bool:
    return all(place_is_fair(*corner) for corner in line)
