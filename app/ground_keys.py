"""How a selection names what of the ground is chosen: a wireway by its id, a joist by its place."""

from wiring.plan.plan import Plan

JOIST = "j"  # joists have no ids: j0 stands for the first


def joist_key(index: int) -> str:
    """Return how a selection names the joist of that index."""
    return f"{JOIST}{index}"


def joist_index(ground: str) -> int:
    """Return the index of the joist a selection names; -1 when it names none."""
    number = ground.removeprefix(JOIST)
    return int(number) if ground.startswith(JOIST) and number.isdigit() else -1


def ground_is_there(plan: Plan, ground: str) -> bool:
    """Whether a plan has the wireway or joist that a selection names."""
    return ground in plan.wireways or 0 <= joist_index(ground) < len(plan.joists)
