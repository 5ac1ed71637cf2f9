"""The meter checks as blocks for the sheets."""

from wiring.drawings.marks import part_mark
from wiring.findings.situation import Situation
from wiring.quantities.wording import worded
from wiring.sheets.amp_checks import AmpCheck, amp_checks
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.meanings import MEANINGS
from wiring.sheets.meter_checks import DEAD_V, VoltCheck, check_words, positions_words, volt_checks
from wiring.sheets.ohm_checks import OhmCheck, ohm_checks
from wiring.sheets.table import Cell, Column, Row, table

_OHM_COLUMNS = (
    Column("", 6, "centre"),
    Column("What", 40),
    Column("Between", 59),
    Column("Expect", 54),
    Column("Circuit", 13),
)
_AMP_COLUMNS = (
    Column("", 6, "centre"),
    Column("What", 32),
    Column("Meter", 51),
    Column("Expect", 22, "right", "semibold"),
    Column("Good from, to", 34, "right"),
    Column("Read", 14),
    Column("Circuit", 13),
)
_MEANING_COLUMNS = (Column("You read", 70, weight="semibold"), Column("Look first at", 102))
_VOLT_COLUMNS = (
    Column("", 6, "centre"),
    Column("Red lead", 24, weight="semibold"),
    Column("Black lead", 24),
    Column("Expect", 22, "right", "semibold"),
    Column("Good from, to", 34, "right"),
    Column("Read", 14),
    Column("Circuit", 13),
    Column("Which is", 35),
)


def meter_blocks(situation: Situation, width: float, place: str | None = None) -> tuple[Block, ...]:
    """Return the checks, or those of one place: power off first, then volts, then amps."""
    ohms = ohm_checks(situation, place)
    volts = [c for c in volt_checks(situation) if place in (None, c.place)]
    blocks: list[Block] = [heading("Meter checks", width, anchor="meter")]
    if ohms:
        blocks.append(heading("1. Power off", width, level=2))
        blocks += paragraph(
            "Unplug every supply and take out the batteries. Meter on ohms or on the beeper. Parts that are "
            "wired in may be bridged by others: if a silent contact beeps, take off one of its wires and try "
            "again.",
            width,
            leads=True,
        )
        blocks += table(_OHM_COLUMNS, [_ohm_cells(c) for c in ohms], width)
    blocks.append(heading("2. Power on: volts", width, level=2))
    if not volts:
        says = "No voltage could be worked out for this plan. The findings on the first sheet say why."
        return *blocks, *paragraph(says, width), *_last(situation, width, place)
    positions = positions_words(situation)
    if positions:
        blocks += paragraph(f"Everything stands as in a session: {positions}.", width)
    blocks += paragraph(
        "Meter on V DC where nothing else is said. Where the black lead goes to a supply, clip it there with "
        "a long test lead. A reading outside its range points at a joint, wire or "
        f"part between this row and the last good one. Under {worded(DEAD_V, 'voltage')} counts as dead.",
        width,
    )
    here = ""
    rows: list[Row] = []
    for check in (*volts, None):
        if rows and (check is None or check.place != here):
            blocks.append(heading(here, width, level=3))
            blocks += table(_VOLT_COLUMNS, rows, width)
            rows = []
        if check is not None:
            here = check.place
            rows.append(_cells(situation, check))
    return *blocks, *_last(situation, width, place)


def _last(situation: Situation, width: float, place: str | None) -> tuple[Block, ...]:
    """Return the currents, and what a wrong reading means."""
    blocks: list[Block] = []
    amps = amp_checks(situation, place)
    if amps:
        blocks.append(heading("3. Power on: amperes", width, level=2))
        blocks += paragraph(
            "Red lead in the 10 A socket, meter on A. The meter goes into the line, never across a supply: "
            "that blows its fuse. Put the lead back into the volts socket afterwards.",
            width,
            leads=True,
        )
        blocks += table(_AMP_COLUMNS, [_amp_cells(c) for c in amps], width)
    blocks.append(heading("What a wrong reading means", width, level=2))
    blocks += table(_MEANING_COLUMNS, MEANINGS, width)
    return tuple(blocks)


def _ohm_cells(check: OhmCheck) -> tuple[str | Cell, ...]:
    here = Cell(see=(part_mark(check.refs[0].part),)) if check.refs else Cell()
    return Cell(tick=True), check.what, check.where, check.expect, here


def _amp_cells(check: AmpCheck) -> tuple[str | Cell, ...]:
    kind = " AC" if check.alternating else ""
    return (
        Cell(tick=True),
        check.what,
        check.where,
        worded(check.expect_a, "current") + kind,
        f"{worded(check.low_a, 'current')} to {worded(check.high_a, 'current')}",
        "",
        Cell(see=(part_mark(check.part),)),
    )


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
        Cell(see=(part_mark(check.red.part),)),
        check.what,
    )
