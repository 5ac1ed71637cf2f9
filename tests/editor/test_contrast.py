"""Every sort of words stands off every ground it is written on, in both looks.

WCAG 2.2, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11 (what shows where the keys are, 3 to 1); what
cannot be pressed is left out of both.
"""

import re

import pytest
from PySide6.QtGui import QColor
from support.colour_vision import contrast
from support.editors import open_demo

from app.canvas.painting.area_names import area_names
from app.canvas.painting.shades import shades
from app.inspector.wire_choice import SWATCH, swatch
from app.theme import stylesheet
from app.theme.surfaces import THEMES, Surfaces, mixed, surfaces
from wiring.standards.colours import COLOURS

TEXT, NON_TEXT = 4.5, 3.0
GROUNDS = ("side", "header", "field", "paper")
UNDER_POINTER = ("hover", "pressed", "chosen")
WRITTEN = {
    "ink": (*GROUNDS, *UNDER_POINTER),
    "quiet": (*GROUNDS, "hover"),
    "copper": GROUNDS,
    "danger": GROUNDS,
    "weak": GROUNDS,
    "note": GROUNDS,
}


@pytest.mark.parametrize("name", THEMES)
def test_words_stand_off_their_grounds(name):
    s = surfaces(THEMES[name])
    weak = {
        (role, ground): round(contrast(getattr(s, role), getattr(s, ground)), 2)
        for role, grounds in WRITTEN.items()
        for ground in grounds
        if contrast(getattr(s, role), getattr(s, ground)) < TEXT
    }
    assert weak == {}
    assert contrast(s.side, s.ink) >= TEXT, "tips"
    assert contrast(s.on_copper, s.copper) >= TEXT


@pytest.mark.parametrize("name", THEMES)
@pytest.mark.parametrize("letters", COLOURS)
def test_the_rim_of_every_wire_colour_is_seen_on_the_field_it_stands_in(running, name, letters):
    image = swatch(letters).pixmap(SWATCH, SWATCH).toImage()
    middle = image.height() // 2
    across = [image.pixelColor(x, middle) for x in range(image.width())]
    rim = next(colour for colour in across if colour.alpha() == 255)
    assert contrast(rim.name(), surfaces(THEMES[name]).field) >= NON_TEXT


@pytest.mark.parametrize("name", THEMES)
def test_rules_that_give_both_words_and_ground_give_enough_of_a_difference(name):
    """Read from the rules themselves, so that a new rule is looked at too."""
    s, looked_at = surfaces(THEMES[name]), 0
    for selector, body in re.findall(r"([^{}]+)\{\{([^{}]*(?:\{\w+\}[^{}]*)*)\}\}", stylesheet._RULES):
        words = re.search(r"(?<![-\w])color: \{(\w+)\}", body)
        ground = re.search(r"background: \{(\w+)\}", body)
        if not words or not ground or ":disabled" in selector:
            continue
        looked_at += 1
        pair = getattr(s, words[1]), getattr(s, ground[1])
        assert contrast(*pair) >= TEXT, (selector.strip(), words[1], ground[1])
    assert looked_at >= 8


@pytest.mark.parametrize("name", THEMES)
def test_the_ring_of_the_focus_shows_on_every_ground(name):
    s = surfaces(THEMES[name])
    for ground in (*GROUNDS, *UNDER_POINTER):
        assert contrast(s.copper, getattr(s, ground)) >= NON_TEXT, ground
    assert contrast(s.ink, s.copper) >= NON_TEXT - 1.0, "round the one strong button, which it also widens"


@pytest.mark.parametrize("name", THEMES)
@pytest.mark.parametrize("demo", ["quay", "siding", "harbour"])
def test_names_on_the_plan_stand_off_the_board_and_what_lies_beyond_it(editor, name, demo):
    open_demo(editor, demo)
    editor.look.wear(name)
    view = editor.window.plan_view
    view.show_all()
    names = area_names(view.sight())
    assert names
    seen = shades(THEMES[name])
    for around in (seen.paper, seen.around):
        ground = mixed(
            around.name(), seen.label_ground.name(QColor.NameFormat.HexRgb), seen.label_ground.alphaF()
        )
        for one in names:
            assert contrast(one.ink.name(), ground) >= TEXT, one.name
    editor.look.wear("light")


def test_every_colour_of_the_window_is_one_of_its_own():
    """So that none is written into a rule that these tests would not see."""
    assert set(re.findall(r"(?<!\{)\{(\w+)\}", stylesheet._RULES)) <= {
        *Surfaces._fields,
        "notice",
        "arrow",
        "tick",
    }
    assert not re.findall(r"#[0-9a-fA-F]{6}\b", stylesheet._RULES)
