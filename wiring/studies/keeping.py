"""What was worked out from a plan, kept while the very same records are asked about.

Plans, joints and nets are values that are never written to, so an answer that is a function of them alone
is good as long as they are the same objects. Only functions of what they are given may be asked this way;
several threads may ask at once, for answers are only ever put in place whole.
"""

from collections.abc import Callable
from typing import TypeVar, TypeVarTuple

from wiring.circuit.kept import Kept

T = TypeVar("T")
Given = TypeVarTuple("Given")
_kept = Kept()


def kept(work_out: Callable[[*Given], T], *given: *Given) -> T:
    """Return what a function makes of those values; its last answers are kept, by identity."""
    return _kept.of((work_out, *given), lambda: work_out(*given))


def forget() -> None:
    """Keep nothing any more, as in a process that has just begun."""
    global _kept
    _kept = Kept()
