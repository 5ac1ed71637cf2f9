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
        """Return ``8 × Alkaline AA (LR6)``, of all batteries that work together."""
        pieces, cells = self.pieces, {b.cell.key: b.cell.title for b in self._all}
        title = " and ".join(cells.values())
        return title if pieces == 1 else f"{pieces} × {title}"

    @property
    def pieces(self) -> int:
        """Cells, or blocks of them, to be bought."""
        return sum(b.in_series * b.in_parallel for b in self._all)

    @property
    def size_mm(self) -> tuple[float, float, float]:
        """Width, height and depth of the bare cells, four to a row."""
        width, height, depth = self.battery.cell.size_mm
        return min(self.pieces, IN_A_ROW) * width, height, math.ceil(self.pieces / IN_A_ROW) * depth

    @property
    def _all(self) -> tuple[BatteryPart, ...]:
        return self.battery, *self.battery.others


def packs_for(kinds: Mapping[str, Kind], there: BatteryPart) -> tuple[Pack, ...]:
    """Return the packs that could take a battery's place, the one that is there first.

    Where several work together each of them gets such a pack, with as many cells as its own volts ask for.
    """
    found = {_key(there): Pack(_kind_of(kinds, there.cell), there)}
    for kind in kinds.values():
        if kind.behaviour != "battery":
            continue
        for key in kind.setting("cell").choices:
            cell = CELLS.get(key)
            if cell is None:
                continue
            for series in _in_series(cell, there):
                pack = _of(there, cell, series)
                pack = pack._replace(others=tuple(_in_place_of(o, pack, there) for o in there.others))
                found.setdefault(_key(pack), Pack(kind.key, pack))
    return tuple(p for p in found.values() if p.battery is there or not _made_up(p, found.values()))


def _of(there: BatteryPart, cell: CellType, in_series: int) -> BatteryPart:
    """Return new cells of a type where a battery is."""
    return there._replace(
        cell=cell,
        in_series=in_series,
        in_parallel=1,
        capacity_ah=0.0,
        weakest=1.0,
        limit_a=0.0,
        charged=0,
        others=(),
    )


def _in_place_of(mate: BatteryPart, pack: BatteryPart, there: BatteryPart) -> BatteryPart:
    """Return what stands where another battery is when `pack` stands in the place of the first."""
    own_v, first_v = (b.cell.nominal_v * b.in_series for b in (mate, there))
    return _of(mate, pack.cell, max(round(pack.in_series * own_v / first_v), 1))


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


def _key(battery: BatteryPart) -> tuple[tuple[str, int, int], ...]:
    return tuple((b.cell.key, b.in_series, b.in_parallel) for b in (battery, *battery.others))


def _kind_of(kinds: Mapping[str, Kind], cell: CellType) -> str:
    return next(
        (k.key for k in kinds.values() if k.behaviour == "battery" and cell.key in k.setting("cell").choices),
        "",
    )
