"""Where in a plan file something is wrong, and what was expected there, in the user's words."""

import re
from typing import Any

Raw = dict[str, Any]

_PLACE = re.compile(r"^(?P<what>.*?)(?: - at `\$(?P<path>[^`]*)`)?$", re.DOTALL)
_ROW = re.compile(r"^\.(?P<table>scenes|panels|parts|wires)\[(?P<index>\d+)\](?:\.(?P<field>\w+))?")
_EXPECTED = re.compile(r"^Expected `(?P<type>[^`]+)`, got `(?P<got>[^`]+)`")
_MISSING = re.compile(r"missing required field `(?P<field>[^`]+)`")
_UNKNOWN = re.compile(r"unknown field `(?P<field>[^`]+)`")
WORDS = {
    "float": "a number",
    "int": "a whole number",
    "str": "a text in quotes",
    "bool": "true or false",
    "array": "a list in square brackets",
    "object": "a group in braces",
    "null": "nothing",
}
ENDS = ("start", "end")


def plain_words(message: str, raw: Raw) -> str:
    """Return one sentence for what msgspec says about the file's data."""
    match = _PLACE.match(message)
    what, path = (match["what"], match["path"] or "") if match else (message, "")
    row = _ROW.match(path)
    where = _record(row["table"], int(row["index"]), raw) if row else "The plan"
    field = (row["field"] if row else path.strip(".").split("[")[0].split(".")[-1]) or ""
    return f"{where} {_fault(what, field)}."


def _record(table: str, index: int, raw: Raw) -> str:
    word = table[:-1].capitalize()
    row = raw[table][index]
    name = row.get("id") if isinstance(row, dict) else None
    if isinstance(name, str) and name:
        called = row.get("designation" if table == "parts" else "label")
        return f"{word} {name[:40]}" + (f" (-{called[:20]})" if isinstance(called, str) and called else "")
    return f"{word} number {index + 1}"


def _fault(what: str, field: str) -> str:
    missing, unknown, expected = _MISSING.search(what), _UNKNOWN.search(what), _EXPECTED.match(what)
    if missing:
        return f"lacks its “{missing['field']}”; add it"
    if unknown:
        return f"has a field “{unknown['field']}”, which does not belong there; check its spelling"
    if field in ENDS and "array" in what:
        return f'must have its “{field}” as a part id and a terminal, such as ["p3", "A"]'
    if expected:
        must = " or ".join(WORDS.get(t.strip(), t.strip()) for t in expected["type"].split("|"))
        got = WORDS.get(expected["got"], expected["got"])
        return f"has {got} where “{field}” must be {must}" if field else f"must be {must}, not {got}"
    return f"has a value for “{field}” that does not fit" if field else "holds a value that does not fit"
