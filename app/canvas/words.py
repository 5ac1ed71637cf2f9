"""What the view says about a part, a wire or a terminal in plain words: tips, the strip, screen readers."""

import math

from app.canvas.contact_words import contact_words
from app.canvas.hits.area_hit import areas_of
from app.canvas.hits.hit import Hit
from app.canvas.readings import reading
from app.canvas.sight import Sight
from app.canvas.wire_names import colour_name
from app.ground_keys import BOARD, joist_index
from wiring.plan.designations import part_label, terminal_label
from wiring.plan.groups import members, thing_of
from wiring.quantities.wording import worded

HOLD_LINE = "Click to select it, then drag its corners; two clicks add one"
HOLD_AREA = "Drag its name to move it, an edge to resize it; click the name to select what is in it."

WHOLE = "A click takes all of its group, one more this part alone."


def part_words(sight: Sight, part_id: str) -> str:
    """Return title, designation, the builder's own words: ``12 V lamp -E4, by the crane``; its group."""
    part = sight.plan.parts[part_id]
    kind = sight.kinds.get(part.kind)
    title = kind.title if kind is not None else f"Unknown part “{part.kind}”"
    words = f"{title} {part_label(sight.plan, part_id)}"
    words = f"{words}, {part.label}" if part.label else words
    whole = members(sight.plan, part_id)
    return f"{words}, in a group of {len(whole)}" if whole else words


def wire_words(sight: Sight, wire_id: str) -> str:
    """Return label, size, colour and ends of a wire."""
    wire = sight.plan.wires[wire_id]
    ends = " to ".join(terminal_label(sight.plan, ref) for ref in (wire.start, wire.end))
    words = f"Wire -{wire.label}, {wire.size}, {colour_name(wire.colour)}, {ends}"
    return f"{words}, built" if wire.built else words


def wireway_words(sight: Sight, way_id: str) -> str:
    """Return name, hole and bundle of a wireway: ``Wireway “Beam”, hole 20 mm, 12 wires fill 34 %``."""
    from wiring.routing.bundles import bundles

    way = sight.plan.wireways[way_id]
    units = sight.plan.habits.units
    words = f"Wireway “{way.name}”, hole {worded(way.hole_mm / 1000, 'length', units)}"
    bundle = next((b for b in bundles(sight.plan) if b.wireway.id == way_id), None)
    if bundle is None:
        return f"{words}, empty"
    count = len(bundle.wires)
    words = f"{words}, {count} wire{'s fill' if count > 1 else ' fills'} {worded(bundle.fill, 'fraction')}"
    return words if bundle.fits else f"{words}: drill {worded(bundle.hole_mm / 1000, 'length', units)}"


def joist_words(sight: Sight, index: int) -> str:
    """Return size and length of a joist: ``Joist 20 mm by 70 mm, 600 mm long``."""
    joist, units = sight.plan.joists[index], sight.plan.habits.units
    sizes = (joist.width_mm, joist.depth_mm, math.dist(joist.start, joist.end))
    wide, deep, long = (worded(mm / 1000, "length", units) for mm in sizes)
    return f"Joist {wide} by {deep}, {long} long"


def hit_words(sight: Sight, hit: Hit) -> str:
    """Return one line about what is under the pointer; "" for nothing."""
    if hit.terminal is not None:
        label = terminal_label(sight.plan, hit.terminal)
        volts = sight.figures.terminals.get(hit.terminal) if sight.figures is not None else None
        read = worded(volts, "voltage") if volts is not None else ""
        kind = sight.kinds.get(sight.plan.parts[hit.terminal.part].kind)
        told = (f"Terminal {label}", read, contact_words(kind, hit.terminal.terminal))
        return ", ".join(words for words in told if words)
    if hit.part:
        return part_words(sight, hit.part)
    if hit.wire:
        return wire_words(sight, hit.wire)
    if hit.way in sight.plan.wireways:
        return wireway_words(sight, hit.way)
    if 0 <= hit.joist < len(sight.plan.joists):
        return joist_words(sight, hit.joist)
    if hit.line:
        return f"{'The board' if hit.line == BOARD else 'Track'}. {HOLD_LINE}"
    area = areas_of(sight.plan).get(hit.area)
    if area is None:
        return ""
    return f"{'Scene' if hit.area in sight.plan.scenes else 'Panel'} “{area.name}”"


def tip_words(sight: Sight, hit: Hit) -> str:
    """Return the tip for the pointer: what it is over, how that stands, what it reads, what is wrong."""
    first = hit_words(sight, hit)
    if not first or hit.terminal is not None:
        return first
    lines = [first]
    if hit.area:
        return f"{first}\n{HOLD_AREA}"
    if members(sight.plan, hit.part):
        lines.append(WHOLE)
    position = sight.positions.get(hit.part, "")
    if position:
        lines.append(f"Stands at “{position}”." + (" Click here to throw it." if hit.lever else ""))
    if figures := reading(sight, hit.id):
        lines.append(figures)
    finding = sight.worst.get(hit.id)
    if finding is not None:
        lines += [finding.what, finding.mend]
    return "\n".join(lines)


def ground_words(sight: Sight, ground: str) -> str:
    """Return one line about a wireway, joist, track, board, scene or panel as a selection names it."""
    if ground in sight.plan.wireways:
        return wireway_words(sight, ground)
    if 0 <= joist_index(ground) < len(sight.plan.joists):
        return joist_words(sight, joist_index(ground))
    area = areas_of(sight.plan).get(ground)
    if area is not None:
        return f"{'Scene' if ground in sight.plan.scenes else 'Panel'} “{area.name}”"
    return "The board" if ground == BOARD else "Track"


def selection_words(sight: Sight, selected: frozenset[str], grounds: frozenset[str] = frozenset()) -> str:
    """Return what a screen reader says when the selection changes."""
    parts = [i for i in selected if i in sight.plan.parts]
    wires = [i for i in selected if i in sight.plan.wires]
    if not parts and not wires:
        said = [ground_words(sight, ground) for ground in sorted(grounds)]
        if len(said) > 1:
            return (
                f"{len(said)} {'joists' if all(joist_index(g) >= 0 for g in grounds) else 'things'} selected"
            )
        return f"{said[0]} selected" if said else "Nothing selected"
    if len(parts) + len(wires) + len(grounds) == 1:
        words = part_words(sight, parts[0]) if parts else wire_words(sight, wires[0])
        figures = reading(sight, (parts or wires)[0])
        return f"{words} selected" + (f", {figures}" if figures else "")
    joists = [g for g in grounds if joist_index(g) >= 0]
    counts = [
        f"{len(ids)} {name}{'s' if len(ids) > 1 else ''}"
        for ids, name in ((parts, "part"), (wires, "wire"), (joists, "joist"))
        if ids
    ]
    listed = " and ".join(counts) if len(counts) < 3 else f"{counts[0]}, {' and '.join(counts[1:])}"
    one = thing_of(sight.plan, parts) and not grounds
    return f"One thing of {listed} selected" if one else f"{listed} selected"
