"""Which lamps look otherwise with new figures than they did with the last ones."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from app.canvas.painting.lamp_look import LampLook, lamp_look
from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.circuit.many_readings import light_column
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.studies.alike import parts_but_for_place
from wiring.studies.keeping import kept
from wiring.studies.roles import LIGHTS


class _Lamps(NamedTuple):
    """What shines of a plan, row by row."""

    ids: Sequence[PartId]
    kinds: Sequence[Kind]


class _Shown:
    """How lamps look, and between which lights each is known to look like that: it brightens steadily."""

    def __init__(self, lamps: _Lamps, scale: float) -> None:
        self.lamps, self.scale = lamps, scale
        self.looks: list[LampLook | None] = [None] * len(lamps.ids)  # None where no light is known
        self.least: NDArray[np.float64] = np.full(len(lamps.ids), np.nan)
        self.most: NDArray[np.float64] = np.full(len(lamps.ids), np.nan)

    def put(self, row: int, look: LampLook, least: float, most: float) -> None:
        """Remember how a lamp looks between two lights."""
        self.looks[row], self.least[row], self.most[row] = look, least, most


class LitLamps:
    """Remembers how each lamp looks."""

    def __init__(self) -> None:
        self._shown = _Shown(_Lamps((), ()), 0.0)

    def follow(self, figures: Figures, plan: Plan, kinds: Mapping[str, Kind], scale: float) -> list[PartId]:
        """Take over new figures; return the parts that look otherwise at that scale, or shine no more."""
        lamps = kept(_lamps, parts_but_for_place(plan.parts), kinds)
        gone = self._go_on(lamps, scale)
        shown, light = self._shown, light_column(figures, lamps.ids)
        other: list[PartId] = []
        stays = (shown.least <= light) & (light <= shown.most)
        for row in np.flatnonzero(~stays).tolist():
            before, now = shown.looks[row], float(light[row])
            if now != now:  # not known
                if before is None:
                    continue
                shown.looks[row], shown.least[row], shown.most[row] = None, np.nan, np.nan
            else:
                look = lamp_look(lamps.kinds[row], now, scale)
                if look == before:
                    shown.put(row, look, min(now, float(shown.least[row])), max(now, float(shown.most[row])))
                    continue
                shown.put(row, look, now, now)
            other.append(lamps.ids[row])
        return other + gone

    def _go_on(self, lamps: _Lamps, scale: float) -> list[PartId]:
        """Go on with other lamps or another scale; return what shone and is no more."""
        old = self._shown
        if old.lamps is lamps and old.scale == scale:
            return []
        self._shown = new = _Shown(lamps, scale)
        rows = {one: row for row, one in enumerate(old.lamps.ids) if old.looks[row] is not None}
        for row, (one, kind) in enumerate(zip(*lamps, strict=True)):
            was = rows.pop(one, None)
            look = old.looks[was] if was is not None else None
            if was is None or look is None:
                continue
            if old.scale == scale and old.lamps.kinds[was] is kind:
                new.put(row, look, float(old.least[was]), float(old.most[was]))
            else:
                new.looks[row] = look  # at another scale it may look so by other lights
        return list(rows)


def _lamps(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> _Lamps:
    some = [(p.id, kinds[p.kind]) for p in parts.values() if p.kind in kinds]
    rows = [(one, kind) for one, kind in some if kind.behaviour in LIGHTS]
    return _Lamps(*zip(*rows, strict=True)) if rows else _Lamps((), ())
