"""Ties each act of the window to what it does."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices

from app.settings import state_folder
from app.window.about import show_about
from app.window.actions import DRAWN, VIEWS
from app.window.exports import Exports
from app.window.idle_keys import IdleKeys
from app.window.jumps import fill_all_of, tie_jumps
from app.window.kept_sets import tie_sets
from app.window.keys_list import show_keys
from app.window.open_menus import fill_when_opened
from app.window.panel_acts import panel_acts
from app.window.plan_acts import ARRANGED, NEED_PARTS, fill_only, plan_acts
from app.window.ticks import ask_for_ticks

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

OF_SELECTED = ("turn", "throw", "to_circuit", "to_plan", *NEED_PARTS)  # parts or wires
OF_ANYTHING = ("remove", "rename", "duplicate", "copy", "cut")  # things of the ground too


def tie(window: "MainWindow") -> None:
    """Connect every act, and keep enabled only those that can be done."""
    session, selection, documents = window.session, window.selection, window.documents
    exports = Exports(window)
    does: dict[str, Callable[[], object]] = {
        "new": documents.new,
        "open": documents.open,
        "save": documents.save,
        "save_as": documents.save_as,
        "save_pdf": window.sheets_page.save_pdf,
        "print": window.sheets_page.print_sheets,
        "export_svg": exports.drawings,
        "export_csv": exports.bench_list,
        "export_spice": exports.netlist,
        "export_json": exports.figures,
        "export_carry": exports.carry_sheet,
        "take_ticks": lambda: ask_for_ticks(window),
        "quit": window.close,
        "undo": session.undo,
        "redo": session.redo,
        "duplicate": lambda: window.plan_view.do("duplicate"),
        "turn": lambda: window.plan_view.do("turn"),
        "cut": lambda: window.plan_view.do("cut"),
        "copy": lambda: window.plan_view.do("copy"),
        "paste": lambda: window.plan_view.do("paste"),
        "throw": lambda: window.plan_view.do("throw"),
        "menu": lambda: _take_tool(window, window.plan_view.show_menu),
        "remove": window.plan_view.remove_selected,
        "rename": lambda: _rename(window),
        "select_all": lambda: window.plan_view.do("select_all"),
        "find_kind": lambda: _find_kind(window),
        "find_part": lambda: _find_part(window),
        "put_back": session.stand_as_in_use,
        "select": lambda: _press_tool(window, "select", window.plan_view.begin_select),
        "wire": lambda: _press_tool(window, "wire", window.plan_view.begin_wire),
        "nearer": lambda: _zoom(window, 1.25),
        "farther": lambda: _zoom(window, 0.8),
        "show_all": lambda: _show_all(window),
        "show_tray": lambda: window.show_view(window.view),
        "show_card": lambda: window.show_view(window.view),
        "look": window.look.toggle,
        "larger": lambda: window.look.enlarge(up=True),
        "smaller": lambda: window.look.enlarge(up=False),
        "keys": lambda: show_keys(window),
        "log": lambda: QDesktopServices.openUrl(QUrl.fromLocalFile(str(state_folder()))),
        "about": lambda: show_about(window),
    }
    does.update({name: _shows(window, name) for name in VIEWS})
    does.update({name: _draws(window, name) for name in DRAWN})
    does.update(plan_acts(window))
    does.update(panel_acts(window))
    does.update(tie_jumps(window))
    for name, act in does.items():
        window.acts[name].triggered.connect(
            lambda _checked=False, name=name, act=act: _act(window, name, act)
        )
    window.look.enlarged.connect(lambda chosen: _enlarged(window, chosen))
    selection.changed.connect(lambda _ids: _enable(window))
    window.plan_view.bench.bench.changed.connect(lambda: _enable(window))
    _enable(window)
    IdleKeys(window, (*OF_SELECTED, *ARRANGED, *OF_ANYTHING))
    for name in ("put_back", "back", "onward"):
        window.acts[name].setEnabled(False)
    fill_when_opened(window)
    fill_only(window)
    fill_all_of(window)
    tie_sets(window)
    bar, view, face = window.notice_bar, window.plan_view, window.plan_view.bench.face
    bar.left.connect(lambda: window.show_view(window.view))
    bar.yield_in(view, lambda: view.is_busy or view.tool != "select")
    bar.yield_in(window.circuit_page.picture, lambda: False)
    bar.yield_in(face, lambda: face.acting.runs or face.acting.tool != "select")


def _act(window: "MainWindow", name: str, act: Callable[[], object]) -> None:
    """Do an act, on the panel bench if it means something there."""
    if not window.plan_view.bench.do(name):
        act()


def _enlarged(window: "MainWindow", chosen: float) -> None:
    window.remembered.words = chosen
    window.plan_page.keep_room()
    window.header.title.show_title(window.session.plan.title)


def _enable(window: "MainWindow") -> None:
    selection, painted = window.selection, bool(window.plan_view.bench.bench.items)
    for name in OF_SELECTED:
        window.acts[name].setEnabled(bool(selection.ids))
    for name in ARRANGED:
        window.acts[name].setEnabled(bool(selection.ids) or painted)
    for name in OF_ANYTHING:
        window.acts[name].setEnabled(bool(selection.ids or selection.grounds) or painted)


def _shows(window: "MainWindow", name: str) -> Callable[[], object]:
    return lambda: window.show_view(name)


def _draws(window: "MainWindow", name: str) -> Callable[[], object]:
    return lambda: _take_tool(window, lambda: window.plan_view.begin_draw(name))


def _take_tool(window: "MainWindow", begin: Callable[[], None]) -> None:
    window.show_view("plan")
    begin()
    window.plan_view.setFocus()


def _press_tool(window: "MainWindow", name: str, begin: Callable[[], None]) -> None:
    _take_tool(window, begin)
    if window.plan_view.tool == name:  # chosen once more, its button would come up
        window.acts[name].setChecked(True)


def _rename(window: "MainWindow") -> None:
    window.show_view("plan")
    window.plan_view.begin_rename()  # the focus goes to the line it shows


def _find_kind(window: "MainWindow") -> None:
    window.show_view("plan")
    window.tray.search.setFocus()
    window.tray.search.selectAll()


def _find_part(window: "MainWindow") -> None:
    window.trail.leave()
    window.show_view("plan")
    window.plan_view.begin_find()


def _zoom(window: "MainWindow", factor: float) -> None:
    if window.view == "plan":
        window.plan_view.zoom(factor)
    elif window.view == "circuit":
        window.circuit_page.picture.zoom(factor)
    elif window.view == "sheets":
        window.sheets_page.picture.zoom(factor)


def _show_all(window: "MainWindow") -> None:
    if window.view == "plan":
        window.plan_view.show_all()
    elif window.view == "circuit":
        window.circuit_page.picture.show_all()
    elif window.view == "sheets":
        window.sheets_page.picture.show_all()
