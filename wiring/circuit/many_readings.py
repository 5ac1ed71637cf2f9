"""Figures of many parts, or of all wires, at once as arrays."""

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property
from itertools import repeat
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.behaviours.light import GLOWS
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.compiled import CompiledPart
from wiring.circuit.figures import Figures, PartFigure, WireFigure
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.reading import Reading
from wiring.circuit.readings import Readings
from wiring.circuit.telling import chosen, telling
from wiring.plan.names import PartId, WireId

Flags = NDArray[np.bool_]


class WireColumns(NamedTuple):
    """Current, drop and ohms of wires, as in their figures; rows of wires without figures are not known."""

    rows: Mapping[WireId, int]
    amps: Floats
    drops_v: Floats
    ohms: Floats
    known: Flags


class PartColumns(NamedTuple):
    """Volts, current and watts of parts, as in their figures; what is not known reads nought."""

    known: Flags
    volts: Floats
    amps: Floats
    power: Floats


class WireReadings(Readings[WireFigure]):
    """Figures of wires, by one or all together."""

    def __init__(
        self, columns: WireColumns, left_out: frozenset[WireId], make: Callable[[str], WireFigure]
    ) -> None:
        """Take the columns beside what makes single figures."""
        super().__init__(columns.rows, left_out, make)
        self.columns = columns


class PartReadings(Readings[PartFigure]):
    """Figures of parts, by one or many together."""

    def __init__(
        self,
        assembly: Assembly,
        reading: Reading,
        swings: Flags,
        left_out: frozenset[PartId],
        make: Callable[[str], PartFigure],
    ) -> None:
        """Take what the figures are read from; `swings` tells of each branch whether AC reaches it."""
        super().__init__(assembly.parts, left_out, make)
        self._assembly, self._reading, self._swings = assembly, reading, swings

    @cached_property
    def _single(self) -> tuple[Flags, PartColumns, Floats]:
        """Which parts of the table have one branch that tells their figures, what it reads, and its mean."""
        assembly, reading = self._assembly, self._reading
        table, roles = assembly.table, assembly.roles
        if not len(reading.volts):
            nothing = np.zeros(len(table.ids), dtype=np.bool_)
            return nothing, PartColumns(nothing, *np.zeros((3, len(table.ids)))), np.zeros(len(table.ids))
        tell = assembly.kept.of(("telling", roles, table), lambda: telling(roles, table))
        known = tell.single & ~table.left_out
        if reading.failed.any():
            failed = np.append(0, np.cumsum(reading.failed))
            known &= failed[table.first_branch + table.branches] == failed[table.first_branch]
        if tell.choices:
            tell = tell._replace(branch=chosen(tell, reading))
        amps = mean = reading.mean_amps[tell.branch]
        if self._swings.any():
            amps = np.where(self._swings[tell.branch], reading.amps[tell.branch], mean)
        volts, power = reading.volts[tell.branch], reading.power[tell.branch]
        volts, amps, mean = (np.where(tell.signed, column, np.abs(column)) for column in (volts, amps, mean))
        for row, begin, end in tell.several:
            power[row] = sum(reading.power[begin:end].tolist())
        columns = (np.where(known, values, 0.0) for values in (volts, amps, power))
        return tell.single, PartColumns(known, *columns), mean

    def mean_out_a(self, part: PartId, terminal: str) -> float:
        """Return the current that comes out of a terminal, on average over a cycle; nought if not known."""
        compiled, span = self._assembly.parts.get(part), self._assembly.spans.get(part, range(0))
        names = [t.name for t in compiled.kind.terminals] if compiled is not None else []
        if compiled is None or part in self._left_out or not span or terminal not in names:
            return 0.0
        place, means = names.index(terminal), self._reading.mean_amps[span.start : span.stop].tolist()
        return float(
            sum(
                mean * ((b == place) - (a == place))
                for mean, (a, b) in zip(means, compiled.ends, strict=True)
            )
        )

    def many(self, ids: Sequence[PartId], *, plainly: bool) -> PartColumns:
        """Return the figures of those parts as columns.

        `plainly` promises that the parts' behaviours read off volts, current and watts as they are
        (`Behaviour.restates`); a part of which one branch tells is then read from the arrays.
        """
        if not ids:
            return PartColumns(np.zeros(0, dtype=np.bool_), *np.zeros((3, 0)))
        rows, plain = self._rows_of(ids, plainly=plainly)
        all_of_them = self._single[1]
        if plain.all():
            known, volts, amps, power = all_of_them
            return PartColumns(known[rows], volts[rows], amps[rows], power[rows])
        known = np.zeros(len(ids), dtype=np.bool_)
        volts, amps, power = np.zeros((3, len(ids)))
        for column, read in zip((known, volts, amps, power), all_of_them, strict=True):
            column[plain] = read[rows[plain]]
        for row in np.flatnonzero(~plain).tolist():
            figure = self.get(ids[row])
            if figure is not None:
                known[row] = True
                volts[row], amps[row], power[row] = figure.volts_v, figure.current_a, figure.power_w
        return PartColumns(known, volts, amps, power)

    def light(self, ids: Sequence[PartId]) -> Floats:
        """Return the light of those parts over their rated one; NaN where none is told.

        The ids must be the same object as long as they are the same.
        """
        parts = self._assembly.parts
        shines = self._assembly.kept.of(("shines", parts, ids), lambda: _shines(parts, ids))
        rows, plain = self._rows_of(ids, plainly=True)
        if not plain.any():
            return np.array([_light(self.get(one)) for one in ids], dtype=np.float64)
        _, (known, volts, *_), mean_amps = self._single
        told = np.where(shines.of_volts, np.abs(volts[rows]), mean_amps[rows]) / shines.full
        told[shines.bent] **= shines.exponent[shines.bent]
        light = np.where(told > GLOWS, told, 0.0)
        light[~known[rows] | np.isnan(shines.full)] = np.nan
        for row in np.flatnonzero(~plain).tolist():
            light[row] = _light(self.get(ids[row]))
        return light

    def _rows_of(self, ids: Sequence[PartId], *, plainly: bool) -> tuple[Ints, Flags]:
        """Return the row of each part, and for which of them it may be read plainly."""
        place = self._assembly.table.rows
        rows = np.fromiter(map(place.get, ids, repeat(-1)), dtype=np.intp, count=len(ids))
        single = self._single[0]
        if not plainly or not len(single):
            return rows, np.zeros(len(ids), dtype=np.bool_)
        return rows, single[rows] & (rows >= 0)


