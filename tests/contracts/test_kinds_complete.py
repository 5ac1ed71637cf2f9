"""Every built-in kind can be placed, wired, solved and found, and says where its numbers come from."""

import itertools
import math

import pytest

from wiring.catalogue.behaviours import BEHAVIOURS
from wiring.catalogue.known_names import PURPOSES, SIGNS, SYMBOLS
from wiring.catalogue.shelf import builtin_kinds
from wiring.quantities.quantity import Quantity
from wiring.quantities.reading import read
from wiring.quantities.wording import worded

KINDS = builtin_kinds()
EXPECTED = [
    "led-red", "led-yellow", "led-green", "led-blue", "led-white", "led-warm-white", "led-red-bare",
    "led-yellow-bare", "led-green-bare", "led-blue-bare", "led-white-bare", "led-warm-white-bare",
    "led-strip-warm-white", "lamp-12v", "lamp-16v", "lamp-1v5", "building-led", "building-filament",
    "flasher", "constant-current-light", "sound-module", "stall-motor", "twin-coil", "servo",
    "discharge-unit", "toggle-on-off", "toggle-on-off-2p", "toggle-on-on", "toggle-on-on-2p",
    "toggle-centre-off", "toggle-centre-off-2p", "push-to-make", "push-to-break", "push-off-delay",
    "slide-on-on", "relay",
    "indicator-red",
    "indicator-green", "indicator-yellow", "supply-regulated", "supply-unregulated", "supply-ac",
    "battery-alkaline", "battery-9v", "battery-nimh", "battery-zinc", "battery-lithium-9v",
    "battery-lithium-aa", "battery-li-ion", "battery-lipo", "battery-lead-acid", "rectifier",
    "smoothed-rectifier", "converter-5v", "fuse", "resettable-fuse", "resistor", "diode",
    "terminal-strip-4", "terminal-strip-8", "terminal-strip-12", "distribution-block-6",
    "distribution-block-12", "plug-2", "plug-4", "plug-8", "plug-12", "plug-16", "plug-24", "plug-36",
]  # fmt: skip
LETTERS = {
    "led": "EP", "strip": "E", "filament": "E", "flasher": "E", "constant_current": "E",
    "constant_power": "P",
    "stall_motor": "M", "twin_coil": "M", "servo": "M", "discharge_unit": "C", "relay": "K", "switch": "S",
    "supply_regulated": "G", "supply_unregulated": "G", "supply_ac": "G", "battery": "G", "converter": "T",
    "fuse": "F", "resettable_fuse": "F",
    "resistor": "R", "diode": "R", "rectifier": "T", "separate": "X", "bus": "X", "pairs": "X",
}  # fmt: skip

every_kind = pytest.mark.parametrize("kind", KINDS.values(), ids=list(KINDS))


def test_all_kinds_are_there_and_no_others():
    assert sorted(KINDS) == sorted(EXPECTED)


def test_every_behaviour_sign_symbol_and_purpose_has_a_kind():
    assert {k.behaviour for k in KINDS.values()} == set(BEHAVIOURS) == set(LETTERS)
    assert {k.sign for k in KINDS.values()} == SIGNS
    assert {k.symbol for k in KINDS.values()} == SYMBOLS
    assert [p for p, _ in itertools.groupby(k.purpose for k in KINDS.values())] == list(PURPOSES)


@every_kind
def test_settings_are_those_of_the_behaviour_and_within_bounds(kind):
    specs = BEHAVIOURS[kind.behaviour].settings
    assert [s.name for s in kind.settings] == [s.name for s in specs]
    for setting in kind.settings:
        assert setting.title and setting.quantity in (*Quantity, "choice", "text")
        if setting.quantity == "choice":
            assert setting.default in setting.choices
        elif setting.quantity != "text":
            assert isinstance(setting.default, float)
            assert setting.lowest <= setting.default <= setting.highest


@every_kind
def test_every_number_says_where_it_comes_from(kind):
    for setting in kind.settings:
        if setting.quantity != "text":
            assert len(setting.source) >= 3, setting.name


@every_kind
def test_every_number_can_be_shown_and_typed_again(kind):
    for setting in kind.settings:
        if isinstance(setting.default, float):
            back = read(worded(setting.default, setting.quantity), setting.quantity)
            assert back == pytest.approx(setting.default, rel=5e-3)


@every_kind
def test_terminals_and_positions_are_those_of_the_behaviour(kind):
    behaviour = BEHAVIOURS[kind.behaviour]
    names = {t.name for t in kind.terminals}
    assert names >= set(behaviour.terminals)
    assert {p.name for p in kind.positions} >= set(behaviour.positions)
    closed = {name for p in kind.positions for pair in p.closes for name in pair}
    assert closed <= names
    assert names - set(behaviour.terminals) - closed == set() or kind.behaviour in ("separate", "bus")
    assert (kind.in_use in {p.name for p in kind.positions}) == bool(kind.positions)


@every_kind
def test_wires_can_land_on_every_terminal(kind):
    for a, b in itertools.combinations(kind.terminals, 2):
        assert math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) >= 6.0, (a.name, b.name)
    if kind.behaviour not in ("separate", "bus"):  # their screws lie on the body
        for t in kind.terminals:
            out_x, out_y = abs(t.x_mm) - kind.width_mm / 2, abs(t.y_mm) - kind.height_mm / 2
            assert 3.0 <= max(out_x, out_y) <= 10.0, t.name


@every_kind
def test_polarity_is_marked_where_it_matters(kind):
    marks = {t.name: t.mark for t in kind.terminals}
    for plus, minus in (("A", "K"), ("+", "-")):
        if plus in marks:
            assert (marks[plus], marks[minus]) == ("+", "-")
    assert all(marks[name] == "~" for name in marks if name.startswith("~"))


@every_kind
def test_it_can_be_found_and_read_about(kind):
    assert len(kind.words) >= 3
    assert kind.note.endswith(".") and len(kind.note) > 20
    assert kind.designation in LETTERS[kind.behaviour]


def test_only_bare_leds_lack_a_resistor():
    leds = {key for key, kind in KINDS.items() if kind.behaviour in ("led", "strip")}
    assert leds - set(WITH_RESISTOR) == {key for key in EXPECTED if key.endswith("-bare")}


def test_titles_are_told_apart():
    titles = [k.title for k in KINDS.values()]
    assert len(set(titles)) == len(titles)


# A maker's curve of a red LED, V at A.
RED_LED = [(1.6, 0.70e-3), (1.7, 5e-3), (1.8, 20e-3)]


@pytest.mark.parametrize("key", ["led-red", "led-red-bare", "indicator-red"])
def test_red_leds_follow_the_published_curve(key):
    kind = KINDS[key]
    forward_v, forward_a, slope_v = (kind.setting(n).default for n in ("forward_v", "forward_a", "slope_v"))
    for volts, amps in RED_LED:
        assert forward_v + slope_v * math.log(amps / forward_a) == pytest.approx(volts, abs=0.025)


WITH_RESISTOR = [
    key for key, kind in KINDS.items() if kind.behaviour in ("led", "strip") and kind.values({})["series_ohm"]
]


@pytest.mark.parametrize("key", WITH_RESISTOR)
def test_leds_with_a_resistor_shine_fully_on_their_12_volts(key):
    typical = KINDS[key].values({})
    in_series = typical["in_series"]
    amps = (12.0 - in_series * typical["forward_v"]) / typical["series_ohm"]
    assert amps == pytest.approx(typical["forward_a"], rel=0.06)
    assert amps <= typical["max_a"]
