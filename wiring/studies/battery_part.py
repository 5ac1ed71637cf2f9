"""A battery of the plan as the model takes it: its type, its cells, what was typed about it."""

from collections.abc import Mapping
from datetime import date
from typing import Any, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.battery_log import CHARGED, FRESH
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.standards.cells import CELLS, CellType
from wiring.studies.cells.bank import Bank, with_weak_cell
from wiring.studies.cells.pack import Grade, Pack, packed
from wiring.studies.cells.store import Store
from wiring.studies.settings import number, text

LONG_STRING, LONG_STRING_LOW = 4, 0.95  # cells in series, and what the weakest then has; from memory
MOST_FADED = 0.5  # of its charge: a battery worn further is done with
SWING_K = 5.0  # of the room's temperature about the one of the plan's habits; common practice, no source


class BatteryPart(NamedTuple):
    """What is known of one battery; a typed capacity is what an ordinary one of the kind really holds."""

    id: PartId
    cell: CellType
    in_series: int = 1
    in_parallel: int = 1
    capacity_ah: float = 0.0  # typed; 0 = the type's own
    weakest: float = 1.0  # charge of its weakest cell, of the others'
    limit_a: float = 0.0  # of its protection; 0 = none
    fitted: date | None = None
    celsius: float = 20.0
    others: tuple["BatteryPart", ...] = ()  # batteries of the plan it works as one with
    side_by_side: bool = False  # whether those stand beside it, not behind it
    charged: int = 0  # times since it was fitted, as the log has it

    @property
    def fresh_v(self) -> float:
        """Volts without load of all of them when fresh."""
        return self.cell.fresh_v * self.in_series + self._behind("fresh_v")

    @property
    def floor_v(self) -> float:
        """Volts at which the cells of all of them are empty, or must be spared."""
        return self.cell.floor_v * self.cells + self._behind("floor_v")

    @property
    def cells(self) -> int:
        """Cells in series."""
        return self.cell.cells_in_series * self.in_series

    @property
    def rated_ah(self) -> float:
        """Capacity printed on it, all strings together."""
        return (self.capacity_ah or self.cell.rated_ah) * self.in_parallel

    def pack(self, grade: str = "typical", ohms: float = 1.0, capacity: float = 1.0) -> Pack:
        """Return its numbers, all cells alike, for a ``low``, ``typical`` or ``high`` grade.

        Low ones stand in a cooler room and high ones in a warmer one than the plan says.
        """
        grades = self.cell.grades
        share = {"low": grades.low, "typical": grades.typical, "high": grades.high}[grade] * capacity
        if self.capacity_ah > 0:
            share /= grades.typical
        if grade == "low" and self.cells >= LONG_STRING:
            share *= LONG_STRING_LOW
        share *= 1.0 - self.faded(grade)
        return packed(
            self.cell,
            self.in_series,
            self.in_parallel,
            self.capacity_ah,
            Grade(share, ohms * (grades.low_ohm if grade == "low" else 1.0)),
            self.celsius + {"low": -SWING_K, "typical": 0.0, "high": SWING_K}[grade],
        )

    def store(self, grade: str = "typical", ohms: float = 1.0, capacity: float = 1.0) -> Store[Any]:
        """Return its numbers, with its weak cell if it has one, and with those it works as one with."""
        if self.others and self.weakest >= 1.0 and all(self._like(other) for other in self.others):
            return self._as_one().pack(grade, ohms, capacity)
        pack = self.pack(grade, ohms, capacity)
        if self.others and self.side_by_side:
            strings = (o.strings(grade, ohms, capacity) for o in (self, *self.others))
            return Bank(tuple(s for group in strings for s in group), self.cell.rechargeable)
        if self.others:
            row = (pack, *(o.pack(grade, ohms, capacity) for o in self.others))
            return Bank((row,), any(o.cell.rechargeable for o in (self, *self.others)))
        if self.weakest >= 1.0:
            return pack
        return with_weak_cell(pack, self.cells, self.in_parallel, self.weakest, self.cell.rechargeable)

    def strings(self, grade: str, ohms: float, capacity: float) -> tuple[tuple[Pack, ...], ...]:
        """Return its strings as those of a bank: one, unless a cell is weak."""
        pack = self.pack(grade, ohms, capacity)
        if self.weakest >= 1.0:
            return ((pack,),)
        bank = with_weak_cell(pack, self.cells, self.in_parallel, self.weakest, spares=False)
        return bank.strings

    def _like(self, other: "BatteryPart") -> bool:
        """Whether another battery is the same in all that matters to how it discharges."""
        mine = self._replace(id=other.id, limit_a=other.limit_a, fitted=other.fitted, others=())
        mine = mine._replace(side_by_side=other.side_by_side)
        if self.side_by_side:
            return mine._replace(in_parallel=other.in_parallel) == other
        return mine._replace(in_series=other.in_series) == other

    def _as_one(self) -> "BatteryPart":
        """Return it and its like as one of more cells or strings: the same, but quicker."""
        every = (self, *self.others)
        if self.side_by_side:
            return self._replace(in_parallel=sum(b.in_parallel for b in every), others=())
        return self._replace(in_series=sum(b.in_series for b in every), others=())

    def faded(self, grade: str = "typical") -> float:
        """Return the share of its charge lost for good by being charged; each time counts as a full one."""
        least, most = self.cell.fade
        each = {"low": most, "typical": (least + most) / 2, "high": least}[grade]
        return min(each * self.charged, MOST_FADED)

    def _behind(self, name: str) -> float:
        return 0.0 if self.side_by_side else sum(float(getattr(o, name)) for o in self.others)


def battery_part(plan: Plan, kinds: Mapping[str, Kind], battery: PartId) -> BatteryPart | None:
    """Return the battery of that id; None when its type is not in the list."""
    part = plan.parts[battery]
    kind = kinds[part.kind]
    cell = CELLS.get(text(part, kind, "cell"))
    if cell is None:
        return None
    weakest = number(part, kind, "weakest")
    return BatteryPart(
        battery,
        cell,
        max(round(number(part, kind, "in_series")), 1),
        max(round(number(part, kind, "in_parallel")), 1),
        max(number(part, kind, "capacity"), 0.0),
        min(weakest, 1.0) if weakest > 0 else 1.0,
        max(number(part, kind, "limit_a"), 0.0),
        day(text(part, kind, "fitted")),
        plan.habits.ambient_c,
        charged=_charged(plan, battery),
    )


def _charged(plan: Plan, battery: PartId) -> int:
    """Return how often the log has it charged since it last got new cells."""
    events = [e.event for e in plan.battery_log if e.battery == battery and e.event in FRESH]
    since = max((n + 1 for n, event in enumerate(events) if event != CHARGED), default=0)
    return len(events) - since


def day(typed: str) -> date | None:
    """Return a typed date; None when it is none."""
    try:
        return date.fromisoformat(typed.strip())
    except ValueError:
        return None
