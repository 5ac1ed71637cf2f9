"""The meter checks as blocks for the sheets."""

from wiring.findings.situation import Situation
from wiring.quantities.wording import worded
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.meter_checks import DEAD_V, VoltCheck, check_words, positions_words, volt_checks
from wiring.sheets.ohm_checks import ohm_checks
from wiring.sheets.table import Cell, Column, Row, table

_OHM_COLUMNS = (Column("", 6, "centre"), Column("What", 44), Column("Between", 64), Column("Expect", 58))
_VOLT_COLUMNS = (
    Column("", 6, "centre"),
    Column("Red lead", 24, weight="semibold"),
    Column("Black lead", 24),
    Column("Expect", 22, "right", "semibold"),
    Column("Good from, to", 34, "right"),
    Column("Read", 18),
    Column("Which is", 44),
)


def meter_blocks(situation: Situation, width: float) -> tuple[Block, ...]:
    """Return both parts: power off first, then the voltages."""
    ohms = ohm_checks(situation)
    volts = volt_checks(situation)
    blocks: list[Block] = [heading("Meter checks", width, anchor="meter")]
    if ohms:
        blocks.append(heading("1. Power off", width, level=2))
        blocks += paragraph(
            "Unplug every supply and take out the batteries. Meter on ohms or on the beeper. Parts that are "
            "wired in may be bridged by others: if a silent contact beeps, take off one of its wires and try "
            "again.",
            width,
        )
        blocks += table(_OHM_COLUMNS, [(Cell(tick=True), c.what, c.where, c.expect) for c in ohms], width)
    blocks.append(heading("2. Power on: volts", width, level=2))
    if not volts:
        says = "No voltage could be worked out for this plan. The findings on the first sheet say why."
        return *blocks, *paragraph(says, width)
    positions = positions_words(situation)
    if positions:
        blocks += paragraph(f"Everything stands as in a session: {positions}.", width)
    blocks += paragraph(
        "Meter on V DC where nothing else is said. Where the black lead goes to a supply, clip it there with "
        "a long test lead. A reading outside its range points at a joint, wire or "
        f"part between this row and the last good one. Under {worded(DEAD_V, 'voltage')} counts as dead.",
        width,
    )
    place = ""
    rows: list[Row] = []
    for check in (*volts, None):
        if rows and (check is None or check.place != place):
            blocks.append(heading(place, width, level=3))
            blocks += table(_VOLT_COLUMNS, rows, width)
            rows = []
        if check is not None:
            place = check.place
            rows.append(_cells(situation, check))
    return tuple(blocks)


def expectation(check: VoltCheck) -> tuple[str, str]:
    """Return what the meter should read, and the range that is good, as they are printed."""
    if check.expect_v == 0.0:
        return "0 V", f"under {worded(DEAD_V, 'voltage')}"
    expect = worded(check.expect_v, "voltage") + (" AC" if check.alternating else "")
    return expect, f"{check.low_v:.1f} to {check.high_v:.1f} V".replace("-", "−")


def _cells(situation: Situation, check: VoltCheck) -> tuple[str | Cell, ...]:
    expect, span = expectation(check)
    return (
        Cell(tick=True),
        check_words(situation.plan, check.red),
        check_words(situation.plan, check.black),
        expect,
        span,
        "",
        check.what,
    )
