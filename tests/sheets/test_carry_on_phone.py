"""The carry sheet in a real browser the size of a phone: taps, pinches, ticks that stay, odd labels."""

import json
from pathlib import Path

import pytest
from msgspec.structs import replace
from support.editing import KINDS
from support.phones import REFUSE_STORAGE, Phone

from wiring.commands.main import main
from wiring.edits.set_wire import set_wire
from wiring.files.store import load, save
from wiring.findings.situation import examine
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.carry.carry_sheet import carry_sheet

DEMOS = Path(__file__).parents[2] / "demo_layouts"
QUAY = load(DEMOS / "quay.underboard")
ROWS = bench_rows(QUAY, KINDS)
ODD = (
    '<&">',
    "🚂🔥 lamp",
    "מנורה על הרציף",
    "x" * 200,
    "</script><script>window.broken = 1</script>",
    '"><img src=x onerror="window.broken = 1">',
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("phone")


@pytest.fixture(scope="module")
def browser(folder):
    phone = Phone(folder)
    yield phone
    phone.close()


@pytest.fixture
def phone(browser):
    browser.resize(360, 740)
    browser.looks("light")
    browser.complaints()
    yield browser
    assert browser.complaints() == []


def written(folder, plan, name="sheet.html"):
    path = folder / name
    path.write_text(carry_sheet(examine(plan, KINDS, outlooks=False)), encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def quay(folder):
    return written(folder, QUAY, "quay.html")


def box_of(row):
    return f'[data-made="{row.wire}"]'


def is_ticked(phone, row):
    return phone.run("return document.querySelector(arguments[0]).checked", box_of(row))


def lit(phone):
    return phone.run("return [...document.querySelectorAll('.wire.on')].map(e => e.dataset.wire)")


def marked(phone, page):
    script = "return [...document.querySelectorAll(arguments[0])].map(e => e.dataset.wire)"
    return phone.run(script, f"#page-{page} .row.on")


def test_a_tick_stays_when_the_page_is_opened_again(phone, quay):
    phone.open(quay)
    phone.tap(box_of(ROWS[2]))
    assert is_ticked(phone, ROWS[2]) and not is_ticked(phone, ROWS[1])
    assert phone.text("#progress") == f"{len(ROWS) - 1} of {len(ROWS)} wires left to do"
    phone.open(quay, fresh=False)
    assert is_ticked(phone, ROWS[2]) and not is_ticked(phone, ROWS[1])
    phone.tap(box_of(ROWS[2]))
    phone.open(quay, fresh=False)
    assert not is_ticked(phone, ROWS[2])


def test_tapping_a_row_lights_that_wire_and_brings_it_into_view(phone, quay):
    phone.open(quay)
    for row in ROWS[::7]:
        phone.tap(f'#page-wires [data-wire="{row.wire}"] .pick')
        assert lit(phone) == [row.wire] == marked(phone, "wires")
        assert phone.text("#held .name") == row.label
        stage = phone.run("const b = document.querySelector('#stage').getBoundingClientRect();"
                          "return [b.left, b.top, b.right, b.bottom]")  # fmt: skip
        for share in (0, 0.5, 1):
            x, y = phone.on_wire(row.wire, share)
            assert stage[0] <= x <= stage[2] and stage[1] <= y <= stage[3], (row.label, share)


def test_tapping_a_wire_on_the_plan_chooses_exactly_it(phone, quay):
    phone.resize(800, 1200)
    phone.open(quay)
    spots = phone.clear_spots()
    assert len(spots) >= len(ROWS) / 2
    for wire, (x, y) in list(spots.items())[::2]:
        phone.tap_at(x, y)
        assert lit(phone) == [wire] == marked(phone, "wires"), wire
        assert phone.text("#held .name") == QUAY.wires[wire].label


def test_a_tap_on_the_plan_brings_the_row_back_that_a_search_hid(phone, quay):
    phone.open(quay)
    row = ROWS[-1]
    phone.tap(f'#page-wires [data-wire="{row.wire}"] .pick')
    phone.enter("#find", "no such words")
    hidden = "return document.querySelector(`#page-wires [data-wire='${arguments[0]}']`).hidden"
    assert phone.run(hidden, row.wire)
    phone.tap_at(*phone.on_wire(row.wire, 0.5))
    assert not phone.run(hidden, row.wire) and marked(phone, "wires") == [row.wire]


def test_taps_on_one_spot_walk_through_the_wires_of_a_bundle(phone, quay):
    phone.open(quay)
    spots = {row.wire: phone.on_wire(row.wire, 0.5) for row in ROWS}
    crowd = max(
        spots.values(), key=lambda s: sum(abs(s[0] - x) + abs(s[1] - y) < 16 for x, y in spots.values())
    )
    found = []
    for _ in range(4):
        phone.tap_at(*crowd)
        found += lit(phone)
    assert len(found) == 4 and len(set(found)) > 1
    assert found[0] != found[1]


def test_two_fingers_apart_come_nearer_and_one_finger_moves(phone, quay):
    phone.open(quay)
    view = "return document.querySelector('#plan').getAttribute('viewBox').split(' ').map(Number)"
    before = phone.run(view)
    phone.touch("touchStart", (150, 180), (190, 180))
    for step in range(1, 6):
        phone.touch("touchMove", (150 - 12 * step, 180), (190 + 12 * step, 180))
    phone.touch("touchEnd")
    near = phone.run(view)
    # the fingers end 160 pixels apart after 40, about a middle that stayed
    assert near[2] == pytest.approx(before[2] / 4, rel=0.15)
    phone.touch("touchStart", (170, 180))
    for step in range(1, 6):
        phone.touch("touchMove", (170 + 10 * step, 180))
    phone.touch("touchEnd")
    moved = phone.run(view)
    assert moved[2] == pytest.approx(near[2]) and moved[0] == pytest.approx(
        near[0] - near[2] * 50 / 360, rel=0.02
    )
    assert lit(phone) == []


def test_made_goes_on_to_the_next_wire_and_can_be_undone(phone, quay):
    phone.open(quay)
    phone.tap("#made")
    assert lit(phone) == [ROWS[0].wire]
    phone.tap("#made")
    assert is_ticked(phone, ROWS[0]) and lit(phone) == [ROWS[1].wire]
    phone.tap("#undo")
    assert not is_ticked(phone, ROWS[0]) and lit(phone) == [ROWS[0].wire]


def test_when_every_wire_is_made_the_page_says_so_and_points_to_the_meter(phone, quay):
    phone.open(quay)
    for row in ROWS[1:]:
        phone.run("document.querySelector(arguments[0]).click()", box_of(row))
    assert phone.text("#progress") == f"1 of {len(ROWS)} wires left to do"
    phone.tap("#made")
    phone.tap("#made")
    assert phone.text("#progress") == "Every wire is made" and phone.text('[data-to="wires"] i') == "done"
    assert "meter" in phone.text("#note")


def test_to_do_search_and_place_let_only_their_rows_through(phone, quay):
    phone.open(quay)
    shown = "#page-wires .row:not([hidden])"
    assert phone.count(shown) == len(ROWS)
    phone.tap(box_of(ROWS[0]))
    phone.tap("#left")
    assert phone.count(shown) == len(ROWS) - 1
    phone.tap("#left")
    place = ROWS[-1].place
    phone.enter("#place", place)
    assert phone.count(shown) == sum(row.place == place for row in ROWS)
    phone.enter("#place", "")
    phone.enter("#find", ROWS[-1].label.lower())
    assert 1 <= phone.count(shown) < len(ROWS)
    phone.enter("#find", "no such words")
    assert phone.count(shown) == 0 and "matches" in phone.text("#empty")


def test_dark_follows_the_phone_until_the_button_says_otherwise(phone, quay):
    paper = "return getComputedStyle(document.body).backgroundColor"
    phone.open(quay)
    light = phone.run(paper)
    phone.tap("#look")
    assert phone.run(paper) != light
    phone.open(quay)
    phone.looks("dark")
    assert phone.becomes(lambda: phone.run(paper) != light)
    phone.tap("#look")
    assert phone.run(paper) == light
    phone.open(quay, fresh=False)
    assert phone.run(paper) == light


@pytest.fixture(scope="module")
def odd(folder):
    return written(folder, odd_plan(), "odd.html")


@pytest.mark.parametrize("size", [(320, 568), (360, 740), (800, 1200), (740, 360)])
def test_nothing_is_wider_than_the_screen(phone, odd, size):
    phone.resize(*size)
    phone.open(odd)
    for page in ("wires", "strips", "meter", "safety", "findings"):
        phone.tap(f'[data-to="{page}"]')
        wide = phone.run(
            """return [...document.querySelectorAll("body *")].filter(e => !e.closest("svg, dialog, #held"))
            .filter(e => e.getBoundingClientRect().right > innerWidth + 0.5)
            .map(e => e.outerHTML.slice(0, 90));"""
        )
        assert wide == [] and phone.run("return document.documentElement.scrollWidth") <= size[0]


def odd_plan():
    parts = dict(QUAY.parts)
    for part, label in odd_labels().items():
        parts[part] = replace(parts[part], label=label)
    wire = replace(QUAY.wires[ROWS[0].wire], note="</p><b>" + "y" * 200)
    wires = {**QUAY.wires, wire.id: wire}
    title = '<&"> 🚂 </script><script>window.broken = 1</script>'
    return QUAY.with_changes(title=title, parts=parts, wires=wires)


def odd_labels():
    """Return an odd label for each of the first parts that a wire ends on."""
    ends = dict.fromkeys(ref.part for w in QUAY.wires.values() for ref in (w.start, w.end))
    return dict(zip(ends, ODD, strict=False))


def test_odd_labels_are_shown_as_they_are_and_run_nothing(phone, odd):
    phone.open(odd)
    assert phone.run("return window.broken") is None
    assert phone.text("#head h1") == odd_plan().title
    said = " ".join(
        phone.texts("#page-wires .end, #page-strips .facts, #page-meter .facts, #page-findings .what")
    )
    assert [label for label in odd_labels().values() if label not in said] == []
    assert len(odd_labels()) == len(ODD)
    assert phone.count("img") == 0 and phone.count("script") == 2
    phone.tap(box_of(ROWS[0]))
    phone.open(odd, fresh=False)
    assert is_ticked(phone, ROWS[0])


def test_nothing_is_fetched(phone, quay):
    phone.open(quay)
    assert phone.run("return performance.getEntriesByType('resource').map(e => e.name)") == []


def test_without_storage_the_page_works_and_says_that_ticks_will_not_stay(phone, quay):
    with phone.beforehand(REFUSE_STORAGE):
        phone.open(quay, fresh=False)
    assert "keeps no ticks" in phone.text("#note")
    phone.tap(box_of(ROWS[0]))
    assert is_ticked(phone, ROWS[0])
    phone.tap("#ticks-open")
    text = phone.run("return document.querySelector('#ticks-text').value")
    assert ROWS[0].wire in json.loads(text)["built"]


def test_ticks_go_home_into_the_plan_and_come_back_ticked(phone, folder, quay, capsys):
    plan = folder / "home.underboard"
    save(QUAY, plan)
    phone.open(quay)
    for row in ROWS[:3]:
        phone.tap(box_of(row))
    phone.tap("#ticks-open")
    phone.tap("#ticks-save")
    saved = folder / "Kelpwater-quay-ticks.json"
    assert phone.becomes(lambda: saved.exists() and saved.stat().st_size)
    assert main(["built", str(plan), str(saved)]) == 0
    assert f"3 of {len(ROWS)} wires are built" in capsys.readouterr().out
    assert {w.id for w in load(plan).wires.values() if w.built} == {row.wire for row in ROWS[:3]}
    # a sheet made from the plan with its ticks shows them, and remembers one that is taken off
    again = written(folder, load(plan), "again.html")
    phone.open(again)
    assert [is_ticked(phone, row) for row in ROWS[:4]] == [True, True, True, False]
    phone.tap(box_of(ROWS[1]))
    phone.tap("#ticks-open")
    text = json.loads(phone.run("return document.querySelector('#ticks-text').value"))
    assert list(text["undone"]) == [ROWS[1].wire] and set(text["built"]) == {ROWS[0].wire, ROWS[2].wire}


def test_a_sheet_made_anew_takes_over_the_ticks_of_wires_that_are_as_they_were(phone, folder, quay):
    phone.open(quay)
    for row in ROWS[:3]:
        phone.tap(box_of(row))
    new = set_wire([ROWS[1].wire], colour="PK").apply(QUAY)
    phone.open(written(folder, new, "anew.html"), fresh=False)
    assert [is_ticked(phone, row) for row in ROWS[:3]] == [True, False, True]
    assert "2 ticks were taken over" in phone.text("#note")


def test_a_meter_check_marks_its_two_points_and_a_finding_its_parts(phone, folder):
    phone.open(written(folder, load(DEMOS / "siding.underboard"), "siding.html"))
    phone.tap('[data-to="meter"]')
    phone.tap("#page-meter [data-marks] .pick")
    assert phone.count(".mark.red") == phone.count(".mark.black") == 1
    phone.tap('[data-to="findings"]')
    phone.tap("#page-findings [data-marks] .pick")
    assert phone.count(".mark.part") >= 1 and phone.count(".mark.red") == 0
