"""The small menu on a right click: what can be done with what is under the pointer."""

from collections.abc import Callable
from functools import partial

from PySide6.QtWidgets import QInputDialog, QLineEdit, QMenu, QWidget

from app.canvas.deeds import Deeds
from app.canvas.hit import Hit
from app.session import Session
from wiring.edits.bends import remove_bend, straighten
from wiring.edits.set_value import set_field
from wiring.edits.throw import keep_position
from wiring.plan.designations import part_label


def small_menu(parent: QWidget, session: Session, deeds: Deeds, hit: Hit, bend: Callable[[], None]) -> QMenu:
    """Return the menu for what was hit; `bend` puts a bend into a wire there."""
    menu = QMenu(parent)
    if hit.part:
        _for_part(menu, parent, session, deeds, hit.part)
    elif hit.wire:
        _for_wire(menu, session, deeds, hit, bend)
    else:
        menu.addAction("Select all", deeds.select_all)
    return menu


def _for_part(menu: QMenu, parent: QWidget, session: Session, deeds: Deeds, part_id: str) -> None:
    menu.addAction("Rename…", lambda: rename(parent, session, part_id))
    menu.addSeparator()
    menu.addAction("Turn a quarter\tR", deeds.turn)
    menu.addAction("Duplicate\tCtrl+D", deeds.duplicate)
    menu.addAction("Remove\tDel", deeds.remove)
    kind = session.kinds.get(session.plan.parts[part_id].kind)
    if kind is None or len(kind.positions) < 2:
        return
    menu.addSeparator()
    now = session.positions.get(part_id, "")
    throws = menu.addMenu("Throw to")
    for position in kind.positions:
        action = throws.addAction(position.name, partial(session.throw, part_id, position.name))
        action.setCheckable(True)
        action.setChecked(position.name == now)
    kept = menu.addAction(
        f"Stands at “{now}” in a session",
        lambda: session.do(keep_position(part_id, now, kinds=session.kinds)),
    )
    usual = session.plan.parts[part_id].position or kind.in_use or kind.positions[0].name
    kept.setCheckable(True)
    kept.setChecked(usual == now)
    kept.setEnabled(usual != now)


def _for_wire(menu: QMenu, session: Session, deeds: Deeds, hit: Hit, bend: Callable[[], None]) -> None:
    if hit.bend >= 0:
        menu.addAction("Remove this bend", lambda: session.do(remove_bend(hit.wire, hit.bend)))
    else:
        menu.addAction("Bend here", bend)
    straight = menu.addAction("Straighten", lambda: session.do(straighten(hit.wire)))
    straight.setEnabled(bool(session.plan.wires[hit.wire].bends))
    menu.addSeparator()
    menu.addAction("Remove\tDel", deeds.remove)


def rename(parent: QWidget, session: Session, part_id: str) -> None:
    """Ask for the builder's own words for a part."""
    part = session.plan.parts[part_id]
    words, agreed = QInputDialog.getText(
        parent,
        "Rename",
        f"Your own words for {part_label(session.plan, part_id)}:",
        QLineEdit.EchoMode.Normal,
        part.label,
    )
    if agreed and part_id in session.plan.parts:
        session.do(set_field((part_id,), label=words.strip()))
