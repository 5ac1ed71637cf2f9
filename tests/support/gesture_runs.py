"""A small plan under a drawing surface, and a way to run a gesture through pointers without Qt."""

from app.canvas.geometry import Geometry
from app.canvas.gestures.pointer import Around, Pointer
from app.canvas.hits.hit import Hit, hit_at
from wiring.catalogue.shelf import builtin_kinds
from wiring.edits.connect import connect
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

KINDS = builtin_kinds()
BATTERY, SWITCH, LAMP, BUTTON = "p1", "p2", "p3", "p4"
RED, BLACK = "w5", "w6"


def bench_plan() -> Plan:
    """Return a battery, a toggle, a lamp and a button; the lamp is wired, one wire of it over two bends."""
    plan = Plan()
    for edit in (
        place(KINDS["battery-9v"], 100, 300),
        place(KINDS["toggle-on-off"], 300, 300),
        place(KINDS["building-led"], 500, 100),
        place(KINDS["push-to-make"], 300, 100),
        connect(
            TerminalRef(SWITCH, "14"), TerminalRef(LAMP, "A"), colour="RD", bends=[(400, 300), (400, 200)]
        ),
        connect(TerminalRef(LAMP, "K"), TerminalRef(BATTERY, "-")),
    ):
        plan = edit.apply(plan)
    return plan


def around(plan: Plan | None = None, **fields) -> Around:
    plan = plan or bench_plan()
    return Around(plan, KINDS, Geometry(plan, KINDS), **fields)


def at(here: Around, phase: str, x: float, y: float, *, landing: bool = False, **fields) -> Pointer:
    """Return a pointer event with whatever lies under it."""
    hit = hit_at(here.geometry, here.plan, KINDS, (x, y), here.scale, here.selected, landing=landing)
    return Pointer(phase, (x, y), hit, **fields)


def key(name: str, x: float = 0.0, y: float = 0.0) -> Pointer:
    return Pointer("key", (x, y), Hit((x, y)), key=name)


def run(gesture, *pointers):
    """Send pointers; return (act, previews). The act is Ellipsis while the gesture has not ended."""
    previews = [next(gesture)]
    for pointer in pointers:
        try:
            previews.append(gesture.send(pointer))
        except StopIteration as done:
            return done.value, previews
    return ..., previews


def terminal(here: Around, part: str, name: str) -> tuple[float, float]:
    x, y = here.geometry.terminals.get(TerminalRef(part, name)).tolist()
    return x, y
