"""Sound layouts in which every kind of part is met sooner or later, for checks against another program."""

import random
from typing import Any

from support.networks import Given, draw

from wiring.catalogue.shelf import builtin_kinds
from wiring.plan.plan import Plan

ENDS = {"led": "AK", "filament": "12", "resistor": "12", "diode": "AK", "stall_motor": ("M1", "M2"),
        "twin_coil": "NC", "relay": ("A1", "A2"), "rectifier": ("~1", "~2")}  # fmt: skip
INLINE = ("fuse", "resettable-fuse", "plug-2", "plug-4", "plug-8", "toggle-on-off", "toggle-on-off-2p",
          "toggle-on-on", "toggle-on-on-2p", "toggle-centre-off", "toggle-centre-off-2p", "push-to-make",
          "push-to-break", "slide-on-on", "terminal-strip-4", "terminal-strip-8", "terminal-strip-12",
          "distribution-block-12", "push-off-delay")  # fmt: skip
LARGER_PLUGS = ("plug-8", "plug-12", "plug-16", "plug-24", "plug-36")  # of them the first way is used
ON_AC_ONLY = "supply-ac"


def layout(seed: int, loads: int = 6, feeds: str = "") -> Plan:
    """Buses of a few places fed once or twice; loads on them, each behind something that joins or guards."""
    pick = random.Random(seed)
    kinds = builtin_kinds()
    supplies = [k for k, kind in kinds.items() if kind.designation == "G" and k != ON_AC_ONLY]
    places = pick.randint(2, 8)
    parts: dict[str, Given] = {"G1": feeds or _varied(supplies[seed % len(supplies)], pick)}
    wires: list[tuple[Any, ...]] = []
    plus, minus = ("~1", "~2") if feeds == ON_AC_ONLY else ("+", "-")
    for rail in "PN":
        for place in range(places):
            parts[f"{rail}{place}"] = "distribution-block-6"
        pairs = [(place, place + 1) for place in range(places - 1)]
        if seed % 3 == 0 and places > 2:
            pairs.append((places - 1, 0))
        for one, other in pairs:
            size = {"length_m": pick.uniform(0.2, 4.0), "size": pick.choice(("16 AWG", "22 AWG", "0.5 mm²"))}
            wires.append((f"{rail}{one}:1", f"{rail}{other}:2", size))
    wires += [(f"G1:{plus}", "P0:3"), (f"G1:{minus}", "N0:3")]
    if seed % 4 == 0 and not feeds:
        parts["G2"] = _varied(pick.choice(supplies), pick)
        wires += [("G2:+", f"P{places - 1}:3", {"length_m": 1.0}), ("G2:-", f"N{places - 1}:3")]
    others = [k for k, kind in kinds.items() if kind.purpose in ("light", "move") or "indicator" in k]
    others += ["resistor", "diode", "relay", "rectifier", "smoothed-rectifier", "converter-5v"]
    for number in range(loads):
        key = others[(seed * loads + number) % len(others)]
        ends = [f"P{pick.randrange(places)}:4", f"N{pick.randrange(places)}:4"]
        _add_load(parts, wires, f"L{number}", key, ends, pick)
    return draw(parts, wires, 0.3)


def _varied(key: str, pick: random.Random) -> Given:
    if key == "supply-regulated":
        return key, {
            "on_overload": pick.choice(("holds current", "folds back")),
            "limit_a": pick.choice((0.3, 2.0)),
        }
    return key


def _add_load(
    parts: dict[str, Given],
    wires: list[tuple[Any, ...]],
    name: str,
    key: str,
    ends: list[str],
    pick: random.Random,
) -> None:
    kind = builtin_kinds()[key]
    position = pick.choice([p.name for p in kind.positions] or [""])
    parts[name] = (key, {}, position)
    plus, minus = ENDS.get(kind.behaviour, "+-")
    drop = {"length_m": pick.uniform(0.1, 1.5), "size": "24 AWG"}
    way = INLINE[pick.randrange(len(INLINE))]
    if way == "plug-8":
        way = LARGER_PLUGS[pick.randrange(len(LARGER_PLUGS))]
    joint, into, out = f"J{name}", *_through(way, pick)
    parts[joint] = (way, {}, _closed(way, into, out))
    wires += [(ends[0], f"{joint}:{into}", drop), (f"{joint}:{out}", f"{name}:{plus}", drop)]
    wires.append((f"{name}:{minus}", ends[1], drop))
    if kind.behaviour in ("rectifier", "converter", "relay", "discharge_unit"):
        parts[f"B{name}"] = pick.choice(("led-red", "resistor"))
        first, second = "AK" if parts[f"B{name}"] == "led-red" else "12"
        one, other = {"relay": ("14", None), "converter": ("O", "-"), "discharge_unit": ("O", "-")}.get(
            kind.behaviour, ("+", "-")
        )
        if kind.behaviour == "relay":
            wires += [
                (ends[0], f"{name}:11", drop),
                (f"{name}:14", f"B{name}:{first}"),
                (f"B{name}:{second}", ends[1]),
            ]
        else:
            wires += [(f"{name}:{one}", f"B{name}:{first}"), (f"B{name}:{second}", f"{name}:{other}")]


def _through(way: str, pick: random.Random) -> tuple[str, str]:
    """Return two terminals of a part that it can join; of a strip, one terminal twice."""
    kind = builtin_kinds()[way]
    if kind.behaviour == "separate":
        return "1", "1"
    if kind.behaviour == "pairs":
        return "1a", "1b"
    if kind.behaviour == "bus":
        return "1", "5"
    return pick.choice([pair for p in kind.positions for pair in p.closes])


def _closed(way: str, into: str, out: str) -> str:
    """Return a position that joins them."""
    kind = builtin_kinds()[way]
    return next((p.name for p in kind.positions if (into, out) in p.closes), kind.in_use)
