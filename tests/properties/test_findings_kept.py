"""What is kept of a plan never changes what is found in it: after throws and edits it is as found anew."""

import math
import random
import threading
from pathlib import Path

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.cold import cold
from support.networks import kinds, lamp_street
from support.random_edits import DRAWS, Hand
from support.random_networks import draw, network_of

from wiring.circuit.figures import Figures
from wiring.circuit.many_readings import light_column, part_columns, wire_columns
from wiring.circuit.solve import solve
from wiring.edits.edit import EditRefused
from wiring.edits.set_wire import set_wire
from wiring.files.store import load
from wiring.findings.situation import Situation, examine
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

DEMOS = sorted((Path(__file__).parents[2] / "demo_layouts").glob("*.underboard"))
QUICK = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
TELLING = [
    name
    for name in sorted(DRAWS)
    if name.rpartition(".")[2] in ("set_setting", "reconnect", "connect", "remove", "swap_ends", "rename")
]
SIZES = ("22 AWG", "26 AWG", "0.14 mm²", "18 AWG", "1.0 mm²")


def examined(plan: Plan, positions, figures: Figures | None = None) -> Situation:
    return examine(plan, kinds(), positions, outlooks=False, figures=figures)


def check(plan: Plan, positions, *, solved_anew: bool) -> None:
    """Compare what is found with all that is kept, and anew; the figures are solved anew too where wished."""
    warm = examined(plan, positions)
    with cold():
        anew = examined(plan, positions, None if solved_anew else warm.figures)
    assert list(warm.findings) == list(anew.findings)
    assert [run[:3] for run in warm.runs.values()] == [run[:3] for run in anew.runs.values()]
    for one, other in zip(warm.runs.values(), anew.runs.values(), strict=True):
        assert one.drop_v == pytest.approx(other.drop_v, abs=1e-9)


def thrown(plan: Plan, positions, dice: random.Random):
    stands = dict(in_use(plan, kinds()) | {i: p for i, p in positions.items() if i in plan.parts})
    movable = [i for i, part in plan.parts.items() if part.kind in kinds() and kinds()[part.kind].positions]
    for _ in range(min(dice.randint(1, 2), len(movable))):
        part = dice.choice(movable)
        stands[part] = dice.choice(kinds()[plan.parts[part].kind].positions).name
    return stands


def edited(plan: Plan, dice: random.Random) -> Plan:
    """Return the plan after one edit: another size of a wire, one that findings hang on, or any there is."""
    edit = set_wire([dice.choice(list(plan.wires))], size=dice.choice(SIZES)) if plan.wires else None
    if edit is None or dice.random() < 0.75:
        name = dice.choice(TELLING if dice.random() < 0.75 else sorted(DRAWS))
        try:
            edit = DRAWS[name](Hand(plan, dice))
        except (EditRefused, KeyError, IndexError):
            return plan
    try:
        return edit.apply(plan)
    except (EditRefused, ValueError):
        return plan


def walk(plan: Plan, dice: random.Random, steps: int, *, solved_anew: bool) -> None:
    """Throw and edit, go back now and then, and compare after every step."""
    positions = in_use(plan, kinds())
    before = [(plan, positions)]
    for _ in range(steps):
        turn = dice.random()
        if turn < 0.45:
            positions = thrown(plan, positions, dice)
        elif turn < 0.85:
            plan = edited(plan, dice)
        else:
            plan, positions = dice.choice(before)
        before.append((plan, positions))
        check(plan, {i: p for i, p in positions.items() if i in plan.parts}, solved_anew=solved_anew)


@pytest.mark.parametrize("demo", DEMOS, ids=lambda demo: demo.stem)
def test_after_throws_and_edits_of_a_demo_the_same_is_found_as_anew(demo):
    walk(load(demo), random.Random(demo.stem), 8, solved_anew=True)


@settings(QUICK, max_examples=8)
@given(st.integers(0, 2**32))
def test_after_throws_and_edits_of_any_network_the_same_is_found_as_anew(seed):
    walk(draw(*network_of(seed, largest=9)), random.Random(seed), 8, solved_anew=False)


