"""The course of a discharge as a drawing needs it: volts and lightness, and when sessions were."""

from itertools import pairwise
from typing import Any

import numpy as np

from wiring.studies.battery_demands import Demands, faintest
from wiring.studies.cells.discharge import Run
from wiring.studies.outlook import Curve

CURVE_POINTS = 240
MOMENT_H = 1e-6


def course_of(run: Run[Any], demands: Demands) -> Curve:
    """Return a discharge thinned to what a drawing can show, with the look of the faintest lamp."""
    samples = run.samples
    if len(samples) > CURVE_POINTS:
        step = (len(samples) - 1) / (CURVE_POINTS - 1)
        samples = tuple(samples[round(i * step)] for i in range(CURVE_POINTS))
    volts = np.array([s.volts_v for s in samples])
    on = np.array([s.on for s in samples], dtype=np.intp)
    looks = np.full(len(samples), np.nan)
    for patterns in sorted(set(on.tolist())):
        lit, at = demands.lit(patterns), on == patterns
        found = faintest(lit, volts[at]) if lit is not None else None
        if found is not None:
            looks[at] = found
    dark = np.isnan(looks)
    if dark.all():
        looks = looks[:0]
    elif dark.any():  # a set of scenes without lamps: the last look there was stands on
        looks = np.interp(np.arange(len(looks)), np.flatnonzero(~dark), looks[~dark])
    return Curve(
        hours=tuple(s.lit_h for s in samples),
        days=tuple(s.elapsed_h / 24 for s in samples),
        volts=tuple(s.volts_v for s in samples),
        lightness=tuple(float(v) for v in looks),
        sessions=_sessions(run),
    )


def _sessions(run: Run[Any]) -> tuple[tuple[float, float], ...]:
    """Return first and last day of each stretch in which lamps are lit."""
    found: list[tuple[float, float]] = []
    for one, other in pairwise(run.samples):
        if other.lit_h <= one.lit_h:
            continue
        start, end = one.elapsed_h / 24, other.elapsed_h / 24
        if found and start - found[-1][1] < MOMENT_H:
            start = found.pop()[0]
        found.append((start, end))
    return tuple(found)
