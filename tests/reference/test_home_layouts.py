"""Situations that happen at home: each figure by hand from Ohm's law or a rule of the trade; what is found.

Wire: 24 AWG 0.0842 ohm a metre, 28 AWG 0.213 ohm a metre (ASTM B258 at 20 °C, from memory); strands and lay
make up to 5 % of difference. What is called practice has no source.
"""

import math
from collections import Counter

import pytest
from support.mending import mended, sound
from support.networks import draw, kinds, resistor, stiff

from wiring.findings.situation import examine

LAMP = ("lamp-12v", {})
AC_V = 18.5  # what the transformer of the catalogue gives without load, RMS
OHM_PER_M = {"24 AWG": 0.0842, "28 AWG": 0.213}


def looked_at(plan, positions=None):
    """What is known of a plan but for how long its batteries last."""
    return examine(plan, kinds(), positions, outlooks=False)


def rules(plan, positions=None):
    return Counter(f.rule for f in looked_at(plan, positions).findings)


def found(plan, rule, positions=None):
    (finding,) = [f for f in looked_at(plan, positions).findings if f.rule == rule]
    return finding


def across(plus, minus, *loads, ends=("1", "2")):
    """Wires that lay loads side by side."""
    return [wire for load in loads for wire in ((plus, f"{load}:{ends[0]}"), (minus, f"{load}:{ends[1]}"))]


def side_by_side(one, other, *extra):
    return draw(
        {"G1": one, "G2": other, "E1": LAMP},
        [("G1:+", "E1:1"), ("G1:-", "E1:2"), ("G2:+", "G1:+"), ("G2:-", "G1:-"), *extra],
    )


def alone(battery, ohms):
    plan = draw({"G1": battery, "R1": resistor(ohms)}, [("G1:+", "R1:1"), ("G1:-", "R1:2")])
    return looked_at(plan).figures.supplies["G1"].volts_v


def test_two_batteries_of_different_chemistry_the_higher_charges_the_lower():
    """EMF and resistance of each from two loads, then (E2 - E1) / (R1 + R2); the lamp takes little."""
    alkaline, nimh = ("battery-alkaline", {"in_series": 8}), ("battery-nimh", {"in_series": 10})
    emf, ohms = [], []
    for battery in (alkaline, nimh):
        light, loaded = alone(battery, 1e6), alone(battery, 100.0)
        emf.append(light)
        ohms.append(100.0 * (light - loaded) / loaded)
    by_hand = (emf[1] - emf[0]) / sum(ohms)
    plan = side_by_side(alkaline, nimh)
    assert -looked_at(plan).figures.supplies["G1"].current_a == pytest.approx(by_hand, rel=0.1)
    finding = found(plan, "battery-charged")
    assert finding.rank.name == "DANGER" and finding.parts == ("G1", "G2")
    assert "not rechargeable" in finding.what and "supplies-parallel" not in rules(plan)


@pytest.mark.parametrize(
    ("one", "rank"),
    [
        (("battery-li-ion", {"in_series": 3}), "DANGER"),
        (("battery-nimh", {"in_series": 8}), "WEAK"),
        (("battery-lithium-aa", {"in_series": 8}), "DANGER"),
    ],
)
def test_what_a_supply_pushes_into_a_battery_is_told_by_what_the_cells_bear(one, rank):
    """14.8 V on twelve volts of cells: only their charger may do that (IEC 60086-5, IEC 62133-2; memory)."""
    plan = side_by_side(one, ("supply-regulated", {"volts": 14.8, "on_overload": "holds current"}))
    finding = found(plan, "battery-charged")
    assert finding.parts == ("G1", "G2") and finding.rank.name == rank


def test_a_supply_that_shut_off_against_a_battery_is_to_be_parted_from_it_not_made_larger():
    plan = side_by_side(("battery-nimh", {"in_series": 8}), ("supply-regulated", {"volts": 14.8}))
    finding = found(plan, "supply-shut-off")
    assert finding.mend.startswith("Part it from -G1 first") and finding.act is None


