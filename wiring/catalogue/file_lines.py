"""Which line of a catalogue file a thing stands on."""

import re


def line_of(text: str, kind_number: int, table: str = "", key: str = "") -> int:
    """Return the line, from 1, of a key of the nth kind (from 0), or of the nearest header above it."""
    lines = text.splitlines()
    starts = [i for i, line in enumerate(lines) if re.match(r"\s*\[\[\s*kind\s*\]\]", line)]
    if kind_number >= len(starts):
        return 1
    first = starts[kind_number]
    last = starts[kind_number + 1] if kind_number + 1 < len(starts) else len(lines)
    best, inside = first, ""
    for i in range(first + 1, last):
        header = re.match(r"\s*\[\s*kind\s*\.\s*([\w-]+)\s*\]", lines[i])
        if header:
            inside = header.group(1)
            best = i if inside == table else best
            continue
        name = key if inside == table else "" if inside else table
        if name and re.match(rf"""\s*["']?{re.escape(name)}["']?\s*=""", lines[i]):
            return i + 1
    return best + 1
