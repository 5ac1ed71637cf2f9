"""How a selection names what of the ground is chosen: wireways and areas by id, the rest by its place."""

from wiring.plan.plan import Line, Plan

JOIST, TRACK, BOARD = "j", "t", "board"  # these have no ids: j0 stands for the first joist


def joist_key(index: int) -> str:
    """Return how a selection names the joist of that index."""
    return f"{JOIST}{index}"


def joist_index(ground: str) -> int:
    """Return the index of the joist a selection names; -1 when it names none."""
    return _index(ground, JOIST)


def track_index(ground: str) -> int:
    """Return the index of the track a selection names; -1 when it names none."""
    return _index(ground, TRACK)


def line_points(plan: Plan, ground: str) -> Line:
    """Return the points of the track or of the board's outline that a selection names; empty for neither."""
    if ground == BOARD:
        return plan.board
    index = track_index(ground)
    return plan.tracks[index] if 0 <= index < len(plan.tracks) else ()


def _index(ground: str, letter: str) -> int:
    number = ground.removeprefix(letter)
    return int(number) if ground.startswith(letter) and number.isdigit() else -1


def ground_is_there(plan: Plan, ground: str) -> bool:
    """Whether a plan has the wireway, scene, panel, joist, track or board that a selection names."""
    is_joist = 0 <= joist_index(ground) < len(plan.joists)
    has_id = ground in plan.wireways or ground in plan.scenes or ground in plan.panels
    return has_id or is_joist or bool(line_points(plan, ground))
