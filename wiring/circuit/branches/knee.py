"""A straight line that bends into a plateau, smooth enough for Newton and sharp enough to be believed."""

import numpy as np

from wiring.circuit.branches.law import Curve, Floats

SHARPNESS = 0.005  # width of the bend as a share of where it lies
TAIL = 0.01  # how much the plateau still rises over the range given as `span`


def bend(knee: Floats, span: Floats) -> Curve:
    """Return u -> (y, dy/du): y = u below the knee, about `knee` above, rising by one hundredth over `span`.

    y(0) is 0 to the last digit: exp(-1 / SHARPNESS) is below any rounding. An infinite knee never bends.
    """
    bends = np.isfinite(knee)
    at = np.where(bends, knee, 1.0)
    width = SHARPNESS * at
    lost = 1.0 - TAIL * at / span
    everywhere = bool(bends.all())

    def bent(u: Floats) -> tuple[Floats, Floats]:
        far = (u - at) / width
        gentle = np.exp(-np.abs(far))
        over = width * (np.maximum(far, 0.0) + np.log1p(gentle))
        share = np.where(far > 0, 1.0, gentle) / (1.0 + gentle)
        y, slope = u - lost * over, 1.0 - lost * share
        if everywhere:
            return y, slope
        return np.where(bends, y, u), np.where(bends, slope, 1.0)

    return bent


def bent_expression(u: str, knee: float, span: float) -> str:
    """Return the same bend as an expression for a B source."""
    width = SHARPNESS * knee
    far = f"(({u})-{knee!r})/{width!r}"
    over = f"{width!r}*(max({far},0)+ln(1+exp(-abs({far}))))"
    return f"(({u})-{1.0 - TAIL * knee / span!r}*{over})"
