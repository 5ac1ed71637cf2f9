"""Which lamps look otherwise with new figures than they did with the last ones."""

from collections.abc import Mapping

from app.canvas.painting.lamp_look import LampLook, lamp_look
from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import PartId
from wiring.plan.plan import Plan


class LitLamps:
    """Remembers how each lamp looks."""

    def __init__(self) -> None:
        self._lights: dict[PartId, float] = {}
        self._looks: dict[PartId, LampLook | None] = {}  # by part; None where its kind is not known
        self._scale = 0.0

    def follow(self, figures: Figures, plan: Plan, kinds: Mapping[str, Kind], scale: float) -> list[PartId]:
        """Take over new figures; return the parts that look otherwise at that scale, or shine no more."""
        old, known = self._looks, self._lights if scale == self._scale else {}
        lights = {i: f.light for i, f in figures.parts.items() if f.light is not None}
        looks = {
            i: old[i] if known.get(i) == light and i in old else _look(plan, kinds, i, light, scale)
            for i, light in lights.items()
        }
        self._lights, self._looks, self._scale = lights, looks, scale
        gone = [i for i in old if i not in looks]
        return [i for i, look in looks.items() if i not in old or old[i] != look] + gone


def _look(
    plan: Plan, kinds: Mapping[str, Kind], part_id: PartId, light: float, scale: float
) -> LampLook | None:
    part = plan.parts.get(part_id)
    kind = kinds.get(part.kind) if part is not None else None
    return lamp_look(kind, light, scale) if kind is not None else None
