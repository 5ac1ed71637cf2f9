"""Loads large libraries in the background, so that the first feed or route need not wait for them."""

from importlib import import_module
from threading import Thread

WANTED_SOON = ("networkx",)


def import_early(names: tuple[str, ...] = WANTED_SOON) -> Thread:
    """Begin to import modules without waiting; who needs one meanwhile waits for the rest of it only."""

    def load() -> None:
        for name in names:
            import_module(name)

    thread = Thread(target=load, name="early import", daemon=True)
    thread.start()
    return thread
