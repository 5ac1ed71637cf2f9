"""The bench list as CSV for a spreadsheet, safe against text that a spreadsheet would run as a formula.

Designations are written without their leading minus, the terminal in a column of its own (``X1``, ``3``), so
no cell of the program's own begins with a sign; text of the user's that does gets an apostrophe before it.
"""

import csv
import io
from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.drawings.wire_colour import wire_colour
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.sheets.bench_list import bench_rows

HEADER = (
    "place", "wire", "from_part", "from_terminal", "to_part", "to_terminal", "size", "stranding", "colour",
    "colour_name", "cut_length_m", "note",
)  # fmt: skip
_STARTS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")


def bench_csv(plan: Plan, kinds: Mapping[str, Kind]) -> str:
    """Return the bench list as CSV text (RFC 4180, comma, CRLF), one row a wire, in working order."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADER)
    for row in bench_rows(plan, kinds):
        cells = (
            row.place,
            row.label,
            *end_cells(plan, row.start),
            *end_cells(plan, row.end),
            row.size,
            "solid" if row.solid else "stranded",
            row.colour,
            wire_colour(row.colour).name,
            f"{row.length_m:.3f}",
            row.note,
        )
        writer.writerow([guarded(c) for c in cells])
    return text.getvalue()


def guarded(text: str) -> str:
    """Return a cell that no spreadsheet takes for a formula: an apostrophe stands before a leading sign."""
    return (
        f"'{text}" if text.lstrip(" \u00a0\ufeff").startswith(_STARTS_FORMULA) or text[:1].isspace() else text
    )


def end_cells(plan: Plan, ref: TerminalRef) -> tuple[str, str]:
    """Return part and terminal as two cells, without signs a spreadsheet would take for a formula."""
    part = plan.parts.get(ref.part)
    # polarity marks are terminal names too; spelled out they are safe and still read right
    terminal = {"+": "plus", "-": "minus"}.get(ref.terminal, ref.terminal)
    return (part.designation if part is not None else "missing part"), terminal
