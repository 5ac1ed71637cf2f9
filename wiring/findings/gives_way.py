"""What gives way to a rush of a moment: supplies that trip, quick fuses; and the slow fuse that would not."""

from collections.abc import Callable

from wiring.findings.act import Act
from wiring.findings.offers import set_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps
from wiring.plan.names import PartId
from wiring.standards.fuses import RATINGS_A
from wiring.studies.settings import number, text

TRIPS = ("shuts off", "folds back")  # one that only holds its current lets lamps and capacitors wait


def tripping(situation: Situation) -> list[PartId]:
    """Return the regulated supplies that switch off or give less when too much is asked of them."""
    supplies = situation.of("supply_regulated")
    return [part.id for part, kind in supplies if text(part, kind, "on_overload") in TRIPS]


def how_it_trips(situation: Situation, supply: PartId) -> str:
    """Return what such a supply does on overload, as a verb: "shuts off", "folds back"."""
    part = situation.plan.parts[supply]
    return text(part, situation.kinds[part.kind], "on_overload")


def fuse_rating_a(situation: Situation, fuse: PartId) -> float:
    """Return the rating a fuse is set to."""
    part = situation.plan.parts[fuse]
    return number(part, situation.kinds[part.kind], "rating_a")


def bears_now(situation: Situation, fuse: PartId) -> bool:
    """Whether a fuse bears what lasts: if not, its rush is not what is wrong."""
    figure = situation.figures.parts.get(fuse)
    return figure is not None and abs(figure.current_a) <= fuse_rating_a(situation, fuse)


def slow_fuse(situation: Situation, fuse: PartId, holds: Callable[[float], bool]) -> Act | None:
    """Offer a slow fuse of the same rating, where one bears the rush."""
    if not holds(fuse_rating_a(situation, fuse)):
        return None
    name = situation.plan.parts[fuse].designation
    return set_to(situation, (fuse,), f"Make -{name} a slow one", speed="slow")


def slow_fuse_mend(
    situation: Situation, rating_a: float, holds: Callable[[float], bool], less: str, otherwise: str
) -> str:
    """Return the mend of a fuse that a rush blows, `holds` telling which slow ratings bear it.

    `less` is what makes the rush smaller, `otherwise` what to do where no slow fuse bears it.
    """
    if holds(rating_a):
        return f"Use a slow fuse of {amps(situation.plan, rating_a)}, or {less}."
    better_a = next((r for r in RATINGS_A if r > rating_a and holds(r)), None)
    if better_a is None:
        return otherwise
    larger = amps(situation.plan, better_a)
    return f"{less.capitalize()}, or use a slow fuse of {larger} if the wire behind it bears that."
