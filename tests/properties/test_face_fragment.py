"""What always holds when a piece of a face is copied and pasted: its shape, its place, the room it takes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.benches import BUTTON, LAMP, PANEL, STRIP, SWITCH, panel_plan
from support.editing import KINDS, done

from wiring.edits.edit import EditRefused
from wiring.edits.face_fragment import copied_from_face, paste_on_face, read_face_fragment
from wiring.edits.face_items import add_line, add_text
from wiring.edits.fragment import copied, paste, read_fragment
from wiring.plan.panel_bodies import bodies_on, clashes, misfits
from wiring.plan.soundness import unsound

PAINTED = done(
    panel_plan(),
    add_line(PANEL, [(10, 10), (90, 10), (120, 20)], 5, "RD"),
    add_line(PANEL, [(10, 90), (60, 90)]),
    add_text(PANEL, "QUAY", 40, 75, high_mm=5, colour="BU", turn_deg=90),
)
IDS = st.sets(st.sampled_from([SWITCH, BUTTON, LAMP]))
LINES, TEXTS = st.sets(st.integers(0, 1)), st.sets(st.just(0))
PLACES = st.tuples(st.floats(-50, 250), st.floats(-50, 150))
QUICK = settings(max_examples=40, deadline=None)


def shape(parts, lines, texts, corner=(0.0, 0.0)):
    """Places of everything from the first of them on, and all that is not a place."""
    at = [(p.x_mm - corner[0], p.y_mm - corner[1]) for p in parts]
    at += [q for line in lines for q in line.points] + [(t.x_mm, t.y_mm) for t in texts]
    looks = [(p.kind, p.turn_deg) for p in parts] + [(line.width_mm, line.colour) for line in lines]
    looks += [(t.text, t.high_mm, t.colour, t.turn_deg) for t in texts]
    return at[0], [(round(x - at[0][0], 3), round(y - at[0][1], 3)) for x, y in at], looks


def added(new):
    panel, old = new.panels[PANEL], PAINTED.panels[PANEL]
    parts = [new.parts[i] for i in new.parts if i not in PAINTED.parts]
    return parts, panel.lines[len(old.lines) :], panel.texts[len(old.texts) :]


@QUICK
@given(IDS, LINES, TEXTS, PLACES)
def test_what_is_pasted_has_the_shape_of_what_was_copied_and_lies_on_the_spacing(ids, lines, texts, at):
    text = copied_from_face(PAINTED, PANEL, ids, lines, texts)
    assert bool(text) == bool(ids or lines or texts)
    if not text:
        return
    new = paste_on_face(text, PANEL, at).apply(PAINTED)
    assert unsound(new, KINDS) == ()
    found = read_face_fragment(text)
    first, *rest = shape(*added(new), corner=(100, 300))
    assert rest == list(shape(found.parts, found.lines, found.texts))[1:]
    assert first[0] % 10 == pytest.approx(0) and first[1] % 10 == pytest.approx(0)


@QUICK
@given(IDS.filter(bool), PLACES)
def test_no_body_is_set_where_it_cannot_be_mounted(ids, at):
    new = paste_on_face(copied_from_face(PAINTED, PANEL, ids, (), ()), PANEL, at).apply(PAINTED)
    bodies = bodies_on(new, KINDS, new.panels[PANEL])
    assert not list(clashes(bodies)) and not misfits(bodies, new.panels[PANEL])
    assert all(part.panel == PANEL for part in added(new)[0])


@QUICK
@given(IDS, LINES, TEXTS)
def test_the_plan_takes_the_parts_of_the_same_text_and_says_so_where_there_are_none(ids, lines, texts):
    text = copied_from_face(PAINTED, PANEL, ids, lines, texts)
    if ids:
        assert [p.id for p in read_fragment(text).parts] == [i for i in PAINTED.parts if i in ids]
        assert len(paste(text).apply(PAINTED).parts) == len(PAINTED.parts) + len(ids)
    else:
        with pytest.raises(EditRefused):
            paste(text).apply(PAINTED)


def test_a_copy_without_paint_is_the_plans_own_text():
    ids = [SWITCH, BUTTON, STRIP]
    assert copied_from_face(PAINTED, PANEL, ids, (), ()) == copied(PAINTED, ids)


@pytest.mark.parametrize("text", ["", "milk", "[]", "{}", '{"parts": [], "wires": []}', "9" * 99])
def test_what_holds_nothing_for_a_face_is_refused_in_one_sentence(text):
    with pytest.raises(EditRefused) as refusal:
        paste_on_face(text, PANEL, (10, 10)).apply(PAINTED)
    assert str(refusal.value).endswith(".") and "\n" not in str(refusal.value)


def test_copies_never_fill_a_face_beyond_what_it_may_hold():
    plan = PAINTED
    with pytest.raises(EditRefused, match="more than 500"):
        for _ in range(10):
            everything = range(len(plan.panels[PANEL].lines))
            text = copied_from_face(plan, PANEL, (), everything, ())
            plan = paste_on_face(text, PANEL, (100, 50)).apply(plan)
    assert len(plan.panels[PANEL].lines) == 256
