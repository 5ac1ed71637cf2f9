"""Make, change and take away scenes."""

from collections.abc import Iterable
from types import MappingProxyType
from typing import Any

import msgspec

from wiring.edits.areas import areas_after
from wiring.edits.edit import Edit
from wiring.edits.set_value import set_field
from wiring.edits.tables import refuse_if, rounded_mm, still_in, with_records, without
from wiring.plan.plan import Plan
from wiring.plan.scene import Scene, UsePattern
from wiring.plan.soundness import area_faults

FIELDS = ("name", "x_mm", "y_mm", "width_mm", "height_mm", "use")


def add_scene(
    name: str,
    x_mm: float = 0.0,
    y_mm: float = 0.0,
    width_mm: float = 0.0,
    height_mm: float = 0.0,
    use: UsePattern | None = None,
) -> Edit:
    """Make a scene; parts that lie in its rectangle and in no other scene become part of it."""

    def apply(plan: Plan) -> Plan:
        scene = Scene(
            id=f"s{plan.next_number}",
            name=name.strip(),
            x_mm=rounded_mm(x_mm),
            y_mm=rounded_mm(y_mm),
            width_mm=rounded_mm(width_mm),
            height_mm=rounded_mm(height_mm),
            use=use or UsePattern(),
        )
        return _with_scene(plan, scene, plan.next_number + 1)

    return Edit("Add scene", apply)


def change_scene(scene_id: str, **fields: Any) -> Edit:  # noqa: ANN401 - each field has its own type
    """Set fields of a scene: name, x_mm, y_mm, width_mm, height_mm, use; parts join and leave by place."""
    unknown = fields.keys() - set(FIELDS)
    if unknown:
        raise TypeError(f"a scene has no field {', '.join(sorted(unknown))} to set")
    given = {k: rounded_mm(float(v)) if k.endswith("_mm") else v for k, v in fields.items()}

    def apply(plan: Plan) -> Plan:
        old = scene_of(plan, scene_id)
        new = msgspec.structs.replace(old, **given)
        return plan if new == old else _with_scene(plan, new, plan.next_number)

    return Edit("Change scene", apply)


def remove_scene(scene_id: str) -> Edit:
    """Take a scene away; its parts stay and belong to the scene they lie in, if any."""

    def apply(plan: Plan) -> Plan:
        scene_of(plan, scene_id)
        bare = plan.with_changes(scenes=without(plan.scenes, [scene_id]))
        return with_followers(plan, bare)

    return Edit("Remove scene", apply)


def put_in_scene(ids: Iterable[str], scene_id: str) -> Edit:
    """Let parts belong to a scene wherever they stand; "" for none."""
    return Edit("Put in scene", set_field(ids, scene=scene_id).apply)


def scene_of(plan: Plan, scene_id: str) -> Scene:
    """Return a scene of the plan; EditRefused when it is gone."""
    return still_in(plan.scenes, scene_id, "scene")


def _with_scene(plan: Plan, scene: Scene, next_number: int) -> Plan:
    refuse_if(area_faults(scene))
    scenes = MappingProxyType({**dict(plan.scenes), scene.id: scene})
    return with_followers(plan, plan.with_changes(scenes=scenes, next_number=next_number))


def with_followers(old: Plan, new: Plan) -> Plan:
    """Return the new plan with each part in the scene and on the panel that it follows by its place."""
    moved = []
    for part in new.parts.values():
        scene, panel = areas_after(old, new, part, part)
        scene = scene if scene in new.scenes else ""
        panel = panel if panel in new.panels else ""
        if (scene, panel) != (part.scene, part.panel):
            moved.append(msgspec.structs.replace(part, scene=scene, panel=panel))
    return with_records(new, moved)
