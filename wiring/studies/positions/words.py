"""What is known of a worst case that was not gone through completely, in one plain sentence."""

import math

from wiring.quantities.wording import worded
from wiring.studies.positions.worst import Worst


def bound_words(worst: Worst) -> str:
    """Return what was met and what is proved; empty where every set of positions was solved."""
    if worst.exact:
        return ""
    met = worded(worst.amps, "current")
    if math.isinf(worst.at_most_a):
        return f"There are too many positions to try them all; {met} was met, and no limit is known."
    most = worded(worst.at_most_a, "current")
    if most == met:
        return f"There are too many positions to try them all, but none brings more than {most}."
    return f"There are too many positions to try them all: {met} was met, and none brings more than {most}."
