"""The small menu of a wireway: its name, its hole, its drop."""

from functools import partial

from PySide6.QtWidgets import QInputDialog, QLineEdit, QMenu, QWidget

from app.canvas.rerouting import route
from app.session import Session
from wiring.edits.wireways import remove_wireway, set_wireway
from wiring.quantities.not_understood import NotUnderstood
from wiring.quantities.reading import read
from wiring.quantities.wording import worded

ASKED = {
    "hole_mm": ("Narrowest hole", "Diameter of the narrowest hole it goes through:"),
    "drop_mm": ("Drop to the terminals", "From the wireway up to a terminal on the board:"),
}


def for_wireway(menu: QMenu, parent: QWidget, session: Session, way_id: str) -> None:
    """Fill the menu of a wireway."""
    way = session.plan.wireways[way_id]
    units = session.plan.habits.units
    menu.addAction("Rename wireway…", lambda: rename_wireway(parent, session, way_id))
    for name, (words, _) in ASKED.items():
        value = worded(getattr(way, name) / 1000.0, "length", units)
        menu.addAction(f"{words}: {value}…", partial(ask_length, parent, session, way_id, name))
    menu.addSeparator()
    menu.addAction("Route along wireways\tCtrl+R", lambda: route_all(session))
    menu.addAction("Remove wireway", lambda: session.do(remove_wireway(way_id)))


def route_all(session: Session, ids: frozenset[str] = frozenset()) -> None:
    """Lead the wires among the ids, those on their parts, or without ids every wire along the wireways."""
    plan = session.plan
    if not plan.wireways:
        session.refused.emit("The plan has no wireway yet; draw one first, along a beam for example.")
        return
    wanted = [w.id for w in plan.wires.values() if not ids or {w.id, w.start.part, w.end.part} & ids]
    edit = route(plan, session.kinds, wanted)
    if not session.do(edit):
        session.refused.emit("No wire lies better along a wireway than it does now.")


def rename_wireway(parent: QWidget, session: Session, way_id: str) -> None:
    """Ask for the name of a wireway."""
    old = session.plan.wireways[way_id].name
    words, agreed = QInputDialog.getText(parent, "Rename", "Name:", QLineEdit.EchoMode.Normal, old)
    if agreed and way_id in session.plan.wireways:
        session.do(set_wireway(way_id, name=words.strip()))


def ask_length(parent: QWidget, session: Session, way_id: str, name: str) -> None:
    """Ask for the hole or the drop of a wireway, in any unit of length."""
    title, question = ASKED[name]
    plan = session.plan
    now = worded(getattr(plan.wireways[way_id], name) / 1000.0, "length", plan.habits.units)
    words, agreed = QInputDialog.getText(parent, title, question, QLineEdit.EchoMode.Normal, now)
    if not agreed or way_id not in session.plan.wireways:
        return
    try:
        value_mm = read(words, "length") * 1000.0
    except NotUnderstood as why:
        session.refused.emit(str(why))
        return
    session.do(set_wireway(way_id, **{name: round(value_mm, 3)}))