def test_a_diode_before_each_keeps_them_apart_and_nothing_is_charged():
    plan = draw(
        {"G1": ("battery-alkaline", {"in_series": 8}), "G2": ("battery-nimh", {"in_series": 10}),
         "D1": "diode", "D2": "diode", "E1": LAMP},
        [("G1:+", "D1:A"), ("G2:+", "D2:A"), ("D1:K", "E1:1"), ("D2:K", "E1:1"), ("G1:-", "E1:2"),
         ("G2:-", "E1:2")],
    )  # fmt: skip
    assert "battery-charged" not in rules(plan)


def test_a_lamp_behind_one_diode_gets_the_root_of_half_the_volts_and_an_led_flickers():
    """RMS of half a sine: V / sqrt 2, less the share of the diode; a filament does not follow the mains."""
    parts = {"G1": "supply-ac", "D1": "diode", "E1": "lamp-16v"}
    lamp = draw(parts, [("G1:~1", "D1:A"), ("D1:K", "E1:1"), ("E1:2", "G1:~2")])
    assert looked_at(lamp).figures.parts["E1"].volts_v == pytest.approx(AC_V / math.sqrt(2) - 0.55, abs=0.15)
    assert "half-waves" not in rules(lamp)
    led = {**parts, "E1": "led-warm-white"}
    wires = [("G1:~1", "D1:A"), ("D1:K", "E1:A"), ("E1:K", "G1:~2")]
    assert found(draw(led, wires), "half-waves").parts == ("E1",)
    bridge = {**led, "D1": "rectifier"}
    ends = [("G1:~1", "D1:~1"), ("G1:~2", "D1:~2"), ("D1:+", "E1:A"), ("D1:-", "E1:K")]
    assert "half-waves" not in rules(draw(bridge, ends))


def test_stall_motors_on_a_bipolar_supply_load_one_half_at_a_time():
    """Two motors of 18 mA at the stop on plus; the half that is not chosen gives nothing."""
    plan = draw(
        {"G1": stiff(12.0), "G2": stiff(12.0), "S1": "toggle-on-on",
         "M1": "stall-motor", "M2": "stall-motor"},
        [("G1:-", "G2:+"), ("G1:+", "S1:14"), ("G2:-", "S1:12"),
         *across("S1:11", "G1:-", "M1", "M2", ends=("M1", "M2"))],
    )  # fmt: skip
    up, down = (looked_at(plan, {"S1": position}).figures.supplies for position in ("up", "down"))
    assert up["G1"].current_a == pytest.approx(0.036, rel=0.02) and abs(up["G2"].current_a) < 1e-6
    assert down["G2"].current_a == pytest.approx(0.036, rel=0.02) and abs(down["G1"].current_a) < 1e-6
    assert not {"wrong-polarity", "mixed-volts", "supplies-opposed"} & set(rules(plan, {"S1": "down"}))


COIL = {"M1": "twin-coil"}


def test_a_twin_coil_over_buttons_is_well_and_over_a_switch_that_stays_is_a_danger():
    """By hand: 12 V on 15 ohm of a coil are 0.8 A, ten watts in a winding made for a pulse (practice)."""
    buttons = draw(
        {"G1": stiff(12.0), "S1": "push-to-make", "S2": "push-to-make", **COIL},
        [("G1:+", "S1:13"), ("S1:13", "S2:13"), ("S1:14", "M1:N"), ("S2:14", "M1:R"), ("M1:C", "G1:-")],
    )
    assert "coil-held" not in rules(buttons)
    held = looked_at(buttons, {"S1": "pressed"}).figures.supplies["G1"]
    assert held.current_a == pytest.approx(12.0 / 15.0, rel=0.02)
    switch = draw(
        {"G1": stiff(12.0), "S1": "toggle-on-on", **COIL},
        [("G1:+", "S1:11"), ("S1:14", "M1:N"), ("S1:12", "M1:R"), ("M1:C", "G1:-")],
    )
    assert found(switch, "coil-held").rank.name == "DANGER"


