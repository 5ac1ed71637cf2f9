"""Batteries that something else in their circuit charges, which only a charger may do.

Primary cells must not be charged: they leak or burst (IEC 60086-5, safety of batteries with aqueous
electrolyte, and IEC 60086-4 for lithium; from memory). Lithium rechargeables want a charger that holds their
end voltage (IEC 62133-2, from memory).
"""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name, part_names
from wiring.plan.names import PartId
from wiring.standards.cells import CELLS
from wiring.studies.settings import text

LEAST_A = 2e-3  # less is what two alike of different age settle among themselves; common practice, no source
LITHIUM = ("li-ion", "lipo")


def find(situation: Situation) -> Iterator[Finding]:
    """Find batteries into which a current flows."""
    for part, kind in situation.of("battery"):
        figure, cell = situation.figures.supplies.get(part.id), CELLS.get(text(part, kind, "cell"))
        if figure is None or cell is None or not is_charged(situation, part.id):
            continue
        others = _pushing(situation, part.id)
        by = f" by {part_names(situation.plan, others)}" if others else ""
        pushed = amps(situation.plan, -figure.current_a)
        into = f"{part_name(situation.plan, part.id)} is charged{by} with {pushed}"
        apart = "Let a switch join only one of them to the load at a time, or give each a circuit of its own."
        if not cell.rechargeable:
            what, rank = f"{into}, and its cells are not rechargeable.", Rank.DANGER
            why = "Such cells leak or burst when they are charged."
        elif cell.chemistry in LITHIUM:
            what, rank = f"{into}, and no charger holds that back.", Rank.DANGER
            why = "Lithium cells can catch fire when anything but their own charger charges them."
        else:
            what, rank = f"{into}, and nothing ends that when it is full.", Rank.WEAK
            why = "Cells that are charged without end get hot and do not last."
        yield Finding("battery-charged", rank, what, why, apart, (part.id, *others))


def is_charged(situation: Situation, battery: PartId) -> bool:
    """Whether a current worth naming flows into a battery."""
    figure = situation.figures.supplies.get(battery)
    return (
        figure is not None
        and figure.current_a < -LEAST_A
        and situation.kinds[situation.plan.parts[battery].kind].behaviour == "battery"
    )


def _pushing(situation: Situation, battery: PartId) -> tuple[PartId, ...]:
    """Return the supplies and batteries of the circuit that give current."""
    mine = {i for circuit in situation.figures.circuits if battery in circuit for i in circuit}
    given = situation.figures.supplies
    return tuple(i for i in given if i in mine and i != battery and given[i].current_a > 0)
