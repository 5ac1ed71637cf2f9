"""Edits that lead wires along the wireways as part of the same step."""

from collections.abc import Collection, Iterable, Mapping

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.harness_bundle import bundles_of
from wiring.edits.joined import followed
from wiring.edits.lay_along import lay_along
from wiring.edits.tables import counted
from wiring.plan.lengths import cut_length_m
from wiring.plan.names import WireId, WirewayId
from wiring.plan.plan import Plan


def route(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[WireId]) -> Edit:
    """Return the edit that leads those wires along the wireways; those that none serves stay as they are."""
    from wiring.routing.along_wireways import routes

    return lay_along(routes(plan, kinds, ids))


def route_changed(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[WireId]) -> Edit:
    """Return the edit that leads those wires along the wireways, named after how many lie elsewhere then."""
    wanted = tuple(ids)
    edit = route(plan, kinds, wanted)
    new = edit.apply(plan)
    count = sum(new.wires[i] != plan.wires[i] for i in wanted)
    return Edit(f"Route {counted(count, 'wire')} along wireways", edit.apply)


def wires_for(plan: Plan, kinds: Mapping[str, Kind], ways: Collection[WirewayId]) -> tuple[WireId, ...]:
    """Return the wires that belong in those wireways: what runs there, and what would do better to.

    A wire in no wireway yet comes where one of these serves it, one in another wireway only where it needs
    less wire so. What leaves a panel through a plug stays in the wireway of its harness.
    """
    own = {w.id for b in bundles_of(plan, kinds, plan.panels) if b.way not in ways for w in b.inner}
    others = [i for i, w in plan.wires.items() if i not in own and not set(ways).intersection(w.along)]
    led = route(plan, kinds, others).apply(plan)

    def is_better(wire_id: WireId) -> bool:
        before, after = plan.wires[wire_id], led.wires[wire_id]
        if not set(ways).intersection(after.along):
            return False
        return not before.along or cut_length_m(led, kinds, after) < cut_length_m(plan, kinds, before)

    better = {i for i in others if is_better(i)}
    return tuple(i for i, w in plan.wires.items() if i in better or set(ways).intersection(w.along))


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
