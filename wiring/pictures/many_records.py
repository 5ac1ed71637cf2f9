"""Pauses the collector of cycles while very many small records are made."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collector_paused() -> Iterator[None]:
    """Leave the collector off for a while: pictures are tuples of tuples, without a cycle to be found.

    It would look through all of them again and again, which is a third of the time a large set takes.
    """
    running = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if running:
            # what was made goes to the oldest generation, or the next small collection would look through it
            gc.freeze()
            gc.unfreeze()
            gc.enable()
