"""What a click or band on a face takes of joined parts: the whole thing, as far as it is on the bench."""

from collections.abc import Iterable

from app.bench.face_hit import FaceHit
from app.bench.face_pointer import FaceAround, FacePick
from app.bench.face_sight import FaceSight
from app.canvas.gestures.whole import added, meant, wholes_of, with_wholes
from wiring.edits.copies import wires_between
from wiring.plan.part import Part
from wiring.plan.plan import Plan


def taken(around: FaceAround, hit: FaceHit) -> FacePick:
    """Return what a click takes: of joined parts all, or one when nothing but those is selected."""
    sight, item = around.sight, hit.item
    if hit.part:
        within = sight.selected if not sight.items else frozenset[str]()
        return FacePick(meant(_here(sight, sight.at_back), within, hit.part))
    return FacePick(frozenset({hit.wire} if hit.wire else ()), frozenset({item} if item is not None else ()))


def with_taken(around: FaceAround, hit: FaceHit) -> FacePick:
    """Return what is chosen with that put in or, when it is there, taken out."""
    sight = around.sight
    if hit.part:
        return FacePick(added(_here(sight, sight.at_back), sight.selected, hit.part), sight.items)
    mine = taken(around, hit)
    return FacePick(sight.selected ^ mine.ids, sight.items ^ mine.items)


def caught_on_face(sight: FaceSight, seen: Iterable[Part], caught: frozenset[str]) -> frozenset[str]:
    """Return what a band takes: a thing when all that is seen of it is caught."""
    return all_of_things(sight, with_wholes(_here(sight, seen), caught, touching=False))


def all_of_things(sight: FaceSight, ids: Iterable[str]) -> frozenset[str]:
    """Return those parts and wires with all on the bench that is joined with them."""
    return wholes_of(_here(sight, sight.at_back), ids)


def _here(sight: FaceSight, parts: Iterable[Part]) -> Plan:
    """Return the plan with only those parts: what stands elsewhere is not seen, and no hand takes it."""
    table = {p.id: p for p in parts}
    wires = {w.id: w for w in wires_between(sight.plan, table)}
    return sight.plan.with_changes(parts=table, wires=wires)
