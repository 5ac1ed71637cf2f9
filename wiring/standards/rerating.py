"""Filament lamps away from their rated voltage: the re-rating exponents.

Verified: an encyclopaedia's page citing Fink & Beaty, Standard Handbook for Electrical Engineers, 11th ed.
1978, p. 22-8; a lamp maker's glossary confirms life ∝ V^−12. Printed ranges are 3.4 to 3.5 for light and
−12 to −16 for life; the cautious end is taken. Not valid far below seven tenths of the rated voltage.
"""

CURRENT_EXPONENT = 0.55
LIGHT_EXPONENT = 3.4
LIFE_EXPONENT = -12.0
POWER_EXPONENT = 1.0 + CURRENT_EXPONENT  # printed rounded as 1.6

VALID_RATIO = (0.7, 1.15)


def relative_current(ratio: float) -> float:
    """Return current over rated current at a ratio of voltage to rated voltage."""
    return float(max(ratio, 0.0) ** CURRENT_EXPONENT)


def relative_light(ratio: float) -> float:
    """Return light over rated light at a ratio of voltage to rated voltage."""
    return float(max(ratio, 0.0) ** LIGHT_EXPONENT)


def relative_life(ratio: float) -> float:
    """Return life over rated life; the ratio must be above nothing."""
    return float(ratio**LIFE_EXPONENT)
