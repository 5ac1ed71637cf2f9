"""Times the solver on generated layouts; prints one `name = number` a line, all in milliseconds.

Run it as `python tests/benchmarks/engine_layout.py`. A layout has a lamp bus (a hundred and twenty lamps of
five kinds unless told, every twelfth behind a switch) and turnouts with two indicators each. `cold` solves
without a start, `start` with the figures before, `edit` after one lamp has been replaced, `throw` after a
switch was thrown, `line` sweeps 33 voltages of a battery in place of the lamp supply. Least and median of a
few runs. `growth` is the exponent of `cold` between a thousand and four thousand lamps.
"""

import math
import random
import statistics
import sys
from collections.abc import Callable
from pathlib import Path
from time import perf_counter
from typing import Any

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np
from support.networks import Given, draw

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.load_line import load_line
from wiring.circuit.solve import solve
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

KINDS = ("led-white", "led-warm-white", "lamp-12v", "led-red", "building-led")
STIFF: Given = ("supply-regulated", {"limit_a": 500.0})
BUS = {"length_m": 0.6, "size": "12 AWG"}


def layout(lamps: int, supply: Given = STIFF) -> Plan:
    """Lamps on a bus of distribution blocks, and turnouts with switch and indicators on a second supply."""
    parts: dict[str, Given] = {"G1": supply, "G2": STIFF, "F1": "fuse"}
    wires: list[tuple[Any, ...]] = [("G1:+", "F1:1")]
    lamp_bus(lamps, parts, wires)
    turnouts(lamps // 6, parts, wires)
    return draw(parts, wires, 0.5)


def lamp_bus(lamps: int, parts: dict[str, Given], wires: list[tuple[Any, ...]]) -> None:
    plus, minus = "F1:2", "G1:-"
    for number in range(lamps):
        block, way = divmod(number, 4)
        if way == 0:
            parts |= {f"X{block}": "distribution-block-6", f"Y{block}": "distribution-block-6"}
            wires += [(plus, f"X{block}:1", BUS), (minus, f"Y{block}:1", BUS)]
            plus, minus = f"X{block}:6", f"Y{block}:6"
        kind = KINDS[number % len(KINDS)]
        one, other = (t.name for t in builtin_kinds()[kind].terminals[:2])
        parts[f"E{number}"] = kind
        feed = f"X{block}:{way + 2}"
        if number % 12 == 0:
            parts[f"S{number}"] = "toggle-on-off"
            wires.append((feed, f"S{number}:13"))
            feed = f"S{number}:14"
        wires += [(feed, f"E{number}:{one}"), (f"Y{block}:{way + 2}", f"E{number}:{other}")]


def turnouts(count: int, parts: dict[str, Given], wires: list[tuple[Any, ...]]) -> None:
    plus, minus = "G2:+", "G2:-"
    for n in range(count):
        parts |= {f"M{n}": "stall-motor", f"T{n}": "toggle-on-on-2p"}
        parts |= {f"P{n}": "indicator-red", f"Q{n}": "indicator-green"}
        wires += [
            (plus, f"T{n}:12", BUS), (minus, f"T{n}:14", BUS),
            (f"T{n}:12", f"T{n}:24"), (f"T{n}:14", f"T{n}:22"),
            (f"T{n}:11", f"M{n}:M1"), (f"T{n}:21", f"M{n}:M2"),
            (f"M{n}:M1", f"P{n}:A"), (f"M{n}:M2", f"P{n}:K"),
            (f"M{n}:M1", f"Q{n}:K"), (f"M{n}:M2", f"Q{n}:A"),
        ]  # fmt: skip
        plus, minus = f"T{n}:12", f"T{n}:14"


def timed(name: str, act: Callable[[], object], runs: int = 15) -> float:
    act()
    spans = []
    for _ in range(runs):
        begin = perf_counter()
        act()
        spans.append(1e3 * (perf_counter() - begin))
    print(f"{name}_least = {min(spans):.1f}")
    print(f"{name}_median = {statistics.median(spans):.1f}")
    return min(spans)


def main() -> None:
    kinds = builtin_kinds()
    plan = layout(120)
    positions = in_use(plan, kinds)
    figures = solve(plan, kinds, positions)
    print(f"parts = {len(plan.parts)}\nwires = {len(plan.wires)}\nresidual_a = {figures.residual_a:.1e}")
    timed("cold", lambda: solve(plan, kinds, positions))
    timed("start", lambda: solve(plan, kinds, positions, figures))

    def edit() -> None:
        moved = Part(id="E5", kind="led-red", designation="E5", x_mm=random.random(), y_mm=0.0)
        solve(plan.with_changes(parts={**plan.parts, "E5": moved}), kinds, positions, figures)

    timed("edit", edit)
    names = iter(["on", "off"] * 1000)
    timed("throw", lambda: solve(plan, kinds, {**positions, "S12": next(names)}, figures))
    battery = layout(120, "battery-lead-acid")
    volts = np.linspace(8.0, 13.0, 33)
    timed("line", lambda: load_line(battery, kinds, positions, "G1", volts), 5)
    sizes = (1000, 4000)
    spans = []
    for lamps in sizes:
        large = layout(lamps)
        places = in_use(large, kinds)
        spans.append(
            timed(f"cold_{lamps}", lambda large=large, places=places: solve(large, kinds, places), 3)
        )
    print(f"growth = {math.log(spans[1] / spans[0]) / math.log(sizes[1] / sizes[0]):.2f}")


if __name__ == "__main__":
    main()