@pytest.mark.parametrize(("position", "amps"), [("normal", 0.12), ("reverse", 0.0)])
def test_the_contact_of_a_turnout_motor_gives_a_frog_one_pole_or_the_other(position, amps):
    """100 ohm from frog to minus: 12 V / 100 ohm where the contact gives plus, nothing where minus."""
    plan = draw(
        {"G1": stiff(12.0), "M1": ("stall-motor", {}, position), "R1": resistor(100.0)},
        [("G1:+", "M1:12"), ("G1:-", "M1:14"), ("M1:11", "R1:1"), ("R1:2", "G1:-")],
    )
    figures = looked_at(plan, {"M1": position}).figures
    assert abs(figures.parts["R1"].current_a) == pytest.approx(amps, abs=1e-3)
    assert "supply-shorted" not in rules(plan, {"M1": position})


@pytest.mark.parametrize(("volts", "light"), [(12.0, (0.9, 1.1)), (9.0, (0.15, 0.25))])
def test_a_twelve_volt_strip_on_nine_volts(volts, light):
    """Six groups of three LEDs and 150 ohm: V = 3 (3.1 + 0.173 ln(i / 18 mA)) + 150 i, by bisection."""
    low, high = 1e-6, 0.1
    for _ in range(60):
        i = (low + high) / 2
        is_over = 3 * (3.1 + 0.173 * math.log(i / 0.018)) + 150 * i > volts
        low, high = (low, i) if is_over else (i, high)
    plan = draw({"G1": stiff(volts), "E1": "led-strip-warm-white"}, [("G1:+", "E1:+"), ("G1:-", "E1:-")])
    figure = looked_at(plan).figures.parts["E1"]
    assert figure.current_a == pytest.approx(6 * low, rel=0.08)
    assert light[0] < figure.light < light[1]


def test_a_return_that_two_supplies_share_lifts_the_minus_of_the_other():
    """0.5 A through three metres of 24 AWG lose 0.126 V, and the 5 V servo beside it has so much less."""
    plan = draw(
        {"G1": stiff(12.0), "G2": stiff(5.0), "R1": resistor(24.0), "M1": "servo"},
        [("G1:+", "R1:1"), ("R1:2", "M1:-"), ("M1:-", "G1:-", {"length_m": 3.0, "size": "24 AWG"}),
         ("G2:+", "M1:+"), ("G2:-", "G1:-")],
    )  # fmt: skip
    lost_v = 12.0 / (24.0 + 3 * OHM_PER_M["24 AWG"]) * 3 * OHM_PER_M["24 AWG"]
    assert looked_at(plan).figures.parts["M1"].volts_v == pytest.approx(5.0 - lost_v, abs=0.01)
    assert "mixed-volts" not in rules(plan)


def test_a_step_down_module_asks_its_feed_for_power_and_not_for_current():
    """5 V on 10 ohm are 2.5 W; at 85 to 92 % of efficiency 12 V give 227 to 245 mA."""
    plan = draw(
        {"G1": stiff(12.0), "T1": "converter-5v", "R1": resistor(10.0)},
        [("G1:+", "T1:+"), ("G1:-", "T1:-"), ("T1:O", "R1:1"), ("R1:2", "T1:-")],
    )
    assert 2.5 / 0.92 / 12 < looked_at(plan).figures.supplies["G1"].current_a < 2.5 / 0.85 / 12 + 0.006


ENDS = {"led": ("A", "K"), "sound": ("+", "-"), "lamp": ("1", "2")}


def reversed_plug(*ways):
    """LEDs, a sound module and a lamp on a supply; "-" the wrong way round."""
    names = {"E1": "led-red", "E2": "led-warm-white", "A1": "sound-module", "E3": "lamp-12v"}
    wires = []
    for name, way in zip(names, ways, strict=True):
        one, other = ENDS[names[name].split("-")[0]]
        plus, minus = ("G1:+", "G1:-") if way == "+" else ("G1:-", "G1:+")
        wires += [(plus, f"{name}:{one}"), (minus, f"{name}:{other}")]
    return draw({"G1": "supply-regulated", **names}, wires)


