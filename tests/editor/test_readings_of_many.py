"""With many parts selected only what is on tells its figures, and no figure hides a selected part."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter
from support.editors import open_demo, part_id

from app.canvas.camera import fitted
from app.canvas.painting import reading_painter
from app.canvas.painting.part_painter import shown_box
from app.canvas.readings import FEW, reading, short_reading


def painted(sight, ids, monkeypatch):
    rects = []
    monkeypatch.setattr(
        reading_painter, "_paint_plate", lambda _p, _s, rect, words: rects.append((rect, words))
    )
    image = QImage(900, 600, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    reading_painter.paint_readings(painter, sight, ids)
    painter.end()
    return rects


def test_of_many_a_closed_switch_tells_its_current_and_what_is_off_nothing(editor):
    open_demo(editor)
    editor.solving.request()
    sight = editor.window.plan_view.sight()
    switch = part_id(editor, "S1")
    assert "V ·" in reading(sight, switch) and short_reading(sight, switch, FEW) == reading(sight, switch)
    assert short_reading(sight, switch, FEW + 1) == reading(sight, switch).split(" · ")[1]
    wire = next(w.id for w in editor.session.plan.wires.values() if w.label == "W2")
    assert "loses" in reading(sight, wire)
    assert short_reading(sight, wire, FEW + 1) == reading(sight, wire).split(",")[0]
    editor.session.throw(switch, "off")
    off = editor.window.plan_view.sight()
    lamp = part_id(editor, "E1")
    assert reading(off, lamp) == "0 V · 0 A" and short_reading(off, lamp, FEW + 1) == ""
    assert short_reading(off, part_id(editor, "G1"), FEW + 1).endswith(
        "0 A"
    )  # a supply always tells its volts


def test_no_plate_lies_on_a_part_that_is_selected(editor, monkeypatch):
    plan = open_demo(editor)
    editor.solving.request()
    view = editor.window.plan_view
    ids = [p.id for p in plan.parts.values() if p.designation.startswith("E")]
    view._look(fitted(view.sight().geometry.around(ids), view.width(), view.height(), 40.0))
    sight = view.sight()
    plates = painted(sight, ids, monkeypatch)
    bodies = [shown_box(sight, plan.parts[i]) for i in ids]
    rects = [QRectF(b.left, b.top, b.right - b.left, b.bottom - b.top) for b in bodies]
    assert len(plates) >= 4
    assert not [words for plate, words in plates if any(plate.intersects(rect) for rect in rects)]
