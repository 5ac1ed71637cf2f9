"""From the bytes of a file to a plan, or one plain sentence about where and why it cannot be read."""

import json
from collections.abc import Iterable
from types import MappingProxyType
from typing import Any, TypeVar

import msgspec

from wiring.files.format import FORMAT, LARGEST_BYTES, VERSION
from wiring.files.places import Raw, plain_words
from wiring.files.refusals import NotReadable
from wiring.plan.backdrop import Backdrop
from wiring.plan.battery_log import BatteryReading
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.joist import Joist
from wiring.plan.panel import FaceLine, FaceText, Panel
from wiring.plan.part import Part
from wiring.plan.plan import Habits, Line, Plan
from wiring.plan.scene import Scene, UsePattern
from wiring.plan.sentences import after_colon
from wiring.plan.soundness import least_next_number, unsound
from wiring.plan.wire import Wire
from wiring.plan.wireway import Wireway

T = TypeVar("T", Scene, Panel, Wireway, Part, Wire)
RECORDS: dict[str, type[msgspec.Struct]] = {
    "scenes": Scene,
    "panels": Panel,
    "wireways": Wireway,
    "parts": Part,
    "wires": Wire,
}


class PlanFile(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The object a plan file holds; see :mod:`wiring.files.format`."""

    format: str
    version: int
    written_by: str = ""
    title: str = Plan().title
    author: str = ""
    habits: Habits = Habits()
    use: UsePattern = UsePattern()
    board: Line = ()
    tracks: tuple[Line, ...] = ()
    joists: tuple[Joist, ...] = ()
    scenes: tuple[Scene, ...] = ()
    panels: tuple[Panel, ...] = ()
    wireways: tuple[Wireway, ...] = ()
    backdrop: Backdrop | None = None
    parts: tuple[Part, ...] = ()
    wires: tuple[Wire, ...] = ()
    battery_log: tuple[BatteryReading, ...] = ()
    prices: dict[str, float] = {}
    circuit_colours: dict[str, CircuitColours] = {}
    next_number: int = 1


def decode(data: bytes) -> Plan:
    """Return the plan that a file's bytes hold; NotReadable says in one sentence why there is none.

    A part of a kind the catalogue lacks is kept. A `next_number` that is missing or too low is lifted, so
    that a file written by hand needs none.
    """
    raw = _object(_text(data))
    _refuse_foreign(raw)
    _refuse_unknown_fields(raw)
    try:
        file = msgspec.convert(raw, PlanFile)
    except msgspec.ValidationError as error:
        raise NotReadable(plain_words(str(error), raw)) from None
    except (RecursionError, OverflowError):
        raise NotReadable("The file is damaged: its values are nested too deeply or too large.") from None
    plan = Plan(
        title=file.title,
        author=file.author,
        habits=file.habits,
        use=file.use,
        board=file.board,
        tracks=file.tracks,
        joists=file.joists,
        scenes=_by_id(file.scenes, "scene"),
        panels=_by_id(file.panels, "panel"),
        wireways=_by_id(file.wireways, "wireway"),
        backdrop=file.backdrop,
        parts=_by_id(map(_frozen, file.parts), "part"),
        wires=_by_id(file.wires, "wire"),
        battery_log=file.battery_log,
        prices=MappingProxyType(file.prices),
        circuit_colours=MappingProxyType(file.circuit_colours),
        next_number=file.next_number,
    )
    plan = plan.with_changes(next_number=max(plan.next_number, least_next_number(plan)))
    for breach in unsound(plan):
        raise NotReadable(f"The plan does not hold together: {after_colon(breach)}")
    return plan


def _text(data: bytes) -> str:
    if len(data) > LARGEST_BYTES:
        raise NotReadable(
            f"The file is larger than {LARGEST_BYTES // 2**20} MB, which no plan is; choose another file."
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise NotReadable(
            f"Line {line} is not readable text (UTF-8); the file is damaged or not a plan."
        ) from None
    if not text.strip():
        raise NotReadable("The file is empty; choose another file or an older copy of this one.")
    return text


def _object(text: str) -> Raw:
    try:
        raw = json.loads(text, object_pairs_hook=_without_repeats, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        raise NotReadable(_syntax_words(text, error)) from None
    except RecursionError:
        raise NotReadable("The file is not a plan: its values are nested too deeply.") from None
    except ValueError:
        raise NotReadable("The file is damaged: it holds a number with far too many digits.") from None
    if not isinstance(raw, dict):
        raise NotReadable("The file is not a plan; choose a file that ends in .underboard.")
    return raw


def _without_repeats(pairs: list[tuple[str, Any]]) -> Raw:
    found = dict(pairs)
    if len(found) < len(pairs):
        names = [name for name, _ in pairs]
        twice = next(n for n in names if names.count(n) > 1)
        where = f"{found.get('id', 'the file')}"
        raise NotReadable(f"The field “{twice}” stands twice in {where}; take one away.")
    return found


def _no_constant(name: str) -> float:
    raise NotReadable(f"The file holds {name} where a number must stand; write a number instead.")


def _syntax_words(text: str, error: json.JSONDecodeError) -> str:
    if not text.lstrip().startswith("{"):
        return "The file is not a plan; choose a file that ends in .underboard."
    if not text[error.pos :].strip():
        return (
            f"The file breaks off at line {error.lineno}; it was probably cut short while it was copied, so "
            "use an older copy."
        )
    return f"Line {error.lineno} is damaged at character {error.colno}; mend it or use an older copy."


def _refuse_foreign(raw: Raw) -> None:
    if raw.get("format") != FORMAT:
        raise NotReadable("The file is not a plan; choose a file that ends in .underboard.")
    version = raw.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        raise NotReadable("The file does not say which version of the plan format it has; write 1.")
    if version > VERSION:
        writer = raw.get("written_by")
        by = f" by {writer[:40]}" if isinstance(writer, str) and writer else ""
        raise NotReadable(
            f"The plan was written{by} in format {version}, and this program reads up to format {VERSION}; "
            "install a newer version of the program."
        )


def _refuse_unknown_fields(raw: Raw) -> None:
    _refuse_unknown_in(raw.get("habits"), Habits, "The plan’s habits have")
    _refuse_unknown_in(raw.get("use"), UsePattern, "The plan’s use pattern has")
    _refuse_unknown_in(raw.get("backdrop"), Backdrop, "The picture under the plan has")
    nameless = (("battery_log", BatteryReading, "An entry of the battery log"), ("joists", Joist, "A joist"))
    for name, record, subject in nameless:
        rows = raw.get(name)
        for row in rows if isinstance(rows, list) else ():
            _refuse_unknown_in(row, record, f"{subject} has")
    colours = raw.get("circuit_colours")
    for row in colours.values() if isinstance(colours, dict) else ():
        _refuse_unknown_in(row, CircuitColours, "The wire colours of a supply have")
    for table, record_type in RECORDS.items():
        rows = raw.get(table)
        for row in rows if isinstance(rows, list) else ():
            name = str(row.get("id", "?"))[:40] if isinstance(row, dict) else "?"
            _refuse_unknown_in(row, record_type, f"The {table[:-1]} {name} has")
            if table == "scenes" and isinstance(row, dict):
                _refuse_unknown_in(row.get("use"), UsePattern, f"The use pattern of the scene {name} has")
            if table == "panels" and isinstance(row, dict):
                _refuse_unknown_on_face(row, name)


def _refuse_unknown_on_face(row: Raw, name: str) -> None:
    sorts: tuple[tuple[str, type[msgspec.Struct]], ...] = (("lines", FaceLine), ("texts", FaceText))
    for field, record_type in sorts:
        items = row.get(field)
        for item in items if isinstance(items, list) else ():
            _refuse_unknown_in(item, record_type, f"A {field[:-1]} on the panel {name} has")


def _refuse_unknown_in(row: object, record_type: type[msgspec.Struct], subject: str) -> None:
    if isinstance(row, dict):
        unknown = row.keys() - set(record_type.__struct_fields__)
        if unknown:
            raise NotReadable(
                f"{subject} a field “{min(unknown)[:40]}”, which does not belong there; check its spelling."
            )


def _frozen(part: Part) -> Part:
    if not part.settings:
        return part
    return msgspec.structs.replace(part, settings=MappingProxyType(dict(part.settings)))


def _by_id(records: Iterable[T], word: str) -> MappingProxyType[str, T]:
    table: dict[str, T] = {}
    for record in records:
        if record.id in table:
            raise NotReadable(f"Two {word}s have the id {record.id}; give one of them another.")
        table[record.id] = record
    return MappingProxyType(table)
