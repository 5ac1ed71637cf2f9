"""What the window does with panels: onto the bench, and their wires out as one harness."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from wiring.edits.panel_harness import bring_out

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

WHICH = "Click the name of the panel that is meant, or a part that sits in it."
NONE = "The plan has no panel yet; draw one first."


def panel_acts(window: "MainWindow") -> dict[str, Callable[[], object]]:
    """Return each act by its name."""
    return {"bench": lambda: _bench(window), "bring_out": lambda: _bring_out(window)}


def _meant(window: "MainWindow") -> str:
    """Return the panel on the bench, or the one that is selected; "" after saying why there is none."""
    panel_bench = window.plan_view.bench
    panel_id = panel_bench.bench.panel or panel_bench.meant()
    if not panel_id:
        window.session.refused.emit(WHICH if window.session.plan.panels else NONE)
    return panel_id


def _bench(window: "MainWindow") -> None:
    window.show_view("plan")
    panel_bench = window.plan_view.bench
    if panel_bench.is_open:
        panel_bench.open("")
    elif panel_id := _meant(window):
        panel_bench.open(panel_id)


def _bring_out(window: "MainWindow") -> None:
    panel_id = _meant(window)
    if panel_id:
        window.session.do(bring_out(panel_id, kinds=window.session.kinds))
