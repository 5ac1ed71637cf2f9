"""Settings every test stands on: no screen, nobody's home folder, the same examples in each run."""

import gc
import os

from hypothesis import settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
gc.disable()  # while thousands of tests are collected, none of which is ever garbage

# So that a landing never hangs on chance; `pytest --hypothesis-profile=fresh` draws new examples.
settings.register_profile("steady", derandomize=True, deadline=None)
settings.register_profile("fresh", deadline=None)
settings.load_profile("steady")


def pytest_collection_finish() -> None:
    """Look for garbage again, but never among the tests themselves, and less often: a tenth of all time."""
    gc.enable()
    gc.freeze()
    gc.set_threshold(20_000, 20, 50)
