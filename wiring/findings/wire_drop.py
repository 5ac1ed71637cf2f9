"""Runs of wire that lose too many volts between a supply and what it feeds."""

from collections.abc import Iterator, Sequence

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import size_to
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_name, part_names, percent, volts, wire_names
from wiring.plan.names import PartId
from wiring.studies.runs import Run
from wiring.studies.sizing import size_for_run

MATTERS = 0.05  # a wire that loses less than this share of the run's loss is not worth changing


def find(situation: Situation) -> Iterator[Finding]:
    """Find the loads that lose more than the habit's share on the wires: one finding a supply."""
    by_supply: dict[PartId, list[tuple[PartId, float]]] = {}
    for load, supply, share in situation.runs.over(situation.plan.habits.drop_limit):
        by_supply.setdefault(supply, []).append((load, share))
    for supply, found in by_supply.items():
        yield _finding(situation, supply, tuple(load for load, _ in sorted(found, key=lambda one: -one[1])))


def _finding(situation: Situation, supply: PartId, loads: Sequence[PartId]) -> Finding:
    plan, worst = situation.plan, situation.runs[loads[0]]
    wires = _that_matter(situation, worst)
    size = size_for_run(plan, situation.kinds, situation.figures, worst, wires)
    lost = f"{volts(plan, worst.drop_v)} ({percent(worst.share)})"
    most = do(len(loads), "loses", "lose up to")
    what = f"{part_names(plan, loads)} {most} {lost} on the wires from {part_name(plan, supply)}."
    return Finding(
        "wire-drop",
        Rank.WEAK,
        what,
        f"You set {percent(plan.habits.drop_limit)} as the most; lamps at the far end look dim "
        "and motors pull weakly.",
        _mend(situation, size, wires),
        tuple(loads),
        wires,
        size_to(wires, size),
    )


def _that_matter(situation: Situation, run: Run) -> tuple[str, ...]:
    lost = {w: abs(situation.figures.wires[w].drop_v) for w in dict.fromkeys(run.wires)}
    return tuple(w for w, drop_v in lost.items() if drop_v >= MATTERS * run.drop_v) or tuple(lost)


def _mend(situation: Situation, size: str | None, wires: tuple[str, ...]) -> str:
    names = wire_names(situation.plan, wires)
    if size is None:
        return (
            f"No wire offered is thick enough for {names}; feed from both ends, or from a supply nearer by."
        )
    return f"Use {size} for {names}, or feed from both ends."
