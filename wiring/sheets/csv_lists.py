"""Every list of the sheets as CSV for a spreadsheet, by name; safe against text taken for a formula."""

import csv
import io
from collections.abc import Callable, Iterable, Mapping, Sequence

from wiring.drawings.wire_colour import wire_colour
from wiring.findings.situation import Situation
from wiring.plan.names import TerminalRef
from wiring.sheets.amp_checks import amp_checks
from wiring.sheets.csv_export import bench_csv, end_cells, guarded
from wiring.sheets.cut_list import cut_rows, spool_words
from wiring.sheets.harness_list import harness_rows
from wiring.sheets.meter_checks import volt_checks
from wiring.sheets.ohm_checks import ohm_checks
from wiring.sheets.parts_list import part_rows
from wiring.sheets.resistor_list import resistor_rows
from wiring.sheets.strip_charts import charted_parts, wires_by_terminal


def list_csv(situation: Situation, name: str) -> str:
    """Return one list as CSV text (RFC 4180, comma, CRLF); KeyError for a name that LISTS has not."""
    return LISTS[name](situation)


def _bench(situation: Situation) -> str:
    return bench_csv(situation.plan, situation.kinds)


def _cut(situation: Situation) -> str:
    plan = situation.plan
    rows = (
        (r.size, _stranding(r.solid), r.colour, wire_colour(r.colour).name, str(len(r.pieces)),
         f"{r.total_m:.3f}", f"{r.buy_m:.3f}", spool_words(r.buy_m, plan.habits.units),
         " ".join(label for label, _ in r.pieces))
        for r in cut_rows(plan, situation.kinds)
    )  # fmt: skip
    head = "size stranding colour colour_name pieces total_m buy_m spools wires"
    return _text(head.split(), rows)


def _parts(situation: Situation) -> str:
    """What to buy; price and sum are empty where the builder gave no price, the currency is theirs."""
    rows: list[Sequence[str]] = []
    for r in part_rows(situation.plan, situation.kinds):
        price, total = ("", "") if r.each is None else (f"{r.each:g}", f"{r.each * r.to_buy:.2f}")
        counts = str(r.pieces), str(r.spares)
        rows.append((r.title, r.values, *counts, _names(r.designations), price, total))
    currency = situation.plan.habits.currency
    unit = f" {currency}" if currency else ""
    head = ("part", "values", "count", "spares", "designations", f"price_each{unit}", f"price_sum{unit}")
    return _text([guarded(h) for h in head], rows)


def _resistors(situation: Situation) -> str:
    rows = (
        (f"{r.ohms:g}", f"{r.watts:g}" if r.watts else "", "yes" if r.built_on else "no",
         str(len(r.designations)), " ".join(r.bands), _names(r.designations))
        for r in resistor_rows(situation.plan, situation.kinds)
    )  # fmt: skip
    return _text(("ohms", "rated_w", "on_the_lead", "count", "bands", "designations"), rows)


def _harness(situation: Situation) -> str:
    rows = (
        (r.name, str(len(r.labels)), f"{r.fill:.3f}", f"{r.allowed:.3f}", f"{r.hole_mm:g}",
         f"{r.needed_mm:g}", " ".join(r.labels))
        for r in harness_rows(situation.plan, situation.kinds)
    )  # fmt: skip
    return _text(("wireway", "wires", "filled", "allowed", "hole_mm", "needed_mm", "labels"), rows)


def _terminals(situation: Situation) -> str:
    """Every terminal of every strip, block and plug, with each wire on it; a free one has empty cells."""
    plan, at = situation.plan, wires_by_terminal(situation.plan)
    rows: list[Sequence[str]] = []
    for part in charted_parts(plan, situation.kinds):
        for terminal in situation.kinds[part.kind].terminals:
            ref = TerminalRef(part.id, terminal.name)
            for wire in at.get(ref, ()):
                other = wire.end if wire.start == ref else wire.start
                rows.append(
                    (*end_cells(plan, ref), wire.label, wire.size, wire.colour, *end_cells(plan, other))
                )
            if ref not in at:
                rows.append((*end_cells(plan, ref), "", "", "", "", ""))
    return _text(("part", "terminal", "wire", "size", "colour", "to_part", "to_terminal"), rows)


def _meter(situation: Situation) -> str:
    """The readings in their order: power off, volts, amperes; numbers in volts and amperes."""
    plan = situation.plan
    rows: list[Sequence[str]] = [
        ("ohms", "", c.what, c.where, "", c.expect, "", "") for c in ohm_checks(situation)
    ]
    for v in volt_checks(situation):
        red, black = (":".join(end_cells(plan, ref)) for ref in (v.red, v.black))
        unit = "V AC" if v.alternating else "V"
        rows.append((unit, v.place, v.what, red, black, *_plain(v.expect_v, v.low_v, v.high_v)))
    for a in amp_checks(situation):
        unit = "A AC" if a.alternating else "A"
        rows.append((unit, "", a.what, a.where, "", *_plain(a.expect_a, a.low_a, a.high_a)))
    return _text(("reading", "place", "what", "red", "black", "expect", "from", "to"), rows)


def _plain(*values: float) -> tuple[str, ...]:
    return tuple(f"{v + 0.0:.4g}" for v in values)


def _stranding(solid: bool) -> str:
    return "solid" if solid else "stranded"


def _names(designations: Iterable[str]) -> str:
    return " ".join(name.removeprefix("-") for name in designations)


def _text(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([cell if _is_number(cell) else guarded(cell) for cell in row] for row in rows)
    return text.getvalue()


def _is_number(text: str) -> bool:
    """Return whether a cell is a number, whose minus no spreadsheet takes for a formula."""
    return text.removeprefix("-").replace(".", "", 1).isdecimal() and text.isascii()


LISTS: Mapping[str, Callable[[Situation], str]] = {
    "bench": _bench,
    "cut": _cut,
    "harness": _harness,
    "terminals": _terminals,
    "parts": _parts,
    "resistors": _resistors,
    "meter": _meter,
}
