"""Which lamps look otherwise with new figures than they did with the last ones."""

from collections.abc import Mapping
from typing import NamedTuple

from app.canvas.painting.lamp_look import LampLook, lamp_look
from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import PartId
from wiring.plan.plan import Plan


class _Shown(NamedTuple):
    """How a lamp looks, and between which lights it is known to look like that: it brightens steadily."""

    kind: Kind | None
    look: LampLook | None  # None where the kind is not known
    least: float
    most: float


class LitLamps:
    """Remembers how each lamp looks."""

    def __init__(self) -> None:
        self._shines: dict[str, bool] = {}  # kinds of which figures are known: whether they tell a light
        self._shown: dict[PartId, _Shown] = {}
        self._scale = 0.0

    def follow(self, figures: Figures, plan: Plan, kinds: Mapping[str, Kind], scale: float) -> list[PartId]:
        """Take over new figures; return the parts that look otherwise at that scale, or shine no more."""
        old, now, other = self._shown, dict[PartId, _Shown](), list[PartId]()
        is_known = scale == self._scale
        for one, light in self._read(figures, plan).items():
            kind, before = kinds.get(plan.parts[one].kind), old.get(one)
            if before is not None and is_known and before.kind is kind:
                if before.least <= light <= before.most:
                    now[one] = before
                    continue
                look = lamp_look(kind, light, scale) if kind is not None else None
                if look == before.look:
                    now[one] = _Shown(kind, look, min(light, before.least), max(light, before.most))
                    continue
            else:
                look = lamp_look(kind, light, scale) if kind is not None else None
            now[one] = _Shown(kind, look, light, light)
            if before is None or before.look != look:
                other.append(one)
        self._shown, self._scale = now, scale
        return other + [i for i in old if i not in now]

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
