"""The plan as a SPICE netlist with the same equations, so that anyone can check the figures elsewhere."""

import re
from collections.abc import Mapping

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.alternating import cycle, hertz, warm_values
from wiring.circuit.behaviours.converter import INPUT, OUTPUT
from wiring.circuit.branches.law import number
from wiring.circuit.branches.laws import LAW_NUMBER, LAWS
from wiring.circuit.islands import Island
from wiring.circuit.states import Settled, settle
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

STEPS_PER_CYCLE = 4000
TIGHT = "reltol=1e-6 vntol=1e-7 abstol=1e-10 gmin=1e-12"  # tighter, and some circuits find no point at all
TIGHT_CYCLE = "reltol=1e-4 vntol=1e-6 abstol=1e-9 gmin=1e-12 itl4=200"  # as tight as its time steps allow
# Behind a bridge whose diodes all block, nothing but leaks says where the DC side floats, and a transient run
# sticks as they open again; so little capacitance passes a microampere, and it goes on.
JUNCTION_FARADS = "isr=0 cjo=1e-10"
CYCLES_RUN = 2  # the last of them is measured
CAPACITOR, LAW_OF_SOURCE = LAW_NUMBER["capacitor"], LAWS[LAW_NUMBER["source"]]
SPOKEN = {"+": "plus", "-": "minus", "~": "ac"}


def spice_netlist(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> str:
    """Return a netlist of every fed circuit, with a table of which node is which terminal.

    On DC the operating point is printed; with an AC supply cycles are run and RMS values measured over the
    last, capacitors starting as charged as the solver found them. Limits of supplies, and relays, stand as
    they were found; on DC converters work out their input for themselves. Parts nothing feeds are left out.
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
    lines += _analysis(names, hertz(settled.assembly.plan) if swings else 0.0)
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
    stores = island.alternating and bool(np.any(laws[island.branches] == CAPACITOR))
    if island.alternating:
        laws, values = warm_values(assembly, island, values, settled.reading)
    for branch in island.branches:
        a, b = names[int(assembly.a[branch])], names[int(assembly.b[branch])]
        if a == b and assembly.roles[branch] not in ("source", "alternating", "output"):
            continue
        law = LAWS[int(laws[branch])]
        row = tuple(float(v) for v in values[branch, : len(law.parameters)])
        written = () if island.alternating else _converting(settled, int(branch), a, b, row)
        written = written or law.spice(f"b{branch}", a, b, row)
        if stores:
            written = tuple(line.replace("isr=0", JUNCTION_FARADS) for line in written)
        if assembly.alternating[branch]:
            written = tuple(_swinging(line, row[0], hertz(assembly.plan)) for line in written)
        lines += [f"* {_owner(settled, int(branch))}", *written]
    if _needs_a_hint(settled, island):
        volts = settled.reading.nodes
        lines += [f".nodeset v({names[int(n)]})={number(volts[n])}" for n in island.nodes]
    return [*lines, *_begun(settled, island, names), ""]


def _needs_a_hint(settled: Settled, island: Island) -> bool:
    """Whether there are two steady states, of which the solver's is meant; converters find theirs unaided."""
    assembly = settled.assembly
    several = not all(LAWS[n].monotone for n in np.unique(assembly.laws[island.branches]))
    converts = any(assembly.roles[branch] == "output" for branch in island.branches)
    return several and not converts and not island.alternating


def _begun(settled: Settled, island: Island, names: Mapping[int, str]) -> list[str]:
    """Return lines that charge each capacitor of an island with what it holds where the cycle begins."""
    assembly = settled.assembly
    stores = [int(n) for n in island.core if assembly.laws[n] == CAPACITOR]
    found = cycle(assembly, island, settled.values) if stores and island.alternating else None
    if found is None or found.held is None:
        return []
    volts = dict(zip(island.nodes.tolist(), found.nodes[0].tolist(), strict=True))
    lines = []
    for branch, held in zip(stores, found.held[0].tolist(), strict=True):
        a, b = int(assembly.a[branch]), int(assembly.b[branch])
        inner = f"{names[a]}_b{branch}"
        lines.append(f".ic v({inner})={number(volts[b] + held)} v({names[b]})={number(volts[b])}")
    return lines


def _converting(settled: Settled, branch: int, a: str, b: str, row: tuple[float, ...]) -> tuple[str, ...]:
    """Return a running converter's output or input by what its other side reads; nothing for others."""
    assembly, owner = settled.assembly, settled.assembly.owners[branch]
    compiled = assembly.parts.get(owner)
    if compiled is None or compiled.kind.behaviour != "converter" or settled.values[branch, 0] == 0.0:
        return ()
    span, values = assembly.spans[owner], compiled.values
    names = node_names(settled)
    into, out = (
        f"v({names[int(assembly.a[n])]},{names[int(assembly.b[n])]})" for n in (span[INPUT], span[OUTPUT])
    )
    if branch == span[OUTPUT]:
        held = f"min({number(values['volts'])},max({into}-{number(values['drop_out_v'])},0))"
        ammeter = f"Vm{branch} {a} m{branch} 0"
        ideal, rest = LAW_OF_SOURCE.spice(f"b{branch}", f"m{branch}", b, row)
        head = ideal.split(" ")
        return ammeter, f"Be{branch} {head[1]} {head[2]} v={held}", rest
    if branch != span[INPUT]:
        return ()
    given = f"(-i(Vm{span[OUTPUT]}))"
    half, full = 1.0 / values["half_efficiency"], 1.0 / values["efficiency"]
    share = f"2*{given}/{number(values['limit_a'])}-1"
    over = f"max({number(half)}+{number(full - half)}*({share}),1)"
    return (f"Bb{branch} {a} {b} i={given}*{out}*{over}/max({into},{number(values['min_v'])})",)


def _owner(settled: Settled, branch: int) -> str:
    assembly = settled.assembly
    owner, role = assembly.owners[branch], assembly.roles[branch]
    if role == "wire":
        wire = assembly.plan.wires[owner]
        return _plain(f"-{wire.label}, {wire.size}")
    part = assembly.plan.parts[owner]
    return _plain(f"-{part.designation}, {assembly.parts[owner].kind.title}, {role}")


def _swinging(line: str, peak_v: float, hertz_: float) -> str:
    if not line.startswith("V"):
        return line
    head = line.rsplit(" ", 1)[0]
    return f"{head} SIN(0 {number(peak_v)} {number(hertz_)})"


def _analysis(names: Mapping[int, str], hertz_: float) -> list[str]:
    if not hertz_:
        return [".control", "set numdgt=15", "op", "print all", ".endc", ".end"]
    cycle_s = 1.0 / hertz_
    start, end = number((CYCLES_RUN - 1) * cycle_s), number(CYCLES_RUN * cycle_s)
    measures = [f"meas tran rms_{name} RMS v({name}) from={start} to={end}" for name in names.values()]
    step = number(cycle_s / STEPS_PER_CYCLE)
    return [
        ".control",
        "set numdgt=15",
        f"tran {step} {end} 0 {step}",
        *measures,
        ".endc",
        ".end",
    ]


def _plain(text: str) -> str:
    """Return text that a netlist takes as a comment: one line of ASCII."""
    return " ".join(text.split()).replace("²", "2").encode("ascii", "replace").decode()
