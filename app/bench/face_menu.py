"""The small menu and the tips of the bench."""

from functools import partial

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMenu

from app.bench.face_hit import FaceHit
from app.bench.face_keys import TypedFace
from app.canvas.gestures.throw import momentary_position
from app.canvas.hits.hit import Hit
from app.canvas.words import hit_words, part_words
from wiring.plan.designations import part_label
from wiring.plan.groups import thing_of, things_of
from wiring.plan.panel_bodies import APART_MM, bodies_on, clashes, is_mounted, reaches_over, too_deep
from wiring.quantities.face_lengths import length_words
from wiring.sheets.panel_template import hole_mm

TOOLS = (("Pull a wire\tW", "wire"), ("Draw a track line\tD", "line"), ("Put a legend\tL", "text"))
SIDES = {False: "Turn it over: from behind\tB", True: "Turn it over: the front\tB"}
THROW = "A click on its knob throws it, by its rim it is only chosen."
HOLD = "Keep the mouse down on its middle to hold it, by its rim it is only chosen."


def face_menu(face: TypedFace, hit: FaceHit) -> QMenu:
    """Return the menu for what was hit, which is chosen already."""
    menu = QMenu(face)
    at = hit.at
    if hit.item is not None and hit.item.sort == "text":
        menu.addAction("Type it anew…\tF2", face.retype)
    if hit.part:
        menu.addAction("Throw\tT", lambda: face.deeds.throw((hit.part,)))
        menu.addAction("Turn a quarter\tR", lambda: face.act("turn"))
        menu.addAction("Onto the spacing\tG", lambda: face.act("onto"))
        chosen = face.deeds.parts
        if len(chosen) > 1 and not thing_of(face.session.plan, chosen):
            menu.addAction("Join as one thing\tCtrl+J", face.deeds.join)
        if things_of(face.session.plan, chosen):
            menu.addAction("Take apart\tCtrl+U", lambda: face.act("take_apart"))
    if hit.wire:
        menu.addAction("Bend it here\tdouble click", lambda: face.bend(hit))
        anew = menu.addAction("Lay it anew, clear of others", face.deeds.lay_anew)
        anew.setEnabled(not face.session.plan.wires[hit.wire].along)  # it would leave its bundle
    if hit.part or hit.item is not None:
        menu.addAction("Duplicate\tCtrl+D", lambda: face.act("duplicate"))
        menu.addAction("Cut\tCtrl+X", lambda: face.act("cut"))
        menu.addAction("Copy\tCtrl+C", lambda: face.act("copy"))
    if not hit.is_nothing:
        menu.addAction("Remove\tDel", lambda: face.act("remove"))
        menu.addSeparator()
    paste = menu.addAction("Paste here\tCtrl+V", lambda: face.deeds.paste(at))
    paste.setEnabled(bool(QGuiApplication.clipboard().text()))
    menu.addAction("Choose all\tCtrl+A", lambda: face.act("select_all"))
    menu.addSeparator()
    for words, tool in TOOLS:
        menu.addAction(words, partial(face.take, tool))
    menu.addSeparator()
    behind = face.bench.behind
    menu.addAction(SIDES[behind], lambda: face.bench.turn_over(not behind))
    menu.addAction("Back to the plan\tEsc", lambda: face.bench.lay(""))
    return menu


def face_tip(face: TypedFace, hit: FaceHit) -> str:
    """Return what a part is, where it stands, what to drill for it, and why it cannot be mounted.

    Of a terminal or a wire what it is; "" for anything else.
    """
    sight = face.sight()
    if sight is None:
        return ""
    if hit.terminal is not None or hit.wire in sight.plan.wires:
        return hit_words(sight.whole, Hit(hit.at, wire=hit.wire, terminal=hit.terminal))
    if hit.part not in sight.plan.parts:
        return ""
    part, panel = sight.plan.parts[hit.part], sight.panel
    across, down = part.x_mm - panel.x_mm, part.y_mm - panel.y_mm
    us = sight.plan.habits.units == "us"
    left, top, apart = (length_words(mm, us=us) for mm in (across, down, APART_MM))
    lines = [
        part_words(sight.whole, hit.part),
        f"{left} from the left edge, {top} from the upper one, seen from the front.",
    ]
    if position := sight.whole.positions.get(hit.part, ""):
        holds = momentary_position(sight.kinds[part.kind]) is not None
        does = HOLD if holds else THROW
        lines.append(f"Stands at “{position}”." + (f" {does}" if not sight.camera.behind else ""))
    hole = hole_mm(sight.kinds[part.kind]) if is_mounted(sight.kinds[part.kind]) else 0.0
    if hole:
        lines.append(f"Drill {length_words(hole, us=False)}.")
    bodies = bodies_on(sight.plan, sight.kinds, panel)
    for body in (b for b in bodies if b.part.id == hit.part):
        if body.kind.behind_mm:
            lines.append(f"Reaches {length_words(body.kind.behind_mm, us=us)} behind the face.")
        for one, other in clashes(bodies):
            if body in (one, other):
                near = part_label(sight.plan, (other if body is one else one).part.id)
                lines.append(f"Too close to {near}: their bodies need {apart} between them.")
        if reaches_over(body, panel):
            lines.append("Reaches over the edge of the face.")
        if too_deep(body, panel):
            lines.append(f"Too deep: there are {length_words(panel.room_mm, us=us)} behind the face.")
    return "\n".join(lines)
