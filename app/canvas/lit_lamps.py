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
        self._shines: dict[str, bool] = {}  # kinds of which figures are known: whether they tell a light
        self._lights: dict[PartId, float] = {}
        self._looks: dict[PartId, LampLook | None] = {}  # None where the kind is not known
        self._scale = 0.0

    def follow(self, figures: Figures, plan: Plan, kinds: Mapping[str, Kind], scale: float) -> list[PartId]:
        """Take over new figures; return the parts that look otherwise at that scale, or shine no more."""
        old, known = self._looks, self._lights if scale == self._scale else {}
        lights, looks = self._read(figures, plan), dict[PartId, LampLook | None]()
        for one, light in lights.items():
            if known.get(one) == light:
                looks[one] = old[one]
            else:
                kind = kinds.get(plan.parts[one].kind)
                looks[one] = lamp_look(kind, light, scale) if kind is not None else None
        self._lights, self._looks, self._scale = lights, looks, scale
        gone = [i for i in old if i not in looks]
        return [i for i, look in looks.items() if i not in old or old[i] != look] + gone

    def _read(self, figures: Figures, plan: Plan) -> dict[PartId, float]:
        """Return the light of all that shines; the figures of other kinds are not asked for."""
        lights: dict[PartId, float] = {}
        shines, parts = self._shines, figures.parts
        for one, part in plan.parts.items():
            if not shines.get(part.kind, True) or one not in parts:
                continue
            light = parts[one].light
            shines[part.kind] = light is not None
            if light is not None:
                lights[one] = light
        return lights
