"""A generated lighting layout and the same network for ngspice.

A lead-acid battery feeds two hundred lamps (or what is left of them) over a two-conductor bus. At every third
lamp the bus has a joint on either conductor, from which each lamp hangs by two wires of its own. A lamp is a
light-emitting diode with its resistor; wire sizes, lengths and kinds of lamp vary by a fixed seed.
"""

import random
from typing import Any

from support.networks import Given, draw

from wiring.circuit.assembly import Assembly
from wiring.circuit.branches.junction import LEAK_S, SPICE_VT
from wiring.circuit.branches.laws import LAWS
from wiring.plan.plan import Plan

LAMPS_PER_SUPPLY = 200
LAMPS_PER_JOINT = 3
KINDS = ("led-white", "led-warm-white", "led-red", "led-yellow")
BUS_SIZES, DROP_SIZES = ("12 AWG", "2.5 mm²"), ("22 AWG", "24 AWG", "0.25 mm²")


def lighting(lamps: int, switched: int = 0) -> Plan:
    """Return a layout; with `switched`, each first lamp of so many joints has a switch of its own."""
    pick = random.Random(lamps)
    parts: dict[str, Given] = {}
    wires: list[tuple[Any, ...]] = []
    plus = minus = ""
    switches = 0
    for lamp in range(lamps):
        if lamp % LAMPS_PER_SUPPLY == 0:
            supply = f"G{lamp // LAMPS_PER_SUPPLY}"
            parts[supply] = "battery-lead-acid"
            plus, minus = f"{supply}:+", f"{supply}:-"
        joint, way = divmod(lamp % LAMPS_PER_SUPPLY, LAMPS_PER_JOINT)
        if way == 0:
            for rail in "XY":
                name = f"{rail}{lamp}"
                parts[name] = "distribution-block-6"
                run = {"length_m": pick.uniform(0.1, 0.4), "size": pick.choice(BUS_SIZES)}
                wires.append((plus if rail == "X" else minus, f"{name}:1", run))
            plus, minus = f"X{lamp}:6", f"Y{lamp}:6"
        parts[f"E{lamp}"] = pick.choice(KINDS)
        drop = {"length_m": pick.uniform(0.2, 1.5), "size": pick.choice(DROP_SIZES)}
        feed = f"{plus[:-1]}{way + 2}"
        if way == 0 and switches < switched and joint % 2 == 1:
            parts[f"S{switches}"] = "toggle-on-off"
            wires.append((feed, f"S{switches}:13", drop))
            feed = f"S{switches}:14"
            switches += 1
        wires += [(feed, f"E{lamp}:A", drop), (f"{minus[:-1]}{way + 2}", f"E{lamp}:K", drop)]
    return draw(parts, wires)


def ngspice_netlist(assembly: Assembly, options: str = "", prints: bool = False) -> str:
    """Return the branches as ngspice's own R, D and V; one model for each kind of diode.

    With `prints` every node is printed, and the leak of every diode is written out as well.
    """
    lines, models = ["* lighting layout"], {}
    ends = zip(
        assembly.laws.tolist(),
        assembly.a.tolist(),
        assembly.b.tolist(),
        assembly.values.tolist(),
        strict=True,
    )
    for branch, (law, a, b, row) in enumerate(ends):
        name = LAWS[law].name
        if name == "resistor":
            lines.append(f"R{branch} n{a} n{b} {row[0]!r}")
        elif name == "junction":
            model = models.setdefault((row[0], row[1]), f"LED{len(models)}")
            lines += [f"R{branch} n{a} d{branch} {row[2]!r}", f"D{branch} d{branch} n{b} {model}"]
            if prints:
                lines.append(f"Rleak{branch} n{a} n{b} {1.0 / LEAK_S!r}")
        else:
            lines += [
                f"V{branch} s{branch} 0 {row[0]!r}",
                f"R{branch} s{branch} n{a} {row[1]!r}",
                f"V0{branch} n{b} 0 0",
            ]
    for (log_is, slope_v), model in models.items():
        leak_a = 2.718281828459045**log_is
        lines.append(f".model {model} D(is={leak_a!r} n={slope_v / SPICE_VT!r} rs=0 isr=0 tnom=27)")
    if options:
        lines.append(f".options {options}")
    lines += [
        ".options temp=27 tnom=27",
        ".control",
        "set numdgt=15",
        "op",
        *(["print all"] if prints else []),
        "quit",
        ".endc",
        ".end",
    ]
    return "\n".join(lines) + "\n"
