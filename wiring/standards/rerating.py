"""Filament lamps away from their rated voltage: the re-rating exponents of a ratio to it.

Verified: an encyclopaedia's page citing Fink & Beaty, Standard Handbook for Electrical Engineers, 11th ed.
1978, p. 22-8. Light is printed as 3.4 to 3.5, life as -12 to -16: -12 tells how long a lamp that gets too
much lives at most, and is what a maker of lamps prints. Printed for ratios near 1: not valid far below 0.7.
"""

CURRENT_EXPONENT = 0.55
LIGHT_EXPONENT = 3.4
LIFE_EXPONENT = -12.0
