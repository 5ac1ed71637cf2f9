"""Which line of a catalogue file a thing stands on."""

import re


def line_of(text: str, number: int, table: str = "", key: str = "", rows: str = "kind") -> int:
    """Return the line, from 1, of a key of the nth row (from 0), or of the nearest header above it.

    `rows` is what the file is a list of: ``kind`` or ``cell``.
    """
    lines = text.splitlines()
    starts = [i for i, line in enumerate(lines) if re.match(rf"\s*\[\[\s*{rows}\s*\]\]", line)]
    if number >= len(starts):
        return 1
    first = starts[number]
    last = starts[number + 1] if number + 1 < len(starts) else len(lines)
    best, inside = first, ""
    for i in range(first + 1, last):
        header = re.match(rf"\s*\[{{1,2}}\s*{rows}\s*\.\s*([\w-]+)\s*\]", lines[i])
        if header:
            inside = header.group(1)
            best = i if inside == table else best
            continue
        name = key if inside == table else "" if inside else table
        if name and re.match(rf"""\s*["']?{re.escape(name)}["']?\s*=""", lines[i]):
            return i + 1
    return best + 1
