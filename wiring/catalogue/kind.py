"""What one kind of part is: its settings, terminals, behaviour and signs, as the catalogue's data say it."""

from collections.abc import Mapping
from typing import Any

import msgspec

Value = float | str


class Setting(msgspec.Struct, frozen=True):
    """One number or choice a user may set on a part, in the SI unit of its quantity."""

    name: str
    title: str
    quantity: (
        str  # a name of wiring.quantities.Quantity ("voltage", "current", ...), "count", "choice" or "text"
    )
    default: Value
    lowest: float | None = None
    highest: float | None = None
    choices: tuple[str, ...] = ()
    source: str = ""
    full: str = ""  # what it is, in more words than the title has room for
    nought: str = ""  # what 0 stands for, where it stands for something else: "typical", "none"
    expert: bool = False  # only those who know why change it


class Terminal(msgspec.Struct, frozen=True):
    """A point that takes a wire, placed from the part's centre, y down, in millimetres."""

    name: str
    x_mm: float
    y_mm: float
    mark: str = ""  # "+", "-", "~" or nothing


class Position(msgspec.Struct, frozen=True):
    """One state a part can stand in, and the terminal pairs it joins."""

    name: str
    closes: tuple[tuple[str, str], ...] = ()
    momentary: bool = False


class Kind(msgspec.Struct, frozen=True):
    """A kind of part."""

    key: str
    title: str
    purpose: str  # "light", "move", "switch", "feed", "protect" or "join"
    designation: str  # class letter of IEC 81346-2
    behaviour: str  # a name in wiring.circuit.behaviours
    sign: str  # how it looks from above, a name in wiring.drawings.signs
    symbol: str  # its circuit symbol, a name in wiring.drawings.symbols
    width_mm: float
    height_mm: float
    terminals: tuple[Terminal, ...]
    settings: tuple[Setting, ...] = ()
    positions: tuple[Position, ...] = ()
    in_use: str = ""  # the position it stands in while a session runs; "" when it has none
    words: tuple[str, ...] = ()  # what people type to find it
    note: str = ""
    hole_mm: float = 0.0  # to drill in a panel for it; 0 when it has none, or a cut-out of its own size
    behind_mm: float = 0.0  # how far it reaches behind the face, wires and all; 0 when not known
    cautions: tuple[str, ...] = ()  # names of safety notes this kind earns, see wiring.sheets.safety

    def setting(self, name: str) -> Setting:
        """Return the setting of that name; KeyError if the kind has none."""
        for setting in self.settings:
            if setting.name == name:
                return setting
        raise KeyError(name)

    def terminal(self, name: str) -> Terminal:
        """Return the terminal of that name; KeyError if the kind has none."""
        for terminal in self.terminals:
            if terminal.name == name:
                return terminal
        raise KeyError(name)

    def position(self, name: str) -> Position:
        """Return the position of that name; KeyError if the kind has none."""
        for position in self.positions:
            if position.name == name:
                return position
        raise KeyError(name)

    def values(self, given: Mapping[str, Value]) -> dict[str, Any]:
        """Return every setting's value: the given one where there is one, else the typical one."""
        return {s.name: given.get(s.name, s.default) for s in self.settings}
