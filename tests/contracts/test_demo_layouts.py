"""The demo layouts open, are sound, solve, save back byte for byte, and are as large as they claim."""

from pathlib import Path

import pytest

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.solve import solve
from wiring.files.encode import encode
from wiring.files.store import load
from wiring.plan.positions import in_use
from wiring.plan.soundness import unsound

DEMOS = sorted((Path(__file__).parents[2] / "demo_layouts").glob("*.underboard"))


@pytest.fixture(params=DEMOS, ids=lambda p: p.stem)
def demo(request):
    return request.param


def test_there_are_three_demos():
    assert [p.stem for p in DEMOS] == ["harbour", "quay", "siding"]


def test_demo_is_sound_and_saves_back_byte_for_byte(demo):
    plan = load(demo)
    assert unsound(plan, builtin_kinds()) == ()
    assert encode(plan) == demo.read_bytes()


def test_demo_solves_without_problems_and_every_light_shines(demo):
    kinds, plan = builtin_kinds(), load(demo)
    figures = solve(plan, kinds, in_use(plan, kinds))
    assert figures.problems == ()
    lamps = [p for p in plan.parts.values() if kinds[p.kind].purpose == "light"]
    dark = [p.designation for p in lamps if not (figures.parts[p.id].light or 0) > 0.2]
    assert dark == []


def test_whole_layout_is_a_whole_layout():
    kinds, plan = builtin_kinds(), load(next(p for p in DEMOS if p.stem == "harbour"))
    held = [kinds[p.kind] for p in plan.parts.values()]
    assert sum(k.purpose == "light" for k in held) >= 120
    assert sum(k.behaviour in ("stall_motor", "twin_coil", "servo") for k in held) >= 20
    assert len(plan.panels) >= 3
    assert sum(k.behaviour == "fuse" for k in held) >= 5
    assert sum(k.behaviour == "supply_ac" for k in held) == 1
