"""The small menus of the ground: a wireway's name, holes, drops and corners, a joist's size."""

from collections.abc import Callable
from functools import partial

from PySide6.QtWidgets import QMenu

from app.canvas.hands.deeds import Deeds
from app.canvas.hands.ground_edits import line_changed, line_with_corner
from app.canvas.hits.hit import Hit
from app.canvas.naming import Question, joist_size, name_of, way_size
from app.canvas.rerouting import route_changed, wires_for, with_wireway_followed
from app.ground_keys import BOARD, joist_key, line_points
from app.session import Session
from wiring.edits.joists import size_joists
from wiring.edits.wireways import add_corner, remove_corner, remove_wireway
from wiring.quantities.wording import worded

Ask = Callable[[Question], None]
WAY_SIZES = {
    "hole_mm": "Narrowest hole",
    "drop_mm": "Drop to the terminals",
    "fascia_drop_mm": "Drop to the panels",
}
JOIST_SIZES = {"width_mm": "Thickness", "depth_mm": "Depth"}


def for_wireway(menu: QMenu, session: Session, hit: Hit, ask: Ask) -> None:
    """Fill the menu of a wireway."""
    way = session.plan.wireways[hit.way]
    units = session.plan.habits.units
    rename = name_of(session, way.id)
    if rename is not None:
        menu.addAction("Rename wireway…\tF2", partial(ask, rename))
    for name, words in WAY_SIZES.items():
        value = getattr(way, name)
        said = worded((way.drop_mm if value is None else value) / 1000.0, "length", units)
        menu.addAction(f"{words}: {said}…", partial(ask, way_size(session, way.id, name)))
    menu.addSeparator()
    if hit.corner >= 0:
        edit = with_wireway_followed(remove_corner(way.id, hit.corner), session.kinds, way.id)
        menu.addAction("Remove this corner", lambda: session.do(edit)).setEnabled(len(way.points) > 2)
    else:
        menu.addAction("A corner here", lambda: session.do(add_corner(way.id, *hit.at)))
    menu.addAction("Route wires along it\tCtrl+R", lambda: route_all(session, frozenset({way.id})))
    menu.addAction("Remove wireway\tDel", lambda: session.do(remove_wireway(way.id)))


def for_joist(menu: QMenu, session: Session, deeds: Deeds, index: int, ask: Ask) -> None:
    """Fill the menu of a joist, or of several."""
    joist = session.plan.joists[index]
    units = session.plan.habits.units
    for name, words in JOIST_SIZES.items():
        said = worded(getattr(joist, name) / 1000.0, "length", units)
        menu.addAction(f"{words}: {said}…", partial(ask, joist_size(session, joist_key(index), name)))
    alike = size_joists(width_mm=joist.width_mm, depth_mm=joist.depth_mm)
    menu.addAction("Make all joists like this one", lambda: session.do(alike))
    menu.addSeparator()
    several = len(deeds.joists) > 1
    menu.addAction("Duplicate these\tCtrl+D" if several else "Duplicate\tCtrl+D", deeds.duplicate)
    menu.addAction("Remove these\tDel" if several else "Remove joist\tDel", deeds.remove)


def for_line(menu: QMenu, session: Session, hit: Hit) -> None:
    """Begin the menu of the board's outline or of a track with what can be done with its corners."""
    points = line_points(session.plan, hit.line)
    if hit.corner >= 0:
        rest = (*points[: hit.corner], *points[hit.corner + 1 :])
        gone = menu.addAction("Remove this corner", lambda: session.do(line_changed(hit.line, rest)))
        gone.setEnabled(len(points) > (3 if hit.line == BOARD else 2))
    else:
        menu.addAction("A corner here", lambda: session.do(line_with_corner(session.plan, hit.line, hit.at)))
    menu.addSeparator()


def route_all(session: Session, chosen: frozenset[str] = frozenset()) -> None:
    """Lead along wireways the wires among what is chosen, on its parts, of its wireways; all when none is."""
    plan = session.plan
    if not plan.wireways:
        session.refused.emit("The plan has no wireway yet; draw one first, along a beam for example.")
        return
    ways = chosen & plan.wireways.keys()
    of_ways = frozenset(wires_for(plan, session.kinds, ways)) if ways else frozenset[str]()
    wanted = [
        w.id
        for w in plan.wires.values()
        if not chosen or {w.id, w.start.part, w.end.part} & (chosen | of_ways)
    ]
    if session.do(route_changed(plan, session.kinds, wanted)):
        return
    if len(ways) == 1 and ways == chosen:
        name = plan.wireways[next(iter(ways))].name
        session.refused.emit(
            f"No other wire runs better along “{name}”, and those in it lie well as they are."
        )
    else:
        session.refused.emit("No wire lies better along a wireway than it does now.")
