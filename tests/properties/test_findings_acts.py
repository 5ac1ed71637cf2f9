"""Every act a finding offers can be done, puts that finding right and nothing else wrong."""

import functools
import re

import pytest
from support.findings import found, situation
from support.mending import dangers, findings, mended, sound, still_there
from support.networks import draw, kinds

from tests.properties.test_findings_of_feeding import CASES as FEEDING
from tests.properties.test_findings_of_parts import CASES as PARTS
from tests.properties.test_findings_of_poles import CASES as POLES
from tests.properties.test_findings_of_wireways import bundle
from tests.properties.test_positions_findings import two_loads
from tests.properties.test_pulses_findings import CASES as PULSES
from wiring.findings.doing import EDITS, edit_for
from wiring.findings.situation import examine

PLANS = {
    **{rule: sound(plans[0]) for rule, plans in {**FEEDING, **PARTS, **POLES, **PULSES}.items()},
    "full-wireway": bundle(6.0),
    "charged": sound(
        draw(
            {"G1": ("battery-nimh", {"fitted": "2026-01-10"}), "E1": "lamp-12v"},
            [("G1:+", "E1:1"), ("G1:-", "E1:2")],
        )
    ),
}
# What has an act by its nature; the others name no one act, see the mends of their rules.
MENDED = {
    "led-without-resistor": "resistor",
    "led-current": "set",
    "lamp-over-volts": "resistor",
    "led-backward": "swap",
    "wrong-polarity": "swap",
    "supply-backward": "swap",
    "wire-current": "size",
    "wire-drop": "size",
    "pulse-weak": "size",
    "throw-weak": "size",
    "supply-in-limit": "set",
    "supply-shut-off": "set",
    "supply-overload": "set",
    "fuse-missing": "fuse",
    "fuse-too-large": "set",
    "fuse-blows": "set",
    "fuse-tight": "set",
    "cold-lamps-fuse": "set",
    "store-rush-fuse": "set",
    "unit-too-small": "set",
    "resistor-power": "set",
    "diode-current": "set",
    "contact-current": "set",
    "dc-part-on-ac": "rectifier",
    "full-wireway": "drill",
    "battery-due": "fitted",
    "setting-odd": "usual",
}
# Settings that cannot be right gave figures of nothing that is sold, and behind a supply that was off nothing
# carried a current: what they hid may come out.
HID_MORE = ("setting-odd", "supply-shut-off")


@functools.cache
def _found(name):
    return findings(PLANS[name])


def _offers(name):
    return [f for f in _found(name) if f.act is not None]


@pytest.mark.parametrize("rule", MENDED)
def test_the_rule_offers_its_act(rule):
    acts = [f.act for f in _offers(rule) if f.rule == rule]
    assert acts and all(act.name == MENDED[rule] for act in acts)


def test_every_act_there_is_is_offered():
    assert {f.act.name for name in PLANS for f in _offers(name)} == set(EDITS)


def test_nothing_else_is_offered_an_act():
    assert {f.rule for name in PLANS for f in _offers(name)} <= set(MENDED)


@pytest.mark.parametrize("name", PLANS)
def test_every_act_offered_is_done_and_mends_what_was_found(name):
    plan, before = PLANS[name], dangers(_found(name))
    for finding in _offers(name):
        new = mended(plan, finding)
        after = findings(new)
        assert new != plan
        assert not still_there(after, finding), finding.what
        assert finding.rule in HID_MORE or dangers(after) <= before, finding.what


@pytest.mark.parametrize("name", PLANS)
def test_an_act_has_words_for_a_button_and_a_name_for_undo(name):
    for finding in _offers(name):
        edit = edit_for(finding.act, kinds())
        assert re.fullmatch(r"[A-Z].*[^.]", finding.act.words) and len(finding.act.words) <= 34
        assert edit.label[0].isupper() and not re.search(
            r"\d ?(Ω|mA|A|V|W)\b", edit.label
        )  # told in small letters
        assert set(finding.act.parts) <= set(PLANS[name].parts)
        assert set(finding.act.wires) <= set(PLANS[name].wires)


@pytest.mark.parametrize("name", PLANS)
def test_what_is_done_is_what_the_mend_says(name):
    """The value on the button stands in the sentence too, but for the day, which is today."""
    for finding in _offers(name):
        value = re.search(
            r"(\d[\d.]*( ×)? ?(kΩ|Ω|mA|A|W|AWG|mm²|mm|µF))$", finding.act.words.split(" for ")[0]
        )
        if value is not None:
            assert value[1].split("× ")[-1] in finding.mend, (finding.act.words, finding.mend)


def test_what_was_mended_once_cannot_be_mended_again_on_parts_that_are_gone():
    plan = PLANS["fuse-blows"]
    act = found(plan, "fuse-blows").act
    gone = plan.with_changes(parts={}, wires={})
    with pytest.raises(Exception, match=r"no part F1 any more") as refusal:
        edit_for(act, kinds()).apply(gone)
    assert type(refusal.value).__name__ == "EditRefused"


def test_a_wire_that_is_too_thin_in_some_positions_only_is_made_thicker():
    plan = sound(two_loads(4.0, "26 AWG", ohms=40.0))
    positions = {"S1": "off", "S2": "on"}

    def worst(of):
        findings = examine(of, kinds(), positions, every_position=True).findings
        return [f for f in findings if f.rule == "wire-worst-case"]

    (finding,) = worst(plan)
    assert finding.act.name == "size" and not worst(mended(plan, finding))


def test_the_wires_of_the_other_loads_of_a_long_run_are_made_thicker_next():
    """The worst run of a supply is mended first: what is left of the finding is less."""
    far, near = {"length_m": 45.0, "size": "26 AWG"}, {"length_m": 30.0, "size": "26 AWG"}
    lamp = ("lamp-12v", {"rated_a": 0.2})
    plan = sound(
        draw(
            {"G1": "supply-regulated", "E1": lamp, "E2": lamp},
            [("G1:+", "E1:1", far), ("G1:-", "E1:2", far), ("G1:+", "E2:1", near), ("G1:-", "E2:2", near)],
        )
    )
    first = found(plan, "wire-drop")
    second = found(mended(plan, first), "wire-drop")
    assert first.parts == ("E1", "E2") and second.parts == ("E2",)
    assert not still_there(findings(mended(mended(plan, first), second)), second)


def row(ways, *wires, **more):
    """LEDs side by side on one supply, each "+" the right way round or "-" the wrong way."""
    names = {f"E{n}": "led-warm-white" for n in range(1, len(ways) + 1)}
    ends = [("A", "K") if way == "+" else ("K", "A") for way in ways]
    feeds = [
        wire
        for name, (one, other) in zip(names, ends, strict=True)
        for wire in (("G1:+", f"{name}:{one}"), ("G1:-", f"{name}:{other}"))
    ]
    return sound(draw({"G1": "supply-regulated", **names, **more}, [*feeds, *wires]))


@pytest.mark.parametrize("ways", ["+++-", "-+--", "--", "+-", "++--"])
def test_leds_the_wrong_way_round_in_a_row_are_found_and_turned(ways):
    plan = row(ways)
    finding = found(plan, "led-backward")
    assert finding.parts == tuple(f"E{n}" for n, way in enumerate(ways, 1) if way == "-")
    new = mended(plan, finding)
    assert "led-backward" not in {f.rule for f in findings(new)}
    figures = situation(new).figures
    assert all(figures.parts[f"E{n}"].current_a > 1e-3 for n in range(1, len(ways) + 1))
