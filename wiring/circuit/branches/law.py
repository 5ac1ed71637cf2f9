"""What every branch law offers, so that the solver and the netlist need not know which one it is."""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


Curve = Callable[[Floats], tuple[Floats, Floats]]  # volts -> amps, siemens


class Law(NamedTuple):
    """One kind of branch: current a -> b as a function of its own voltage Va - Vb, never of anything else."""

    name: str
    parameters: tuple[str, ...]
    curve: Callable[[Floats], Curve]  # of parameters by row; what does not depend on the volts is done once
    spice: Callable[
        [str, str, str, tuple[float, ...]], tuple[str, ...]
    ]  # name, node a, node b, values -> lines
    linear: bool = False
    monotone: bool = True  # the current never falls when the voltage rises: one solution only

    def current(self, v: Floats, p: Floats) -> tuple[Floats, Floats]:
        """Return amperes and siemens at so many volts, for parameters by row."""
        return self.curve(p)(v)


class Branch(NamedTuple):
    """One branch of a part, between two of its terminals, with the values of its law in their order."""

    law: str
    a: str
    b: str
    values: tuple[float, ...]
    role: str = "main"  # "main": what the part's figures tell; "contact", "coil", "source" or "alternating"


def number(value: float) -> str:
    """Return a number with all its digits, as a netlist wants it."""
    return repr(float(value))
