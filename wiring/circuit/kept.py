"""What was worked out from arrays, kept for as long as the same arrays are asked about."""

from collections.abc import Callable
from typing import Any, TypeVar

T = TypeVar("T")
MOST_KEPT = 3  # answers a name


class Kept:
    """The latest answers by name. Inputs are compared by identity, so they must never be written to."""

    def __init__(self) -> None:
        self._answers: dict[object, tuple[tuple[tuple[Any, ...], Any], ...]] = {}

    def of(self, question: tuple[Any, ...], work_out: Callable[[], T]) -> T:
        """Return the answer to a question, a name and the inputs, worked out if it is not known."""
        name, *inputs = question
        known = self._answers.get(name, ())
        for place, (asked, answer) in enumerate(known):
            if all(one is other for one, other in zip(asked, inputs, strict=True)):
                if place:
                    self._answers[name] = (known[place], *known[:place], *known[place + 1 :])
                found: T = answer
                return found
        answer = work_out()
        self._answers[name] = ((tuple(inputs), answer), *self._answers.get(name, ())[: MOST_KEPT - 1])
        return answer

    def known(self, question: tuple[Any, ...], sort: type[T]) -> T | None:
        """Return the answer to a question if it is known (of that sort), else None."""
        name, *inputs = question
        for asked, answer in self._answers.get(name, ()):
            if all(one is other for one, other in zip(asked, inputs, strict=True)):
                return answer if isinstance(answer, sort) else None
        return None
