"""Put another pack, or a supply on the mains, in the place of a battery; its wires stay."""

from collections.abc import Mapping
from datetime import date

import msgspec

from wiring.catalogue.kind import Kind, Value
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import frozen, known_kinds, part_of, with_records
from wiring.plan.part import Part
from wiring.plan.plan import Plan

SUPPLY = "supply-regulated"


def swap_pack(
    battery: str,
    cell: str,
    in_series: int,
    in_parallel: int = 1,
    *,
    fitted: date | None = None,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Let a battery be of other cells; capacity, weak cell and, if none is given, the day are forgotten."""

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        part = _feeding(plan, battery, known)
        kind = _offering(known, part.kind, cell)
        wanted: dict[str, Value] = {
            "cell": cell,
            "in_series": float(in_series),
            "in_parallel": float(in_parallel),
            "fitted": fitted.isoformat() if fitted is not None else "",
        }
        return _with(plan, part, kind, wanted, known)

    return Edit("Swap battery", apply)


def swap_for_mains(
    battery: str, volts: float, limit_a: float = 0.0, *, kinds: Mapping[str, Kind] | None = None
) -> Edit:
    """Put a regulated supply in the place of a battery; without a limit it has its kind's usual one."""

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        part = _feeding(plan, battery, known)
        if SUPPLY not in known:
            raise EditRefused("The catalogue has no regulated supply to put there.")
        wanted: dict[str, Value] = {"volts": volts}
        if limit_a > 0:
            wanted["limit_a"] = limit_a
        return _with(plan, part, known[SUPPLY], wanted, known)

    return Edit("Feed from the mains", apply)


def _feeding(plan: Plan, battery: str, kinds: Mapping[str, Kind]) -> Part:
    part = part_of(plan, battery)
    if part.kind not in kinds or kinds[part.kind].behaviour != "battery":
        raise EditRefused(f"-{part.designation} is no battery, so no pack can take its place.")
    return part


def _offering(kinds: Mapping[str, Kind], first: str, cell: str) -> Kind:
    batteries = (kinds[first], *(k for k in kinds.values() if k.behaviour == "battery"))
    for kind in batteries:
        if cell in kind.setting("cell").choices:
            return kind
    raise EditRefused(f"No battery of the catalogue has cells of the type “{cell[:40]}”.")


def _with(plan: Plan, part: Part, kind: Kind, wanted: Mapping[str, Value], kinds: Mapping[str, Kind]) -> Plan:
    usual = {s.name: s.default for s in kind.settings}
    settings = {name: value for name, value in wanted.items() if usual[name] != value}
    new = msgspec.structs.replace(
        part, kind=kind.key, settings=frozen(settings) if settings else {}, position=""
    )
    return with_records(plan, [new], kinds=kinds)
