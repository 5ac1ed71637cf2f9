"""The coloured bands of a resistor: IEC 60062, verified against a reference chart."""

import math
from typing import NamedTuple

DIGITS = ("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white")
MULTIPLIERS = {-3: "pink", -2: "silver", -1: "gold", **dict(enumerate(DIGITS))}
TOLERANCES = {
    0.10: "silver", 0.05: "gold", 0.01: "brown", 0.02: "red", 0.005: "green", 0.0025: "blue", 0.001: "violet",
}  # fmt: skip


class Bands(NamedTuple):
    """Colours from the end they are read from."""

    colours: tuple[str, ...]

    @property
    def words(self) -> str:
        """Colours joined for a sheet: "yellow – violet – red – gold"."""
        return " – ".join(self.colours)


def bands(ohms: float, tolerance: float = 0.05) -> Bands:
    """Return four bands, or five where two digits do not say it or the tolerance is 2 % or closer.

    ValueError when the value has no bands: not positive, more than three digits, or out of range.
    """
    if not (math.isfinite(ohms) and ohms > 0.0):
        raise ValueError("only a resistance above nothing has bands")
    if tolerance not in TOLERANCES:
        raise ValueError(f"there is no band for a tolerance of {tolerance:.2%}")
    for digits in (2, 3) if tolerance > 0.02 else (3,):
        exponent = math.floor(math.log10(ohms) + 1e-9) - digits + 1
        figures = round(ohms / 10.0**exponent)
        if math.isclose(figures * 10.0**exponent, ohms, rel_tol=1e-6) and exponent in MULTIPLIERS:
            named = tuple(DIGITS[int(d)] for d in str(figures))
            return Bands((*named, MULTIPLIERS[exponent], TOLERANCES[tolerance]))
    raise ValueError(f"{ohms:g} ohm is no value that bands can say")
