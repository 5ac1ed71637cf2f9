"""All findings of one sort are mended as one step: none of them is left, nothing else becomes dangerous."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.findings import situation
from support.mending import TODAY, dangers, findings, sound
from support.networks import draw, kinds

from wiring.circuit.solve import solve
from wiring.edits.edit import EditRefused
from wiring.edits.history import Step, begun, recorded, undone
from wiring.findings.mend_all import HIDING, mend_all, sorts
from wiring.findings.situation import examine

BARE = ("led-red-bare", "led-white-bare", "led-green-bare")
LAMP = ("lamp-12v", {"rated_a": 0.4})


def branches(*rows, supplies=1, limit_a=3.0):
    """Branches side by side, each on one of the supplies: a load, and a fuse or resistor before it if any."""
    parts = {f"G{n}": ("supply-regulated", {"limit_a": limit_a}) for n in range(1, supplies + 1)}
    wires = []
    for n, (load, before, way, size) in enumerate(rows, 1):
        kind = load if isinstance(load, str) else load[0]
        one, other = (t.name for t in kinds()[kind].terminals[:2])
        one, other = (one, other) if way == "+" else (other, one)
        parts[f"E{n}"], supply = load, f"G{1 + n % supplies}"
        thick = {"size": size, "length_m": 0.4}
        if before is not None:
            parts[f"B{n}"] = before
            wires += [(f"{supply}:+", f"B{n}:1", thick), (f"B{n}:2", f"E{n}:{one}", thick)]
        else:
            wires.append((f"{supply}:+", f"E{n}:{one}", thick))
        wires.append((f"{supply}:-", f"E{n}:{other}", thick))
    return sound(draw(parts, wires))


ROWS = st.one_of(
    st.tuples(st.sampled_from(BARE), st.none(), st.just("+"), st.just("24 AWG")),
    st.tuples(st.just("led-warm-white"), st.none(), st.sampled_from("+-"), st.just("24 AWG")),
    st.tuples(
        st.just(LAMP),
        st.sampled_from([0.1, 0.25, 0.5, 5.0, 10.0]).map(lambda a: ("fuse", {"rating_a": a})),
        st.just("+"),
        st.sampled_from(["22 AWG", "26 AWG"]),
    ),
    st.tuples(
        st.sampled_from(BARE),
        st.sampled_from([47.0, 120.0, 470.0]).map(lambda r: ("resistor", {"resistance": r})),
        st.just("+"),
        st.just("24 AWG"),
    ),
)


def of_sort(plan, rule):
    return [f for f in findings(plan) if f.rule == rule and f.act is not None]


def sorts_of(plan):
    return sorts(situation(plan, today=TODAY).findings)


@given(st.lists(ROWS, min_size=3, max_size=8), st.integers(1, 2))
@settings(max_examples=5, deadline=None)
def test_none_of_the_sort_is_left_nothing_new_is_dangerous_and_one_undo_brings_all_back(rows, supplies):
    plan = branches(*rows, supplies=supplies)
    here = situation(plan, today=TODAY)
    for rule, of in sorts(here.findings).items():
        new = mend_all(of, here).apply(plan)
        assert not of_sort(new, rule), (rule, [f.what for f in of_sort(new, rule)])
        hid = rule in HIDING or any(f.limited for f in here.figures.supplies.values())
        assert hid or dangers(findings(new)) <= dangers(here.findings)
        assert undone(recorded(begun(plan), Step(of.words, new))).now.plan is plan


def test_twelve_bare_leds_of_several_sorts_get_a_resistor_each_in_one_step():
    plan = branches(*((BARE[n % 3], None, "+", "24 AWG") for n in range(12)))
    (of,) = (s for s in sorts_of(plan).values() if s.rule == "led-without-resistor")
    assert of.words == "Put a resistor before each of 12 LEDs" and len(of.findings) == 3
    new = mend_all(of, situation(plan, today=TODAY)).apply(plan)
    assert sum(p.kind == "resistor" for p in new.parts.values()) == 12
    figures = solve(new, kinds(), {})
    assert all(0.5e-3 < figures.parts[f"E{n}"].current_a < 21e-3 for n in range(1, 13))


def test_what_one_act_has_mended_too_is_left_alone():
    """The two LEDs share a resistor: the first act makes it larger, and that ends the second finding."""
    plan = sound(
        draw(
            {"G1": "supply-regulated", "R1": ("resistor", {"resistance": 100.0}),
             "E1": "led-red-bare", "E2": "led-green-bare"},
            [("G1:+", "R1:1"), ("R1:2", "E1:A"), ("E1:K", "E2:A"), ("E2:K", "G1:-")],
        )
    )  # fmt: skip
    here = situation(plan, today=TODAY)
    of = sorts(here.findings)["led-current"]
    assert len(of.findings) == 2 and {f.act.parts for f in of.findings} == {("R1",)}
    new = mend_all(of, here).apply(plan)
    alone = {f.rule for f in findings(new)}
    assert "led-current" not in alone
    steps = [p for p in new.parts.values() if p is not plan.parts[p.id]]
    assert [p.id for p in steps] == ["R1"]


def test_a_plan_that_changed_since_is_examined_anew_and_a_sort_that_is_gone_is_refused():
    plan = branches(*(("led-red-bare", None, "+", "24 AWG"), ("led-white-bare", None, "+", "24 AWG")))
    here = situation(plan, today=TODAY)
    of = sorts(here.findings)["led-without-resistor"]
    new = mend_all(of, here).apply(plan)
    with pytest.raises(EditRefused, match="mend them one by one"):
        mend_all(of, here).apply(new)


@pytest.mark.parametrize("count", [0, 1])
def test_one_finding_alone_is_no_sort(count):
    plan = branches(*[("led-red-bare", None, "+", "24 AWG")] * count, ("lamp-12v", None, "+", "24 AWG"))
    assert "led-without-resistor" not in sorts_of(plan)


def test_every_position_is_looked_at_again_only_for_what_was_found_that_way(monkeypatch):
    plan = branches(("led-red-bare", None, "+", "24 AWG"), ("led-white-bare", None, "+", "24 AWG"))
    here = examine(plan, kinds(), every_position=True)
    monkeypatch.setattr("wiring.findings.worst_case.worst_case", None)  # calling it would raise
    new = mend_all(sorts(here.findings)["led-without-resistor"], here).apply(plan)
    assert sum(p.kind == "resistor" for p in new.parts.values()) == 2
