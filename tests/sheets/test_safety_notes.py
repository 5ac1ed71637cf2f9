import pytest
from support.editing import KINDS

from wiring.edits.place_part import place
from wiring.plan.plan import Plan
from wiring.sheets.safety import FIRST, LAST, earned_notes, safety_notes


def plan_of(*keys):
    plan = Plan()
    for key in keys:
        plan = place(KINDS[key], 0, 0).apply(plan)
    return plan


def test_every_caution_of_the_catalogue_has_a_note():
    assert {c for kind in KINDS.values() for c in kind.cautions} <= set(safety_notes())


def test_every_note_is_earned_by_some_kind_or_always_printed():
    earned = {c for kind in KINDS.values() for c in kind.cautions}
    assert set(safety_notes()) - {FIRST, LAST} <= earned


@pytest.mark.parametrize(
    ("key", "earned", "not_earned"),
    [
        ("supply-regulated", "mains-adapter", "battery-short"),
        ("battery-li-ion", "lithium-cells", "lead-acid"),
        ("battery-lead-acid", "lead-acid", "lithium-cells"),
        ("lamp-12v", "hot-lamps", "solenoid-burn"),
        ("twin-coil", "solenoid-burn", "hot-lamps"),
        ("toggle-on-off", "drilling", "mains-adapter"),
    ],
)
def test_a_plan_gets_the_notes_of_its_own_parts(key, earned, not_earned):
    notes = earned_notes(plan_of(key), KINDS)
    assert safety_notes()[earned] in notes and safety_notes()[not_earned] not in notes


def test_every_set_begins_with_unplugging_and_ends_with_the_law_of_the_land():
    for plan in (Plan(), plan_of(*KINDS)):
        notes = earned_notes(plan, KINDS)
        assert "unplug" in notes[0].lines[0].lower()
        assert any("local codes" in line and "licensed" in line for line in notes[-1].lines)


def test_mains_work_is_left_to_licensed_people():
    lines = " ".join(safety_notes()["mains-adapter"].lines).lower()
    assert "approved" in lines and "licensed electrician" in lines and "never open" in lines
