"""The documents of a set as sections of sheets: drawings of the whole layout, lists of what is shown."""

from collections.abc import Callable, Collection, Mapping, Sequence
from itertools import groupby

from wiring.findings.situation import Situation
from wiring.sheets.bench_list import BenchRow, bench_blocks
from wiring.sheets.blocks import Block, gap
from wiring.sheets.cut_list import cut_blocks
from wiring.sheets.drawing_sheets import drawing_sections
from wiring.sheets.flow import Text, flowed
from wiring.sheets.harness_list import harness_blocks
from wiring.sheets.label_sheets import label_section
from wiring.sheets.meter_sheet import meter_blocks
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.paper import sheet
from wiring.sheets.parts_list import part_blocks
from wiring.sheets.plan_sheets import plan_sections, rear_leaves
from wiring.sheets.resistor_list import resistor_blocks
from wiring.sheets.safety import safety_blocks
from wiring.sheets.section import Section, body_size, text_section
from wiring.sheets.strip_charts import strip_blocks
from wiring.sheets.tile_sheets import tile_sections
from wiring.sheets.tiling import Tiling

_BETWEEN_MM = 4.0  # from one list to the heading of the next in the same document
_TIGHTEST = 0.85  # of running text, so that two lines do not get a sheet of their own


def set_sections(
    whole: Situation,
    shown: Situation,
    scene: str | None,
    paper: str,
    chosen: Collection[str],
    rows: Sequence[BenchRow],
    tiling: Tiling | None = None,
) -> tuple[Section, ...]:
    """Return what is chosen, in the order it is printed in; lists that follow each other share sheets."""
    plan, kinds = shown.plan, shown.kinds
    upright = sheet(paper)
    width = body_size(upright)[0]

    def text(title: str, anchor: str, *blocks: Sequence[Block]) -> tuple[Text, ...]:
        said = [some for some in blocks if some]
        parted = [(*some, gap(_BETWEEN_MM)) for some in said[:-1]] + said[-1:]
        return (Text(title, anchor, tuple(block for some in parted for block in some)),)

    def safety() -> tuple[Section, ...]:
        blocks = safety_blocks(plan, kinds, width)
        return (text_section("Safety notes", "safety", upright, blocks, tightest=_TIGHTEST),)

    # short lists that are read together are one document
    makers: Mapping[str, Callable[[], tuple[Section | Text, ...]]] = {
        "safety": safety,
        "plan": lambda: plan_sections(whole, paper, scene),
        "tiles": lambda: tile_sections(whole, paper, tiling) if tiling is not None else (),
        "circuits": lambda: drawing_sections(whole, paper, None if scene is None else plan.wires),
        "bench": lambda: text("Bench list", "bench", bench_blocks(plan, kinds, width, rows) if rows else ()),
        "cut": lambda: text(
            "Cut list",
            "cut",
            cut_blocks(plan, kinds, width, rows) if rows else (),
            harness_blocks(plan, kinds, width),
        ),
        "strips": lambda: text(
            "Terminal charts", "strips", strip_blocks(whole.plan, kinds, width, plan.parts)
        ),
        "parts": lambda: text(
            "Parts list",
            "parts",
            part_blocks(plan, kinds, width) if plan.parts else (),
            resistor_blocks(plan, kinds, width),
        ),
        "meter": lambda: text(
            "Meter checks", "meter", meter_blocks(whole, width, scene) if plan.parts else ()
        ),
        "panels": lambda: panel_sections(whole.plan, kinds, paper, scene, rear_leaves(whole, paper, scene)),
        "labels": lambda: label_section(plan, tuple(rows), paper),
    }
    made = [piece for name, make in makers.items() if name in chosen for piece in make()]
    found: list[Section] = []
    for is_text, group in groupby(made, key=lambda piece: isinstance(piece, Text)):
        if is_text:
            found += flowed([p for p in group if isinstance(p, Text)], upright)
        else:
            found += [p for p in group if isinstance(p, Section)]
    return tuple(found)
