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


@st.composite
def networks(draw_: st.DrawFn, largest: int = 10) -> Plan:
    """Two to `largest` parts, the first a supply; most terminals are wired to one of a few hubs.

    The kinds are drawn one by one, so a failure shrinks to few; settings and wires come from one seed.
    """
    kinds = builtin_kinds()
    feeds = [key for key, kind in kinds.items() if kind.purpose == "feed"]
    keys = [draw_(st.sampled_from(feeds))]
    keys += draw_(st.lists(st.sampled_from(list(kinds)), min_size=1, max_size=largest - 1))
    pick = random.Random(draw_(st.integers(0, 2**32)))
    parts: dict[str, Given] = {}
    for number, key in enumerate(keys):
        position = pick.choice([p.name for p in kinds[key].positions] or [""])
        parts[f"P{number}"] = (key, settings_of(kinds[key], pick), position)
    terminals = [f"{name}:{t.name}" for name, given in parts.items() for t in kinds[given[0]].terminals]
    hubs = [pick.choice(terminals) for _ in range(pick.randint(2, 6))]
    wires: list[tuple[Any, ...]] = []
    for terminal in terminals:
        if pick.random() < 0.8:
            other = pick.choice(hubs if pick.random() < 0.75 else terminals)
            wires.append((terminal, other, {"length_m": pick.choice(LENGTHS_M)}))
    return draw(parts, wires)
