"""How long the whole-layout demo takes from an edit to refreshed figures.

Run by hand: `python tests/benchmarks/live_edit.py`. Prints one `name = number` a line, medians of many edits
on the largest demo. The edits are what a hand does: drag a lamp, give a wire another size, throw a switch.
With `--cpu` processor time is counted instead of time by the clock, for machines that are busy with other
things. `cold_solve_ms` is the first solve of the process, with the imports it needs.
"""

import statistics
import sys
from pathlib import Path
from time import perf_counter, process_time

sys.path.insert(0, str(Path(__file__).parents[2]))

import msgspec

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.solve import solve
from wiring.edits.move import move
from wiring.edits.set_wire import set_wire
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.plan.positions import in_use

DEMO = Path(__file__).resolve().parents[2] / "demo_layouts" / "harbour.underboard"
REPEATS = 21
clock = process_time if "--cpu" in sys.argv else perf_counter


def timed_ms(act) -> float:
    start = clock()
    act()
    return (clock() - start) * 1000


def main() -> None:
    kinds = builtin_kinds()
    plan = load(DEMO)
    positions = in_use(plan, kinds)
    lamps = [p.id for p in plan.parts.values() if kinds[p.kind].purpose == "light"]
    cold = timed_ms(lambda: solve(plan, kinds, positions))
    moved, resized, thrown, examined = [], [], [], []
    wires = list(plan.wires)
    switches = [
        p for p in positions if {n.name for n in kinds[plan.parts[p].kind].positions} == {"off", "on"}
    ]
    for n in range(REPEATS):

        def drag(n=n):
            nonlocal plan
            plan = move([lamps[n * 5]], 5.0, 0.0).apply(plan)
            solve(plan, kinds, positions)

        def thicken(n=n):
            nonlocal plan
            plan = set_wire([wires[n * 7]], size="1.0 mm²" if n % 2 else "18 AWG").apply(plan)
            solve(plan, kinds, positions)

        def throw(n=n):
            one = switches[n % len(switches)]
            solve(plan, kinds, positions | {one: "off" if n // len(switches) % 2 == 0 else "on"})

        moved.append(timed_ms(drag))
        resized.append(timed_ms(thicken))
        thrown.append(timed_ms(throw))
        examined.append(timed_ms(lambda: examine(plan, kinds, positions, outlooks=False)))
    wired = rewired_ms(plan, kinds, positions)
    print(f"parts = {len(plan.parts)}")
    print(f"wires = {len(plan.wires)}")
    print(f"cold_solve_ms = {cold:.1f}")
    print(f"move_to_figures_ms = {statistics.median(moved):.1f}")
    print(f"resize_to_figures_ms = {statistics.median(resized):.1f}")
    print(f"throw_to_figures_ms = {statistics.median(thrown):.1f}")
    print(f"figures_and_findings_ms = {statistics.median(examined):.1f}")
    for name, spans in wired.items():
        print(f"{name}_ms = {statistics.median(spans):.1f}")


def rewired_ms(plan, kinds, positions) -> dict[str, list[float]]:
    """Times a part put in, a wire pulled to it and a wire taken out: to figures, and then to findings."""
    spans: dict[str, list[float]] = {}

    def look(name, changed):
        spans.setdefault(f"{name}_to_figures", []).append(timed_ms(lambda: solve(changed, kinds, positions)))
        act = lambda: examine(changed, kinds, positions, outlooks=False)  # noqa: E731
        spans.setdefault(f"{name}_findings_too", []).append(timed_ms(act))

    lamps = {p.id for p in plan.parts.values() if kinds[p.kind].purpose == "light"}
    wires = [w for w in plan.wires.values() if w.end.part in lamps]
    for wire in wires[: REPEATS * 2 : 2]:
        lamp = msgspec.structs.replace(plan.parts[wire.end.part], id="new", designation="new")
        placed = plan.with_changes(parts={**plan.parts, "new": lamp})
        pulled = msgspec.structs.replace(wire, id="n", label="n", end=wire.end._replace(part="new"))
        look("place", placed)
        look("pull", placed.with_changes(wires={**plan.wires, "n": pulled}))
        look("back", plan)
        look("cut", plan.with_changes(wires={k: w for k, w in plan.wires.items() if k != wire.id}))
    return spans


if __name__ == "__main__":
    main()
