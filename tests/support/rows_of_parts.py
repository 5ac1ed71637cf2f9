"""A row of parts of a few kinds, each wired to the next: small, and with every sort of card in it."""

from wiring.catalogue.shelf import builtin_kinds
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

KINDS = ("led-warm-white", "lamp-12v", "building-led", "led-red", "toggle-on-off", "terminal-strip-4")
COLOURS = ("RD", "BK", "BU", "YE", "WH")
PITCH_MM = 60.0


def row_of_parts(count: int = 24) -> Plan:
    """Return parts p0, p1, ... named E0, E1, ..., each sixth of one kind, and wires w0, w1, ... between."""
    kinds = builtin_kinds()
    parts = {
        f"p{i}": Part(
            id=f"p{i}",
            kind=KINDS[i % len(KINDS)],
            designation=f"E{i}",
            x_mm=i % 6 * PITCH_MM,
            y_mm=i // 6 * PITCH_MM,
        )
        for i in range(count)
    }
    wires = {
        f"w{i}": Wire(
            id=f"w{i}",
            label=f"W{i}",
            start=TerminalRef(f"p{i}", kinds[parts[f"p{i}"].kind].terminals[-1].name),
            end=TerminalRef(f"p{i + 1}", kinds[parts[f"p{i + 1}"].kind].terminals[0].name),
            colour=COLOURS[i % len(COLOURS)],
        )
        for i in range(count - 1)
    }
    return Plan(parts=parts, wires=wires, next_number=10 * count)
