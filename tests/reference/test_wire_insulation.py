"""Diameter of hook-up wire over its insulation, and the hole its bundle fills, against print."""

import math

import pytest
from support.editing import KINDS, done

from wiring.edits.connect import connect
from wiring.edits.lay_along import lay_along
from wiring.edits.place_part import place
from wiring.edits.set_wire import set_wire
from wiring.edits.wireways import add_wireway
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.routing.along_wireways import routes
from wiring.routing.bundles import DRILLS_MM, bundles
from wiring.standards.conductors import bare_diameter_mm, insulated_diameter_mm

# UL 758, style 1638: hook-up wire for 300 V, 28 to 16 AWG, stranded, 15 mils of PVC on average.
MIL_MM = 0.0254
WALL_MM = 15 * MIL_MM

# From memory: makers' lists of 300 V hook-up wire with 1/64 inch of PVC.
LISTED_MM = {"22 AWG": 1.6, "24 AWG": 1.4, "20 AWG": 1.8, "18 AWG": 2.0}

# NFPA 70 (NEC), chapter 9, table 1: share of a conduit that one, two, more conductors may fill.
FILL = {1: 0.53, 2: 0.31, 3: 0.40, 7: 0.40}


@pytest.mark.parametrize(("size", "listed"), LISTED_MM.items())
def test_hook_up_wire_is_as_thick_as_listed(size, listed):
    assert insulated_diameter_mm(size) == pytest.approx(listed, abs=0.15)


@pytest.mark.parametrize("size", ["28 AWG", "26 AWG", "24 AWG", "22 AWG", "20 AWG", "18 AWG"])
def test_insulation_is_as_thick_as_its_style_has_it(size):
    """Makers put on a little more than the least average, here a twentieth."""
    wall_mm = (insulated_diameter_mm(size) - bare_diameter_mm(size)) / 2
    assert WALL_MM <= wall_mm <= 1.06 * WALL_MM


def along_a_beam(wires: int, size: str, hole_mm: float) -> Plan:
    """So many wires of a size from strip to strip through the hole of a beam."""
    strip = KINDS["terminal-strip-12"]
    plan = done(
        Plan(),
        place(strip, 0, 0),
        place(strip, 1000, 0),
        add_wireway([(0, 100), (1000, 100)], "Beam", hole_mm=hole_mm),
        *(connect(TerminalRef("p1", f"{n}"), TerminalRef("p2", f"{n}")) for n in range(1, wires + 1)),
    )
    return done(plan, set_wire(plan.wires, size=size), lay_along(routes(plan, KINDS, plan.wires)))


@pytest.mark.parametrize(("wires", "share"), FILL.items())
def test_a_bundle_fills_no_more_of_its_hole_than_the_nec_allows(wires, share):
    """Of the next drill down it would. Within a tenth: 22 AWG is listed with 1.6 mm, taken as 1.53."""
    (bundle,) = bundles(along_a_beam(wires, "22 AWG", 20.0))
    assert len(bundle.wires) == wires
    assert bundle.allowed == share
    assert bundle.fill == pytest.approx(wires * 1.6**2 / 20.0**2, rel=0.1)
    needed_mm = math.sqrt(wires * insulated_diameter_mm("22 AWG") ** 2 / share)
    smaller = max((d for d in DRILLS_MM if d < bundle.hole_mm), default=0)
    assert smaller < needed_mm <= bundle.hole_mm
    (there,) = bundles(along_a_beam(wires, "22 AWG", bundle.hole_mm))
    assert there.fits
    assert not smaller or not bundles(along_a_beam(wires, "22 AWG", smaller))[0].fits


def test_a_solid_wire_takes_less_of_a_hole_than_strands_of_its_size():
    """Its copper is as thick as the gauge says: 0.644 mm of 22 AWG in the printed table."""
    plan = along_a_beam(7, "22 AWG", 20.0)
    (bundle,) = bundles(done(plan, set_wire(plan.wires, solid=True)))
    assert bundle.fill == pytest.approx(7 * (0.644 + 2 * 0.4) ** 2 / 20.0**2, rel=1e-3)
    assert bundle.fill < 0.9 * bundles(plan)[0].fill