def test_a_plug_the_wrong_way_round_is_told_once_and_not_part_by_part():
    finding = found(reversed_plug("-", "-", "-", "+"), "supply-backward")
    assert finding.parts == ("G1", "E1", "E2", "A1") and finding.act.words == "Swap the wires of -G1"
    assert not {"led-backward", "wrong-polarity"} & set(rules(reversed_plug("-", "-", "-", "+")))
    mixed = rules(reversed_plug("-", "+", "-", "+"))
    assert "supply-backward" not in mixed and mixed["led-backward"] == mixed["wrong-polarity"] == 1


def test_a_resistor_too_hot_for_its_watts():
    """0.1 A through 47 ohm are 0.47 W, twice what a quarter-watt resistor bears; half is good practice."""
    plan = draw(
        {
            "G1": stiff(10.7),
            "R1": ("resistor", {"resistance": 47.0, "rated_power": 0.25}),
            "R2": ("resistor", {"resistance": 60.0, "rated_power": 5.0}),
        },
        [("G1:+", "R1:1"), ("R1:2", "R2:1"), ("R2:2", "G1:-")],
    )
    finding = found(plan, "resistor-power")
    assert "0.47 W" in finding.what and finding.act.words == "Set -R1 to 1 W"


@pytest.mark.parametrize(("second", "dark"), [("led-white-bare", ("E2",)), ("led-red-bare", None)])
def test_a_red_and_a_white_led_behind_one_resistor(second, dark):
    """At the 1.9 V of the red one a white chip of 3.2 V passes next to nothing; two red ones share."""
    plan = draw(
        {"G1": stiff(12.0), "R1": ("resistor", {"resistance": 560.0}), "E1": "led-red-bare", "E2": second},
        [("G1:+", "R1:1"), *across("R1:2", "G1:-", "E1", "E2", ends=("A", "K"))],
    )
    assert ("leds-share-resistor" in rules(plan)) == (dark is not None)
    if dark is not None:
        assert found(plan, "leds-share-resistor").parts == (*dark, "E1")


@pytest.mark.parametrize(("kind", "over", "in_row"), [("lamp-1v5", True, 8), ("lamp-16v", False, 0)])
def test_a_lamp_on_too_many_volts_gets_a_resistor_that_leaves_it_its_own(kind, over, in_row):
    """(12 V - 1.5 V) / I by hand, the next value up of E24; or as many in series as the volts go into."""
    plan = draw({"G1": stiff(12.0), "E1": kind}, [("G1:+", "E1:1"), ("G1:-", "E1:2")])
    if not over:
        assert "lamp-over-volts" not in rules(plan)
        return
    finding = found(plan, "lamp-over-volts")
    rated_a = kinds()[kind].values({})["rated_a"]
    wanted = (12.0 - 1.5) / rated_a
    value = dict(finding.act.values)["resistance"]
    assert wanted <= value < 1.11 * wanted
    assert f"put {in_row} such lamps in series" in finding.mend
    new = mended(sound(plan), finding)
    assert 0.85 < looked_at(new).figures.parts["E1"].light < 1.05
    assert "lamp-over-volts" not in rules(new)


def switched(**sides):
    """Lamps E1, E2 ... each over a switch of its own in plus or in minus."""
    parts, wires = {"G1": stiff(12.0)}, []
    for n, side in enumerate(sides.values(), 1):
        parts |= {f"S{n}": "toggle-on-off", f"E{n}": LAMP}
        before, after = ("+", "-") if side == "plus" else ("-", "+")
        ends = ("1", "2") if side == "plus" else ("2", "1")
        wires += [
            (f"G1:{before}", f"S{n}:13"),
            (f"S{n}:14", f"E{n}:{ends[0]}"),
            (f"G1:{after}", f"E{n}:{ends[1]}"),
        ]
    return draw(parts, wires)


