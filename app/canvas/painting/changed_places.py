"""Where the picture of what stands still has changed from one state of the view to another."""

from collections.abc import Iterable, Sequence
from typing import Literal, NamedTuple

from app.canvas.geometry import Box

STEPS_KEPT = 8  # changes after which a picture that nobody looked at is painted whole
Key = tuple[int, int]


Sort = Literal["sign", "flag", "any"]


class Place(NamedTuple):
    """A box of the plan in millimetres in which something looks otherwise.

    Of a "sign" only shape and light of that part do, of a "flag" only words and flags.
    """

    box: Box
    sort: Sort = "any"


class ChangedPlaces:
    """Keeps the last changes: from which key to which, and where."""

    def __init__(self) -> None:
        self._steps: dict[object, tuple[Key, tuple[Place, ...]]] = {}

    def note(self, before: Key, after: Key, places: Iterable[Place]) -> None:
        """Remember one change."""
        last = dict(list(self._steps.items())[1 - STEPS_KEPT :])
        self._steps = {**last, before: (after, tuple(places))}

    def since(self, key: object, now: Key) -> Sequence[Place] | None:
        """Return where something changed between two keys; None when that may be anywhere."""
        places: list[Place] = []
        while key != now:
            step = self._steps.get(key)
            if step is None:
                return None
            key = step[0]
            places += step[1]
        return places
