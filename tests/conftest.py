"""Settings every test stands on: no screen, nobody's home folder, the same examples in each run."""

import os

from hypothesis import settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

# So that a landing never hangs on chance; `pytest --hypothesis-profile=fresh` draws new examples.
settings.register_profile("steady", derandomize=True, deadline=None)
settings.register_profile("fresh", deadline=None)
settings.load_profile("steady")
