"""What is done on the plan beside drawing: feeding, routing, arranging, measuring, the picture under it."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from app.canvas.focus import choices
from app.canvas.hands.wireway_menu import route_all
from app.canvas.joining import join_selected, take_selected_apart
from app.canvas.picture_file import FILTER
from app.canvas.rerouting import with_new_wires_routed
from app.window.actions import LINES, MIRRORED, SPACED
from app.window.kept_sets import keep_set
from app.window.lying_over import do_and_tell
from wiring.edits.align import align
from wiring.edits.backdrop import remove_backdrop
from wiring.edits.connect_each import connect_each
from wiring.edits.distribute import distribute
from wiring.edits.edit import Edit
from wiring.edits.lay_anew import lay_anew
from wiring.edits.mirror import mirror

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

NEED_PARTS = ("join", "take_apart", "keep_set", "feed", "one_to_one", "lay_anew")
ARRANGED = (*LINES, *SPACED, *MIRRORED)


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
        "space_across": lambda ids: distribute(ids, "across", kinds=kinds),
        "space_down": lambda ids: distribute(ids, "down", kinds=kinds),
        "mirror_across": lambda ids: mirror(ids, "across", kinds=kinds),
        "mirror_down": lambda ids: mirror(ids, "down", kinds=kinds),
    }
    acts: dict[str, Callable[[], object]] = {name: partial(_do, window, e) for name, e in edits.items()}
    acts["route"] = partial(_route, window)
    acts["measure"] = partial(_take, window, window.plan_view.begin_measure)
    acts["picture"] = partial(_take, window, lambda: _choose_picture(window))
    acts["scale_picture"] = partial(_take, window, window.plan_view.begin_calibrate)
    acts["move_picture"] = partial(_take, window, window.plan_view.begin_shift_picture)
    acts["no_picture"] = lambda: window.session.do(remove_backdrop())
    acts["join"] = lambda: join_selected(window.session, window.selection)
    acts["take_apart"] = lambda: take_selected_apart(window.session, window.selection)
    acts["keep_set"] = partial(keep_set, window)
    acts["lay_anew"] = partial(_lay_anew, window)
    acts["one_to_one"] = partial(_one_to_one, window)
    acts["focus"] = partial(_take, window, window.plan_view.toggle_focus)
    acts["feed"] = partial(_take, window, window.plan_view.begin_feed)
    return acts


def _do(window: "MainWindow", edit: Callable[[frozenset[str]], Edit]) -> None:
    do_and_tell(window, edit(window.selection.ids))


def _route(window: "MainWindow") -> None:
    ways = window.selection.grounds & window.session.plan.wireways.keys()
    route_all(window.session, window.selection.ids | ways)


def _lay_anew(window: "MainWindow") -> None:
    ids, session = window.selection.ids, window.session
    wires = [w.id for w in session.plan.wires.values() if {w.id, w.start.part, w.end.part} & ids]
    session.do(lay_anew(wires, kinds=session.kinds))


def _one_to_one(window: "MainWindow") -> None:
    plan = window.session.plan
    parts = [i for i in plan.parts if i in window.selection.ids]
    if len(parts) != 2:
        window.session.refused.emit(
            "Select two parts to wire them one to one, a plug and a strip for example."
        )
        return
    edit = connect_each(parts[0], parts[1], kinds=window.session.kinds)
    window.session.do(with_new_wires_routed(edit, window.session.kinds))


def _take(window: "MainWindow", begin: Callable[[], None]) -> None:
    window.show_view("plan")
    begin()
    window.plan_view.setFocus()


def _choose_picture(window: "MainWindow") -> None:
    folder = str(window.session.path.parent) if window.session.path is not None else ""
    name, _ = QFileDialog.getOpenFileName(window, "Choose a picture", folder, FILTER)
    if name:
        window.plan_view.lay_picture(Path(name))


def fill_only(window: "MainWindow") -> None:
    """Fill the menu of what can be looked at alone at the moment it opens."""
    menu, view = window.submenus["only"], window.plan_view

    def fill() -> None:
        menu.clear()
        now = view.focus
        for focus in (None, *choices(window.session.plan, window.session.kinds)):
            words = focus.words.replace("&", "&&") if focus is not None else "Everything"
            action = menu.addAction(words, partial(_take, window, partial(view.look_at, focus)))
            action.setCheckable(True)
            action.setChecked(focus == now)

    menu.aboutToShow.connect(fill)
