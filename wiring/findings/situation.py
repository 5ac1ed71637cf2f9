"""A plan in one set of positions with all that is worked out about it."""

from collections.abc import Iterator, Mapping
from datetime import date
from types import MappingProxyType
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.circuit.solve import solve
from wiring.findings.finding import Finding
from wiring.plan.names import PartId, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions, in_use, lasting
from wiring.plan.wire import Wire
from wiring.studies.alike import parts_but_for_place, wires_but_for_make
from wiring.studies.joints import Joints
from wiring.studies.keeping import kept
from wiring.studies.kept_joints import kept_joints
from wiring.studies.outlook import Outlook
from wiring.studies.runs import NO_RUNS, Runs, runs_of


class Situation(NamedTuple):
    """What is known of a plan as it stands: readings, outlooks, runs of wire and findings, worst first."""

    plan: Plan
    kinds: Mapping[str, Kind]
    positions: Positions
    figures: Figures
    outlooks: Mapping[PartId, Outlook]
    findings: tuple[Finding, ...]
    joints: Joints = Joints(MappingProxyType({}))
    runs: Runs = NO_RUNS
    today: date = date.min
    every_position: bool = False  # whether the worst over all positions is wanted too

    @property
    def parts(self) -> Mapping[PartId, Part]:
        """The plan's parts as far as current and words go: the same object while only places change."""
        return parts_but_for_place(self.plan.parts)

    @property
    def landed(self) -> Mapping[WireId, Wire]:
        """The plan's wires as far as ends and labels go: the same object while only sizes and ways change."""
        return wires_but_for_make(self.plan.wires)

    def of(self, *behaviours: str) -> Iterator[tuple[Part, Kind]]:
        """Walk the parts that behave so, with their kinds, in plan order."""
        known = kept(_by_behaviour, self.parts, self.kinds)
        rows = [row for behaviour in behaviours for row in known.get(behaviour, ())]
        for _, part, kind in sorted(rows, key=lambda row: row[0]) if len(behaviours) > 1 else rows:
            yield part, kind


_Rows = dict[str, list[tuple[int, Part, Kind]]]


def _by_behaviour(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> _Rows:
    """Return the parts of each behaviour with their place in the plan."""
    found: _Rows = {}
    for place, part in enumerate(parts.values()):
        kind = kinds.get(part.kind)
        if kind is not None:
            found.setdefault(kind.behaviour, []).append((place, part, kind))
    return found


def examine(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions | None = None,
    *,
    outlooks: bool = True,
    figures: Figures | None = None,
    today: date | None = None,
    every_position: bool = False,
) -> Situation:
    """Solve a plan (unless figures are given) and return what is known of it; never raises.

    Positions left out are those of a running session. Outlooks take a held button for released; they cost
    most of the time and can be left out. `every_position` also solves the plan in all positions that can be
    met, and finds what is too much in one of them only; that takes about a hundred times one solve.
    """
    from wiring.findings.all_rules import found_in

    stands: dict[PartId, str] = {**in_use(plan, kinds), **(positions or {})}
    if figures is None:
        figures = solve(plan, kinds, stands)
    joints = kept_joints(plan, kinds, {**stands, **_relays(plan, kinds, figures)})
    situation = Situation(
        plan=plan,
        kinds=kinds,
        positions=stands,
        figures=figures,
        outlooks=_outlooks(plan, kinds, lasting(plan, kinds, stands), today) if outlooks else {},
        findings=(),
        joints=joints,
        runs=runs_of(plan, kinds, figures, joints),
        today=today or date.today(),
        every_position=every_position,
    )
    return situation._replace(findings=found_in(situation))


def _relays(plan: Plan, kinds: Mapping[str, Kind], figures: Figures) -> dict[PartId, str]:
    """Return how the relays stand: their solved coil volts decide, not the plan."""
    relays = kept(_by_behaviour, parts_but_for_place(plan.parts), kinds).get("relay", ())
    return {part.id: figures.parts[part.id].state for _, part, _ in relays if part.id in figures.parts}


def _outlooks(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, today: date | None
) -> dict[PartId, Outlook]:
    from wiring.studies.forecast import forecast

    return {
        part.id: forecast(plan, kinds, positions, part.id, today=today)
        for part in plan.parts.values()
        if part.kind in kinds and kinds[part.kind].behaviour == "battery"
    }
