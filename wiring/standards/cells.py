"""Battery types: voltage over charge, capacity, two-well constants and inner resistance.

The model behind the numbers: charge sits in an available well (share ``c``) and a bound well that refills it
at ``k_per_h``; the open-circuit voltage falls with the depth x of the available well; the resistance is
``r0_ohm * (1 + r1 * x)``. Fitted to makers' published discharge tests (alkaline 17 cases, mean error 3.5 %,
worst 12 %; lead-acid 66 points, mean 1.7 %). Brands differ more than that, hence the grades.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

Emf = tuple[tuple[float, float], ...]


class Grades(NamedTuple):
    """Factors on capacity for a poor, an ordinary and the best cell, and on resistance for a poor one."""

    low: float
    typical: float
    high: float
    low_ohm: float = 1.0


class CellType(NamedTuple):
    """One battery type as sold; volts are per cell, everything else for the whole battery."""

    key: str
    title: str
    chemistry: str
    cells_in_series: int
    capacity_ah: float  # charge in both wells of a fresh one
    c: float  # share of the charge that is available at once
    k_per_h: float  # how fast the bound charge follows
    r0_ohm: float
    r1: float
    emf_table: Emf  # (depth of the available well, volts per cell)
    floor_v: float  # per cell: empty, or where a rechargeable must be taken off
    shelf_per_year: float  # share of its charge it loses in a year on the shelf at 20 °C
    rechargeable: bool
    source: str
    rated_ah: float  # capacity as printed on it that goes with `capacity_ah`; both and 1/r0 scale together
    grades: Grades = Grades(0.9, 1.0, 1.1)
    ageing_ohm_per_year: float = 0.0  # growth of r0 a year on the shelf

    @property
    def nominal_v(self) -> float:
        """Volts printed on it."""
        return self.cells_in_series * _NOMINAL_V[self.chemistry]

    @property
    def fresh_v(self) -> float:
        """Open-circuit volts when fresh or fully charged."""
        return self.cells_in_series * self.emf_table[0][1]


_NOMINAL_V = {
    "alkaline": 1.5, "zinc-carbon": 1.5, "nimh": 1.2, "lithium": 3.0, "li-ion": 3.6, "lead-acid": 2.0,
}  # fmt: skip

_EMPTY = (1.02, 0.0)  # an emptied well always ends the run
_ALKALINE: Emf = (
    (0.0, 1.620), (0.02, 1.562), (0.06, 1.489), (0.15, 1.396), (0.30, 1.330), (0.50, 1.282),
    (0.70, 1.133), (0.85, 0.916), (0.94, 0.874), (1.0, 0.696), _EMPTY,
)  # fmt: skip
_ZINC: Emf = (
    (0.0, 1.600), (0.03, 1.583), (0.1, 1.548), (0.3, 1.462), (0.5, 1.387), (0.7, 1.325),
    (0.85, 1.241), (1.0, 1.038), _EMPTY,
)  # fmt: skip
_LEAD: Emf = (
    (0.0, 2.135), (0.1, 2.096), (0.3, 2.056), (0.5, 1.974), (0.7, 1.903), (0.85, 1.854),
    (0.95, 1.645), (1.0, 1.343), _EMPTY,
)  # fmt: skip
_NIMH: Emf = (
    (0.0, 1.420), (0.1, 1.315), (0.2, 1.274), (0.3, 1.266), (0.4, 1.263), (0.5, 1.257),
    (0.6, 1.254), (0.7, 1.244), (0.8, 1.231), (0.9, 1.194), (1.0, 1.004), _EMPTY,
)  # fmt: skip
_LI_ION: Emf = (
    (0.0, 4.032), (0.1, 3.936), (0.2, 3.842), (0.3, 3.764), (0.4, 3.680), (0.5, 3.602),
    (0.6, 3.532), (0.7, 3.449), (0.8, 3.372), (0.9, 3.146), (1.0, 2.502), _EMPTY,
)  # fmt: skip
_LITHIUM: Emf = (
    (0.0, 3.05), (0.1, 2.985), (0.2, 2.962), (0.3, 2.955), (0.4, 2.949), (0.5, 2.927),
    (0.6, 2.882), (0.7, 2.812), (0.8, 2.689), (0.9, 2.444), (1.0, 1.906), _EMPTY,
)  # fmt: skip

_ALKALINE_FIT = (
    "fitted to makers' published discharge tests (IEC 60086-2 loads); the low grade is the IEC minimum"
)
_ZINC_FIT = "fitted to a handbook table of zinc-carbon service hours; indicative, ±25 %"
_NIMH_FIT = "fitted to a maker's sheet after IEC 61951-2; open-circuit curve published at 10 % steps"
_ALKALINE_GRADES = Grades(0.65, 0.92, 1.0, 1.3)
_ZINC_GRADES = Grades(0.75, 1.0, 1.25)


def _alkaline(size: str, iec: str, cells: int, ah: float, k_per_h: float, r0_ohm: float) -> CellType:
    return CellType(
        f"alkaline {size}", f"Alkaline {size} ({iec})", "alkaline", cells, ah, 0.50, k_per_h, r0_ohm, 3.1,
        _ALKALINE, 0.8, 0.025, False, _ALKALINE_FIT, ah, _ALKALINE_GRADES, 0.2,
    )  # fmt: skip


def _zinc(size: str, iec: str, cells: int, ah: float, k_per_h: float, r0_ohm: float) -> CellType:
    return CellType(
        f"zinc-carbon {size}", f"Zinc-carbon {size} ({iec})", "zinc-carbon", cells, ah, 0.226, k_per_h,
        r0_ohm, 2.5, _ZINC, 0.8, 0.10, False, _ZINC_FIT, ah, _ZINC_GRADES,
    )  # fmt: skip


def _nimh(size: str, cells: int, rated_ah: float) -> CellType:
    """Rated 0.2 It capacity; shelf loss of the low-self-discharge type."""
    return CellType(
        f"nimh {size}", f"NiMH {size}, rechargeable", "nimh", cells, 1.027 * rated_ah, 0.73, 4.4,
        cells * 0.063 / rated_ah, 0.0, _NIMH, 1.0, 0.6, True, _NIMH_FIT, rated_ah,
    )  # fmt: skip


_LITHIUM_9V = CellType(
    key="lithium 9 V",
    title="Lithium 9 V, not rechargeable",
    chemistry="lithium",
    cells_in_series=3,
    capacity_ah=1.2,
    c=0.90,
    k_per_h=2.0,
    r0_ohm=4.0,
    r1=1.5,
    emf_table=_LITHIUM,
    floor_v=2.0,
    shelf_per_year=0.015,
    rechargeable=False,
    source="set from a maker's figures as quoted second-hand: 1.2 Ah, 960 mAh to 7.0 V on 60 ohm",
    rated_ah=1.2,
)
_LI_ION_18650 = CellType(
    key="li-ion 18650",
    title="Li-ion 18650, rechargeable, protected",
    chemistry="li-ion",
    cells_in_series=1,
    capacity_ah=2.5,
    c=0.95,
    k_per_h=4.0,
    r0_ohm=0.2 / 2.5,
    r1=0.0,
    emf_table=_LI_ION,
    floor_v=3.0,
    shelf_per_year=0.1,
    rechargeable=True,
    source="open-circuit curve published at 10 % steps; rate hardly matters; shelf loss from memory",
    rated_ah=2.5,
)
_LEAD_ACID_12V = CellType(
    key="lead-acid 12 V",
    title="Sealed lead-acid 12 V",
    chemistry="lead-acid",
    cells_in_series=6,
    capacity_ah=8.14,
    c=0.427,
    k_per_h=1.03,
    r0_ohm=0.035,
    r1=1.4,
    emf_table=_LEAD,
    floor_v=1.75,
    shelf_per_year=0.36,
    rechargeable=True,
    source="fitted to a maker's discharge table of a 12 V 7 Ah battery, 66 points",
    rated_ah=6.86,  # what that 7 Ah battery gives in 20 h to 1.75 V a cell
    grades=Grades(0.95, 1.0, 1.05),
)

_TYPES = (
    _alkaline("AAA", "LR03", 1, 1.43, 0.858, 0.28),
    _alkaline("AA", "LR6", 1, 3.25, 0.450, 0.15),
    _alkaline("C", "LR14", 1, 8.07, 0.138, 0.16),
    _alkaline("D", "LR20", 1, 17.7, 0.0809, 0.17),
    _alkaline("9 V", "6LR61", 6, 0.718, 1.37, 2.6),
    _zinc("AA", "R6", 1, 1.03, 1.6, 0.34),
    _zinc("9 V", "6F22", 6, 0.298, 2.46, 27.0),
    _nimh("AAA", 1, 0.8),
    _nimh("AA", 1, 2.0),
    _nimh("9 V", 7, 0.2),
    _LITHIUM_9V,
    _LI_ION_18650,
    _LEAD_ACID_12V,
)

CELLS: Mapping[str, CellType] = MappingProxyType({cell.key: cell for cell in _TYPES})
