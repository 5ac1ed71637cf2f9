"""Draw one section: its source or the names of its rails at the left, its paths to the right."""

from wiring.drawings.circuit_block import Block, flat
from wiring.drawings.circuit_blocks import FLAG_MM, ROW_MM, dot, flag, leaf_block, line
from wiring.drawings.circuit_dress import Dresser
from wiring.drawings.circuit_facts import REFERENCE_BELOW_MM, SMALL_MM, Facts
from wiring.drawings.circuit_groups import block
from wiring.drawings.circuit_runs import run_block
from wiring.drawings.circuit_sections import AIR_MM, Section, run_start_mm
from wiring.drawings.marks import net_in, net_out
from wiring.pictures.picture import Anchor, Item, Words

LEAST_MM = 30.0
LEAD_MM = 3.0  # between a source and its rails


def section_items(facts: Facts, section: Section, dresser: Dresser) -> tuple[Item, ...]:
    """Return the items of a section; where its upper left corner lies is not told."""
    return tuple(_fed(facts, section, dresser) if section.source else _continued(facts, section))


def _continued(facts: Facts, section: Section) -> list[Item]:
    assert section.node is not None
    body = block(facts, section.node)
    items = flat(body)
    start = body.left - 2.0
    rails = [(0.0, section.top, body.open_top), (body.height, section.bottom, body.open_bottom)]
    for y, net, is_open in rails:
        if is_open:
            continue
        items.append(line((start, y), (0.0, y)))
        items.append(flag((start - FLAG_MM, y), 1, 0))
        name = facts.tails.names.get(net, "")
        at = (start - FLAG_MM - 0.6, y)
        items.append(Words(name, at, SMALL_MM, align="right", stand="middle"))
        items.append(Anchor(net_in(name), (at[0], y + REFERENCE_BELOW_MM)))
    return items


def _fed(facts: Facts, section: Section, dresser: Dresser) -> list[Item]:
    assert section.source is not None
    source = leaf_block(facts, section.source)
    upper, upper_mm = run_block(facts, list(section.upper), True)
    lower, lower_mm = run_block(facts, list(section.lower), False)
    body = (
        block(facts, section.node, max(source.height + 2 * LEAD_MM, LEAST_MM))
        if section.node is not None
        else None
    )
    height = max(body.height if body else 0.0, source.height + 2 * LEAD_MM)
    items = flat(source, (0.0, (height - source.height) / 2))
    shift = (height - source.height) / 2
    start = run_start_mm(source, height, bool(section.lower))
    if shift > 0:
        items.extend((line((0.0, 0.0), (0.0, shift)), line((0.0, height), (0.0, height - shift))))
    if body:
        runs_mm = max(upper_mm, lower_mm)
        x = max(start + runs_mm + (AIR_MM if runs_mm else 0.0), source.right + AIR_MM) - body.left
        items.extend(flat(body, (x, 0.0)))
        for y, run, run_mm, is_open in (
            (0.0, upper, upper_mm, body.open_top),
            (height, lower, lower_mm, body.open_bottom),
        ):
            items.extend(flat(run, (start, y)))
            if run_mm:
                items.append(line((0.0, y), (start, y)))
            if not is_open:
                items.append(line((start + run_mm if run_mm else 0.0, y), (x, y)))
    items.extend(_flags(dresser, section, height, body))
    return items


def _flags(dresser: Dresser, section: Section, height: float, body: Block | None) -> list[Item]:
    """Return the names of the source's own nets where they are drawn again elsewhere."""
    items: list[Item] = []
    for y, net in ((0.0, section.source_top), (height, section.source_bottom)):
        name = dresser.source_flag(net)
        if not name:
            continue
        items.extend((dot((0.0, y)), line((0.0, y), (-ROW_MM, y)), flag((-ROW_MM, y), -1, 0)))
        at = (-ROW_MM - FLAG_MM - 0.6, y)
        items.append(Words(name, at, SMALL_MM, align="right", stand="middle"))
        items.append(Anchor(net_out(name, to_left=True), (at[0], y + REFERENCE_BELOW_MM)))
    return items
