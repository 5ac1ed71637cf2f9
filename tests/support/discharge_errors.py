"""How far the model is from every published discharge its battery types were fitted to, by chemistry."""

from collections.abc import Mapping

from support.cell_runs import current, life
from support.published import (
    FITTED,
    FITTED_ZINC,
    LEAD_ACID,
    LEAD_HOURS,
    LITHIUM_BLOCK,
    LITHIUM_ION,
    NIMH_RATES,
)

from wiring.standards.cells import CELLS
from wiring.studies.cells.pack import packed

BOUND = 0.15  # of the published hours or charge: what is asked of every chemistry


def fitted_errors() -> Mapping[str, Mapping[str, float]]:
    """Return the relative errors of all fitted cases, by chemistry and case."""
    found: dict[str, dict[str, float]] = {}
    for name, (key, load, daily, end_v, hours) in {**FITTED, **FITTED_ZINC}.items():
        error = life(key, load, end_v, daily).lit_h / hours - 1
        found.setdefault(CELLS[key].chemistry, {})[name] = error
    found["lead-acid"] = {
        f"{amps:g} A to {end_v} V a cell": life("lead-acid 12 V", current(amps), 6 * end_v).lit_h / hours - 1
        for end_v, row in LEAD_ACID.items()
        for hours, amps in zip(LEAD_HOURS, row, strict=True)
    }
    small = packed(CELLS["nimh AA"], capacity_ah=0.45)
    found["nimh"] = {
        f"{rate:g} It": life("", current(rate * 0.45), end_v, pack=small).delivered_ah / 0.45 / share - 1
        for rate, end_v, share in NIMH_RATES
    }
    key, load, daily, end_v, charge_ah = LITHIUM_BLOCK
    found["lithium"] = {"9 V on 60 ohm": life(key, load, end_v, daily).delivered_ah / charge_ah - 1}
    found["li-ion"] = {key: _as_rated(key) for key in LITHIUM_ION}
    return found


def _as_rated(key: str) -> float:
    cell = CELLS[key]
    run = life(key, current(0.2 * cell.rated_ah), 2.75 * cell.cells_in_series)
    return run.delivered_ah / cell.rated_ah - 1
