"""What the servos of a supply draw when all move, or all are stuck, at once."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.studies.runs import Runs
from wiring.studies.settings import number


class ServoDraw(NamedTuple):
    """The servos one supply feeds, amperes of the whole supply with everything else as it is."""

    supply: PartId
    servos: tuple[PartId, ...]
    now_a: float
    moving_a: float
    stalled_a: float
    limit_a: float


def servo_draws(plan: Plan, kinds: Mapping[str, Kind], figures: Figures, runs: Runs) -> tuple[ServoDraw, ...]:
    """Return what each supply with servos must give; servos keep their current, so it is a plain sum."""
    by_supply: dict[PartId, list[PartId]] = {}
    for part_id in runs:
        supply = runs.supply_of(part_id)
        if supply is not None and kinds[plan.parts[part_id].kind].behaviour == "servo":
            by_supply.setdefault(supply, []).append(part_id)
    found = []
    for supply, servos in by_supply.items():
        figure = figures.supplies[supply]
        more = {
            setting: sum(
                max(
                    number(plan.parts[s], kinds[plan.parts[s].kind], setting) - figures.parts[s].current_a,
                    0.0,
                )
                for s in servos
            )
            for setting in ("moving_a", "stalled_a")
        }
        now_a = figure.current_a
        found.append(
            ServoDraw(
                supply,
                tuple(servos),
                now_a,
                now_a + more["moving_a"],
                now_a + more["stalled_a"],
                figure.rated_a,
            )
        )
    return tuple(found)
