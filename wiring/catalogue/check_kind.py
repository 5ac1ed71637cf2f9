"""Whether a kind can be placed, wired and solved; where not, why."""

import math
import re

from wiring.catalogue.bad_kind import BadKind
from wiring.catalogue.behaviours import BEHAVIOURS, Behaviour
from wiring.catalogue.kind import Kind, Setting
from wiring.catalogue.known_names import PURPOSES, SIGNS, SYMBOLS
from wiring.standards.cells import CELLS

LARGEST_MM = 2000.0
LARGEST_HOLE_MM = 200.0
MARKS = ("", "+", "-", "~")


def check(kind: Kind) -> None:
    """Raise BadKind with the first thing that is wrong; return when nothing is."""
    _names(kind)
    _size(kind)
    _terminals(kind, BEHAVIOURS[kind.behaviour])
    _positions(kind, BEHAVIOURS[kind.behaviour])
    for setting in kind.settings:
        _setting(setting)


def _names(kind: Kind) -> None:
    if not re.fullmatch(r"[a-z0-9][a-z0-9-]{0,59}", kind.key):
        raise BadKind("“key” must be small letters, digits and hyphens", key="key")
    if not kind.title.strip():
        raise BadKind("“title” is empty", key="title")
    if not re.fullmatch(r"[A-Z]{1,3}", kind.designation):
        raise BadKind("“designation” must be one to three capital letters, such as E", key="designation")
    if kind.purpose not in PURPOSES:
        raise BadKind(f"“purpose” must be one of {', '.join(PURPOSES)}", key="purpose")
    if kind.sign not in SIGNS:
        raise BadKind(f"there is no sign “{kind.sign}”", key="sign")
    if kind.symbol not in SYMBOLS:
        raise BadKind(f"there is no symbol “{kind.symbol}”", key="symbol")


def _size(kind: Kind) -> None:
    for key, size in (("width_mm", kind.width_mm), ("height_mm", kind.height_mm)):
        if not 1.0 <= size <= LARGEST_MM:
            raise BadKind(f"“{key}” must lie between 1 and {LARGEST_MM:g} mm", key=key)
    for key, size in (("hole_mm", kind.hole_mm), ("behind_mm", kind.behind_mm)):
        if size and not 1.0 <= size <= LARGEST_HOLE_MM:
            raise BadKind(f"“{key}” must be 0 or lie between 1 and {LARGEST_HOLE_MM:g} mm", key=key)


def _terminals(kind: Kind, behaviour: Behaviour) -> None:
    names = tuple(t.name for t in kind.terminals)
    missing = set(_needed(kind, behaviour)) - set(names)
    if missing:
        raise BadKind(f"the terminal “{min(missing)}” is missing", "terminals")
    unknown = set(names) - set(_needed(kind, behaviour)) - set(behaviour.may_have)
    if unknown:
        words = f"a part that works as “{behaviour.name}” has no terminal “{min(unknown)}”"
        raise BadKind(words, "terminals", min(unknown))
    seen: dict[tuple[float, float], str] = {}
    for terminal in kind.terminals:
        at = (terminal.x_mm, terminal.y_mm)
        if not all(abs(v) <= LARGEST_MM for v in at):
            words = f"the terminal “{terminal.name}” lies more than {LARGEST_MM:g} mm away from its part"
            raise BadKind(words, "terminals", terminal.name)
        if at in seen:
            words = f"the terminals “{seen[at]}” and “{terminal.name}” lie on each other"
            raise BadKind(words, "terminals", terminal.name)
        if terminal.mark not in MARKS:
            words = f"the mark of terminal “{terminal.name}” must be + or - or ~ or left out"
            raise BadKind(words, "terminals", terminal.name)
        seen[at] = terminal.name


def _needed(kind: Kind, behaviour: Behaviour) -> tuple[str, ...]:
    count = len(kind.terminals)
    if behaviour.counted == "numbers":
        return tuple(str(i + 1) for i in range(max(count, 1)))
    if behaviour.counted == "pairs":
        return tuple(f"{i + 1}{side}" for i in range(max((count + 1) // 2, 1)) for side in "ab")
    if behaviour.counted == "contacts":
        return tuple({name for p in kind.positions for pair in p.closes for name in pair})
    return behaviour.terminals


def _positions(kind: Kind, behaviour: Behaviour) -> None:
    names = [p.name for p in kind.positions]
    for needed in behaviour.positions:
        if needed not in names:
            raise BadKind(f"the position “{needed}” is missing", "positions")
    if behaviour.throws and len(names) < 2:
        raise BadKind("a switch needs at least two positions", "positions")
    known = {t.name for t in kind.terminals}
    for position in kind.positions:
        for pair in position.closes:
            for name in pair:
                if name not in known:
                    words = (
                        f"position “{position.name}” closes terminal “{name}”, which the part does not have"
                    )
                    raise BadKind(words, "positions", position.name)
            if pair[0] == pair[1]:
                words = f"position “{position.name}” closes terminal “{pair[0]}” to itself"
                raise BadKind(words, "positions", position.name)
    if kind.in_use and kind.in_use not in names:
        raise BadKind(
            f"“in_use” names the position “{kind.in_use}”, which the part does not have", key="in_use"
        )


def _setting(setting: Setting) -> None:
    name, value = setting.name, setting.default
    if setting.quantity == "choice":
        if name == "cell":
            for choice in setting.choices or (str(value),):
                if choice not in CELLS:
                    raise BadKind(f"there is no battery type “{choice}”", "settings", name)
        if value not in setting.choices:
            words = f"the setting “{name}” must be one of {', '.join(setting.choices) or 'its choices'}"
            raise BadKind(words, "settings", name)
        return
    if isinstance(value, str):
        return
    low = -math.inf if setting.lowest is None else setting.lowest
    high = math.inf if setting.highest is None else setting.highest
    if not (math.isfinite(value) and low <= value <= high):
        words = f"the setting “{name}” is {value:g} but must lie between {low:g} and {high:g}"
        raise BadKind(words, "settings", name)
    if setting.quantity == "count" and value != int(value):
        raise BadKind(f"the setting “{name}” must be a whole number", "settings", name)
