"""Looking at every place of a label at once says what looking at each in turn does."""

import numpy as np
import pytest

from wiring.drawings.plan_cells import any_within, sums_within

CELLS = (np.random.default_rng(7).random((23, 31)) < 0.08).astype(np.uint8)


@pytest.mark.parametrize(("down", "across"), [(1, 1), (2, 3), (5, 8), (7, 13), (23, 31)])
def test_every_window_is_looked_at(down, across):
    windows = np.lib.stride_tricks.sliding_window_view(CELLS, (down, across))
    assert np.array_equal(any_within(CELLS, down, across), windows.max(axis=(2, 3)))
    assert np.array_equal(any_within(CELLS, down, across, 3), windows.max(axis=(2, 3))[::3, ::3])
    assert np.array_equal(sums_within(CELLS, down, across), windows.sum(axis=(2, 3)))


def test_no_place_is_free_where_no_window_fits():
    assert any_within(CELLS, 24, 2).all()
    assert (sums_within(CELLS, 2, 32) == 64).all()
