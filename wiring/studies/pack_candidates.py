"""Which packs could stand in for a battery: every type there is, with as many cells as its volts ask for."""

import math
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.standards.cells import CELLS, CellType
from wiring.studies.battery_part import BatteryPart

MOST_VOLTS = 1.15  # of the fresh volts there are: lamps and modules stand no more; common practice, no source
LEAST_VOLTS = 0.6  # of them: below it nothing of the scene would work
MOST_IN_SERIES = 12
IN_A_ROW = 4  # cells of a holder beside each other


class Pack(NamedTuple):
    """A number of cells of one type, and the catalogue kind that offers it."""

    kind: str
    battery: BatteryPart

    @property
    def title(self) -> str:
        """Return ``8 × Alkaline AA (LR6)``."""
        count = self.battery.in_series * self.battery.in_parallel
        return self.battery.cell.title if count == 1 else f"{count} × {self.battery.cell.title}"

    @property
    def size_mm(self) -> tuple[float, float, float]:
        """Width, height and depth of the bare cells, four to a row."""
        width, height, depth = self.battery.cell.size_mm
        count = self.battery.in_series * self.battery.in_parallel
        return min(count, IN_A_ROW) * width, height, math.ceil(count / IN_A_ROW) * depth


def packs_for(kinds: Mapping[str, Kind], there: BatteryPart) -> tuple[Pack, ...]:
    """Return the packs that could take a battery's place, the one that is there first."""
    found = {_key(there): Pack(_kind_of(kinds, there.cell), there)}
    for kind in kinds.values():
        if kind.behaviour != "battery":
            continue
        for key in kind.setting("cell").choices:
            cell = CELLS.get(key)
            for series in _in_series(cell, there) if cell is not None else ():
                pack = there._replace(
                    cell=CELLS[key],
                    in_series=series,
                    in_parallel=1,
                    capacity_ah=0.0,
                    weakest=1.0,
                    limit_a=0.0,
                )
                found.setdefault(_key(pack), Pack(kind.key, pack))
    return tuple(p for p in found.values() if p.battery is there or not _made_up(p, found.values()))


def _made_up(pack: Pack, others: Iterable[Pack]) -> bool:
    """Whether the same cells are to be had as fewer, larger packs."""
    one = pack.battery
    return any(
        other.battery.in_series < one.in_series
        and other.battery.cell.chemistry == one.cell.chemistry
        and (other.battery.cells, other.battery.cell.rated_ah) == (one.cells, one.cell.rated_ah)
        for other in others
    )


def _in_series(cell: CellType, there: BatteryPart) -> Iterator[int]:
    fresh_v = there.cell.fresh_v * there.in_series
    count = max(round(there.cell.nominal_v * there.in_series / cell.nominal_v), 1)
    if count * cell.fresh_v > MOST_VOLTS * fresh_v:
        count -= 1
    if 1 <= count <= MOST_IN_SERIES and count * cell.fresh_v >= LEAST_VOLTS * fresh_v:
        yield count


def _key(battery: BatteryPart) -> tuple[str, int, int]:
    return battery.cell.key, battery.in_series, battery.in_parallel


def _kind_of(kinds: Mapping[str, Kind], cell: CellType) -> str:
    return next(
        (k.key for k in kinds.values() if k.behaviour == "battery" and cell.key in k.setting("cell").choices),
        "",
    )
