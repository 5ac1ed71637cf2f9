"""Whatever is told by colour is told by shape, letters or words too, and stands apart however one sees it."""

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from support.colour_vision import SEEN, contrast
from support.editors import open_demo

from app.canvas.painting.shades import shades
from app.canvas.painting.wire_pens import hair_rgba, wire_pens
from app.canvas.wire_names import colour_name
from app.canvas.words import wire_words
from app.findings.flag import paint_flag
from app.theme.surfaces import THEMES, surfaces
from wiring.drawings.circuit_drawing import circuit_drawings
from wiring.pictures.picture import Words
from wiring.standards.colours import COLOURS

NON_TEXT = 3.0  # to 1: WCAG 2.2, success criterion 1.4.11
TEXT = 4.5  # to 1: success criterion 1.4.3
GROUNDS = ("side", "header", "field", "paper")


@pytest.mark.parametrize("how", SEEN)
def test_the_ways_of_seeing_keep_greys_and_stay_within_the_screen(how):
    for row in SEEN[how]:
        assert sum(row) == pytest.approx(1.0, abs=2e-6)
    assert contrast("#000000", "#ffffff", how) == pytest.approx(21.0, abs=0.01)
    assert contrast("#808080", "#808080", how) == 1.0
    red_off_green = contrast("#c8281e", "#2b8a3e", how)
    assert (red_off_green != contrast("#c8281e", "#2b8a3e")) is (how != "as most do")


@pytest.mark.parametrize("how", SEEN)
@pytest.mark.parametrize("name", THEMES)
def test_marks_stand_off_every_ground_of_the_window(name, how):
    s = surfaces(THEMES[name])
    for role in ("ink", "quiet", "copper", "danger", "weak", "note", "edge"):
        for ground in GROUNDS:
            assert contrast(getattr(s, role), getattr(s, ground), how) >= NON_TEXT, (role, ground)
    for ground in (*GROUNDS, "chosen", "hover", "pressed"):
        assert contrast(s.ink, getattr(s, ground), how) >= TEXT, ground
    assert contrast(s.on_copper, s.copper, how) >= TEXT
    assert contrast(s.copper, s.chosen, how) >= NON_TEXT - 0.2, "the bar beside what is chosen"


def mask(word):
    image = QImage(24, 24, QImage.Format.Format_RGB32)
    image.fill(QColor("#ffffff"))
    painter = QPainter(image)
    paint_flag(painter, QRectF(2, 2, 20, 20), word, "#000000", "#ffffff")
    painter.end()
    return {(x, y) for x in range(24) for y in range(24) if image.pixelColor(x, y).red() < 128}


def test_flags_of_different_rank_differ_in_shape(qapp):
    masks = {word: mask(word) for word in ("note", "weak", "danger")}
    assert all(len(m) > 100 for m in masks.values())
    for one, other in (("note", "weak"), ("weak", "danger"), ("note", "danger")):
        assert len(masks[one] & masks[other]) / len(masks[one] | masks[other]) < 0.75, (one, other)


@pytest.mark.parametrize("how", SEEN)
@pytest.mark.parametrize("name", THEMES)
def test_every_wire_shows_on_the_paper_by_its_insulation_or_its_edge(qapp, name, how):
    paper = shades(THEMES[name]).paper.name()
    for letters in COLOURS:
        pens = wire_pens("22 AWG", letters, 1.0, name == "dark")
        shown = max(contrast(pen.color().name(), paper, how) for pen in (pens.edge, pens.core))
        assert shown >= NON_TEXT, letters
        hair = QColor(hair_rgba(letters, name == "dark")).name()
        assert contrast(hair, paper, how) >= NON_TEXT, letters  # one pixel wide, from afar


def test_wire_colours_are_told_in_letters_and_words_everywhere(editor):
    plan = open_demo(editor)
    window = editor.window
    sight = window.plan_view.sight()
    for wire in plan.wires.values():
        assert colour_name(wire.colour) in wire_words(sight, wire.id)
    box = window.plan_page.wire_colour
    assert box.itemText(0) == "as its circuit"
    for index in range(1, box.count()):
        letters = box.itemText(index).split()[0]
        assert letters in COLOURS and len(box.itemText(index).split()) > 1
    now = editor.solving.answer.situation
    drawn = circuit_drawings(now.plan, now.kinds, now.positions, now.figures)
    said = " ".join(item.text for d in drawn for item in d.picture.items if isinstance(item, Words))
    assert {w.colour for w in plan.wires.values()} <= set(said.replace(",", " ").split())


def test_findings_say_their_rank_and_counts_in_words(editor):
    open_demo(editor)
    strip = editor.window.strip
    told = [label.text() for badge, label in strip._counts.values() if badge.isVisibleTo(strip)]
    assert told and all(any(w in t for w in ("note", "weak", "danger")) for t in told)


def test_what_a_switch_stands_at_is_told_in_words(editor):
    from support.editors import part_id

    from app.canvas.words import tip_words

    open_demo(editor)
    view, switch = editor.window.plan_view, part_id(editor, "S1")
    part = editor.session.plan.parts[switch]
    view.show_all()
    at = view.px(part.x_mm, part.y_mm)
    assert "Stands at “" in tip_words(view.sight(), view.hit_at(at.x(), at.y()))
