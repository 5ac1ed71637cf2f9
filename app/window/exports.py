"""Writes the drawing, the bench list, the netlist and the figures to files other programs can read."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from app.proposed_file import proposed_file
from wiring.files.refusals import NotSaved
from wiring.files.store import write_whole

if TYPE_CHECKING:
    from app.window.main_window import MainWindow
    from wiring.findings.situation import Situation


class Exports:
    """Asks for a name, makes the text, writes it whole."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window

    def drawings(self) -> None:
        """One SVG for each circuit."""
        from wiring.drawings.circuit_drawing import circuit_drawings
        from wiring.pictures.svg import svg_text

        now = self._situation()
        drawings = circuit_drawings(now.plan, now.kinds, now.positions, now.figures)
        if not drawings:
            self._window.notices.refuse("There is no circuit to draw yet; wire something to a supply first.")
            return
        path = self._asked("Save the circuit drawings", ".svg")
        if path is None:
            return
        for number, drawing in enumerate(drawings, start=1):
            own = path if len(drawings) == 1 else path.with_stem(f"{path.stem}-{number}")
            text = svg_text(drawing.picture)
            if not self._written(own, lambda text=text: text):  # type: ignore[misc]
                return

    def bench_list(self) -> None:
        """The wires in working order, as rows."""
        from wiring.sheets.csv_export import bench_csv

        plan, kinds = self._window.session.plan, self._window.session.kinds
        self._write("Save the bench list", ".csv", lambda: bench_csv(plan, kinds))

    def carry_sheet(self) -> None:
        """One page for a phone under the layout, with boxes to tick."""
        from wiring.sheets.carry.carry_sheet import carry_sheet

        if not self._window.session.plan.wires:
            self._window.notices.refuse("There is nothing to carry yet; wire something first.")
            return
        self._write("Save the carry sheet", ".html", lambda: carry_sheet(self._situation()))

    def netlist(self) -> None:
        """The plan as it stands, for a circuit simulator."""
        from wiring.circuit.spice import spice_netlist

        session = self._window.session
        self._write(
            "Save the netlist", ".cir", lambda: spice_netlist(session.plan, session.kinds, session.positions)
        )

    def figures(self) -> None:
        """All readings and findings, as JSON."""
        from wiring.commands.figures import figures_data
        from wiring.commands.json_text import json_text

        self._write("Save the figures", ".json", lambda: json_text(figures_data(self._situation())))

    def _situation(self) -> "Situation":
        from wiring.findings.situation import examine

        session, answer = self._window.session, self._window.solving.answer
        if answer is not None and answer.complete and answer.revision == session.revision:
            return answer.situation
        return examine(session.plan, session.kinds, session.positions)

    def _write(self, title: str, suffix: str, make: Callable[[], str]) -> None:
        path = self._asked(title, suffix)
        if path is not None:
            self._written(path, make)

    def _asked(self, title: str, suffix: str) -> Path | None:
        session = self._window.session
        start = proposed_file(session.path, session.plan.title, suffix, self._window.remembered.folder)
        name, _ = QFileDialog.getSaveFileName(self._window, title, str(start), f"*{suffix}")
        if not name:
            return None
        return Path(name) if name.endswith(suffix) else Path(name + suffix)

    def _written(self, path: Path, make: Callable[[], str]) -> bool:
        try:
            write_whole(make().encode(), path)
        except NotSaved as refusal:
            self._window.notices.say(str(refusal), "weak")
            return False
        self._window.notices.say(f"Written to {path}.")
        return True
