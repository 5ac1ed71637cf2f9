"""``underboard export PLAN OUT``: the ending of OUT says what is written.

``.html`` the carry sheet, a page for a phone under the layout; ``.cir`` a SPICE netlist; ``.csv`` a list
for a spreadsheet, the bench list or with ``--list`` another; ``.json`` figures, outlooks and findings
together (the keys of those three commands side by side); ``.svg`` drawings: the circuits, or with
``--drawing`` the plan from above or from below. Several circuits go to numbered files: quay-1.svg,
quay-2.svg.
"""

from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from wiring.commands.opening import Opened, add_plan_arguments, open_plan
from wiring.commands.refusal import FINE, Refused

if TYPE_CHECKING:
    from wiring.pictures.picture import Picture


class Output(NamedTuple):
    """One file to write, and what it holds in words."""

    what: str
    text: str


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    add_plan_arguments(parser)
    parser.add_argument(
        "out",
        type=Path,
        metavar="OUT",
        help="the file to write: .html carry sheet for a phone, .cir netlist, .csv bench list, "
        ".svg drawings, .json figures and findings",
    )
    parser.add_argument(
        "--list",
        choices=("bench", "cut", "harness", "terminals", "parts", "resistors", "meter"),
        default="bench",
        help="which list a .csv holds (bench)",
    )
    parser.add_argument(
        "--drawing",
        choices=("circuits", "above", "below"),
        default="circuits",
        help="what an .svg shows: the circuits, or the plan from above or from below (circuits)",
    )


def run(args: Namespace) -> int:
    """Write the file or files, and say which."""
    from wiring.files.store import write_whole

    writer = WRITERS.get(args.out.suffix.lower())
    if writer is None:
        raise Refused(f"{args.out.name} must end in {', '.join(WRITERS)} to say what to write.")
    outputs = list(writer(open_plan(args), args))
    if not outputs:
        raise Refused("The plan has no fed circuit to draw; wire a supply or a battery to something first.")
    digits = len(str(len(outputs)))
    for number, output in enumerate(outputs, start=1):
        numbered = args.out.with_stem(f"{args.out.stem}-{number:0{digits}}")
        path = args.out if len(outputs) == 1 else numbered
        write_whole(output.text.encode(), path)
        print(f"Wrote {path}: {output.what}")
    return FINE


def _netlist(opened: Opened, _: Namespace) -> Iterator[Output]:
    from wiring.circuit.spice import spice_netlist

    yield Output("SPICE netlist", spice_netlist(opened.plan, opened.kinds, opened.positions))


def _list(opened: Opened, args: Namespace) -> Iterator[Output]:
    from wiring.findings.situation import examine
    from wiring.sheets.csv_lists import list_csv

    situation = examine(opened.plan, opened.kinds, opened.positions, outlooks=False)
    # Spreadsheets take a file for UTF-8 only when it begins with a byte order mark.
    yield Output(f"{args.list} list", "\ufeff" + list_csv(situation, args.list))


def _carry_sheet(opened: Opened, _: Namespace) -> Iterator[Output]:
    from wiring.findings.situation import examine
    from wiring.sheets.carry.carry_sheet import carry_sheet

    situation = examine(opened.plan, opened.kinds, opened.positions)
    yield Output("carry sheet for a phone", carry_sheet(situation))


def _data(opened: Opened, _: Namespace) -> Iterator[Output]:
    from wiring.commands.check import findings_data
    from wiring.commands.figures import figures_data
    from wiring.commands.json_text import json_text
    from wiring.commands.outlook import outlook_data
    from wiring.findings.situation import examine

    situation = examine(opened.plan, opened.kinds, opened.positions)
    data = {**figures_data(situation), **outlook_data(situation), **findings_data(situation)}
    yield Output("figures, outlooks and findings", json_text({**data, "notes": opened.notes}) + "\n")


def _drawings(opened: Opened, args: Namespace) -> Iterator[Output]:
    from wiring.pictures.svg import svg_text

    for what, picture in _circuits(opened) if args.drawing == "circuits" else _plan(opened, args.drawing):
        yield Output(what, svg_text(picture))


def _plan(opened: Opened, side: str) -> Iterator[tuple[str, "Picture"]]:
    from wiring.circuit.solve import solve
    from wiring.drawings.plan_view import plan_view

    figures = solve(opened.plan, opened.kinds, opened.positions)
    below = side == "below"
    picture = plan_view(opened.plan, opened.kinds, opened.positions, figures, below=below)
    yield f"plan from {side}", picture


def _circuits(opened: Opened) -> Iterator[tuple[str, "Picture"]]:
    from wiring.circuit.solve import solve
    from wiring.drawings.circuit_drawing import circuit_drawings

    figures = solve(opened.plan, opened.kinds, opened.positions)
    for drawing in circuit_drawings(opened.plan, opened.kinds, opened.positions, figures):
        yield drawing.title, drawing.picture


WRITERS: dict[str, Callable[[Opened, Namespace], Iterator[Output]]] = {
    ".cir": _netlist,
    ".csv": _list,
    ".svg": _drawings,
    ".json": _data,
    ".html": _carry_sheet,
}
