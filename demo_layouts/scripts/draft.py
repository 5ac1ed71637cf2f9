"""A draft of a plan that demo scripts write on: parts and wires with their numbers given in order."""

from wiring.catalogue.shelf import builtin_kinds
from wiring.plan.names import TerminalRef
from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.places import terminal_at
from wiring.plan.plan import Habits, Plan
from wiring.plan.scene import Scene, UsePattern
from wiring.plan.wire import Wire

Pin = tuple[str, str]  # part id, terminal


class Draft:
    """Collects records; `plan()` gives the finished value."""

    def __init__(self, title, habits, board, tracks=()):
        self.kinds = builtin_kinds()
        self.title, self.habits, self.board, self.tracks = title, habits, board, tracks
        self.parts: dict[str, Part] = {}
        self.wires: dict[str, Wire] = {}
        self.scenes: dict[str, Scene] = {}
        self.panels: dict[str, Panel] = {}
        self.use = UsePattern()
        self._number = 0
        self._letters: dict[str, int] = {}

    def _next(self) -> int:
        self._number += 1
        return self._number

    def scene(self, name, x, y, width, height, hours=3.0, sessions=4.0) -> str:
        key = f"s{self._next()}"
        self.scenes[key] = Scene(
            id=key,
            name=name,
            x_mm=x,
            y_mm=y,
            width_mm=width,
            height_mm=height,
            use=UsePattern(hours, sessions),
        )
        return key

    def panel(self, name, x, y, width, height) -> str:
        key = f"n{self._next()}"
        self.panels[key] = Panel(id=key, name=name, x_mm=x, y_mm=y, width_mm=width, height_mm=height)
        return key

    def part(self, kind, x, y, label="", *, turn=0.0, scene="", panel="", position="", **settings) -> str:
        letter = self.kinds[kind].designation
        self._letters[letter] = self._letters.get(letter, 0) + 1
        key = f"p{self._next()}"
        self.parts[key] = Part(
            id=key,
            kind=kind,
            designation=f"{letter}{self._letters[letter]}",
            x_mm=x,
            y_mm=y,
            turn_deg=turn,
            label=label,
            settings=settings,
            position=position,
            scene=scene,
            panel=panel,
        )
        return key

    def at(self, pin: Pin) -> tuple[float, float]:
        part = self.parts[pin[0]]
        return terminal_at(part, self.kinds[part.kind], pin[1])

    def wire(self, start: Pin, end: Pin, colour, size=None, bends=(), length=None) -> str:
        for part, terminal in (start, end):
            self.kinds[self.parts[part].kind].terminal(terminal)
        key = f"w{self._next()}"
        self.wires[key] = Wire(
            id=key,
            label=f"W{len(self.wires) + 1}",
            start=TerminalRef(*start),
            end=TerminalRef(*end),
            size=size or self.habits.wire_size,
            colour=colour,
            length_m=length,
            bends=tuple(bends),
        )
        return key

    def over(self, start: Pin, end: Pin, y, colour, size=None) -> str:
        """Wire that leaves its terminal straight to the line y, runs along it, and comes back."""
        x1, x2 = self.at(start)[0], self.at(end)[0]
        return self.wire(start, end, colour, size, [(x1, y), (x2, y)])

    def beside(self, start: Pin, end: Pin, x, colour, size=None) -> str:
        """Wire that leaves its terminal sideways to the line x, runs along it, and comes back."""
        y1, y2 = self.at(start)[1], self.at(end)[1]
        return self.wire(start, end, colour, size, [(x, y1), (x, y2)])

    def along(self, start: Pin, end: Pin, lane, riser, colour, size=None) -> str:
        """Wire that goes to the line y=lane, along it to x=riser, along that, then across to its end."""
        return self.wire(
            start, end, colour, size, [(self.at(start)[0], lane), (riser, lane), (riser, self.at(end)[1])]
        )

    def plan(self) -> Plan:
        return Plan(
            title=self.title,
            author="Underboard demo",
            habits=self.habits,
            use=self.use,
            board=self.board,
            tracks=tuple(self.tracks),
            scenes=self.scenes,
            panels=self.panels,
            parts=self.parts,
            wires=self.wires,
            next_number=self._number + 1,
        )


__all__ = ["Draft", "Habits", "Pin"]
