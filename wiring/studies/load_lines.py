"""Load lines of batteries, kept for as long as what hangs on them is wired the same."""

from collections import deque
from collections.abc import Mapping
from typing import NamedTuple

import msgspec
import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.load_line import LoadLine, load_line
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

POINTS = 33
LOWEST_SHARE = 0.3  # of the fresh volts: every end lies above it, so the table needs no points below
LEAST_SHARE = 0.02
KEPT = 12  # lines; each is a few hundred numbers
OPENED, BRIDGED = "separate", "bus"  # behaviours: every terminal by itself, all terminals one
# Loads that can be put out without opening a contact others are fed through.
PUT_OUT = frozenset({"led", "strip", "filament", "flasher", "constant_current", "constant_power", "servo"})


class Hung(NamedTuple):
    """What hangs on a battery of a plan, looked at up to `top_v`.

    The parts in `off` are opened. Those in `joined`, other batteries behind it, are bridged: the volts are
    then those of all of them.
    """

    plan: Plan
    kinds: Mapping[str, Kind]
    positions: Positions
    battery: PartId
    top_v: float
    lowest_v: float = 0.0  # 0 is a share of `top_v`
    off: frozenset[PartId] = frozenset()
    joined: frozenset[PartId] = frozenset()


class _Kept(NamedTuple):
    hung: Hung
    line: LoadLine


_lines: deque[_Kept] = deque(maxlen=KEPT)
_dark_kinds: dict[tuple[int, str], tuple[Kind, Kind]] = {}


def line_of(hung: Hung) -> LoadLine:
    """Return the load line of what hangs on a battery.

    The battery itself does not matter, only where it stands; how the plan is used does not matter either.
    """
    wanted = hung._replace(lowest_v=hung.lowest_v or LOWEST_SHARE * hung.top_v)
    for kept in tuple(_lines):
        if _alike(kept.hung, wanted):
            return kept.line
    without, all_kinds = put_out(hung.plan, hung.kinds, hung.off, hung.joined)
    volts = _volts(wanted.top_v, wanted.lowest_v)
    line = load_line(without, all_kinds, hung.positions, hung.battery, volts)
    _lines.append(_Kept(wanted, line))
    return line


def put_out(
    plan: Plan,
    kinds: Mapping[str, Kind],
    off: frozenset[PartId],
    joined: frozenset[PartId] = frozenset(),
) -> tuple[Plan, Mapping[str, Kind]]:
    """Return the plan with those parts opened or bridged, wires still joined at them, and kinds for it."""
    if not off and not joined:
        return plan, kinds
    parts, more = dict(plan.parts), dict(kinds)
    for part_id in (*off, *joined):
        part = parts[part_id]
        dark = _dark(kinds[part.kind], BRIDGED if part_id in joined else OPENED)
        more[dark.key] = dark
        parts[part_id] = msgspec.structs.replace(part, kind=dark.key, settings={}, position="")
    return plan.with_changes(parts=parts), more


def _dark(kind: Kind, behaviour: str) -> Kind:
    kept = _dark_kinds.get((id(kind), behaviour))
    if kept is None:
        dark = msgspec.structs.replace(
            kind, key=f"{kind.key} ({behaviour})", behaviour=behaviour, settings=(), positions=(), in_use=""
        )
        kept = _dark_kinds[id(kind), behaviour] = (kind, dark)
    return kept[1]


def _volts(top_v: float, lowest_v: float) -> NDArray[np.float64]:
    return np.concatenate(([LEAST_SHARE * top_v], np.linspace(lowest_v, top_v, POINTS - 1)))


def _alike(a: Hung, b: Hung) -> bool:
    return (
        a.battery == b.battery
        and a.off == b.off
        and a.joined == b.joined
        and (a.top_v, a.lowest_v) == (b.top_v, b.lowest_v)
        and a.kinds is b.kinds
        and _air_and_slack(a.plan) == _air_and_slack(b.plan)
        and (a.positions is b.positions or a.positions == b.positions)
        and _same(a.plan.wires, b.plan.wires)
        and _same(a.plan.wireways, b.plan.wireways)
        and _same_parts(a.plan.parts, b.plan.parts, a.battery)
    )


def _air_and_slack(plan: Plan) -> tuple[float, float]:
    return plan.habits.ambient_c, plan.habits.slack_m


def _same(a: Mapping[str, object], b: Mapping[str, object]) -> bool:
    if a is b:
        return True
    return len(a) == len(b) and all(b.get(key) is record for key, record in a.items())


def _same_parts(a: Mapping[PartId, Part], b: Mapping[PartId, Part], battery: PartId) -> bool:
    if a is b:
        return True
    if len(a) != len(b):
        return False
    for key, one in a.items():
        other = b.get(key)
        if one is other:
            continue
        if other is None or not (
            _rewired(one) == _rewired(other) if key == battery else _as_load(one, other)
        ):
            return False
    return True


def _rewired(part: Part) -> tuple[object, ...]:
    return part.kind, part.x_mm, part.y_mm, part.turn_deg


def _as_load(one: Part, other: Part) -> bool:
    """Whether two states of a part draw the same: a label, a note or a scene does not matter."""
    return (*_rewired(one), one.position) == (*_rewired(other), other.position) and (
        one.settings is other.settings or one.settings == other.settings
    )
