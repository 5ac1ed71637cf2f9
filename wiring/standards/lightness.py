"""How light a lamp looks: CIE 1976 lightness, L* = 116 f(Y/Yn) − 16 (CIE e-ILV 17-23-076; verified)."""

EPSILON = 216.0 / 24389.0
KAPPA = 24389.0 / 27.0


def lightness(relative: float) -> float:
    """Return L*: 100 at full light, 50 at 18 %, 0 in the dark; light above full goes on above 100.

    Less than no light counts as none.
    """
    if not relative > 0.0:
        return 0.0
    if relative <= EPSILON:
        return KAPPA * relative
    return float(116.0 * relative ** (1.0 / 3.0) - 16.0)


def relative_light(lightness_: float) -> float:
    """Return the light, relative to full, that has this lightness: the inverse of :func:`lightness`."""
    if not lightness_ > 0.0:
        return 0.0
    if lightness_ <= KAPPA * EPSILON:
        return lightness_ / KAPPA
    return float(((lightness_ + 16.0) / 116.0) ** 3)
