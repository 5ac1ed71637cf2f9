"""Times the electrical engine against ngspice on generated lighting layouts; prints `name = number` a line.

Run it as `python tests/benchmarks/engine.py`; `--smoke` takes small sizes and few runs, `--wall` counts time
by the clock instead of processor time (user and system), which on a busy machine counts the others too.

What is timed on their side: the whole ngspice process on a netlist of the same branches (its own R, D and V,
one model a kind of diode, no leaks), default tolerances, one operating point, nothing printed. On ours:
everything from branch arrays to figures, with nothing kept from before: islands, folding, order, Newton,
readings and problems. Figures of a part or wire are made from the arrays when they are asked for;
`every_figure_*` adds making each of them, `from_plan_*` adds making the branch arrays from the plan as well.
`ratio_*` is theirs over ours, medians. `growth` is the exponent of ours from the least to the largest size.

`agree_max_rel` is the greatest difference of any node voltage from ngspice at tight tolerances, over the
highest voltage of the circuit; `agree_current_rel` that of any lamp's current, over that current. `warm_*_ms`
is plan to figures after one edit (a lamp's settings or a wire's length in turn), starting from the answer
before, edit upon edit as a hand makes them; for `warm_collected_*_ms` all garbage is collected before each,
which leaves the processor's caches cold. `warm_throw_*`, `warm_add_*` and `warm_remove_*` are plan to figures
after a switch is thrown, a lamp put in with its two wires, and another taken out.
`positions256_over_one` is 256 sets of eight switches over one solve of the same plan, both from plan to
readings.
"""

import gc
import math
import resource
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from time import perf_counter, process_time

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import msgspec
import numpy as np
from engine_network import lighting, ngspice_netlist

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.building import build
from wiring.circuit.figures import Figures
from wiring.circuit.gathering import figures_of
from wiring.circuit.kept import Kept
from wiring.circuit.many_positions import solve_positions
from wiring.circuit.solve import solve
from wiring.circuit.states import solved_arrays
from wiring.plan.plan import Plan

TIGHT = "reltol=1e-10 vntol=1e-12 abstol=1e-15 gmin=1e-15 itl1=500"
SIZES = {"1k": (1_000, 9, 7), "10k": (10_000, 7, 5), "100k": (100_000, 5, 5)}  # lamps, our runs, theirs
SMOKE = {"1k": (300, 3, 3), "10k": (900, 3, 2)}
WARM = {"1k": 1_000, "10k": 10_000}
WARM_SMOKE = {"1k": 300}
clock = perf_counter if "--wall" in sys.argv else process_time


def say(name: str, value: float) -> None:
    print(f"{name} = {value:.4g}", flush=True)


def median_s(act: Callable[[], object], runs: int) -> float:
    spans = []
    for _ in range(runs):
        gc.collect()
        begin = clock()
        act()
        spans.append(clock() - begin)
    return statistics.median(spans)


def ngspice(netlist: str, folder: Path) -> tuple[float, str]:
    """Seconds the whole process takes, and what it printed."""
    path = folder / "network.cir"
    path.write_text(netlist, encoding="ascii")
    before, begin = resource.getrusage(resource.RUSAGE_CHILDREN), perf_counter()
    done = subprocess.run(["ngspice", "-b", str(path)], capture_output=True, text=True, check=False)
    spent, after = perf_counter() - begin, resource.getrusage(resource.RUSAGE_CHILDREN)
    if "--wall" not in sys.argv:
        spent = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return spent, done.stdout


def afresh(assembly: Assembly) -> Figures:
    """Branch arrays to figures, nothing kept from before."""
    return figures_of(solved_arrays(assembly._replace(kept=Kept()), {}))


def every_figure(assembly: Assembly) -> int:
    figures = afresh(assembly)
    return len(list(figures.parts.values())) + len(list(figures.wires.values())) + len(figures.supplies)


def agreement(assembly: Assembly, folder: Path) -> None:
    _, printed = ngspice(ngspice_netlist(assembly, TIGHT, prints=True), folder)
    theirs = {}
    for line in printed.splitlines():
        name, equals, value = line.partition(" = ")
        if equals and name.strip().startswith("n"):
            theirs[int(name.strip()[1:])] = float(value)
    settled = solved_arrays(assembly._replace(kept=Kept()), {})
    volts, amps, laws = settled.reading.nodes, settled.reading.amps, assembly.laws
    nodes = np.unique(np.concatenate((assembly.a, assembly.b)))
    tight = np.array([theirs[int(node)] for node in nodes])
    say("agree_max_rel", float(np.max(np.abs(tight - volts[nodes])) / np.max(np.abs(tight))))
    wires = np.flatnonzero(laws == LAW_NUMBER["resistor"])
    drop = np.array(
        [
            theirs[a] - theirs[b]
            for a, b in zip(assembly.a[wires].tolist(), assembly.b[wires].tolist(), strict=True)
        ]
    )
    lost = np.abs(drop / assembly.values[wires, 0] - amps[wires])
    say("agree_current_rel", float(np.max(lost / np.abs(amps[wires]))))


