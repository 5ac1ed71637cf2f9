"""The small menu on a right click: what can be done with what is under the pointer."""

import math
from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from PySide6.QtWidgets import QMenu, QWidget

from app.canvas.hands.deeds import Deeds
from app.canvas.hands.panel_menu import for_panel
from app.canvas.hands.wireway_menu import Ask, for_joist, for_line, for_wireway, route_all
from app.canvas.hits.hit import Hit, path_distance
from app.canvas.naming import name_of
from app.canvas.painting.surface_painter import BED_MM
from app.canvas.splitting import split_ways
from app.session import Session
from wiring.edits.benchwork import remove_track, set_board
from wiring.edits.bends import remove_bend, straighten
from wiring.edits.lay_anew import lay_anew
from wiring.edits.panels import remove_panel
from wiring.edits.scenes import remove_scene
from wiring.edits.set_built import set_built
from wiring.edits.set_wire import swap_ends
from wiring.edits.throw import keep_position
from wiring.plan.groups import thing_of, things_of
from wiring.plan.places import Point
from wiring.plan.plan import Plan

DRAWN = {
    "scene": "Draw a scene",
    "panel": "Draw a panel",
    "board": "Draw the board’s outline",
    "track": "Draw a track",
    "joist": "Lay joists",
    "wireway": "Draw a wireway",
}


class MenuDeeds(NamedTuple):
    """What the menu does that the surface has to do for it."""

    bend: Callable[[], None]  # put a bend into the wire that was hit
    paste_at: Callable[[Point], None]
    draw: Callable[[str], None]  # take the pencil for a "scene", "panel", "board" or "track"
    feed: Callable[[], None]
    ask: Ask  # let a line be typed on the plan
    lay: Callable[[str], None]  # lay a panel on the bench
    open: Callable[[str], None]  # show a part or wire in its circuit
    copy: Callable[[], object]


def small_menu(parent: QWidget, session: Session, deeds: Deeds, hit: Hit, more: MenuDeeds) -> QMenu:
    """Return the menu for what was hit."""
    menu = QMenu(parent)
    if hit.part:
        _for_part(menu, session, deeds, hit.part, more)
    elif hit.wire:
        _for_wire(menu, session, deeds, hit, more)
    elif hit.way:
        for_wireway(menu, session, hit, more.ask)
    elif hit.area:
        for_area(menu, session, hit.area, more)
    elif hit.joist >= 0:
        for_joist(menu, session, deeds, hit.joist, more.ask)
    else:
        if hit.line:
            for_line(menu, session, hit)
        for_ground(menu, session, deeds, hit, more)
    return menu


def _for_part(menu: QMenu, session: Session, deeds: Deeds, part_id: str, more: MenuDeeds) -> None:
    question = name_of(session, part_id)
    if question is not None:
        menu.addAction("Rename…\tF2", partial(more.ask, question))
    menu.addAction("Show its circuit\tC", partial(more.open, part_id))
    menu.addSeparator()
    menu.addAction("Turn a quarter\tR", deeds.turn)
    menu.addAction("Copy\tCtrl+C", more.copy)
    menu.addAction("Duplicate\tCtrl+D", deeds.duplicate)
    menu.addAction("Remove\tDel", deeds.remove)
    if len(deeds.parts) > 1:
        menu.addAction("Feed these\tF", more.feed)
        if not thing_of(session.plan, deeds.parts):
            menu.addAction("Join as one thing\tCtrl+J", deeds.join)
    if things_of(session.plan, deeds.parts):
        menu.addAction("Take apart\tCtrl+U", deeds.take_apart)
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


def _for_wire(menu: QMenu, session: Session, deeds: Deeds, hit: Hit, more: MenuDeeds) -> None:
    if hit.bend >= 0:
        menu.addAction("Remove this bend", lambda: session.do(remove_bend(hit.wire, hit.bend)))
    else:
        menu.addAction("Bend here", more.bend)
    menu.addAction("Show its circuit\tC", partial(more.open, hit.wire))
    menu.addSeparator()
    ids = deeds.wires or (hit.wire,)
    is_built = all(session.plan.wires[i].built for i in ids)
    built = menu.addAction("Built", lambda: session.do(set_built(ids, not is_built)))
    built.setCheckable(True)
    built.setChecked(is_built)
    straight = menu.addAction("Straighten", lambda: session.do(straighten(hit.wire)))
    straight.setEnabled(bool(session.plan.wires[hit.wire].bends))
    menu.addAction("Lay anew, clear of others", lambda: session.do(lay_anew(ids, kinds=session.kinds)))
    if session.plan.wireways:
        menu.addAction("Route along wireways\tCtrl+R", lambda: route_all(session, frozenset(ids)))
    split = menu.addMenu("Split at")
    for way in split_ways(session.plan, session.kinds, ids, hit.at):
        split.addAction(way.words.replace("&", "&&"), partial(session.do, way.edit))
    menu.addAction(
        "Swap its ends" if len(ids) == 1 else "Swap their ends", lambda: session.do(swap_ends(ids))
    )
    menu.addSeparator()
    menu.addAction("Remove\tDel", deeds.remove)


def for_area(menu: QMenu, session: Session, area_id: str, more: MenuDeeds) -> None:
    """Fill the menu of a scene or panel."""
    is_scene = area_id in session.plan.scenes
    word = "scene" if is_scene else "panel"
    if not is_scene:
        for_panel(menu, session, area_id, more.lay)
    question = name_of(session, area_id)
    if question is not None:
        menu.addAction(f"Rename {word}…", partial(more.ask, question))
    away = remove_scene if is_scene else remove_panel
    menu.addAction(f"Remove {word}", lambda: session.do(away(area_id)))


def for_ground(menu: QMenu, session: Session, deeds: Deeds, hit: Hit, more: MenuDeeds) -> None:
    """Fill the menu of the bare plan."""
    menu.addAction("Paste here", lambda: more.paste_at(hit.at))
    menu.addAction("Select all\tCtrl+A", deeds.select_all)
    menu.addSeparator()
    for what, words in DRAWN.items():
        menu.addAction(words, partial(more.draw, what))
    track = track_at(session.plan, hit.at)
    if track >= 0 or session.plan.board:
        menu.addSeparator()
    if track >= 0:
        menu.addAction("Remove this track", lambda: session.do(remove_track(track)))
    if session.plan.board:
        menu.addAction("Remove the board’s outline", lambda: session.do(set_board(())))


def track_at(plan: Plan, at: Point) -> int:
    """Return the index of the track that runs through a place; -1 when none does."""
    near = [(path_distance(track, at), i) for i, track in enumerate(plan.tracks)]
    away, index = min(near, default=(math.inf, -1))
    return index if away <= BED_MM / 2 else -1
