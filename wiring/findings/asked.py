"""Parts of some behaviours, with their figures and settings as arrays: few need then be looked at singly."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.behaviours.all_behaviours import RESTATING
from wiring.circuit.linear import Floats
from wiring.circuit.many_readings import PartColumns, part_columns
from wiring.findings.situation import Situation
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.studies.keeping import kept
from wiring.studies.settings import number


class Asked(NamedTuple):
    """Parts in the plan's order; never written to."""

    ids: Sequence[PartId]
    parts: Sequence[Part]
    kinds: Sequence[Kind]
    plainly: bool  # whether their figures are those of their branch

    def rows(self, which: NDArray[np.bool_]) -> Iterator[tuple[int, Part, Kind]]:
        """Walk the rows that are set."""
        for row in np.flatnonzero(which).tolist():
            yield row, self.parts[row], self.kinds[row]


def asked(situation: Situation, behaviours: Collection[str]) -> Asked:
    """Return the parts that behave so; `behaviours` must be the same object each time."""
    return kept(_asked, situation.parts, situation.kinds, behaviours)


def figures_of(situation: Situation, some: Asked) -> PartColumns:
    """Return the figures of parts, row by row."""
    return part_columns(situation.figures, some.ids, plainly=some.plainly)


def settings_of(some: Asked, name: str) -> Floats:
    """Return a setting of each part, row by row; see `number`."""
    return kept(_settings, some, name)


def _asked(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind], behaviours: Collection[str]) -> Asked:
    found = [
        (part.id, part, kinds[part.kind])
        for part in parts.values()
        if part.kind in kinds and kinds[part.kind].behaviour in behaviours
    ]
    ids, some, of_kind = zip(*found, strict=True) if found else ((), (), ())
    return Asked(ids, some, of_kind, not RESTATING & set(behaviours))


def _settings(some: Asked, name: str) -> Floats:
    values = [number(part, kind, name) for part, kind in zip(some.parts, some.kinds, strict=True)]
    return np.array(values, dtype=np.float64)
