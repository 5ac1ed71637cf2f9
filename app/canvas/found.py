"""Finds anything on a plan by what is written on it: designations, labels, names, notes."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from app.typed_words import says_joined
from wiring.catalogue.kind import Kind
from wiring.plan.designations import part_label
from wiring.plan.plan import Plan


class Found(NamedTuple):
    """One thing that was found: its words, the parts and wires to show for it, its key on the ground."""

    words: str
    ids: tuple[str, ...]
    ground: str = ""  # a scene, panel or wireway, selected itself where nothing belongs to it


def found(plan: Plan, kinds: Mapping[str, Kind], typed: str) -> tuple[Found, ...]:
    """Return what fits, the best first: the very name, then names that begin so, then words that hold it.

    Case and the minus before a designation do not matter, nor spaces and hyphens, which come last.
    """
    wanted = typed.strip().lstrip("-").casefold()
    if not wanted:
        return ()
    ranked = []
    for place, (one, texts) in enumerate(_named(plan, kinds)):
        ranks = [rank for text in texts if (rank := _rank(text.casefold(), wanted)) is not None]
        if ranks:
            ranked.append((min(ranks), place, one))
    return tuple(one for _, _, one in sorted(ranked, key=lambda r: r[:2]))


def _rank(text: str, wanted: str) -> int | None:
    if text == wanted:
        return 0
    if text.startswith(wanted):
        return 1
    if wanted in text:
        return 2
    return 3 if says_joined(text, wanted) else None


def _named(plan: Plan, kinds: Mapping[str, Kind]) -> Iterator[tuple[Found, tuple[str, ...]]]:
    """Walk everything that has a name, with the texts it can be found by."""
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        title = kind.title if kind is not None else part.kind
        words = f"{part_label(plan, part.id)}, {part.label or title}"
        yield Found(words, (part.id,)), (part.designation, part.label, title, part.note)
    for wire in plan.wires.values():
        yield Found(f"Wire -{wire.label}", (wire.id,)), (wire.label, wire.note)
    for scene in plan.scenes.values():
        ids = tuple(p.id for p in plan.parts.values() if p.scene == scene.id)
        yield Found(f"Scene {scene.name}", ids, scene.id), (scene.name,)
    for panel in plan.panels.values():
        ids = tuple(p.id for p in plan.parts.values() if p.panel == panel.id)
        yield Found(f"Panel {panel.name}", ids, panel.id), (panel.name,)
    for way in plan.wireways.values():
        ids = tuple(w.id for w in plan.wires.values() if way.id in w.along)
        yield Found(f"Wireway {way.name}", ids, way.id), (way.name,)
