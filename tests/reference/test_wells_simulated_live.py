"""The two wells against programs that know nothing of this one, run on the spot where they are installed.

A general battery simulation library, NREL-PySAM (BatteryStateful, lead-acid at 25 °C, steps of a minute),
is given the capacities of a small battery at 20, 10 and 1 h and run down at four currents. A general circuit
simulator, ngspice, runs a whole discharge: two wells are two capacitors with a resistor between them, the EMF
is a table over the charge of the first, and the inner resistance grows with its depth.
"""

import shutil
import subprocess

import pytest
from support.cell_runs import current, life, resistor

from wiring.standards.cells import CELLS
from wiring.standards.two_wells import drawn, full
from wiring.studies.cells.pack import packed

# From 6.86, 6.48 and 3.92 Ah at 20, 10 and 1 h: share at hand, exchange per hour, charge when full.
SHARE, RATE, FULL_AH = 0.407, 1.169, 7.287
MINUTE_H = 1 / 60


def _simulated_h(stateful, amps):
    battery = stateful.default("LeadAcid")
    battery.ParamsCell.assign(
        {"leadacid_q20": 6.86, "leadacid_q10": 6.48, "leadacid_qn": 3.92, "leadacid_tn": 1.0, "Qfull": 6.86,
         "initial_SOC": 100.0, "minimum_SOC": 0.0, "maximum_SOC": 100.0}
    )  # fmt: skip
    cells = {"nominal_voltage": 2.0, "nominal_energy": 2.0 * 6.86, "T_room_init": 25.0}
    battery.ParamsPack.assign(cells)
    battery.Controls.assign({"control_mode": 0.0, "dt_hr": MINUTE_H, "input_current": 0.0})
    battery.setup()
    battery.Controls.input_current = amps
    steps = 0
    while steps < 24 * 60:
        battery.execute(0)
        if 0.99 * amps > battery.StatePack.I:
            break
        steps += 1
    return steps * MINUTE_H


@pytest.mark.parametrize("amps", [0.343, 1.14, 2.26, 3.92])
def test_a_battery_simulation_library_empties_the_wells_at_the_same_time(amps):
    stateful = pytest.importorskip(
        "PySAM.BatteryStateful", reason="NREL-PySAM, a battery simulation library, is not installed"
    )
    low, high = 0.0, 40.0
    for _ in range(50):
        middle = (low + high) / 2
        left = drawn(full(FULL_AH, SHARE), amps, middle, SHARE, RATE).available_ah
        low, high = (middle, high) if left > 0 else (low, middle)
    assert low == pytest.approx(_simulated_h(stateful, amps), rel=0.025)


def _netlist(pack, load, end_v, hours):
    """The same battery as capacitors (1 F for 1 Ah, 1 s for 1 h) and a load of its own."""
    first_f = pack.share * pack.capacity_ah
    second_f = pack.capacity_ah - first_f
    siemens = pack.rate_per_h * pack.share * (1 - pack.share) * pack.capacity_ah
    table = ",".join(f"{x:.6f},{v:.6f}" for x, v in zip(pack.depths, pack.emfs_v, strict=True))
    return f"""two wells
C1 one 0 {first_f} ic=1
C2 two 0 {second_f} ic=1
R12 one two {1 / siemens}
Bdepth depth 0 V=1-V(one)
Bemf emf 0 V=pwl(V(depth),{table})
Bdrop emf out V=I(Vsense)*{pack.ohms_full}*(1+{pack.ohms_growth}*max(V(depth),0))
Vsense out plus 0
Bdraw one 0 I=I(Vsense)
{load}
.tran {hours / 4000} {hours} 0 {hours / 2000} uic
.control
run
meas tran ended when V(plus)={end_v} fall=1
meas tran first FIND V(plus) AT={hours / 50}
quit
.endc
.end
"""


CASES = {
    "alkaline AA on 20 ohm": ("alkaline AA", "Rload plus 0 20", resistor(20.0), 0.9, 60.0),
    "alkaline 9 V at 35 mA": ("alkaline 9 V", "Iload plus 0 0.035", current(0.035), 5.4, 30.0),
    "lead-acid at 1 A": ("lead-acid 12 V", "Iload plus 0 1", current(1.0), 10.5, 10.0),
    "zinc-carbon AA on 100 ohm": ("zinc-carbon AA", "Rload plus 0 100", resistor(100.0), 0.8, 200.0),
    "li-ion at 1.25 A": ("li-ion 18650", "Iload plus 0 1.25", current(1.25), 2.75, 3.0),
}


@pytest.mark.skipif(shutil.which("ngspice") is None, reason="the ngspice program is not installed")
@pytest.mark.parametrize("name", CASES)
def test_a_circuit_simulator_runs_the_same_discharge(name, tmp_path):
    key, branch, load, end_v, hours = CASES[name]
    pack = packed(CELLS[key])._replace(shelf_per_h=0.0, ageing_per_h=0.0)
    path = tmp_path / "wells.cir"
    path.write_text(_netlist(pack, branch, end_v, hours), encoding="ascii")
    done = subprocess.run(
        ["ngspice", "-b", str(path)], capture_output=True, text=True, timeout=60, check=False
    )
    found = {
        line.split("=")[0].strip(): float(line.split("=")[1].split()[0])
        for line in done.stdout.splitlines()
        if line.startswith(("ended", "first")) and "=" in line
    }
    assert set(found) == {"ended", "first"}, done.stdout[-800:] + done.stderr[-800:]
    run = life("", load, end_v, pack=pack)
    assert run.lit_h == pytest.approx(found["ended"], rel=5e-3)
    at_h = hours / 50
    near = min(run.samples, key=lambda s: abs(s.lit_h - at_h))
    assert near.volts_v == pytest.approx(found["first"], rel=0.02)
