"""The small menu and the tips of the bench."""

from PySide6.QtWidgets import QMenu

from app.bench.face_hit import FaceHit
from app.bench.face_keys import TypedFace
from app.canvas.words import part_words
from wiring.plan.panel_bodies import bodies_on, clashes, reaches_over, too_deep

SIDES = {False: "Turn it over: from behind\tB", True: "Turn it over: the front\tB"}


def face_menu(face: TypedFace, hit: FaceHit) -> QMenu:
    """Return the menu for what was hit, which is chosen already."""
    menu = QMenu(face)
    if hit.item is not None and hit.item.sort == "text":
        menu.addAction("Type it anew…\tF2", face.retype)
    if hit.part:
        menu.addAction("Throw\tT", lambda: face.deeds.throw((hit.part,)))
        menu.addAction("Turn a quarter\tR", lambda: face.act("turn"))
        menu.addAction("Onto the spacing\tG", lambda: face.act("onto"))
    if hit.part or hit.item is not None:
        menu.addAction("Duplicate\tCtrl+D", lambda: face.act("duplicate"))
        menu.addAction("Remove\tDel", lambda: face.act("remove"))
        menu.addSeparator()
    menu.addAction("Draw a track line\tD", face.begin_line)
    menu.addAction("Put a legend\tL", face.begin_text)
    menu.addAction("Choose all\tCtrl+A", lambda: face.act("select_all"))
    menu.addSeparator()
    behind = face.bench.behind
    menu.addAction(SIDES[behind], lambda: face.bench.turn_over(not behind))
    menu.addAction("Back to the plan\tEsc", lambda: face.bench.lay(""))
    return menu


def face_tip(face: TypedFace, hit: FaceHit) -> str:
    """Return what a part is, where it stands, and why it cannot be mounted; "" for anything else."""
    sight = face.sight()
    if sight is None or hit.part not in sight.plan.parts:
        return ""
    part, panel = sight.plan.parts[hit.part], sight.panel
    across, down = part.x_mm - panel.x_mm, part.y_mm - panel.y_mm
    lines = [
        part_words(sight.whole, hit.part),
        f"{across:g} mm from the left edge, {down:g} mm from the upper one, seen from the front.",
    ]
    bodies = bodies_on(sight.plan, sight.kinds, panel)
    for body in (b for b in bodies if b.part.id == hit.part):
        if body.kind.behind_mm:
            lines.append(f"Reaches {body.kind.behind_mm:g} mm behind the face.")
        if any(body in pair for pair in clashes(bodies)):
            lines.append("Too close to another body behind the face.")
        if reaches_over(body, panel):
            lines.append("Reaches over the edge of the face.")
        if too_deep(body, panel):
            lines.append(f"Too deep: there are {panel.room_mm:g} mm behind the face.")
    return "\n".join(lines)
