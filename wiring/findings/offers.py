"""The acts rules offer: each is worded here and given its values, or is None where it cannot be done."""

from collections.abc import Sequence

from wiring.findings.act import Act, Value
from wiring.findings.situation import Situation
from wiring.findings.words import amps, ohms
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.record_faults import value_fault
from wiring.plan.wireway import Wireway
from wiring.quantities.wording import worded
from wiring.studies.joints import Link
from wiring.studies.roles import THROUGH

RESISTOR, FUSE, RECTIFIER = "resistor", "fuse", "rectifier"  # kinds that are put in
Two = tuple[str, str]


def set_to(situation: Situation, parts: Sequence[PartId], words: str, **values: Value) -> Act | None:
    """Set settings of parts; None where a part has no such setting or it does not go so far."""
    for part_id in parts:
        kind = situation.kinds[situation.plan.parts[part_id].kind]
        settings = {s.name: s for s in kind.settings}
        if any(n not in settings or value_fault(v, settings[n]) for n, v in values.items()):
            return None
    return Act("set", words, tuple(parts), values=tuple(values.items())) if parts else None


def set_one(situation: Situation, part: PartId, to: str, **values: Value) -> Act | None:
    """Set settings of one part, which the words name: "Set -F1 to 500 mA"."""
    return set_to(situation, (part,), f"Set -{situation.plan.parts[part].designation} to {to}", **values)


def size_to(wires: Sequence[WireId], size: str | None) -> Act | None:
    """Make wires of another size; None where none is thick enough."""
    if size is None or not wires:
        return None
    several = f" for {len(wires)} wires" if len(wires) > 1 else ""
    return Act("size", f"Use {size}{several}", wires=tuple(wires), values=(("size", size),))


def swap(situation: Situation, parts: Sequence[PartId], one: str, other: str) -> Act | None:
    """Swap the wires of parts; None where a third terminal hangs on one of the two."""
    for part_id in parts:
        kind = situation.kinds[situation.plan.parts[part_id].kind]
        names = {t.name for t in kind.terminals}
        if not {one, other} <= names:
            return None
        if any(_wired(situation, TerminalRef(part_id, name)) for name in names - {one, other}):
            return None
    whose = (
        f"of -{situation.plan.parts[parts[0]].designation}" if len(parts) == 1 else f"of {len(parts)} parts"
    )
    return Act("swap", f"Swap the wires {whose}", tuple(parts), values=(("one", one), ("other", other)))


def resistor_before(
    situation: Situation, lights: Sequence[PartId], value_ohm: float, watts: float
) -> Act | None:
    """Put a resistor of its own into the lead of each LED or lamp; None where the catalogue has none."""
    if RESISTOR not in situation.kinds:
        return None
    each = f"{len(lights)} × " if len(lights) > 1 else ""
    words = f"Put in {each}{ohms(situation.plan, value_ohm)}"
    return Act("resistor", words, tuple(lights), values=(("resistance", value_ohm), ("rated_power", watts)))


def fuse_behind(situation: Situation, supply: PartId, end: str, rating_a: float | None) -> Act | None:
    """Put a fuse into the lead of a supply's terminal; None where no rating will do."""
    if rating_a is None or FUSE not in situation.kinds or not _wired(situation, TerminalRef(supply, end)):
        return None
    words = f"Put in a fuse of {amps(situation.plan, rating_a)}"
    return Act("fuse", words, (supply,), values=(("end", end), ("rating_a", rating_a)))


def rectifier_behind(situation: Situation, supply: PartId, plus_leg: int) -> Act | None:
    """Put a bridge rectifier behind an AC supply: where its leg of that number was, plus will be."""
    legs = ("~1", "~2") if plus_leg == 0 else ("~2", "~1")
    return _rectifier(situation, (supply,), [legs], legs)


def rectifier_before(situation: Situation, parts: Sequence[PartId]) -> Act | None:
    """Put a bridge rectifier of its own before each part."""
    plan, kinds = situation.plan, situation.kinds
    return _rectifier(situation, parts, [THROUGH[kinds[plan.parts[p].kind].behaviour][0] for p in parts], ())


def _rectifier(
    situation: Situation, parts: Sequence[PartId], on: Sequence[Two], legs: tuple[str, ...]
) -> Act | None:
    if RECTIFIER not in situation.kinds:
        return None
    leads = [TerminalRef(part, name) for part, names in zip(parts, on, strict=True) for name in names]
    if not all(_wired(situation, lead) for lead in leads):
        return None
    words = "Put in a rectifier" if len(parts) == 1 else f"Put in {len(parts)} rectifiers"
    return Act("rectifier", words, tuple(parts), values=tuple(zip(("plus", "minus"), legs, strict=False)))


def drill(situation: Situation, way: Wireway, hole_mm: float) -> Act:
    """Make the holes of a wireway larger."""
    words = f"Drill to {worded(hole_mm / 1000.0, 'length', situation.plan.habits.units)}"
    return Act("drill", words, values=(("wireway", way.id), ("hole_mm", hole_mm)))


def renew(situation: Situation, battery: PartId, *, charged: bool) -> Act:
    """Note that a battery was charged, or a fresh one fitted, today."""
    words = "Note it as charged today" if charged else "Note it as fitted today"
    day = situation.today.isoformat()
    return Act("charged" if charged else "fitted", words, (battery,), values=(("day", day),))


def usual(part: PartId) -> Act:
    """Put back the usual value of what a part cannot have."""
    return Act("usual", "Put the usual value back", (part,))


def _wired(situation: Situation, ref: TerminalRef) -> bool:
    return any(edge.link == Link.WIRE for edge in situation.joints.edges.get(ref, ()))
