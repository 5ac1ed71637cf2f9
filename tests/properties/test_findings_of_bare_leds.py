"""LEDs with nothing but wire between them and a supply: what is said, and that what mends them does.

Every mend is built: its resistor put in, its rows made, its rectifier set before them. Then the LEDs must get
no more than they bear and shine, by the solver, which tests hold against a circuit simulator.
"""

import re

import pytest
from support.findings import found, rules, situation
from support.networks import draw, kinds

from wiring.plan.plan import Plan

FEEDS = {
    "3 V": ("supply-regulated", {"volts": 3.0}),
    "9 V": "battery-9v",
    "12 V": ("supply-regulated", {"volts": 12.0}),
    "16 V AC": "supply-ac",
}
ROWS = [(f"{shape} of {n}", shape, n) for shape in ("row", "rows side by side") for n in (1, 2, 3, 4)]


def ends_of(feed) -> tuple[str, str]:
    key = feed if isinstance(feed, str) else feed[0]
    one, other = (t.name for t in kinds()[key].terminals[:2])
    return f"G1:{one}", f"G1:{other}"


def rows_of(
    feed, leds: list[list[str]], ohms: float | None = None, watts: float = 5.0, behind: str = ""
) -> Plan:
    """Rows of LEDs side by side on a supply, each with a resistor if told, behind a rectifier if told."""
    plus, minus = ends_of(feed)
    parts, wires = {"G1": feed}, []
    if behind:
        parts["V1"] = behind
        wires += [(plus, "V1:~1"), (minus, "V1:~2")]
        plus, minus = "V1:+", "V1:-"
    number = 0
    for row, keys in enumerate(leds, 1):
        here = plus
        if ohms is not None:
            parts[f"R{row}"] = ("resistor", {"resistance": ohms, "rated_power": watts})
            wires.append((here, f"R{row}:1"))
            here = f"R{row}:2"
        for key in keys:
            number += 1
            parts[f"E{number}"] = key
            wires.append((here, f"E{number}:A"))
            here = f"E{number}:K"
        wires.append((here, minus))
    return draw(parts, wires)


def leds(key: str, shape: str, count: int) -> list[list[str]]:
    return [[key] * count] if shape == "row" else [[key]] * count


def told(plan: Plan):
    """The one finding about LEDs without resistors."""
    (finding,) = [
        f for f in situation(plan).findings if f.rule in ("led-without-resistor", "led-short-of-volts")
    ]
    return finding


def resistor_in(mend: str) -> tuple[float, float]:
    ohms, kilo, watts = re.search(r"resistor of ([\d.]+) (k?)Ω, ([\d.]+) W", mend).groups()
    return float(ohms) * (1000.0 if kilo else 1.0), float(watts)


def shines(plan: Plan, count: int, *, least: float) -> None:
    """Nothing about LEDs or their resistors is found any more, and all of them shine."""
    seen = situation(plan)
    about = {"led-", "dc-part", "resistor-", "lamp-", "supply-", "battery-load"}
    assert not [f.rule for f in seen.findings if f.rule.startswith(tuple(about))]
    for n in range(1, count + 1):
        assert seen.figures.parts[f"E{n}"].light > least


@pytest.mark.parametrize("colour", ["led-white-bare", "led-red-bare"])
@pytest.mark.parametrize("feed", FEEDS)
@pytest.mark.parametrize(("shape", "count"), [row[1:] for row in ROWS], ids=[row[0] for row in ROWS])
def test_what_the_mend_says_puts_bare_leds_right(colour, feed, shape, count):
    drawn = leds(colour, shape, count)
    finding = told(rows_of(FEEDS[feed], drawn))
    assert set(finding.parts) == {f"E{n}" for n in range(1, count + 1)}
    assert not {"led-current", "lamp-dim"} & set(rules(rows_of(FEEDS[feed], drawn)))
    if "Feed" in finding.mend:
        assert re.search(r"Feed .* from more than 3\.2 V, through a resistor of its own\.", finding.mend)
        assert (feed, colour) == ("3 V", "led-white-bare")
        return
    ohms, watts = resistor_in(finding.mend)
    if "by itself" in finding.mend:
        drawn = [[colour]] * count
    elif most := re.search(r"no more than (\d) in series", finding.mend):
        drawn = [[colour] * int(most[1])]
        count = int(most[1])
    assert ("rectifier" in finding.mend) == (feed == "16 V AC")
    if feed != "16 V AC":
        shines(rows_of(FEEDS[feed], drawn, ohms, watts), count, least=0.7)
        return
    for behind in ("rectifier", "smoothed-rectifier"):  # the resistor holds for the peaks, smoothed or not
        shines(rows_of(FEEDS[feed], drawn, ohms, watts, behind), count, least=0.25)


