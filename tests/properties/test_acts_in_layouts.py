"""In whole layouts with slips in them, every act offered is done and puts right what was found."""

from pathlib import Path

import msgspec
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.mending import dangers, mended, still_there
from support.networks import kinds

from wiring.files.store import load
from wiring.findings.situation import examine

DEMOS = Path(__file__).parents[2] / "demo_layouts"
LAYOUTS = tuple(load(path) for path in sorted(DEMOS.glob("*.underboard")))
# Settings with which a part is too small or too large for its place.
POOR = {
    "fuse": {"rating_a": (0.032, 10.0)},
    "resistor": {"resistance": (10.0,), "rated_power": (0.01,)},
    "switch": {"rated_a": (0.01,)},
    "diode": {"max_a": (0.01,)},
    "discharge_unit": {"capacitance": (0.0005,)},
    "supply_regulated": {"limit_a": (40.0,)},
}
# One run is mended after the other: the same supply's next worst may be told of then, with less to lose.
LESSENED = ("wire-drop", "wire-current", "pulse-weak", "throw-weak")


# While a supply gives in, nothing behind it carries what it will; what a bare LED draws is no load either.
UNREAL = {"supply-shut-off", "supply-in-limit", "supply-shorted", "led-without-resistor"}


class Layout:
    """A plan that tells of itself in a few words when a test fails."""

    def __init__(self, plan):
        self.plan = plan

    def __repr__(self):
        odd = [f"-{p.designation} {dict(p.settings)}" for p in self.plan.parts.values() if p.settings]
        return f"{self.plan.title}: {', '.join(odd)}"


@st.composite
def slips(draw):
    plan = draw(st.sampled_from(LAYOUTS))
    parts, wires = dict(plan.parts), dict(plan.wires)
    poor = [p for p in parts.values() if kinds()[p.kind].behaviour in POOR]
    for part in draw(st.lists(st.sampled_from(poor), max_size=4, unique_by=id)):
        name, values = draw(st.sampled_from(sorted(POOR[kinds()[part.kind].behaviour].items())))
        given_values = {**part.settings, name: draw(st.sampled_from(values))}
        parts[part.id] = msgspec.structs.replace(part, settings=given_values)
    bare = [p for p in parts.values() if f"{p.kind}-bare" in kinds()]
    for part in draw(st.lists(st.sampled_from(bare), max_size=3, unique_by=id)) if bare else ():
        parts[part.id] = msgspec.structs.replace(part, kind=f"{part.kind}-bare", settings={})
    size, length_m = draw(st.sampled_from(["28 AWG", "24 AWG"])), draw(st.sampled_from([0.5, 10.0, 60.0]))
    for wire in draw(st.lists(st.sampled_from(list(wires.values())), max_size=12, unique_by=id)):
        wires[wire.id] = msgspec.structs.replace(wire, size=size, length_m=length_m)
    return Layout(plan.with_changes(parts=parts, wires=wires))


def findings(plan):
    return examine(plan, kinds(), outlooks=False).findings


@settings(deadline=None, max_examples=6, suppress_health_check=list(HealthCheck))
@given(slips())
def test_every_act_offered_is_done_and_puts_its_finding_right(layout):
    plan = layout.plan
    before = findings(plan)
    unreal = UNREAL & {f.rule for f in before}
    for finding in before:
        if finding.act is None:
            continue
        after = findings(mended(plan, finding))
        left = still_there(after, finding)
        assert not left or finding.rule in LESSENED, (finding.what, left[0].what)
        assert all(f.what != finding.what for f in left)
        assert unreal or dangers(after) <= dangers(before), finding.what
