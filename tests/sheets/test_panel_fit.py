"""Whether parts fit on their panel, and what its front and its lists of wires show."""

from collections import Counter
from pathlib import Path as FilePath

import pytest
from msgspec.structs import replace
from support.editing import KINDS

from wiring.files.store import load
from wiring.findings.panel_fit import find
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.picture import Disc, Words
from wiring.plan.harness import harness_of
from wiring.sheets.panel_front import front_view
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.panel_template import faces

DEMOS = FilePath(__file__).parents[2] / "demo_layouts"
SIDING = load(DEMOS / "siding.underboard")


def found(**moves):
    """Findings after parts of the siding's panel were moved: designation to its new place."""
    parts = dict(SIDING.parts)
    for part in SIDING.parts.values():
        if part.designation in moves:
            parts[part.id] = replace(part, **moves[part.designation])
    return list(find(examine(replace(SIDING, parts=parts), KINDS, outlooks=False)))


def spot(designation):
    part = next(p for p in SIDING.parts.values() if p.designation == designation)
    return part.x_mm, part.y_mm


def test_the_demos_panels_can_be_built():
    for name in ("quay", "siding", "harbour"):
        assert list(find(examine(load(DEMOS / f"{name}.underboard"), KINDS, outlooks=False))) == []


@pytest.mark.parametrize(("gap_mm", "told"), [(-4.0, True), (1.9, True), (2.0, False), (9.0, False)])
def test_two_toggles_need_two_millimetres_between_their_bodies(gap_mm, told):
    x, y = spot("S1")
    (*close,) = found(S2={"x_mm": x + 13.0 + gap_mm, "y_mm": y})
    assert bool(close) is told
    if told:
        assert "-S1 and -S2" in close[0].what
        assert len(close[0].parts) == 2


@pytest.mark.parametrize(("over_mm", "told"), [(0.5, True), (0.0, False)])
def test_a_body_may_reach_the_edge_but_not_over_it(over_mm, told):
    panel = next(iter(SIDING.panels.values()))
    right = panel.x_mm + panel.width_mm
    over = found(S3={"x_mm": right - 6.5 + over_mm})
    assert [f.what for f in over if "edge" in f.what] == (
        [f"-S3 reaches over the edge of the panel {panel.name}."] if told else []
    )


def test_the_hole_is_the_one_the_kind_says():
    kinds = {**KINDS, "toggle-on-on-2p": replace(KINDS["toggle-on-on-2p"], hole_mm=12.2)}
    (face,) = faces(SIDING, kinds)
    assert {h.across_mm for h in face.holes if h.part.designation.startswith("S")} == {12.2}
    assert {h.across_mm for h in face.holes if h.part.designation.startswith("P")} == {8.0}


def test_the_front_bears_every_label_once_and_nothing_on_top_of_it():
    for name in ("siding", "harbour"):
        plan = load(DEMOS / f"{name}.underboard")
        for face in faces(plan, KINDS):
            picture, scale = front_view(face, 255.0, 140.0)
            words = [i for i in picture.items if isinstance(i, Words)]
            told = " ".join(w.text for w in words)
            for legend in face.panel.texts:
                assert legend.text in told
            for hole in face.holes:
                assert face.panel.texts or hole.part.label.split()[0] in told
                assert f"-{hole.part.designation}" in told
            assert sum(isinstance(i, Disc) for i in picture.items) == len(face.holes)
            assert 0 < scale <= 1
            boxes = [words_box(w) for w in words]
            for i, one in enumerate(boxes):
                assert not any(overlap(one, other, 0.3) for other in boxes[i + 1 :]), words[i].text


def test_every_wire_end_on_a_panel_stands_in_its_list_of_wires():
    leaves = panel_sections(SIDING, KINDS, "A4")[0].leaves
    texts = Counter(w.text for leaf in leaves for w in leaf.items if isinstance(w, Words))
    mounted = {h.part.id for f in faces(SIDING, KINDS) for h in f.holes}
    ends = Counter(w.label for w in SIDING.wires.values() for r in (w.start, w.end) if r.part in mounted)
    assert ends
    harness = harness_of(SIDING, KINDS, next(iter(SIDING.panels.values())))
    ends.update(w.label for w in harness.inner)  # these stand in the table of ways as well
    assert {label: texts[label] for label in ends} == dict(ends)
