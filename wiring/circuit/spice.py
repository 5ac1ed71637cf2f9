"""The plan as a SPICE netlist with the same equations, so that anyone can check the figures elsewhere."""

import re
from collections.abc import Mapping

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.alternating import warm_values
from wiring.circuit.branches.law import number
from wiring.circuit.branches.laws import LAWS
from wiring.circuit.islands import Island
from wiring.circuit.states import Settled, settle
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

HERTZ = 50.0
STEPS_PER_CYCLE = 4000
TIGHT = "reltol=1e-6 vntol=1e-7 abstol=1e-10 gmin=1e-12"  # tighter, and some circuits find no point at all
TIGHT_CYCLE = "reltol=1e-4 vntol=1e-6 abstol=1e-9 gmin=1e-12 itl4=200"  # as tight as its time steps allow
SPOKEN = {"+": "plus", "-": "minus", "~": "ac"}


def spice_netlist(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> str:
    """Return a netlist of every fed circuit, with a table of which node is which terminal.

    On DC the operating point is printed; with an AC supply a cycle is run and RMS values measured. Supplies
    and relays stand as the solver found them. Parts nothing feeds are left out.
    """
    settled = settle(plan, kinds, positions, None)
    return netlist(settled)


def netlist(settled: Settled) -> str:
    """Return the netlist of an already solved plan."""
    names = node_names(settled)
    swings = any(island.alternating for island in settled.islands.fed)
    lines = [
        f"* {_plain(settled.assembly.plan.title)}",
        "* Written from a wiring plan. Volts, amperes, ohms; 27 degrees Celsius for the junctions.",
        "*",
        "* node: terminals",
        *(f"*   {names[node]}: {', '.join(terminals)}" for node, terminals in _terminals(settled).items()),
        "",
        f".options {TIGHT_CYCLE if swings else TIGHT} temp=27 tnom=27 itl1=500",
        "",
    ]
    for place, island in enumerate(settled.islands.fed, 1):
        lines += _island(settled, island, place, names)
    lines += _analysis(names, swings)
    return "\n".join(lines) + "\n"


def node_names(settled: Settled) -> dict[int, str]:
    """Return a readable name for the node of every fed terminal."""
    plan, names = settled.assembly.plan, dict[int, str]()
    taken: set[str] = set()
    for ref, node in zip(settled.assembly.refs, settled.assembly.node_of.tolist(), strict=True):
        if node in names or settled.islands.of_node[node] < 0:
            continue
        plain = _name(plan, ref)
        name, copy = plain, 2
        while name in taken:
            name, copy = f"{plain}_{copy}", copy + 1
        taken.add(name)
        names[node] = name
    return names


def _name(plan: Plan, ref: TerminalRef) -> str:
    terminal = "".join(SPOKEN.get(letter, letter) for letter in ref.terminal)
    part = plan.parts[ref.part].designation if ref.part in plan.parts else "loose"
    return "n_" + re.sub(r"[^a-z0-9_]", "_", f"{part}_{terminal}".lower())


def _terminals(settled: Settled) -> dict[int, list[str]]:
    plan = settled.assembly.plan
    found: dict[int, list[str]] = {}
    for ref, node in zip(settled.assembly.refs, settled.assembly.node_of.tolist(), strict=True):
        if settled.islands.of_node[node] >= 0:
            label = terminal_label(plan, ref) if ref.part in plan.parts else "a loose end"
            found.setdefault(node, []).append(_plain(label))
    return found


def _island(settled: Settled, island: Island, place: int, names: Mapping[int, str]) -> list[str]:
    assembly, values, laws = settled.assembly, settled.values, settled.assembly.laws
    lines = [f"* Circuit {place}", f"Vref{place} {names[island.reference]} 0 0"]
    if island.alternating:
        laws, values = warm_values(assembly, island, values, settled.reading)
    for branch in island.branches:
        a, b = names[int(assembly.a[branch])], names[int(assembly.b[branch])]
        if a == b and assembly.roles[branch] not in ("source", "alternating"):
            continue
        law = LAWS[int(laws[branch])]
        row = tuple(float(v) for v in values[branch, : len(law.parameters)])
        written = law.spice(f"b{branch}", a, b, row)
        if assembly.alternating[branch]:
            written = tuple(_swinging(line, row[0]) for line in written)
        lines += [f"* {_owner(settled, int(branch))}", *written]
    if not all(LAWS[n].monotone for n in np.unique(laws[island.branches])):
        volts = settled.reading.nodes
        lines += [f".nodeset v({names[int(n)]})={number(volts[n])}" for n in island.nodes]
    return [*lines, ""]


def _owner(settled: Settled, branch: int) -> str:
    assembly = settled.assembly
    owner, role = assembly.owners[branch], assembly.roles[branch]
    if role == "wire":
        wire = assembly.plan.wires[owner]
        return _plain(f"-{wire.label}, {wire.size}")
    part = assembly.plan.parts[owner]
    return _plain(f"-{part.designation}, {assembly.parts[owner].kind.title}, {role}")


def _swinging(line: str, peak_v: float) -> str:
    if not line.startswith("V"):
        return line
    head = line.rsplit(" ", 1)[0]
    return f"{head} SIN(0 {number(peak_v)} {number(HERTZ)})"


def _analysis(names: Mapping[int, str], swings: bool) -> list[str]:
    if not swings:
        return [".control", "set numdgt=15", "op", "print all", ".endc", ".end"]
    cycle = 1.0 / HERTZ
    measures = [
        f"meas tran rms_{name} RMS v({name}) from={number(cycle)} to={number(2 * cycle)}"
        for name in names.values()
    ]
    return [
        ".control",
        "set numdgt=15",
        f"tran {number(cycle / STEPS_PER_CYCLE)} {number(2 * cycle)} 0 {number(cycle / STEPS_PER_CYCLE)}",
        *measures,
        ".endc",
        ".end",
    ]


def _plain(text: str) -> str:
    """Return text that a netlist takes as a comment: one line of ASCII."""
    return " ".join(text.split()).replace("²", "2").encode("ascii", "replace").decode()
