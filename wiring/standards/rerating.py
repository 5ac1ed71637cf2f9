"""Filament lamps away from their rated voltage: the re-rating exponents of a ratio to it.

Verified: an encyclopaedia's page citing Fink & Beaty, Standard Handbook for Electrical Engineers, 11th ed.
1978, p. 22-8; a lamp maker's glossary confirms life ∝ V^−12. Printed ranges are 3.4 to 3.5 for light and
−12 to −16 for life; the cautious end is taken. Printed for ratios near 1: not valid far below 0.7.
"""

CURRENT_EXPONENT = 0.55
LIGHT_EXPONENT = 3.4
LIFE_EXPONENT = -12.0