@settings(QUICK, max_examples=40)
@given(st.integers(0, 2**32))
def test_columns_hold_what_the_figures_of_each_part_and_wire_say(seed):
    plan = draw(*network_of(seed, largest=14))
    figures = solve(plan, kinds(), in_use(plan, kinds()))
    ids = list(plan.parts)
    restates = {"converter", "discharge_unit"}
    for plainly in (True, False):
        asked = [i for i in ids if not (plainly and kinds()[plan.parts[i].kind].behaviour in restates)]
        columns = part_columns(figures, asked, plainly=plainly)
        for row, part in enumerate(asked):
            figure = figures.parts.get(part)
            assert columns.known[row] == (figure is not None)
            told = (columns.volts[row], columns.amps[row], columns.power[row])
            assert told == (figure[:3] if figure is not None else (0.0, 0.0, 0.0))
    light = light_column(figures, ids).tolist()
    for part, told in zip(ids, light, strict=True):
        figure = figures.parts.get(part)
        dark = figure is None or figure.light is None
        assert math.isnan(told) if dark else told == pytest.approx(figure.light, rel=1e-14)
    wires = wire_columns(figures)
    known = {wire for wire, row in wires.rows.items() if wires.known[row]}
    assert known == set(figures.wires)
    for wire, figure in figures.wires.items():
        row = wires.rows[wire]
        assert (wires.amps[row], wires.drops_v[row], wires.ohms[row]) == (
            figure.current_a,
            figure.drop_v,
            figure.ohms,
        )


def test_findings_that_stay_are_the_same_objects():
    plan = lamp_street(12, "led-white")
    first = examined(plan, {})
    assert first.findings
    assert examined(plan, {}).findings is first.findings
    wire = next(iter(plan.wires))
    thicker = examined(set_wire([wire], size="14 AWG").apply(plan), {})
    same = {id(finding) for finding in first.findings}
    kept = [finding for finding in thicker.findings if finding in first.findings]
    assert kept and all(id(finding) in same for finding in kept)


def test_two_threads_may_examine_at_once():
    """One throws, the other edits, both at their own plan and at the same: each finds what is found alone."""
    plan = load(DEMOS[0])
    switches = list(in_use(plan, kinds()))[:5]
    wires = list(plan.wires)[:5]
    throws = [(plan, {switch: kinds()[plan.parts[switch].kind].positions[-1].name}) for switch in switches]
    edits = [(set_wire([wire], size="18 AWG").apply(plan), {}) for wire in wires]
    with cold():
        alone = [[examined(*case).findings for case in cases] for cases in (throws, edits)]
    found: list[list] = [[], []]

    def work(n: int, cases) -> None:
        found[n] = [examined(*case).findings for case in cases]

    threads = [threading.Thread(target=work, args=(n, cases)) for n, cases in enumerate((throws, edits))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert found == alone


SMALL = draw(
    {
        "G1": "supply-regulated",
        "F1": "fuse",
        "S1": ("toggle-on-off", {}, "on"),
        "R1": "resistor",
        "E1": "led-red-bare",
    },
    [("G1:+", "F1:1"), ("F1:2", "S1:13"), ("S1:14", "R1:1"), ("R1:2", "E1:A"), ("E1:K", "G1:-")],
)


@pytest.mark.parametrize(
    ("part", "name", "value"),
    [
        ("F1", "rating_a", 0.01),
        ("S1", "rated_a", 0.001),
        ("R1", "resistance", 10.0),
        ("R1", "rated_power", 0.01),
        ("E1", "max_a", 0.001),
        ("E1", "series_ohm", 20_000.0),
        ("G1", "limit_a", 0.005),
        ("G1", "volts", 40.0),
    ],
)
def test_a_setting_that_matters_is_never_taken_as_it_was(part, name, value):
    before = examined(SMALL, {})
    changed = msgspec.structs.replace(SMALL.parts[part], settings={name: value})
    after = SMALL.with_changes(parts={**SMALL.parts, part: changed})
    assert list(examined(after, {}).findings) != list(before.findings)
    check(after, {}, solved_anew=True)
    check(SMALL, {}, solved_anew=True)
