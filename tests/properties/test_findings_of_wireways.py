"""Wireways too narrow for their wires."""

from support.editing import KINDS, done
from support.findings import found, rules

from wiring.edits.connect import connect
from wiring.edits.lay_along import lay_along
from wiring.edits.place_part import place
from wiring.edits.wireways import add_wireway
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.routing.along_wireways import routes


def bundle(hole_mm) -> Plan:
    strip = KINDS["terminal-strip-12"]
    plan = done(
        Plan(), place(strip, 0, 0), place(strip, 1000, 0), add_wireway([(0, 100), (1000, 100)], "Beam")
    )
    plan = done(plan, *(connect(TerminalRef("p1", str(n)), TerminalRef("p2", str(n))) for n in range(1, 13)))
    way = plan.wireways["y3"]
    plan = plan.with_changes(
        wireways={"y3": type(way)(id="y3", name="Beam", points=way.points, hole_mm=hole_mm)}
    )
    return lay_along(routes(plan, KINDS, plan.wires)).apply(plan)


def test_twelve_wires_in_a_small_hole_are_told_with_the_drill_to_take():
    finding = found(bundle(6.0), "full-wireway")
    assert len(finding.wires) == 12 and "6 mm hole of “Beam”" in finding.what
    assert finding.mend.startswith("Drill it to ") and "40 %" in finding.why


def test_a_hole_drilled_as_told_is_well():
    needed_mm = float(found(bundle(6.0), "full-wireway").mend.split("Drill it to ")[1].split(" mm")[0])
    assert "full-wireway" not in rules(bundle(needed_mm))
    assert "full-wireway" in rules(bundle(needed_mm - 3))
