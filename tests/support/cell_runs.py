"""Discharges of one bare cell or battery, as the makers' tests run them."""

import numpy as np

from wiring.standards.cells import CELLS
from wiring.studies.cells.discharge import STEP, Demand, run_patterns
from wiring.studies.cells.load import tabled
from wiring.studies.cells.pack import packed
from wiring.studies.cells.timeline import Pattern

CONTINUOUS = (1e6, 1e6)
FOREVER_H = 1e6
KEPT = {"shelf_per_h": 0.0, "ageing_per_h": 0.0}


def resistor(ohms, top_v=20.0):
    volts = np.linspace(0, top_v, 9)
    return tabled(volts, volts / ohms)


def current(amps, top_v=20.0):
    volts = np.linspace(0, top_v, 9)
    return tabled(volts, np.full(9, amps))


def power(watts, top_v=20.0):
    volts = np.linspace(0.05, top_v, 2000)
    return tabled(volts, watts / volts)


def life(key, load, end_v, daily=CONTINUOUS, step=STEP, pack=None):
    """The whole run of a battery of that type; daily = (hours on, hours from start to start)."""
    whole = pack or packed(CELLS[key])
    return run_patterns(whole, {1: Demand(load, end_v)}, [Pattern(*daily)], FOREVER_H, step=step)
