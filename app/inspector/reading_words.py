"""The figures of a part, a wire or the whole plan, in words for the inspector."""

from collections.abc import Iterable, Iterator

from app.inspector.figures_table import Figure
from app.solving import Answer
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef
from wiring.quantities.wording import worded


def part_figures(answer: Answer, part_id: str) -> Iterator[Figure]:
    """Walk what one part reads now."""
    figures = answer.situation.figures
    supply, part = figures.supplies.get(part_id), figures.parts.get(part_id)
    measure = " (RMS)" if part_id in figures.alternating else ""
    if supply is not None:
        yield Figure("Gives" + measure, worded(supply.volts_v, "voltage"), True)
        yield Figure("Load" + measure, worded(supply.current_a, "current"), True)
        yield Figure("Power", worded(supply.power_w, "power"))
        if 0 < supply.rated_a < float("inf"):
            share = supply.current_a / supply.rated_a
            yield Figure("Of its rating", f"{share:.0%} of {worded(supply.rated_a, 'current')}")
        if supply.limited:
            yield Figure("State", "in its current limit")
    elif part is not None:
        yield Figure("Volts across it" + measure, worded(part.volts_v, "voltage"), True)
        yield Figure("Current" + measure, worded(part.current_a, "current"), True)
        if part.mean_a is not None:
            yield Figure("Current (average)", worded(part.mean_a, "current"))
        yield Figure("Power", worded(part.power_w, "power"))
        if part.peak_a is not None:
            yield Figure("Peak", worded(part.peak_a, "current"))
        yield from _light(part.light)
        if part.state:
            yield Figure("State", part.state)


def _light(light: float | None) -> Iterator[Figure]:
    from wiring.standards.lightness import lightness

    if light is not None:
        yield Figure("Light", f"{light:.0%} of rated")
        yield Figure("As the eye sees it", f"{lightness(light):.0f} of 100")


def battery_figures(answer: Answer, part_id: str) -> Iterator[Figure]:
    """Walk the outlook of a battery."""
    outlook = answer.situation.outlooks.get(part_id)
    if outlook is not None and outlook.first_load_a > 0:
        yield Figure("Lasts", f"{outlook.hours.typical:.0f} h lit", True)
        yield Figure("From, to", f"{outlook.hours.low:.0f} to {outlook.hours.high:.0f} h")
        if not outlook.always_on:
            yield Figure("Sessions", f"{outlook.sessions.typical:.0f}")
        if outlook.swap_on is not None:
            yield Figure("Swap about", outlook.swap_on.strftime("%d %b %Y").lstrip("0"))


def terminal_figures(answer: Answer, part_id: str) -> Iterator[Figure]:
    """Walk what a meter would read at each terminal, against the minus of the supply."""
    plan = answer.situation.plan
    part = plan.parts.get(part_id)
    kind = answer.situation.kinds.get(part.kind) if part else None
    for terminal in kind.terminals if kind else ():
        ref = TerminalRef(part_id, terminal.name)
        volts = answer.situation.figures.terminals.get(ref)
        yield Figure(terminal_label(plan, ref), "–" if volts is None else worded(volts, "voltage"))


def wire_figures(answer: Answer, wire_id: str, units: str) -> Iterator[Figure]:
    """Walk what one wire reads now."""
    from wiring.routing.joists import joists_of_wire
    from wiring.routing.lengths import cut_length_m
    from wiring.sheets.lengths import length_words, rounded_up_m

    situation = answer.situation
    wire, figure = situation.plan.wires.get(wire_id), situation.figures.wires.get(wire_id)
    if wire is None:
        return
    if figure is not None:
        yield Figure("Current", worded(abs(figure.current_a), "current"), True)
        yield Figure("Lost along it", worded(abs(figure.drop_v), "voltage"), True)
        yield Figure("Heat", worded(figure.power_w, "power"))
        yield Figure("Resistance", worded(figure.ohms, "resistance"))
    cut_m = rounded_up_m(cut_length_m(situation.plan, situation.kinds, wire), units)
    yield Figure("Cut to", length_words(cut_m, units))
    crossed = joists_of_wire(situation.plan, situation.kinds, wire)
    if crossed:
        yield Figure("Joists it crosses", str(len(crossed)))


def several_figures(answer: Answer, ids: Iterable[str]) -> Iterator[Figure]:
    """Walk the totals of several parts and wires."""
    figures = answer.situation.figures
    chosen = list(ids)
    parts = [figures.parts[i] for i in chosen if i in figures.parts and i not in figures.supplies]
    if parts:
        yield Figure("Power together", worded(sum(p.power_w for p in parts), "power"), True)
    wires = [figures.wires[i] for i in chosen if i in figures.wires]
    if wires:
        yield Figure("Heat in the wires", worded(sum(w.power_w for w in wires), "power"))


def plan_figures(answer: Answer) -> Iterator[Figure]:
    """Walk the totals of the plan."""
    situation = answer.situation
    plan, figures, units = situation.plan, situation.figures, situation.plan.habits.units
    if not plan.parts:
        return
    for part_id, supply in figures.supplies.items():
        part = plan.parts[part_id]
        load = f"{worded(supply.current_a, 'current')} at {worded(supply.volts_v, 'voltage')}"
        yield Figure(f"-{part.designation}  {part.label}".rstrip(), load, True)
    yield Figure("Parts", str(len(plan.parts)))
    yield Figure("Wires", str(len(plan.wires)))
    if plan.wires:
        from wiring.routing.lengths import cut_length_m
        from wiring.sheets.lengths import length_words, rounded_up_m

        # Each piece is rounded up as on the cut list, so that both say the same.
        pieces = (cut_length_m(plan, situation.kinds, wire) for wire in plan.wires.values())
        total_m = sum(rounded_up_m(piece, units) for piece in pieces)
        yield Figure("Wire to cut", length_words(total_m, units))
