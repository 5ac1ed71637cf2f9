"""Names of the invisible marks in drawings, by which sheets refer to each other."""

from wiring.plan.names import PartId, WireId

SEE = "see "  # before a mark: its place is written here


def wire_mark(wire: WireId) -> str:
    """Return the mark of a wire in a circuit drawing; each wire is drawn there once."""
    return f"circuit wire {wire}"


def wire_on_plan(wire: WireId, *, whole: bool) -> str:
    """Return the mark of a wire on a plan sheet that shows it whole, or one end of it."""
    return f"plan wire {wire}" if whole else f"plan end {wire}"


def part_mark(part: PartId) -> str:
    """Return the mark of a part in a circuit drawing; its poles may stand in several places."""
    return f"circuit part {part}"


def net_in(name: str) -> str:
    """Return the mark where a net comes in from another place; the reference ends there."""
    return f"net in {name}"


def net_out(name: str, *, to_left: bool = False) -> str:
    """Return the mark where a net goes on elsewhere; the reference starts there, or ends there."""
    return f"net out {'left' if to_left else 'right'} {name}"


def net_idle(name: str) -> str:
    """Return the mark at an idle throw that leads to a net; the reference starts there."""
    return f"net idle {name}"


def pole_at(part: PartId, pole: str) -> str:
    """Return the mark of one piece of a part that is drawn in several places."""
    return f"circuit pole {part} {pole}"


def pole_see(part: PartId, pole: str) -> str:
    """Return the mark beside another piece of the part, where the place of this one is written."""
    return SEE + pole_at(part, pole)
