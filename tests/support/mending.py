"""What becomes of a plan when the act a finding offers is done."""

from datetime import date
from random import Random
from types import MappingProxyType

import msgspec
from support.findings import situation
from support.networks import kinds

from wiring.edits.edit import Edit
from wiring.edits.joined import in_turn
from wiring.edits.usual_values import usual_values
from wiring.findings.doing import edit_for
from wiring.findings.finding import Finding, Rank
from wiring.plan.plan import Plan

TODAY = date(2026, 6, 1)


def sound(plan: Plan) -> Plan:
    """A plan drawn in a few lines as the editor would hold it: its wires have a length, new ids are free."""
    wires = {i: msgspec.structs.replace(w, length_m=w.length_m or 1e-3) for i, w in plan.wires.items()}
    return plan.with_changes(wires=wires, next_number=1000)


def mended(plan: Plan, finding: Finding) -> Plan:
    assert finding.act is not None, finding
    return edit_for(finding.act, kinds()).apply(plan)


def spoilt_and_mended(ids, dice: Random) -> Edit:
    """Give parts a setting they cannot have, and another note, and put the usual values back."""
    note = f"looked at on day {dice.randint(1, 10**6)}"

    def spoil(plan: Plan) -> Plan:
        spoilt = {i: plan.parts[i] for i in ids if i in plan.parts}
        spoilt = {i: msgspec.structs.replace(p, settings={"odd": 1.0}, note=note) for i, p in spoilt.items()}
        return plan.with_changes(parts=MappingProxyType({**plan.parts, **spoilt}))

    return in_turn("Mend", [Edit("Spoil", spoil), usual_values(ids, kinds=kinds())])


def findings(plan: Plan) -> tuple[Finding, ...]:
    return situation(plan, today=TODAY).findings


def still_there(found: tuple[Finding, ...], old: Finding) -> list[Finding]:
    """What the same rule still says of the same thing."""
    same = (f for f in found if f.rule == old.rule)
    return [f for f in same if (f.parts[:1] == old.parts[:1] if f.parts else f.wires == old.wires)]


def dangers(found: tuple[Finding, ...]) -> set[str]:
    return {f.rule for f in found if f.rank is Rank.DANGER}
