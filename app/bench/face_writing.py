"""Lets legends, and names of parts and wires, be typed where they stand on a face."""

from PySide6.QtCore import QPointF

from app.bench.bench import Bench, FaceItem
from app.bench.face_pointer import FaceWrite
from app.bench.face_sight import FaceSight
from app.bench.face_wires import courses
from app.canvas.inline_input import InlineInput
from app.canvas.naming import name_of
from app.inspector.committing import committed
from app.session import Session
from wiring.edits.face_items import add_text, change_item
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point


def ask_for_words(
    typing: InlineInput, session: Session, bench: Bench, sight: FaceSight, act: FaceWrite
) -> None:
    """Ask for the words of a new legend, or of the one of that number."""
    panel_id, pencil, index = sight.panel.id, bench.pencil, act.number
    old = sight.panel.texts[index].text if index >= 0 else ""

    def commit(typed: str) -> str:
        if index >= 0:
            return committed(session, change_item(panel_id, "text", index, text=typed))
        edit = add_text(panel_id, typed, *act.at, high_mm=pencil.letters_mm, colour=pencil.letters_colour)
        fault = committed(session, edit)
        if not fault:
            bench.choose((FaceItem("text", len(session.plan.panels[panel_id].texts) - 1),))
        return fault

    typing.ask("Words of the legend", old, QPointF(*sight.camera.to_px(act.at)), commit)


def ask_anew(
    typing: InlineInput, session: Session, bench: Bench, sight: FaceSight, texts: tuple[int, ...]
) -> None:
    """Ask for other words for the first chosen legend, else for a name of the part or wire chosen."""
    if texts:
        text = sight.panel.texts[texts[0]]
        ask_for_words(typing, session, bench, sight, FaceWrite((text.x_mm, text.y_mm), texts[0]))
        return
    one = next(iter(sight.selected)) if len(sight.selected) == 1 else ""
    question = name_of(session, one)
    if question is None:
        session.refused.emit("Choose one legend, part or wire to type it anew.")
    else:
        place = QPointF(*sight.camera.to_px(_place(sight, one)))
        typing.ask(question.caption, question.text, place, question.commit)


def _place(sight: FaceSight, one: str) -> Point:
    part = sight.plan.parts.get(one)
    if part is not None:
        return to_face(sight.panel, (part.x_mm, part.y_mm))
    course = courses(sight).get(one, ((0.0, 0.0),))
    return course[len(course) // 2]
