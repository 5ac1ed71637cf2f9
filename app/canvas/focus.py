"""Show only one scene, supply, colour or wireway: what belongs to it, while the rest is dimmed."""

from collections.abc import Iterable, Mapping
from typing import Literal, NamedTuple

from app.canvas.wire_names import colour_name
from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.edits.poles import source_ends
from wiring.plan.designations import part_label
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

Sort = Literal["scene", "supply", "colour", "wireway", "selection"]


class Focus(NamedTuple):
    """What is to be seen; `key` is an id, the letters of a colour, or "" for what `ids` name."""

    sort: Sort
    key: str
    words: str
    ids: frozenset[str] = frozenset()


def choices(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[Focus, ...]:
    """Return everything of a plan that can be looked at alone, in the order of the menu."""
    scenes = [Focus("scene", s.id, s.name) for s in plan.scenes.values()]
    supplies = [
        Focus("supply", p.id, f"What {part_label(plan, p.id)} feeds")
        for p in plan.parts.values()
        if p.kind in kinds
        and source_ends(kinds[p.kind]) is not None
        and kinds[p.kind].behaviour != "rectifier"
    ]
    letters = dict.fromkeys(w.colour for w in plan.wires.values())
    colours = [Focus("colour", c, _colour_words(c)) for c in sorted(letters)]
    ways = [Focus("wireway", w.id, f"Wires in {w.name}") for w in plan.wireways.values()]
    return (*scenes, *supplies, *colours, *ways)


def seen(plan: Plan, focus: Focus, figures: Figures | None) -> frozenset[str]:
    """Return the parts and wires that belong to a focus."""
    wires: Iterable[Wire] = plan.wires.values()
    if focus.sort in ("colour", "wireway"):
        lit = [w for w in wires if w.colour == focus.key or focus.key in w.along]
        return frozenset(i for w in lit for i in (w.id, w.start.part, w.end.part))
    if focus.sort == "scene":
        parts = frozenset(p.id for p in plan.parts.values() if p.scene == focus.key)
    elif focus.sort == "supply":
        circuits = figures.circuits if figures is not None else ()
        parts = frozenset(i for circuit in circuits if focus.key in circuit for i in circuit) | {focus.key}
    else:
        parts = focus.ids
        parts |= {i for w in wires if w.id in focus.ids for i in (w.start.part, w.end.part)}
        return parts | frozenset(w.id for w in wires if {w.start.part, w.end.part} <= parts)
    return parts | frozenset(w.id for w in wires if w.start.part in parts or w.end.part in parts)


def of_selection(plan: Plan, kinds: Mapping[str, Kind], ids: frozenset[str], words: str) -> Focus:
    """Return a look at what is selected; of a single part or wire also at the way to it from its supply."""
    from wiring.studies.way_to import way_to

    if len(ids) > 1:
        return Focus("selection", "", words.removesuffix(" selected"), ids)
    one = next(iter(ids))
    name = part_label(plan, one) if one in plan.parts else f"-{plan.wires[one].label}"
    way = way_to(plan, kinds, one)
    return Focus("selection", "", f"{name} and the way to it" if way else name, ids | way)


def _colour_words(letters: str) -> str:
    name = colour_name(letters)
    return f"{name[:1].upper()}{name[1:]} wires"
