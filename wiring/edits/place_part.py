"""Put a new part down."""

from collections.abc import Mapping

import msgspec

from wiring.catalogue.kind import Kind, Value
from wiring.edits.areas import panel_at, scene_at
from wiring.edits.edit import Edit
from wiring.edits.tables import frozen, rounded_mm, with_records
from wiring.plan.designations import next_designation
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def place(
    kind: Kind,
    x_mm: float,
    y_mm: float,
    turn_deg: float = 0.0,
    settings: Mapping[str, Value] | None = None,
    *,
    label: str = "",
    scene: str | None = None,
    panel: str | None = None,
) -> Edit:
    """Put a part of that kind down, with the lowest free designation of its letter.

    Its scene and panel are those it stands on unless they are given ("" for none).
    """

    def apply(plan: Plan) -> Plan:
        made = part_at(plan, kind, (x_mm, y_mm), turn_deg, settings, plan.next_number)
        part = msgspec.structs.replace(
            made,
            designation=next_designation(plan, kind.designation),
            label=label,
            scene=made.scene if scene is None else scene,
            panel=made.panel if panel is None else panel,
        )
        return with_records(plan, [part], kinds={kind.key: kind}, next_number=plan.next_number + 1)

    return Edit(f"Place {kind.title}", apply)


def part_at(
    plan: Plan,
    kind: Kind,
    at: Point,
    turn_deg: float,
    settings: Mapping[str, Value] | None,
    number: int,
    designation: str = "",
) -> Part:
    """Return a part of that kind as it stands at a place, in the scene and on the panel there."""
    x_mm, y_mm = rounded_mm(at[0]), rounded_mm(at[1])
    return Part(
        id=f"p{number}",
        kind=kind.key,
        designation=designation,
        x_mm=x_mm,
        y_mm=y_mm,
        turn_deg=rounded_mm(turn_deg % 360.0),
        settings=_floats(settings) if settings else {},
        scene=scene_at(plan, x_mm, y_mm),
        panel=panel_at(plan, x_mm, y_mm),
    )


def _floats(settings: Mapping[str, Value]) -> Mapping[str, Value]:
    return frozen({k: v if isinstance(v, str) else float(v) for k, v in settings.items()})
