"""Wireways on printed plans: dashed lines with their names, in the same places from above and from below."""

import pytest
from support.editing import KINDS, done

from wiring.drawings.plan_view import plan_view
from wiring.edits.place_part import place
from wiring.edits.wireways import add_wireway
from wiring.pictures.picture import Path, Words
from wiring.plan.plan import Plan


def beam_plan() -> Plan:
    return done(
        Plan(),
        place(KINDS["lamp-12v"], 0, 0),
        place(KINDS["lamp-12v"], 900, 0),
        add_wireway([(0, 300), (900, 300)], "Back beam"),
    )


@pytest.mark.parametrize("below", [False, True])
def test_a_wireway_is_a_dashed_line_with_its_name_beside_it(below):
    items = plan_view(beam_plan(), KINDS, below=below).items
    (line,) = [i for i in items if isinstance(i, Path) and len(i.pen.dashes_mm) == 4]
    (name,) = [i for i in items if isinstance(i, Words) and i.text == "Back beam"]
    heights = {round(y, 3) for _, y in line.points}
    assert len(heights) == 1
    assert 0.5 < abs(name.at[1] - heights.pop()) < 12
    xs = [x for x, _ in line.points]
    assert min(xs) < name.at[0] < max(xs)


def test_a_plan_without_wireways_has_no_such_line():
    plan = beam_plan().with_changes(wireways={})
    assert not [i for i in plan_view(plan, KINDS).items if isinstance(i, Path) and len(i.pen.dashes_mm) == 4]