class _Shines(NamedTuple):
    """How the light of parts follows from what they read, row by row; NaN for what gives none."""

    full: Floats
    of_volts: Flags
    exponent: Floats
    bent: Ints  # rows of which the exponent counts


def _shines(parts: Mapping[PartId, CompiledPart], ids: Sequence[PartId]) -> _Shines:
    found = [parts[one].mould.shine if one in parts else None for one in ids]
    full, of_volts, exponent = zip(*(s or (np.nan, False, 1.0) for s in found), strict=True)
    powers = np.array(exponent, dtype=np.float64)
    return _Shines(
        np.array(full, dtype=np.float64),
        np.array(of_volts, dtype=np.bool_),
        powers,
        np.flatnonzero(powers != 1.0),
    )


def _light(figure: PartFigure | None) -> float:
    return np.nan if figure is None or figure.light is None else figure.light


def wire_columns(figures: Figures) -> WireColumns:
    """Return the figures of all wires as columns."""
    if isinstance(figures.wires, WireReadings):
        return figures.wires.columns
    told = list(figures.wires.values())
    rows = {wire: row for row, wire in enumerate(figures.wires)}
    made = np.array([(f.current_a, f.drop_v, f.ohms) for f in told], dtype=np.float64).reshape(-1, 3)
    return WireColumns(rows, made[:, 0], made[:, 1], made[:, 2], np.ones(len(told), dtype=np.bool_))


def mean_out_a(figures: Figures, part: PartId, terminal: str) -> float:
    """Return the current that comes out of a terminal of a part, on average; nought if not known."""
    if isinstance(figures.parts, PartReadings):
        return figures.parts.mean_out_a(part, terminal)
    figure = figures.parts.get(part)
    return 0.0 if figure is None else figure.current_a if figure.mean_a is None else figure.mean_a


def light_column(figures: Figures, ids: Sequence[PartId]) -> Floats:
    """Return the light of some parts, NaN where none is told; see `PartReadings.light`."""
    if not ids:
        return np.zeros(0)
    if isinstance(figures.parts, PartReadings):
        return figures.parts.light(ids)
    return np.array([_light(figures.parts.get(one)) for one in ids], dtype=np.float64)


def part_columns(figures: Figures, ids: Sequence[PartId], *, plainly: bool) -> PartColumns:
    """Return the figures of some parts as columns; see `PartReadings.many`."""
    if isinstance(figures.parts, PartReadings):
        return figures.parts.many(ids, plainly=plainly)
    told = [figures.parts.get(one) for one in ids]
    known = np.array([figure is not None for figure in told], dtype=np.bool_)
    made = np.array([figure[:3] if figure else (0.0, 0.0, 0.0) for figure in told], dtype=np.float64)
    volts, amps, power = made.reshape(-1, 3).T
    return PartColumns(known, volts, amps, power)