@pytest.mark.parametrize(
    ("feed", "colour", "count", "rule"),
    [
        ("3 V", "led-white-bare", 1, "led-short-of-volts"),
        ("3 V", "led-red-bare", 1, "led-without-resistor"),
        ("3 V", "led-red-bare", 2, "led-short-of-volts"),
        ("9 V", "led-white-bare", 2, "led-without-resistor"),
        ("9 V", "led-white-bare", 3, "led-short-of-volts"),
        ("12 V", "led-white-bare", 3, "led-without-resistor"),
        ("12 V", "led-white-bare", 4, "led-short-of-volts"),
        ("12 V", "led-red-bare", 4, "led-without-resistor"),
        ("16 V AC", "led-white-bare", 4, "led-without-resistor"),
    ],
)
def test_a_row_burns_where_the_volts_are_enough_and_is_dark_where_not(feed, colour, count, rule):
    # Forward volts add up in series: 3.2 V white, 1.8 V red at 20 mA, suppliers' tables as the catalogue has.
    plan = rows_of(FEEDS[feed], leds(colour, "row", count))
    assert told(plan).rule == rule
    enough = rule == "led-without-resistor"
    seen = situation(plan)
    limit = kinds()[colour].setting("max_a").default
    shut_off = any(problem.code == "over limit" for problem in seen.figures.problems)
    assert (shut_off or seen.figures.parts["E1"].current_a > limit) == enough


@pytest.mark.parametrize("count", [1, 3])
def test_a_supply_that_bare_leds_draw_on_is_not_to_be_made_larger(count):
    for feed, rule in (("16 V AC", "supply-overload"), ("9 V", "battery-load")):
        plan = rows_of(FEEDS[feed], leds("led-red-bare", "row", count))
        assert "Put the resistor to " in found(plan, rule).mend


def test_rows_of_leds_straight_on_ac_are_made_for_dc():
    plan = rows_of("supply-ac", [["led-white", "led-white", "led-white"]])
    assert set(found(plan, "dc-part-on-ac").parts) == {"E1", "E2", "E3"}
    held = rows_of("supply-ac", [["led-red-bare", "led-red-bare"]], 1000.0)
    assert set(found(held, "dc-part-on-ac").parts) == {"E1", "E2"}
    assert "dc-part-on-ac" not in rules(
        rows_of("supply-ac", [["led-red-bare"] * 2], 1000.0, 5.0, "rectifier")
    )


def test_leds_with_resistors_of_their_own_that_stay_dark_in_series_are_to_be_wired_singly():
    dark = rows_of(("supply-regulated", {"volts": 5.0}), [["led-white", "led-white"]])
    finding = found(dark, "led-short-of-volts")
    assert finding.mend == "Wire each of them by itself across -G1."
    assert "led-short-of-volts" not in rules(rows_of("supply-regulated", [["led-white", "led-white"]]))


def test_like_rows_are_told_together_and_each_gets_its_resistor():
    finding = told(rows_of(FEEDS["12 V"], [["led-red-bare"] * 2] * 3))
    assert finding.what.startswith("-E1, -E2, -E3, -E4, -E5 and -E6 are wired in rows of 2 straight across")
    assert finding.mend.endswith("in series with each row.") and finding.act.parts == ("E1", "E3", "E5")


def test_a_lamp_in_the_row_or_a_branch_is_no_row_of_leds():
    parts = {"G1": FEEDS["12 V"], "E1": "led-red-bare", "E2": "led-red-bare", "P1": "lamp-12v"}
    lamp = draw(parts, [("G1:+", "E1:A"), ("E1:K", "P1:1"), ("P1:2", "E2:A"), ("E2:K", "G1:-")])
    assert not {"led-without-resistor", "led-short-of-volts"} & set(rules(lamp))
    branch = draw(
        parts, [("G1:+", "E1:A"), ("E1:K", "E2:A"), ("E2:K", "G1:-"), ("P1:1", "E1:K"), ("P1:2", "G1:-")]
    )
    assert not {"led-without-resistor", "led-short-of-volts"} & set(rules(branch))


def test_bare_leds_behind_a_rectifier_are_told_to_have_a_resistor_not_a_larger_one():
    plan = rows_of("supply-ac", [["led-red-bare"] * 2], behind="rectifier")
    assert found(plan, "led-current").mend.startswith("Put a resistor in series with each")
    held = rows_of("supply-ac", [["led-red-bare"] * 2], 47.0, 5.0, "rectifier")
    assert "larger" in found(held, "led-current").mend or "Use" in found(held, "led-current").mend
