"""At which scale a plan is printed in tiles, as it is typed: ``1:5``, ``5``, ``1:7.5``."""

import re
from typing import NamedTuple

from wiring.drawings.plan_tiles import OVERLAP_MM

FIT = "fit"
SCALES = ("1:1", "1:2", "1:5", "1:10")  # those that are offered
SMALLEST = 100.0  # 1:100; a layout is smaller than that on one sheet
MOST_OVERLAP_MM = 50.0
_TYPED = re.compile(r"(?:1\s*:\s*)?(\d{1,3}(?:[.,]\d{1,3})?)", re.ASCII)


class Tiling(NamedTuple):
    """The scale of tiles, plan millimetres per paper millimetre, and how much neighbours share."""

    reduction: float = 1.0
    overlap_mm: float = OVERLAP_MM

    @property
    def scale(self) -> float:
        """Paper millimetres per plan millimetre."""
        return 1.0 / self.reduction


def read_tiling(typed: str, overlap_mm: float = OVERLAP_MM) -> Tiling | None:
    """Return the tiling a scale stands for, None for "fit"; ValueError with a plain sentence otherwise."""
    text = typed.strip().lower()
    if text in ("", FIT):
        return None
    match = _TYPED.fullmatch(text)
    reduction = float(match[1].replace(",", ".")) if match else 0.0
    if not 1.0 <= reduction <= SMALLEST:
        raise ValueError(
            f"“{typed[:40]}” is no scale for tiles; write one from 1:1 to 1:{SMALLEST:g} such as 1:5, or fit."
        )
    if not 0.0 <= overlap_mm <= MOST_OVERLAP_MM:
        raise ValueError(f"Tiles overlap by 0 to {MOST_OVERLAP_MM:g} mm, not by {overlap_mm:g} mm.")
    return Tiling(reduction, overlap_mm)
