"""From a plan to the bytes of its file; the same plan always gives the same bytes."""

import json
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from typing import Any, ClassVar

import msgspec

from wiring.files.format import FORMAT, VERSION
from wiring.plan.plan import Line, Plan


def encode(plan: Plan) -> bytes:
    """Return the file of a plan: UTF-8, one line per part, wire, scene, panel and track.

    ValueError for a number that is not finite, which no sound plan holds.
    """
    lines = _Lines()
    return b"{\n" + ",\n".join(_members(plan, lines)).encode("utf-8", "replace") + b"\n}\n"


class _Lines:
    """The lines of records; those of the plan encoded last are kept, for most of the next are the same."""

    before: ClassVar[dict[int, tuple[msgspec.Struct, str]]] = {}

    def __init__(self) -> None:
        self._known, self._written = self.before, dict[int, tuple[msgspec.Struct, str]]()
        type(self).before = self._written

    def of(self, record: msgspec.Struct) -> str:
        """Return the line of a record; a record is a value, and its line never changes."""
        held, line = self._known.get(id(record), (None, ""))
        if held is not record:
            line = _text(plain_record(record))
        self._written[id(record)] = record, line
        return line


def _members(plan: Plan, lines: _Lines) -> Iterator[str]:
    yield f'"format": {_text(FORMAT)}'
    yield f'"version": {VERSION}'
    yield f'"written_by": {_text(written_by())}'
    default = Plan()
    for name in ("title", "author"):
        if getattr(plan, name) != getattr(default, name):
            yield f'"{name}": {_text(getattr(plan, name))}'
    for name in ("habits", "use"):
        plain = plain_record(getattr(plan, name))
        if plain:
            yield f'"{name}": {_text(plain)}'
    if plan.board:
        yield f'"board": {_text(_plain(plan.board))}'
    yield from _table("tracks", map(_line, plan.tracks))
    yield from _table("joists", (_text(plain_record(j)) for j in plan.joists))
    if plan.backdrop is not None:
        yield f'"backdrop": {lines.of(plan.backdrop)}'
    for name in ("scenes", "panels", "wireways", "parts", "wires"):
        yield from _table(name, map(lines.of, getattr(plan, name).values()))
    yield from _table("battery_log", (_text(plain_record(r)) for r in plan.battery_log))
    for name in ("prices", "circuit_colours"):
        if getattr(plan, name):
            yield f'"{name}": {_text(_plain(getattr(plan, name)))}'
    yield f'"next_number": {plan.next_number}'


def _table(name: str, lines: Iterable[str]) -> Iterator[str]:
    rows = ",\n".join(lines)
    if rows:
        yield f'"{name}": [\n{rows}\n]'


def _line(line: Line) -> str:
    return _text(_plain(line))


_text = json.JSONEncoder(ensure_ascii=False, allow_nan=False).encode


def plain_record(record: msgspec.Struct) -> dict[str, Any]:
    """Return a record as plain data, without the fields that have their usual value."""
    return {
        name: _plain(value)
        for name, default in _fields(type(record))
        if (value := getattr(record, name)) != default
    }


@cache
def _fields(record_type: type[msgspec.Struct]) -> tuple[tuple[str, Any], ...]:
    return tuple(
        (field.name, {} if field.default_factory is dict else field.default)
        for field in msgspec.structs.fields(record_type)
    )


def _plain(value: Any) -> Any:  # noqa: ANN401 - any field of any record
    if isinstance(value, bool) or value is None:
        return value
    if isinstance(value, float):
        return int(value) if value.is_integer() and abs(value) < 1e15 else value
    if isinstance(value, msgspec.Struct):
        return plain_record(value)
    if isinstance(value, Mapping):
        return {key: _plain(inner) for key, inner in sorted(value.items())}
    if isinstance(value, tuple | list):
        return [_plain(inner) for inner in value]
    return value


@cache
def written_by() -> str:
    """Return the name and version of this program."""
    try:
        return f"underboard {version('underboard')}"
    except PackageNotFoundError:
        return "underboard"