@pytest.mark.parametrize(
    ("sides", "told"),
    [
        (("minus",), ("S1",)),
        (("plus",), None),
        (("plus", "minus"), ("S2",)),
        (("minus", "minus"), None),  # plus is the common one here, and on purpose
        (("plus", "minus", "minus"), ("S2", "S3")),
    ],
)
def test_a_switch_in_the_return_is_told_where_the_others_are_not(sides, told):
    plan = switched(**{f"n{n}": side for n, side in enumerate(sides)})
    assert ("switch-in-return" in rules(plan)) == (told is not None)
    if told is not None:
        assert found(plan, "switch-in-return").parts == told


def test_a_screw_with_six_wires():
    lamps = {f"E{n}": LAMP for n in range(1, 6)}
    plan = draw({"G1": stiff(12.0), "X1": "terminal-strip-4", **lamps},
                [("G1:+", "X1:1"), *across("X1:1", "G1:-", *lamps)])  # fmt: skip
    assert found(plan, "terminal-crowded").parts[0] == "X1"


def test_a_fuse_larger_than_its_wire_and_one_behind_a_rectifier():
    """5 A heat 28 AWG to sixteen times what 1.25 A do; a fuse in an AC leg guards what the bridge feeds."""
    thin = {"size": "28 AWG", "length_m": 2.0}
    plan = draw(
        {"G1": ("supply-regulated", {"limit_a": 10.0}), "F1": ("fuse", {"rating_a": 5.0}), "E1": LAMP},
        [("G1:+", "F1:1", {"size": "18 AWG"}), ("F1:2", "E1:1", thin), ("E1:2", "G1:-", thin)],
    )
    assert found(plan, "fuse-too-large").act.words == "Set -F1 to 500 mA"
    behind = draw(
        {"G1": "supply-ac", "F1": ("fuse", {"rating_a": 5.0}), "T1": "rectifier", "E1": LAMP},
        [("G1:~1", "F1:1"), ("F1:2", "T1:~1"), ("G1:~2", "T1:~2"), ("T1:+", "E1:1", thin), ("T1:-", "E1:2")],
    )
    assert found(behind, "fuse-too-large").wires == ("w4",)


@pytest.mark.parametrize(("lamps", "told"), [(5, False), (16, True)])
def test_cold_lamps_trip_a_supply_only_where_the_rush_lasts(lamps, told):
    """By hand, ten times the current fading with 30 ms: 2.5 A to 0.25 A is below 2 A after 7 ms, 8 A to 0.8 A
    after 54 ms. What a supply bears before it takes that for a fault, 20 ms, is practice.
    """
    names = [f"E{n}" for n in range(1, lamps + 1)]
    plan = draw({"G1": "supply-regulated", **dict.fromkeys(names, LAMP)}, across("G1:+", "G1:-", *names))
    assert ("cold-lamps-supply" in rules(plan)) == told


def test_a_long_thin_return_takes_volts_from_all_that_share_it():
    """0.45 A through eight metres of 28 AWG: 0.76 V; the flasher's own 10 mA move the lamps by 17 mV only."""
    thin = {"length_m": 8.0, "size": "28 AWG"}
    plan = draw(
        {"G1": stiff(12.0), "X1": "distribution-block-6", "R1": resistor(30.0), "A1": "flasher"},
        [("G1:+", "R1:1"), ("G1:+", "A1:+"), ("R1:2", "X1:1"), ("A1:-", "X1:2"), ("X1:3", "G1:-", thin)],
    )
    ohms = 8 * OHM_PER_M["28 AWG"]
    by_hand = 30.0 / (30.0 + ohms) * (12.0 - 0.01 * ohms)
    assert looked_at(plan).figures.parts["R1"].volts_v == pytest.approx(by_hand, rel=0.01)


def test_flashing_modules_add_up():
    """Four of 10 mA in the mean (20 mA half of the time) on a 9 V block."""
    names = [f"A{n}" for n in range(1, 5)]
    plan = draw({"G1": "battery-9v", **dict.fromkeys(names, "flasher")},
                across("G1:+", "G1:-", *names, ends=("+", "-")))  # fmt: skip
    assert looked_at(plan).figures.supplies["G1"].current_a == pytest.approx(0.04, rel=0.02)
    assert "battery-load" not in rules(plan)
