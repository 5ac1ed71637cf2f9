"""Plans in a few lines: `draw({"G": ("supply-regulated", {...}), ...}, [("G:+", "E1:A"), ...])`."""

from collections.abc import Iterable, Mapping
from typing import Any

from wiring.catalogue.kind import Kind
from wiring.catalogue.shelf import builtin_kinds
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

Given = str | tuple[str, Mapping[str, Any]] | tuple[str, Mapping[str, Any], str]


def ref(text: str) -> TerminalRef:
    part, _, terminal = text.partition(":")
    return TerminalRef(part, terminal)


def draw(parts: Mapping[str, Given], wires: Iterable[tuple[Any, ...]], length_m: float | None = 0.0) -> Plan:
    """Parts by designation, wires as (start, end[, fields]); wires are joints of no length unless told."""
    made = {}
    for place, (name, given) in enumerate(parts.items()):
        kind, settings, position = (*((given,) if isinstance(given, str) else given), {}, "")[:3]
        if len(given) == 2 and not isinstance(given, str):
            position = ""
        made[name] = Part(
            id=name,
            kind=kind,
            designation=name,
            x_mm=100.0 * place,
            y_mm=50.0,
            settings=settings,
            position=position,
        )
    drawn = {}
    for number, (start, end, *fields) in enumerate(wires, 1):
        extra = {"length_m": length_m, **(fields[0] if fields else {})}
        wire = Wire(id=f"w{number}", label=f"W{number}", start=ref(start), end=ref(end), **extra)
        drawn[wire.id] = wire
    return Plan(parts=made, wires=drawn)


def resistor(ohms: float) -> Given:
    return "resistor", {"resistance": ohms}


def stiff(volts: float, ohms: float = 1e-3, limit_a: float = 1e6) -> Given:
    """A supply that is as good as ideal: its resistance is the least there is."""
    return "supply-regulated", {
        "volts": volts,
        "limit_a": limit_a,
        "ohms": ohms,
        "on_overload": "holds current",
    }


def lamp_street(lamps: int, kind: str = "led-warm-white", supply: Given = "supply-regulated") -> Plan:
    """Lamps along a pair of bus wires, one to a metre, each on its own pair of terminal ways."""
    parts: dict[str, Given] = {"G1": supply}
    wires: list[tuple[Any, ...]] = []
    plus, minus = "G1:+", "G1:-"
    for number in range(1, lamps + 1):
        parts[f"X{number}"], parts[f"E{number}"] = "terminal-strip-4", kind
        first, second = [t.name for t in builtin_kinds()[kind].terminals[:2]]
        one, two = (t.name for t in builtin_kinds()["terminal-strip-4"].terminals[:2])
        run, drop = {"length_m": 1.0, "size": "18 AWG"}, {"length_m": 0.3, "size": "24 AWG"}
        wires += [(plus, f"X{number}:{one}", run), (minus, f"X{number}:{two}", run)]
        wires += [
            (f"X{number}:{one}", f"E{number}:{first}", drop),
            (f"X{number}:{two}", f"E{number}:{second}", drop),
        ]
        plus, minus = f"X{number}:{one}", f"X{number}:{two}"
    return draw(parts, wires)


def kinds() -> Mapping[str, Kind]:
    return builtin_kinds()
