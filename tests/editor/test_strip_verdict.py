"""What the strip says where there is nothing to count: nothing drawn, or nothing wrong."""

import pytest
from support.editors import as_new

from wiring.edits.set_plan import set_plan
from wiring.plan.joist import Joist

DRAWN = {
    "board": ((0.0, 0.0), (900.0, 0.0), (900.0, 400.0), (0.0, 400.0)),
    "tracks": (((0.0, 50.0), (900.0, 50.0)),),
    "joists": (Joist(start=(100.0, 0.0), end=(100.0, 400.0)),),
}


@pytest.mark.parametrize("what", DRAWN)
def test_what_is_drawn_without_parts_counts_as_drawn(running, tmp_path, what):
    editor = as_new(running, tmp_path)
    strip = editor.window.strip
    assert strip.verdict == "Nothing drawn yet" and editor.window.first_steps.isVisible()
    editor.session.do(set_plan(**{what: DRAWN[what]}))
    editor.solving.request()
    assert strip.verdict == "Nothing to find fault with"
    assert not editor.window.first_steps.isVisible()
    editor.session.undo()
    editor.solving.request()
    assert strip.verdict == "Nothing drawn yet"
