"""Edits of the wiring as hands make them: throws, parts and wires put in, taken out and changed."""

import random
from collections.abc import Callable
from typing import NamedTuple

from msgspec.structs import replace
from support.networks import kinds
from support.random_networks import settings_of

from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

KINDS = kinds()


class State(NamedTuple):
    """A plan and how its switches stand."""

    plan: Plan
    positions: dict[str, str]


def terminals(plan: Plan) -> list[TerminalRef]:
    return [TerminalRef(p.id, t.name) for p in plan.parts.values() for t in KINDS[p.kind].terminals]


def throw(state: State, pick: random.Random, name: str) -> State:
    switches = [p for p in state.plan.parts.values() if len(KINDS[p.kind].positions) > 1]
    if not switches:
        return state
    part = pick.choice(switches)
    return State(state.plan, {**state.positions, part.id: pick.choice(KINDS[part.kind].positions).name})


def put_in(state: State, pick: random.Random, name: str) -> State:
    """A part of any kind, wired to others at most of its terminals or left bare."""
    plan, kind = state.plan, pick.choice(list(KINDS))
    like = pick.choice(list(plan.parts.values()))
    part = replace(
        like, id=name, designation=name, kind=kind, settings=settings_of(KINDS[kind], pick), position=""
    )
    wires = dict(plan.wires)
    if wires and pick.random() < 0.7:
        others = terminals(plan)
        for terminal in KINDS[kind].terminals:
            if pick.random() < 0.8:
                wire = replace(
                    pick.choice(list(plan.wires.values())),
                    id=f"{name}{terminal.name}",
                    label=f"{name}{terminal.name}",
                    start=TerminalRef(name, terminal.name),
                    end=pick.choice(others),
                )
                wires[wire.id] = wire
    return State(plan.with_changes(parts={**plan.parts, name: part}, wires=wires), state.positions)


def take_out(state: State, pick: random.Random, name: str) -> State:
    plan = state.plan
    if len(plan.parts) < 3:
        return state
    gone = pick.choice(list(plan.parts))
    parts = {k: p for k, p in plan.parts.items() if k != gone}
    wires = {k: w for k, w in plan.wires.items() if gone not in (w.start.part, w.end.part)}
    return State(plan.with_changes(parts=parts, wires=wires), state.positions)


def exchange(state: State, pick: random.Random, name: str) -> State:
    """Another kind with the same terminals, or other settings."""
    plan = state.plan
    part = pick.choice(list(plan.parts.values()))
    mine = [t.name for t in KINDS[part.kind].terminals]
    alike = [k for k, kind in KINDS.items() if [t.name for t in kind.terminals] == mine]
    kind = pick.choice(alike) if pick.random() < 0.5 else part.kind
    new = replace(part, kind=kind, settings=settings_of(KINDS[kind], pick))
    return State(plan.with_changes(parts={**plan.parts, part.id: new}), state.positions)


def pull_wire(state: State, pick: random.Random, name: str) -> State:
    plan = state.plan
    if not plan.wires:
        return state
    like, ends = pick.choice(list(plan.wires.values())), terminals(plan)
    wire = replace(like, id=name, label=name, start=pick.choice(ends), end=pick.choice(ends))
    return State(plan.with_changes(wires={**plan.wires, name: wire}), state.positions)


def change_wire(state: State, pick: random.Random, name: str) -> State:
    """Another end, another length, or none any more."""
    plan = state.plan
    if not plan.wires:
        return state
    wire = pick.choice(list(plan.wires.values()))
    wires, chance = dict(plan.wires), pick.random()
    if chance < 0.33:
        del wires[wire.id]
    elif chance < 0.67:
        wires[wire.id] = replace(wire, end=pick.choice(terminals(plan)))
    else:
        wires[wire.id] = replace(wire, length_m=pick.choice((None, 0.2, 9.0)))
    return State(plan.with_changes(wires=wires), state.positions)


STEPS: tuple[Callable[[State, random.Random, str], State], ...] = (
    throw, put_in, take_out, exchange, pull_wire, change_wire, change_wire,
)  # fmt: skip
