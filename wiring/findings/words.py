"""How findings name things: parts by designation and label, figures in the builder's units."""

from collections.abc import Sequence

from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan
from wiring.quantities.wording import worded

_LONGEST_LABEL = 32  # letters; a longer one is cut so that the sentence stays readable
_MOST_NAMED = 5


def part_name(plan: Plan, part_id: PartId) -> str:
    """Return ``-E4 “lamp by the crane”``, or ``-E4`` for a part without words of its own."""
    part = plan.parts[part_id]
    label = part.label.strip()
    if not label:
        return f"-{part.designation}"
    if len(label) > _LONGEST_LABEL:
        label = label[: _LONGEST_LABEL - 1].rstrip() + "…"
    return f"-{part.designation} “{label}”"


def part_names(plan: Plan, ids: Sequence[PartId]) -> str:
    """Return one part with its words, or several as ``-E4, -E5 and -E6``, the rest counted."""
    if len(ids) == 1:
        return part_name(plan, ids[0])
    return listed([f"-{plan.parts[i].designation}" for i in ids])


def wire_names(plan: Plan, ids: Sequence[WireId]) -> str:
    """Return ``-W1, -W2 and -W3``, the rest counted."""
    return listed([f"-{plan.wires[i].label}" for i in ids])


def listed(names: Sequence[str]) -> str:
    """Return the names as words join them: ``a``, ``a and b``, ``a, b and 3 more``."""
    shown = list(names[:_MOST_NAMED])
    if len(names) > _MOST_NAMED + 1:
        return f"{', '.join(shown)} and {len(names) - _MOST_NAMED} more"
    shown = list(names)
    if len(shown) == 1:
        return shown[0]
    return f"{', '.join(shown[:-1])} and {shown[-1]}"


def volts(plan: Plan, value_v: float) -> str:
    """Return volts as the builder reads them."""
    return worded(value_v, "voltage", plan.habits.units)


def amps(plan: Plan, value_a: float) -> str:
    """Return amperes as the builder reads them."""
    return worded(value_a, "current", plan.habits.units)


def watts(plan: Plan, value_w: float) -> str:
    """Return watts as the builder reads them."""
    return worded(value_w, "power", plan.habits.units)


def ohms(plan: Plan, value_ohm: float) -> str:
    """Return ohms as the builder reads them."""
    return worded(value_ohm, "resistance", plan.habits.units)


def percent(share: float) -> str:
    """Return a share of 1 in whole per cent."""
    return f"{100 * share:.0f} %"


def do(count: int, one: str, many: str) -> str:
    """Return the verb that fits the count."""
    return one if count == 1 else many
