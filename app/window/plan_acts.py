"""What is done to the selected parts of the plan beside turning and removing: feeding and arranging them."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from app.canvas.wireway_menu import route_all
from app.window.actions import LINES, MIRRORED, SPACED
from wiring.edits.align import align
from wiring.edits.distribute import distribute
from wiring.edits.edit import Edit
from wiring.edits.mirror import mirror

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

NEED_PARTS = ("feed", *LINES, *SPACED, *MIRRORED)


def plan_acts(window: "MainWindow") -> dict[str, Callable[[], object]]:
    """Return each act by its name."""
    kinds = window.session.kinds
    edits: dict[str, Callable[[frozenset[str]], Edit]] = {
        "left": lambda ids: align(ids, "left", kinds=kinds),
        "right": lambda ids: align(ids, "right", kinds=kinds),
        "top": lambda ids: align(ids, "top", kinds=kinds),
        "bottom": lambda ids: align(ids, "bottom", kinds=kinds),
        "row": lambda ids: align(ids, "row", kinds=kinds),
        "column": lambda ids: align(ids, "column", kinds=kinds),
        "space_across": lambda ids: distribute(ids, "across"),
        "space_down": lambda ids: distribute(ids, "down"),
        "mirror_across": lambda ids: mirror(ids, "across", kinds=kinds),
        "mirror_down": lambda ids: mirror(ids, "down", kinds=kinds),
    }
    acts: dict[str, Callable[[], object]] = {name: partial(_do, window, e) for name, e in edits.items()}
    acts["route"] = lambda: route_all(window.session, window.selection.ids)
    acts["feed"] = partial(_feed, window)
    return acts


def _do(window: "MainWindow", edit: Callable[[frozenset[str]], Edit]) -> None:
    window.session.do(edit(window.selection.ids))


def _feed(window: "MainWindow") -> None:
    window.show_view("plan")
    window.plan_view.begin_feed()
    window.plan_view.setFocus()
