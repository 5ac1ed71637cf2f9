"""Newton's step for the volts of capacitors that must come back, after one cycle, to where they were."""

import numpy as np

from wiring.circuit.linear import Floats


def closing_move(stiff: Floats, slopes: Floats, short: Floats) -> Floats:
    """Return by how much to move each capacitor at each moment, so that the charge balances all close.

    `stiff` is farads over seconds per capacitor, `slopes` amperes per volt (moment, capacitor, capacitor),
    `short` the amperes each balance is off. Each moment's move follows from the one before by the trapezoidal
    rule, and once round must lead back. LinAlgError where it cannot.
    """
    points, count = short.shape
    here, after = np.diag(stiff) + 0.5 * slopes, np.diag(stiff) - 0.5 * np.roll(slopes, -1, axis=0)
    onward = np.linalg.solve(after, np.concatenate((here, -short[:, :, None]), axis=2))
    begins, gains = np.zeros((points + 1, count)), np.zeros((points + 1, count, count))
    gains[0] = np.eye(count)
    for moment in range(points):
        step = onward[moment, :, :count]
        begins[moment + 1] = step @ begins[moment] + onward[moment, :, count]
        gains[moment + 1] = step @ gains[moment]
    first = np.linalg.solve(np.eye(count) - gains[-1], begins[-1])
    return np.asarray(begins[:-1] + gains[:-1] @ first)
