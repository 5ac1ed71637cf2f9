"""What was worked out from arrays, kept for as long as the same arrays are asked about."""

from collections.abc import Callable
from typing import Any, TypeVar

T = TypeVar("T")


class Kept:
    """One answer a name: the latest. Inputs are compared by identity, so they must never be written to."""

    def __init__(self) -> None:
        self._answers: dict[str, tuple[tuple[Any, ...], Any]] = {}

    def of(self, question: tuple[Any, ...], work_out: Callable[[], T]) -> T:
        """Return the answer to a question, a name and the inputs; worked out if it is not the latest."""
        name, *inputs = question
        known = self._answers.get(name)
        if known is not None and all(one is other for one, other in zip(known[0], inputs, strict=True)):
            answer: T = known[1]
            return answer
        answer = work_out()
        self._answers[name] = (tuple(inputs), answer)
        return answer
