"""Put a new part down."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind, Value
from wiring.edits.areas import panel_at, scene_at
from wiring.edits.edit import Edit
from wiring.edits.tables import frozen, rounded_mm, with_records
from wiring.plan.designations import next_designation
from wiring.plan.part import Part
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
        at = rounded_mm(x_mm), rounded_mm(y_mm)
        part = Part(
            id=f"p{plan.next_number}",
            kind=kind.key,
            designation=next_designation(plan, kind.designation),
            x_mm=at[0],
            y_mm=at[1],
            turn_deg=rounded_mm(turn_deg % 360.0),
            label=label,
            settings=_floats(settings) if settings else {},
            scene=scene_at(plan, *at) if scene is None else scene,
            panel=panel_at(plan, *at) if panel is None else panel,
        )
        return with_records(plan, [part], kinds={kind.key: kind}, next_number=plan.next_number + 1)

    return Edit(f"Place {kind.title}", apply)


def _floats(settings: Mapping[str, Value]) -> Mapping[str, Value]:
    return frozen({k: v if isinstance(v, str) else float(v) for k, v in settings.items()})
