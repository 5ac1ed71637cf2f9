"""Networks a person could draw, however foolish: any kinds and settings, shorts, loose ends."""

import random
from typing import Any

from hypothesis import strategies as st
from support.networks import Given, draw

from wiring.catalogue.kind import Kind
from wiring.catalogue.shelf import builtin_kinds
from wiring.plan.plan import Plan

FACTORS = (0.01, 0.3, 0.9, 1.1, 3.0, 20.0)
LENGTHS_M = (None, 0.0, 0.3, 5.0)
Drawn = tuple[dict[str, Given], list[tuple[Any, ...]]]  # parts by name, and wires


def settings_of(kind: Kind, pick: random.Random) -> dict[str, Any]:
    """Usual values mostly; now and then one far from usual."""
    found: dict[str, Any] = {}
    for setting in kind.settings:
        if setting.choices:
            found[setting.name] = pick.choice(setting.choices)
        elif setting.quantity == "count":
            found[setting.name] = pick.randint(1, 4)
        elif isinstance(setting.default, int | float) and pick.random() < 0.13:
            found[setting.name] = setting.default * pick.choice(FACTORS)
    return found


def drawn(keys: list[str], pick: random.Random, prefix: str = "P") -> Drawn:
    """Parts of these kinds; most terminals are wired to one of a few hubs."""
    kinds = builtin_kinds()
    parts: dict[str, Given] = {}
    for number, key in enumerate(keys):
        position = pick.choice([p.name for p in kinds[key].positions] or [""])
        parts[f"{prefix}{number}"] = (key, settings_of(kinds[key], pick), position)
    terminals = [f"{name}:{t.name}" for name, given in parts.items() for t in kinds[given[0]].terminals]
    hubs = [pick.choice(terminals) for _ in range(pick.randint(2, 6))]
    wires: list[tuple[Any, ...]] = []
    for terminal in terminals:
        if pick.random() < 0.8:
            other = pick.choice(hubs if pick.random() < 0.75 else terminals)
            wires.append((terminal, other, {"length_m": pick.choice(LENGTHS_M)}))
    return parts, wires


def feeds() -> list[str]:
    """The kinds of supplies and batteries."""
    return [key for key, kind in builtin_kinds().items() if kind.purpose == "feed"]


def network_of(seed: int, prefix: str = "P", largest: int = 8) -> Drawn:
    """The network of a seed: two to `largest` parts, the first a supply.

    One in four has two batteries or supplies side by side or back to back, unequal as they come.
    """
    pick = random.Random(seed)
    keys = [pick.choice(feeds()), *pick.choices(list(builtin_kinds()), k=pick.randint(1, largest - 1))]
    paired = pick.random() < 0.25
    if paired:
        keys[1] = pick.choice(feeds())
    parts, wires = drawn(keys, pick, prefix)
    if paired:
        kinds = builtin_kinds()
        one, other = ([f"{prefix}{n}:{t.name}" for t in kinds[keys[n]].terminals] for n in (0, 1))
        ends = other[:2] if pick.random() < 0.5 else other[1::-1]
        wires += [(one[0], ends[0], {}), (one[1], ends[1], {})]
    return parts, wires


@st.composite
def networks(draw_: st.DrawFn, largest: int = 10) -> Plan:
    """Two to `largest` parts, the first a supply.

    The kinds are drawn one by one, so a failure shrinks to few; settings and wires come from one seed.
    """
    keys = [draw_(st.sampled_from(feeds()))]
    keys += draw_(st.lists(st.sampled_from(list(builtin_kinds())), min_size=1, max_size=largest - 1))
    return draw(*drawn(keys, random.Random(draw_(st.integers(0, 2**32)))))
