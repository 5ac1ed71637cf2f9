"""Jumps between the views: from what is shown anywhere to the plan, to its circuit, and back."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from app.canvas.focus import choices, seen
from app.window.mending import mend, mend_every

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

SHOWS_SELECTION = ("plan", "circuit")  # views in which one sees what is selected
NO_CIRCUIT = "It is in no drawn circuit: nothing feeds it yet."


def tie_jumps(window: "MainWindow") -> dict[str, Callable[[], object]]:
    """Connect what leads from view to view; return the acts by name."""
    window.circuit_page.opened.connect(lambda one: show_on_plan(window, (one,)))
    window.plan_view.opened.connect(lambda one: show_circuit(window, one))
    window.strip.pointed.connect(lambda ids: show_finding(window, ids))
    window.strip.mends.wanted.connect(lambda finding: mend(window, finding))
    window.strip.mends.all_wanted.connect(lambda of: mend_every(window, of))
    window.strip.left.connect(lambda: window.show_view(window.view))
    window.sheets_page.named.connect(lambda ids: show_on_plan(window, ids))
    return {
        "back": window.trail.back,
        "onward": window.trail.onward,
        "to_circuit": lambda: _chosen_circuit(window),
        "to_plan": lambda: show_on_plan(window, tuple(window.selection.ids)),
    }


def show_on_plan(window: "MainWindow", ids: tuple[str, ...]) -> None:
    """Show parts and wires on the plan."""
    window.trail.leave()
    window.show_view("plan")
    window.show_ids(ids)


def show_finding(window: "MainWindow", ids: tuple[str, ...]) -> None:
    """Select what a finding names where one sees it: in the view that is shown, or else on the plan."""
    if window.view not in SHOWS_SELECTION:
        show_on_plan(window, ids)
    else:
        window.trail.leave()
        window.show_ids(ids)


def show_circuit(window: "MainWindow", one: str) -> None:
    """Show a part or wire in the drawing of its circuit."""
    window.trail.leave()
    window.selection.select((one,))
    window.show_view("circuit")
    if not window.circuit_page.shows(one):
        window.session.refused.emit(NO_CIRCUIT)


def _chosen_circuit(window: "MainWindow") -> None:
    plan, ids = window.session.plan, window.selection.ids
    one = next((i for i in (*plan.parts, *plan.wires) if i in ids), "")
    if one:
        show_circuit(window, one)
    else:
        window.session.refused.emit("Select a part or a wire to see its circuit.")


def fill_all_of(window: "MainWindow") -> None:
    """Fill the menu of what can be selected together at the moment it opens."""
    menu, session = window.submenus["all_of"], window.session

    def fill() -> None:
        menu.clear()
        answer = window.solving.answer
        figures = answer.situation.figures if answer is not None else None
        for focus in choices(session.plan, session.kinds):
            action = menu.addAction(focus.words.replace("&", "&&"))
            action.triggered.connect(
                lambda _checked=False, focus=focus: window.selection.select(
                    seen(session.plan, focus, figures)
                )
            )
        if menu.isEmpty():
            menu.addAction("Nothing to choose yet").setEnabled(False)

    menu.aboutToShow.connect(fill)
