"""Times the printed set of the whole-layout demo and of a plan of 2 000 wires; prints `name = number` lines.

Run it as `python tests/benchmarks/sheets.py`. Times are seconds of this process's own processor time for the
sheets and the PDF, least of a few runs, the plan solved and the modules loaded before; `command_s` is the
whole command in a process of its own, by the clock. `unplaced_wires` counts the wires of both plans for which
the bench list cannot name a place on a plan sheet and one in a circuit drawing, or which it does not list.
"""

import re
import subprocess
import sys
import tempfile
from collections.abc import Iterable
from pathlib import Path
from time import perf_counter, process_time

sys.path.insert(0, str(Path(__file__).parents[2]))

from msgspec.structs import replace

from wiring.catalogue.shelf import builtin_kinds
from wiring.drawings.circuit_drawing import not_fed
from wiring.files.store import load
from wiring.findings.situation import Situation, examine
from wiring.pictures.pdf import Page, pdf_bytes
from wiring.pictures.picture import Words
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.sheets.sheet_set import sheet_set

ROOT = Path(__file__).parents[2]
HARBOUR = ROOT / "demo_layouts" / "harbour.underboard"
WIRES = 2000
PLACE = re.compile(r"\d+/[A-Z]\d+$")


def main() -> None:
    kinds = builtin_kinds()
    harbour = load(HARBOUR)
    small, large = examine(harbour, kinds), examine(many(harbour, WIRES), kinds, outlooks=False)
    whole_s, whole = least(small, 3)
    large_s, pages = least(large, 1)
    print(f"whole_layout_s = {whole_s:.2f}")
    print(f"whole_layout_pages = {len(whole)}")
    print(f"command_s = {command_s():.2f}")
    print(f"wires2000_s = {large_s:.2f}")
    print(f"wires2000_pages = {len(pages)}")
    print(f"unplaced_wires = {unplaced(small, whole) + unplaced(large, pages)}")


def least(situation: Situation, runs: int) -> tuple[float, tuple[Page, ...]]:
    """The least time of a few runs, and the sheets."""
    times, pages = [], ()
    for _ in range(runs):
        began = process_time()
        pages = sheet_set(situation)
        pdf_bytes(pages)
        times.append(process_time() - began)
    return min(times), pages


def command_s() -> float:
    with tempfile.TemporaryDirectory() as folder:
        began = perf_counter()
        command = [sys.executable, "-m", "wiring", "sheets", str(HARBOUR), str(Path(folder) / "out.pdf")]
        subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
        return perf_counter() - began


def many(plan: Plan, wires: int) -> Plan:
    """The plan again and again, side by side, until it has that many wires."""
    step_mm = 200.0 + max(x for x, _ in plan.board) - min(x for x, _ in plan.board)
    copies = -(-wires // len(plan.wires))
    parts, joined, scenes, panels = {}, {}, {}, {}
    for copy in range(copies):
        dx, tail = copy * step_mm, f"_{copy}"
        for part in plan.parts.values():
            place = {"scene": part.scene and part.scene + tail, "panel": part.panel and part.panel + tail}
            number = f"{part.designation}{copy:02d}"
            parts[part.id + tail] = replace(
                part, id=part.id + tail, x_mm=part.x_mm + dx, designation=number, **place
            )
        for scene in plan.scenes.values():
            scenes[scene.id + tail] = replace(
                scene, id=scene.id + tail, x_mm=scene.x_mm + dx, name=f"{scene.name} {copy + 1}"
            )
        for panel in plan.panels.values():
            panels[panel.id + tail] = replace(
                panel, id=panel.id + tail, x_mm=panel.x_mm + dx, name=f"{panel.name} {copy + 1}"
            )
        for wire in plan.wires.values():
            ends = {
                "start": TerminalRef(wire.start.part + tail, wire.start.terminal),
                "end": TerminalRef(wire.end.part + tail, wire.end.terminal),
            }
            bends = tuple((x + dx, y) for x, y in wire.bends)
            joined[wire.id + tail] = replace(
                wire, id=wire.id + tail, label=f"W{len(joined) + 1}", bends=bends, **ends
            )
    kept = dict(list(joined.items())[:wires])
    used = {ref.part for wire in kept.values() for ref in (wire.start, wire.end)}
    board = tuple((x + copy * step_mm, y) for copy in range(copies) for x, y in plan.board)
    parts = {i: p for i, p in parts.items() if i in used}
    return replace(plan, parts=parts, wires=kept, scenes=scenes, panels=panels, board=board)


def unplaced(situation: Situation, pages: Iterable[Page]) -> int:
    placed = 0
    for page in pages:
        if page.picture.title.split(": ")[-1].startswith("Bench list"):
            placed += sum(isinstance(i, Words) and bool(PLACE.match(i.text)) for i in page.picture.items)
    loose = set(
        not_fed(situation.plan, situation.kinds, situation.figures)
    )  # in no circuit, so in no drawing
    wires = situation.plan.wires.values()
    return sum(1 + (not {w.start.part, w.end.part} <= loose) for w in wires) - placed


if __name__ == "__main__":
    main()
