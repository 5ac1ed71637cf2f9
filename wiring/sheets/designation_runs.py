"""Many designations in few words: ``-E1 to -E6, -E9``."""

import re
from collections.abc import Iterable
from itertools import groupby

_NUMBERED = re.compile(r"^(.*?)(0|[1-9][0-9]{0,8})$")


def run_words(designations: Iterable[str]) -> str:
    """Return designations in order; three or more that follow each other become first "to" last."""
    plain: list[str] = []
    numbered: dict[str, list[int]] = {}
    for text in designations:
        match = _NUMBERED.match(text)
        if match is None:
            plain.append(text)
        else:
            numbered.setdefault(match[1], []).append(int(match[2]))
    said: list[str] = []
    for head, numbers in sorted(numbered.items()):
        ordered = sorted(numbers)
        for _, group in groupby(enumerate(ordered), key=lambda pair: pair[1] - pair[0]):
            run = [number for _, number in group]
            if len(run) > 2:
                said.append(f"{head}{run[0]} to {head}{run[-1]}")
            else:
                said += [f"{head}{number}" for number in run]
    return ", ".join((*said, *sorted(plain)))