def cold(sizes: dict[str, tuple[int, int, int]], folder: Path) -> None:
    kinds, spent = builtin_kinds(), {}
    for name, (lamps, our_runs, their_runs) in sizes.items():
        plan = lighting(lamps)
        assembly = build(plan, kinds, {})
        if name == "1k":
            agreement(assembly, folder)
        afresh(assembly)
        ours = spent[lamps] = median_s(lambda assembly=assembly: afresh(assembly), our_runs)
        listed = median_s(lambda assembly=assembly: every_figure(assembly), our_runs)
        from_plan = listed + median_s(lambda plan=plan: build(plan, kinds, {}), min(our_runs, 3))
        netlist = ngspice_netlist(assembly)
        theirs = statistics.median(ngspice(netlist, folder)[0] for _ in range(their_runs))
        say(f"ours_{name}_ms", 1e3 * ours)
        say(f"ngspice_{name}_ms", 1e3 * theirs)
        say(f"ratio_{name}", theirs / ours)
        say(f"every_figure_ratio_{name}", theirs / listed)
        say(f"from_plan_ratio_{name}", theirs / from_plan)
    least, largest = min(spent), max(spent)
    say("growth", math.log(spent[largest] / spent[least]) / math.log(largest / least))


def warm(name: str, lamps: int, runs: int) -> None:
    say(f"warm_{name}_ms", 1e3 * edits_s(lamps, runs, collected=False))
    say(f"warm_collected_{name}_ms", 1e3 * edits_s(lamps, runs, collected=True))


def edits_s(lamps: int, runs: int, collected: bool) -> float:
    kinds, plan = builtin_kinds(), lighting(lamps)
    figures, spans = solve(plan, kinds, {}), []
    gc.collect()
    for run in range(runs):
        plan = edited(plan, run, lamps)
        if collected:
            gc.collect()
        begin = clock()
        figures = solve(plan, kinds, {}, figures)
        spans.append(clock() - begin)
    return statistics.median(spans)


def edited(plan: Plan, run: int, lamps: int) -> Plan:
    """A lamp with another resistor, or a wire of another length."""
    if run % 2:
        wire = plan.wires[f"w{3 + 7 * run}"]
        changed = msgspec.structs.replace(wire, length_m=0.2 + 0.1 * run)
        return plan.with_changes(wires={**plan.wires, wire.id: changed})
    part = plan.parts[f"E{run * 11 % lamps}"]
    changed = msgspec.structs.replace(part, settings={"series_ohm": 400.0 + 10.0 * run})
    return plan.with_changes(parts={**plan.parts, part.id: changed})


def rewired(name: str, lamps: int, runs: int) -> None:
    """Times edits of the wiring: a switch thrown, a lamp put in with its wires, and taken out again."""
    kinds, plan = builtin_kinds(), lighting(lamps, switched=min(runs + 1, lamps // 8))
    switches = [part for part in plan.parts if part.startswith("S")]
    stands = dict.fromkeys(switches, "on")
    figures = solve(plan, kinds, stands)
    spans: dict[str, list[float]] = {"throw": [], "add": [], "remove": []}

    def solved(what: str, changed: Plan) -> None:
        nonlocal figures
        begin = clock()
        figures = solve(changed, kinds, stands, figures)
        spans[what].append(clock() - begin)

    for run in range(runs):
        stands = {**stands, switches[run % len(switches)]: "on" if run // len(switches) % 2 else "off"}
        solved("throw", plan)
        plan = with_lamp(plan, f"E{(run * 11 + 1) % lamps}", f"new{run}")
        solved("add", plan)
        plan = without(plan, f"E{(run * 11 + 5) % lamps}")
        solved("remove", plan)
    for what, found in spans.items():
        say(f"warm_{what}_{name}_ms", 1e3 * statistics.median(found))


def without(plan: Plan, gone: str) -> Plan:
    """A part taken out with its wires."""
    parts = {name: part for name, part in plan.parts.items() if name != gone}
    wires = {name: w for name, w in plan.wires.items() if gone not in (w.start.part, w.end.part)}
    return plan.with_changes(parts=parts, wires=wires)


def with_lamp(plan: Plan, like: str, called: str) -> Plan:
    """A lamp beside another, wired to the same terminals."""
    lamp = msgspec.structs.replace(plan.parts[like], id=called, designation=called)
    wires = {**plan.wires}
    for wire in plan.wires.values():
        if wire.end.part == like:
            name = f"{called}-{wire.id}"
            end = wire.end._replace(part=called)
            wires[name] = msgspec.structs.replace(wire, id=name, label=name, end=end)
    return plan.with_changes(parts={**plan.parts, called: lamp}, wires=wires)


def positions(lamps: int, runs: int) -> None:
    kinds, plan = builtin_kinds(), lighting(lamps, switched=8)
    sets = [{f"S{n}": "on" if code >> n & 1 else "off" for n in range(8)} for code in range(256)]
    solve_positions(plan, kinds, sets[:65])
    many = median_s(lambda: solve_positions(plan, kinds, sets), runs)
    one = median_s(lambda: every_figure(build(plan, kinds, sets[255])), 3 * runs)
    say("positions256_ms", 1e3 * many)
    say("positions256_over_one", many / one)


def main() -> None:
    smoke = "--smoke" in sys.argv
    with tempfile.TemporaryDirectory() as folder:
        for name, lamps in (WARM_SMOKE if smoke else WARM).items():
            warm(name, lamps, 7 if smoke else 31)
            rewired(name, lamps, 7 if smoke else 31)
        positions(300 if smoke else 1_000, 1 if smoke else 5)
        cold(SMOKE if smoke else SIZES, Path(folder))
    if (Path(__file__).parent / "pulse_error.py").exists():
        from pulse_error import pulse_err

        say("pulse_err", pulse_err())


if __name__ == "__main__":
    main()
