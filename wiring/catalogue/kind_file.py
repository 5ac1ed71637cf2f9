"""Read one catalogue file; what is wrong in it is said, what is right in it is kept."""

import re
import tomllib
from collections.abc import Mapping
from typing import Any, NamedTuple

from wiring.catalogue.bad_kind import BadKind
from wiring.catalogue.check_kind import check
from wiring.catalogue.file_lines import line_of
from wiring.catalogue.kind import Kind
from wiring.catalogue.kind_row import Raw, kind_of, merged

LONGEST_FILE = 2_000_000
LONGEST_REASON = 240


class KindFile(NamedTuple):
    """What one file holds: its kinds, their rows for others to be like, and what could not be used."""

    kinds: Mapping[str, Kind]
    rows: Mapping[str, Raw]
    complaints: tuple[str, ...]


def read_kinds(name: str, content: bytes, known: Mapping[str, Raw]) -> KindFile:
    """Read the content of a catalogue file; `known` are the rows of kinds it may be like."""
    try:
        text = text_of(content)
        rows = rows_of(text)
    except BadKind as error:
        return KindFile({}, {}, (f"{name}: {on_one_line(error.reason)}.",))
    kinds: dict[str, Kind] = {}
    whole: dict[str, Raw] = {}
    complaints: list[str] = []
    for number, row in enumerate(rows):
        try:
            full = merged(row, {**known, **whole})
            kind = kind_of(full, source_of_bare=f"as {name} gives it")
            check(kind)
            if kind.key in kinds:
                raise BadKind("this key stands in the file twice; give the second another key", key="key")
        except BadKind as error:
            line = line_of(text, number, error.table, error.key)
            words = on_one_line(f"{who(row)}{error.reason}")
            complaints.append(f"{name}, line {line}: {words}, so the kind is left out.")
        else:
            kinds[kind.key], whole[kind.key] = kind, full
    return KindFile(kinds, whole, tuple(complaints))


def text_of(content: bytes) -> str:
    """Return the text of a catalogue file; BadKind when it is none."""
    if len(content) > LONGEST_FILE:
        raise BadKind("the file is far too long for a list of parts, so it is left out")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise BadKind(f"line {line} is not UTF-8 text; save the file as UTF-8") from None


def rows_of(text: str, name: str = "kind") -> list[dict[str, Any]]:
    """Return the rows of that name in a TOML text; BadKind says what is wrong with it."""
    try:
        data = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        where = re.search(r"\(at (?:line (\d+), column \d+|end of document)\)", str(error))
        line = (where.group(1) if where else None) or str(len(text.splitlines()))
        reason = re.sub(r"\s*\(at .*", "", str(error)) or "cannot be read"
        reason = reason[0].lower() + reason[1:]
        raise BadKind(f"line {line} is not right TOML ({reason}), so the file is left out") from None
    except ValueError as error:  # a date or number that TOML allows and Python cannot hold
        raise BadKind(f"a value cannot be read ({error}), so the file is left out") from None
    rows = data.get(name)
    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
        raise BadKind(f"it holds no [[{name}]], so there is nothing to take from it")
    return rows


def on_one_line(words: str) -> str:
    """Return words without line breaks and signs that cannot be shown, cut short where they run on."""
    plain = " ".join("".join(c if c.isprintable() else " " for c in words).split())
    return plain if len(plain) <= LONGEST_REASON else plain[: LONGEST_REASON - 1] + "…"


def who(row: Raw) -> str:
    """Return ``in “its key”, ``, or nothing when it has none."""
    key = row.get("key")
    return f"in “{key}”, " if isinstance(key, str) and key else ""
