"""One ``[[kind]]`` of a catalogue file, as written, turned into a kind.

A row may say ``like = "led-red"``: it then takes everything it does not say itself from that kind.
"""

import re
from collections.abc import Mapping
from typing import Any, TypeVar

import msgspec

from wiring.catalogue.bad_kind import BadKind
from wiring.catalogue.behaviours import BEHAVIOURS
from wiring.catalogue.kind import Kind, Position, Setting, Terminal, Value
from wiring.catalogue.setting_specs import SettingSpec

Raw = Mapping[str, Any]
R = TypeVar("R")

_TABLES = ("terminals", "settings", "positions")
_EXPECTED = {
    "float": "a number", "int": "a whole number", "str": "a text in quotes", "bool": "true or false",
    "array": "a list in square brackets", "object": "a table in braces",
}  # fmt: skip


class _KindRow(msgspec.Struct, forbid_unknown_fields=True):
    key: str
    title: str
    purpose: str
    designation: str
    behaviour: str
    sign: str
    symbol: str
    width_mm: float
    height_mm: float
    terminals: dict[str, Any]
    settings: dict[str, Any] = {}
    positions: dict[str, Any] = {}
    in_use: str = ""
    words: tuple[str, ...] = ()
    note: str = ""
    hole_mm: float = 0.0
    behind_mm: float = 0.0
    cautions: tuple[str, ...] = ()


class _TerminalRow(msgspec.Struct, forbid_unknown_fields=True):
    x_mm: float
    y_mm: float
    mark: str = ""


class _PositionRow(msgspec.Struct, forbid_unknown_fields=True):
    closes: tuple[tuple[str, str], ...] = ()
    momentary: bool = False


class _SettingRow(msgspec.Struct, forbid_unknown_fields=True):
    typical: Value
    source: str = ""
    choices: tuple[str, ...] = ()
    expert: bool | None = None  # None: as its behaviour has it


def merged(row: Raw, known: Mapping[str, Raw]) -> dict[str, Any]:
    """Return the row with what it takes over from the kind it is like; BadKind if there is no such kind."""
    own = {name: value for name, value in row.items() if name != "like"}
    if "like" not in row:
        return own
    model = known.get(row["like"]) if isinstance(row["like"], str) else None
    if model is None:
        raise BadKind(f"there is no kind “{row['like']}” to be like", key="like")
    whole = {**model, **own}
    settings, taken = own.get("settings", {}), model.get("settings", {})
    if isinstance(settings, Mapping):
        whole["settings"] = {**taken, **{n: _with_choices(v, taken.get(n)) for n, v in settings.items()}}
    return whole


def _with_choices(value: object, model: object) -> object:
    """A setting of one's own keeps the choices of the kind it is like, but never its source."""
    if not (isinstance(model, Mapping) and "choices" in model):
        return value
    own = value if isinstance(value, Mapping) else {"typical": value}
    return {"choices": model["choices"], **own}


def kind_of(row: Raw, source_of_bare: str = "") -> Kind:
    """Return the kind a merged row describes; BadKind with reason and place if a value is of the wrong sort.

    A number given without a source gets `source_of_bare` as its source.
    """
    plain = _convert({**row}, _KindRow)
    behaviour = BEHAVIOURS.get(plain.behaviour)
    if behaviour is None:
        raise BadKind(f"there is no behaviour “{plain.behaviour}”", key="behaviour")
    rows = {
        name: _convert(
            value if isinstance(value, Mapping) else {"typical": value}, _SettingRow, "settings", name
        )
        for name, value in plain.settings.items()
    }
    for name in rows.keys() - {spec.name for spec in behaviour.settings}:
        raise BadKind(f"a part that works as “{behaviour.name}” has no setting “{name}”", "settings", name)
    fields = {name: getattr(plain, name) for name in _KindRow.__struct_fields__ if name not in _TABLES}
    return Kind(
        **fields,
        terminals=tuple(
            Terminal(name, t.x_mm, t.y_mm, t.mark)
            for name, value in plain.terminals.items()
            for t in [_convert(value, _TerminalRow, "terminals", name)]
        ),
        settings=tuple(_setting(spec, rows.get(spec.name), source_of_bare) for spec in behaviour.settings),
        positions=tuple(
            Position(name, p.closes, p.momentary)
            for name, value in plain.positions.items()
            for p in [_convert(value, _PositionRow, "positions", name)]
        ),
    )


def _setting(spec: SettingSpec, row: _SettingRow | None, source_of_bare: str) -> Setting:
    if row is None:
        if spec.usual is None:
            raise BadKind(f"the setting “{spec.name}” is missing", "settings")
        row = _SettingRow(spec.usual, spec.usual_source, spec.choices)
    value, number = row.typical, spec.quantity not in ("choice", "text")
    if number != isinstance(value, int | float):
        wanted = "a number" if number else "a text in quotes"
        raise BadKind(f"the setting “{spec.name}” must be {wanted}, not {value!r}", "settings", spec.name)
    return Setting(
        name=spec.name,
        title=spec.title,
        quantity=spec.quantity,
        default=float(value) if number else value,
        lowest=spec.lowest,
        highest=spec.highest,
        choices=row.choices or spec.choices,
        source=row.source or (source_of_bare if number else ""),
        full=spec.full,
        nought=spec.nought,
        expert=spec.expert if row.expert is None else row.expert,
    )


def _convert(value: object, into: type[R], table: str = "", key: str = "") -> R:
    try:
        return msgspec.convert(value, into)
    except msgspec.ValidationError as error:
        raise _in_plain_words(str(error), table, key) from None


def _in_plain_words(words: str, table: str, key: str) -> BadKind:
    path = re.search(r"`\$\.(\w+)", words)
    place = path.group(1) if path else ""
    table, key = (table, key) if table else ("", place)
    of = f"“{place}” of “{key}”" if table and place not in ("", "typical") else f"“{key}”"
    if missing := re.search(r"missing required field `(\w+)`", words):
        return BadKind(f"“{missing.group(1)}” is missing", table, key)
    if unknown := re.search(r"unknown field `(\w+)`", words):
        return BadKind(f"“{unknown.group(1)}” is not a word this file knows", table, key or unknown.group(1))
    if "of length 2" in words:
        return BadKind(f"{of} must be a list of pairs of terminals", table, key)
    if wanted := re.search(r"Expected `([^`]+)`", words):
        sorts = [_EXPECTED.get(w.strip(), w.strip()) for w in wanted.group(1).split("|")]
        return BadKind(f"{of} must be {' or '.join(sorts)}", table, key)
    return BadKind(f"{of} cannot be read", table, key)
