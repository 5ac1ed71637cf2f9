"""A long run of many short wires loses too much though no single wire does."""

from support.networks import draw, kinds

from wiring.findings.situation import examine

STRIPS = 30


def test_a_run_of_many_wires_that_lose_little_each_is_told_of() -> None:
    parts = {"G": ("supply-regulated", {"limit_a": 20.0}), "E": ("lamp-12v", {"in_parallel": 20})}
    wires, plus, minus = [], "G:+", "G:-"
    for number in range(STRIPS):
        parts |= {f"X{number}": "distribution-block-6", f"Y{number}": "distribution-block-6"}
        wires += [(plus, f"X{number}:1"), (minus, f"Y{number}:1")]
        plus, minus = f"X{number}:6", f"Y{number}:6"
    plan = draw(parts, [*wires, (plus, "E:1"), (minus, "E:2")], 0.8)
    found = [f for f in examine(plan, kinds(), {}, outlooks=False).findings if f.rule == "wire-drop"]
    assert len(found) == 1
    assert len(found[0].wires) == 2 * STRIPS + 2
    assert "-E" in found[0].what
