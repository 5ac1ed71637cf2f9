"""The volts of one terminal asked for by itself are those it has among all of them."""

from pathlib import Path

import pytest

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.solve import solve
from wiring.files.store import load
from wiring.plan.names import TerminalRef
from wiring.plan.positions import in_use

DEMOS = Path(__file__).parents[2] / "demo_layouts"


@pytest.mark.parametrize("name", ["quay", "siding", "harbour"])
def test_one_by_one_they_are_as_all_together(name):
    plan, kinds = load(DEMOS / f"{name}.underboard"), builtin_kinds()
    volts = solve(plan, kinds, in_use(plan, kinds)).terminals
    refs = [TerminalRef(i, t.name) for i, p in plan.parts.items() for t in kinds[p.kind].terminals]
    singly = {ref: volts.get(ref) for ref in refs}
    together = dict(volts.items())
    assert singly == {ref: together.get(ref) for ref in refs}
    assert any(v is not None for v in singly.values())
    for nowhere in (TerminalRef("nobody", "1"), TerminalRef(refs[0].part, "no such terminal")):
        assert volts.get(nowhere) is None


def test_a_terminal_nothing_feeds_has_no_volts_singly_either():
    plan, kinds = load(DEMOS / "quay.underboard"), builtin_kinds()
    bare = plan.with_changes(wires={})
    volts = solve(bare, kinds, in_use(bare, kinds)).terminals
    lamp = next(p for p in bare.parts.values() if kinds[p.kind].behaviour not in ("battery", "supply"))
    ref = TerminalRef(lamp.id, kinds[lamp.kind].terminals[0].name)
    assert volts.get(ref) == dict(volts.items()).get(ref)
