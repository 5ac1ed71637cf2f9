"""Packs that differ on one load: strings with a weak cell, and unequal strings side by side.

Every pack keeps wells of its own. Packs in a string carry the same current; strings side by side have the
same volts, so the fuller one gives more and, at rest, fills the emptier one up. What a pack pushes into
another counts as taken up in full, which flatters cells that are not rechargeable a little.
"""

from collections.abc import Callable
from typing import NamedTuple

from wiring.standards.two_wells import Wells
from wiring.studies.cells.pack import STEEP_UNTIL, Pack

Charge = tuple[tuple[Wells, ...], ...]  # of the packs, as they stand in their strings

REVERSED = 1.05  # depth beyond which a cell has no volts left that could change
BALANCED = 1e-3  # of a pack's capacity per hour: what flows between strings below this is nothing
MOST_EXCHANGES = 8  # steps of one rest; what is not level then levels out in the next ones
OWN_TIME = 0.5  # of the time in which two strings level out: longer steps would swing to and fro


class Bank(NamedTuple):
    """Strings side by side, each of packs in series."""

    strings: tuple[tuple[Pack, ...], ...]
    spares: bool = False  # rechargeables: it is over when its first pack is empty, not when the sum is low

    def level(self, share: float) -> Charge:
        """Return the state with that share of each pack's charge, rested; 1 is fresh."""
        return tuple(tuple(pack.level(share) for pack in string) for string in self.strings)

    def thevenin(self, state: Charge) -> tuple[float, float]:
        """Return volts without load, and ohms, as the load sees them."""
        ends = self._ends(state)
        siemens = sum(1.0 / ohms for _, ohms in ends)
        return sum(emf / ohms for emf, ohms in ends) / siemens, 1.0 / siemens

    def after(self, state: Charge, current_a: float, hours: float) -> Charge:
        """Return the state after a constant current, without loss to the shelf."""
        left_h = hours
        for _ in range(MOST_EXCHANGES if len(self.strings) > 1 else 0):
            ends = self._ends(state)
            piece_h, flows = self._exchange_h(state, ends)
            if piece_h >= left_h:
                return self._moved(state, ends, current_a, left_h)
            if not flows and current_a <= 0:
                break
            middle = self._ends(self._moved(state, ends, current_a, piece_h / 2))
            state = self._moved(state, middle, current_a, piece_h)
            left_h -= piece_h
        if len(self.strings) == 1:
            return self._moved(state, self._ends(state), current_a, left_h)
        return self._shared(state, current_a, left_h)

    def leaked(self, state: Charge, hours: float) -> Charge:
        """Return the state with what the shelf takes in that time."""
        return self._each(state, lambda pack, wells: pack.leaked(wells, hours))

    def rested(self, state: Charge, hours: float) -> Charge:
        """Return the state after rest, in which strings level out, with what the shelf takes."""
        return self.leaked(self.after(state, 0.0, hours), hours)

    def step_ah(self, state: Charge, step: float) -> float:
        """Return the charge of one step: as much as the smallest pack that still lives bears."""
        total = 0.0
        for string, row in zip(self.strings, state, strict=True):
            pairs = list(zip(string, row, strict=True))
            living = [(pack, wells) for pack, wells in pairs if pack.depth(wells) < REVERSED] or pairs
            total += min(pack.step_ah(wells, step) for pack, wells in living)
        return total / (1 if len(self.strings) == 1 else 2)

    def spent(self, state: Charge) -> bool:
        """Whether a pack must be spared although the volts of the whole would allow more."""
        return self.spares and any(depth >= 1.0 for depth in self.depths(state))

    def total_ah(self, state: Charge) -> float:
        """Return the charge that is left in all packs."""
        return sum(wells.total_ah for row in state for wells in row)

    def aged(self, hours: float) -> "Bank":
        """Return the bank some hours later, with the resistance its packs have grown."""
        return self._replace(strings=tuple(tuple(p.aged(hours) for p in s) for s in self.strings))

    def depths(self, state: Charge) -> tuple[float, ...]:
        """Return how empty the wells at hand of each pack are; over 1 a cell is being reversed."""
        pairs = zip(self.strings, state, strict=True)
        return tuple(p.depth(w) for string, row in pairs for p, w in zip(string, row, strict=True))

    def _ends(self, state: Charge) -> list[tuple[float, float]]:
        """Return volts and ohms of each string."""
        found = []
        for string, row in zip(self.strings, state, strict=True):
            emf_v = ohms = 0.0  # added up by hand: this is asked for more often than anything else
            for pack, wells in zip(string, row, strict=True):
                pack_v, pack_ohms = pack.thevenin(wells)
                emf_v += pack_v
                ohms += pack_ohms
            found.append((emf_v, ohms))
        return found

    def _moved(
        self, state: Charge, ends: list[tuple[float, float]], current_a: float, hours: float
    ) -> Charge:
        """Return the state after a time in which the strings have those volts and ohms."""
        siemens = sum(1.0 / ohms for _, ohms in ends)
        volts = (sum(emf / ohms for emf, ohms in ends) - current_a) / siemens
        return tuple(
            tuple(
                pack.after(wells, (emf - volts) / ohms, hours)
                for pack, wells in zip(string, row, strict=True)
            )
            for string, row, (emf, ohms) in zip(self.strings, state, ends, strict=True)
        )

    def _shared(self, state: Charge, current_a: float, hours: float) -> Charge:
        """Return the state when strings that are about level share the current by their charge."""
        whole = sum(min(pack.capacity_ah for pack in string) for string in self.strings)
        return tuple(
            tuple(
                pack.after(wells, current_a * min(p.capacity_ah for p in string) / whole, hours)
                for pack, wells in zip(string, row, strict=True)
            )
            for string, row in zip(self.strings, state, strict=True)
        )

    def _exchange_h(self, state: Charge, ends: list[tuple[float, float]]) -> tuple[float, bool]:
        """Return how long a step of levelling out may be, and whether anything worth it flows."""
        volts = sum(emf / ohms for emf, ohms in ends) / sum(1.0 / ohms for _, ohms in ends)
        longest, flows = float("inf"), False
        for string, row, (emf, ohms) in zip(self.strings, state, ends, strict=True):
            amps = abs(emf - volts) / ohms
            slope = 0.0
            for pack, wells in zip(string, row, strict=True):
                flows = flows or amps > BALANCED * pack.capacity_ah
                if amps > 0:  # no step may carry a pack out of the stretch whose slope it was made for
                    longest = min(longest, STEEP_UNTIL * pack.share * pack.capacity_ah / amps)
                depth = pack.depth(wells)
                fall = pack.emf_v(depth - STEEP_UNTIL) - pack.emf_v(depth + STEEP_UNTIL)
                slope += fall / (2 * STEEP_UNTIL * pack.share * pack.capacity_ah)
            if slope > 0:
                longest = min(longest, OWN_TIME * ohms / slope)
        return longest, flows

    def _each(self, state: Charge, change: Callable[[Pack, Wells], Wells]) -> Charge:
        return tuple(
            tuple(change(pack, wells) for pack, wells in zip(string, row, strict=True))
            for string, row in zip(self.strings, state, strict=True)
        )


