"""Edits that lead wires along the wireways as part of the same step."""

from collections.abc import Iterable, Mapping

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.joined import followed
from wiring.edits.lay_along import lay_along
from wiring.plan.names import WireId
from wiring.plan.plan import Plan


def route(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[WireId]) -> Edit:
    """Return the edit that leads those wires along the wireways; those that none serves stay as they are."""
    from wiring.routing.along_wireways import routes

    return lay_along(routes(plan, kinds, ids))


def with_new_wires_routed(edit: Edit, kinds: Mapping[str, Kind]) -> Edit:
    """Return an edit that also leads the wires it adds along the wireways, when the plan has any."""

    def following(old: Plan, new: Plan) -> Edit | None:
        added = [i for i in new.wires if i not in old.wires]
        return route(new, kinds, added) if new.wireways and added else None

    return followed(edit, following)


def with_wireway_followed(edit: Edit, kinds: Mapping[str, Kind], wireway_id: str) -> Edit:
    """Return an edit of a wireway after which the wires along it follow it again."""

    def following(_old: Plan, new: Plan) -> Edit | None:
        held = [w.id for w in new.wires.values() if wireway_id in w.along]
        return route(new, kinds, held) if held else None

    return followed(edit, following)
