"""Letters of many languages are printed; those the typeface lacks are told in one plain note."""

import unicodedata

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import done
from support.findings import found, rules
from support.networks import draw

from wiring.edits.face_items import add_text
from wiring.edits.panels import add_panel
from wiring.edits.scenes import add_scene, put_in_scene
from wiring.edits.set_plan import set_plan
from wiring.edits.set_value import set_field
from wiring.findings.finding import Rank
from wiring.pictures.letters import LATIN, USUAL, box_words, lacking, lacking_words
from wiring.pictures.typefaces import FILES, runs, typeface

RULE = "letters-not-printed"


def bench():
    return draw({"G1": "battery-9v", "E1": "lamp-12v"}, [("G1:+", "E1:1"), ("E1:2", "G1:-")])


def ids(plan):
    return {p.designation: p.id for p in plan.parts.values()}


@given(st.text(st.characters(min_codepoint=0x20, max_codepoint=0x24F, exclude_categories=("Cc", "Cf"))))
@settings(max_examples=40, deadline=None)
def test_latin_with_all_its_extensions_is_printed_in_every_cut(text):
    assert lacking(text) == ()
    assert all("" not in runs(text, weight) for weight in FILES)


def test_what_is_said_to_be_there_without_a_look_is_there():
    below = {chr(code) for code in range(0x20, LATIN) if unicodedata.category(chr(code))[0] != "C"}
    for weight in FILES:
        assert {ord(sign) for sign in below | USUAL} <= set(typeface(weight).advances_em)


@pytest.mark.parametrize(
    "text", ["Школа у шлюза №2", "Λάμπα Ωμέγα", "Łódź Őrült Ştiință", "25 Ω ± 5 µA → 3 °C"]
)
def test_cyrillic_greek_and_signs_of_the_trade_are_printed_too(text):
    assert lacking(text) == () and box_words(text) == ""


@given(st.text(max_size=12))
@settings(max_examples=60, deadline=None)
def test_no_box_is_printed_without_being_told(text):
    if "" in runs(text):
        assert lacking(text)
    for weight in FILES:
        assert set(typeface(weight).advances_em) == set(typeface().advances_em)


def test_signs_are_named_each_once_and_the_rest_counted():
    assert lacking_words("灯塔灯") == "“灯” and “塔”"
    assert lacking_words("春夏秋冬灯") == "“春”, “夏”, “秋” and 2 more"
    assert lacking_words("❤\ufe0f") in ("“❤”", "") and lacking("a\u2011b") == ()


def test_a_label_is_named_with_its_letter_in_a_note_and_others_are_counted():
    plan = bench()
    plan = set_field((ids(plan)["E1"],), label="灯塔 lamp").apply(plan)
    note = found(plan, RULE)
    assert note.rank is Rank.NOTE and note.parts == (ids(plan)["E1"],)
    assert note.what == "The label “灯塔 lamp” of -E1 has letters the sheets cannot print: “灯” and “塔”."
    wire = msgspec.structs.replace(next(iter(plan.wires.values())), note="黒")
    plan = plan.with_changes(wires={**plan.wires, wire.id: wire})
    note = found(plan, RULE)
    assert "and 1 more text, have letters" in note.what and note.wires == (wire.id,)


@pytest.mark.parametrize(
    ("edits", "words"),
    [
        ([add_scene("港", 0, 0, 300, 300)], "The name “港” of a scene has a letter"),
        ([add_panel("P", 0, 0, 200, 100), add_text("n1", "港", 50, 50)], "The legend “港” on P has a letter"),
        ([set_plan(title="港 harbour")], "The title “港 harbour” of the plan has a letter"),
    ],
)
def test_names_legends_and_the_title_count_too(edits, words):
    plan = bench()
    for edit in edits:
        plan = edit.apply(plan)
    panel = next(iter(plan.panels.values()), None)
    assert panel is None or panel.texts
    note = found(plan, RULE)
    assert note.what.startswith(words)
    assert all(len(said) < 200 and said.endswith(".") for said in (note.what, note.why, note.mend))


def test_the_name_of_a_scene_selects_its_parts():
    plan = done(bench(), add_scene("港", -1000, -1000, 5000, 5000))
    scene = next(iter(plan.scenes))
    plan = done(plan, put_in_scene((ids(plan)["E1"],), scene))
    assert ids(plan)["E1"] in found(plan, RULE).parts


def test_what_can_be_printed_earns_no_note():
    plan = bench()
    plan = set_field((ids(plan)["E1"],), label="Škoda Ωmega Школа", note="näher – “so”").apply(plan)
    assert RULE not in rules(plan)