def part_of(pack: Pack, cells: int, of: int, capacity: float = 1.0) -> Pack:
    """Return some of the cells of a pack in series, with that share of its capacity.

    Less capacity goes with more resistance in the same measure.
    """
    share = cells / of
    return pack._replace(
        capacity_ah=pack.capacity_ah * capacity,
        ohms_full=pack.ohms_full * share / capacity,
        emfs_v=tuple(v * share for v in pack.emfs_v),
        floor_v=pack.floor_v * share,
    )


def with_weak_cell(pack: Pack, cells: int, side_by_side: int, weakest: float, spares: bool) -> Bank:
    """Return a battery of that many cells in series, one cell of one string weaker than the others."""
    string = _strings(pack, 1, side_by_side)
    others = (part_of(string, cells - 1, cells),) if cells > 1 else ()
    weak = (*others, part_of(string, 1, cells, weakest))
    rest = ((_strings(pack, side_by_side - 1, side_by_side),),) if side_by_side > 1 else ()
    return Bank((weak, *rest), spares)


def _strings(pack: Pack, count: int, of: int) -> Pack:
    """Return some of the strings of a pack, as one: equal ones side by side carry equal currents."""
    return pack._replace(capacity_ah=pack.capacity_ah * count / of, ohms_full=pack.ohms_full * of / count)
