"""The harness of a panel: the wires that come out of it through its plugs, way by way."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import TerminalRef, WirewayId
from wiring.plan.panel import Panel
from wiring.plan.panel_places import of_panel, plugs_of
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


class Way(NamedTuple):
    """One way of a plug: its number, the wire from the panel and the wire to the layout; None for none."""

    plug: Part
    number: str
    inner: Wire | None
    outer: Wire | None


class Harness(NamedTuple):
    """The plugs of a panel, their ways, and the wireways its wires were gathered in."""

    plugs: tuple[Part, ...]
    ways: tuple[Way, ...]
    wireways: tuple[WirewayId, ...]

    @property
    def inner(self) -> tuple[Wire, ...]:
        """The wires from the panel's parts to the plug, by way."""
        return tuple(way.inner for way in self.ways if way.inner is not None)


def harness_of(plan: Plan, kinds: Mapping[str, Kind], panel: Panel) -> Harness | None:
    """Return the harness of a panel; None when its wires come out one by one."""
    plugs = plugs_of(plan, kinds, panel.id)
    if not plugs:
        return None
    at: dict[TerminalRef, Wire] = {}
    for wire in plan.wires.values():
        at[wire.start] = at[wire.end] = wire
    ways = tuple(
        Way(plug, number, *(at.get(TerminalRef(plug.id, f"{number}{side}")) for side in "ab"))
        for plug in plugs
        for number in way_numbers(kinds[plug.kind])
    )
    along = dict.fromkeys(y for way in ways if way.inner is not None for y in way.inner.along)
    return Harness(plugs, ways, tuple(y for y in along if y in plan.wireways))


def way_numbers(kind: Kind) -> tuple[str, ...]:
    """Return the numbers of a plug's ways, in its order."""
    names = {t.name for t in kind.terminals}
    return tuple(t.name[:-1] for t in kind.terminals if t.name.endswith("a") and f"{t.name[:-1]}b" in names)


def leaving(plan: Plan, kinds: Mapping[str, Kind], panel: Panel) -> tuple[Wire, ...]:
    """Return the wires that lead from a panel's own parts straight to the layout, in plan order."""
    plugs = {p.id for p in plugs_of(plan, kinds, panel.id)}
    inside = {p.id for p in of_panel(plan, panel)}
    return tuple(
        w
        for w in plan.wires.values()
        if (w.start.part in inside) != (w.end.part in inside) and not {w.start.part, w.end.part} & plugs
    )
