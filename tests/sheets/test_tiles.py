"""The plan in tiles: true to scale over the seams, mirrored from below, none printed for nothing."""

import io
import re
from datetime import date
from itertools import pairwise

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from support.editing import KINDS, quay

from wiring.drawings.item_clip import clipped, item_box
from wiring.drawings.plan_tiles import tile_grid
from wiring.findings.situation import examine
from wiring.pictures.metrics import overlap, words_box
from wiring.pictures.pdf import pdf_bytes
from wiring.pictures.picture import Disc, Path, Pen, Words
from wiring.sheets.sheet_set import made_set
from wiring.sheets.tiling import Tiling, read_tiling

TODAY = date(2026, 3, 14)
PT = 72 / 25.4
WIDE_MM = 900.0  # of the board, on two tiles of A4 at 1:2


def board_plan():
    """The small plan on a board that two tiles hold at 1:2."""
    plan = quay()
    spots = zip(plan.parts.values(), ((100.0, 150.0), (400.0, 150.0), (800.0, 60.0)), strict=True)
    parts = {p.id: replace(p, x_mm=x, y_mm=y, scene="", panel="") for p, (x, y) in spots}
    wires = {w.id: replace(w, bends=()) for w in plan.wires.values()}
    board = ((0.0, 0.0), (WIDE_MM, 0.0), (WIDE_MM, 200.0), (0.0, 200.0))
    return plan.with_changes(
        board=board, tracks=(), scenes={}, panels={}, wireways={}, parts=parts, wires=wires
    )


def tiles_of(plan, reduction, **more):
    situation = examine(plan, KINDS, outlooks=False)
    return made_set(situation, "A4", TODAY, only=("tiles",), tiling=Tiling(reduction, **more)).pages


def words(page):
    return [i for i in page.picture.items if isinstance(i, Words) and i.text.strip()]


def kind(page):
    return page.picture.title.split(": ", 1)[1].split(", sheet ")[0]


@pytest.fixture(scope="module")
def pages():
    return tiles_of(board_plan(), 2.0)


def uprights(page_content):
    """The x of every upright line of a path in a PDF page, in millimetres."""
    found = set()
    for path in re.findall(r"((?:[-\d.]+ [-\d.]+ [ml]\s+)+)(?:h )?S", page_content):
        points = [(float(x), float(y)) for x, y in re.findall(r"([-\d.]+) ([-\d.]+) [ml]", path)]
        for (x, y), (u, v) in pairwise(points):
            if x == u and abs(v - y) > 90 * PT:
                found.add(round(x / PT, 3))
    return found


def test_the_board_measures_over_the_seams_what_it_should(pages):
    """The tile is 247 mm wide, the next begins 237 mm on: 255 mm of body, less 4 mm at each side, less 10."""
    reader = pypdf.PdfReader(io.BytesIO(pdf_bytes(pages)))
    above = [n for n, p in enumerate(pages) if kind(p).startswith("Tile ") and "above" in kind(p)]
    assert [kind(pages[n]) for n in above] == ["Tile A1 from above", "Tile A2 from above"]
    lefts = [uprights(reader.pages[n].get_contents().get_data().decode("latin-1")) for n in above]
    step = 237.0
    across = [b + step - a for a in lefts[0] for b in lefts[1]]
    assert min(abs(d - WIDE_MM / 2) for d in across) < 0.02


def test_every_tile_has_the_bar_of_a_hundred_millimetres_and_its_scale(pages):
    reader = pypdf.PdfReader(io.BytesIO(pdf_bytes(pages)))
    for page, printed in zip(pages, reader.pages, strict=True):
        content = printed.get_contents().get_data().decode("latin-1")
        lines = re.findall(r"(\S+) (\S+) m (\S+) (\S+) l\s+S", content)
        level = [(float(c) - float(a)) / PT for a, b, c, d in lines if b == d]
        assert any(abs(length - 100.0) < 0.01 for length in level)
        if kind(page).startswith("Tile "):
            assert "Scale 1:2" in [w.text for w in words(page)]


def drawn_wires(page):
    """The points of wires on a tile, about the middle of its width."""
    middle = page.picture.width_mm / 2 + 5.0  # the frame lies 10 mm further from one edge than the other
    found = []
    for item in page.picture.items:
        if isinstance(item, Path) and item.pen.colour.startswith("#") and not item.closed:
            found.append(sorted((round(x - middle, 2), round(y, 2)) for x, y in item.points))
    return sorted(found)


def test_a_tile_from_below_is_the_exact_mirror_of_the_tile_of_that_name(pages):
    by_kind = {kind(p): p for p in pages}
    for name in ("A1", "A2"):
        above = drawn_wires(by_kind[f"Tile {name} from above"])
        below = drawn_wires(by_kind[f"Tile {name} from below"])
        turned = sorted(sorted((round(-x, 2) + 0.0, y) for x, y in line) for line in below)
        assert len(above) == len(turned) >= 2
        for one, other in zip(above, turned, strict=True):
            for (x, y), (u, v) in zip(one, other, strict=True):
                assert abs(x - u) < 0.02 and abs(y - v) < 0.02


def test_tiles_from_below_come_in_the_order_they_are_seen_in(pages):
    assert [kind(p) for p in pages if kind(p).startswith("Tile ")] == [
        "Tile A1 from above",
        "Tile A2 from above",
        "Tile A2 from below",
        "Tile A1 from below",
    ]


def test_a_tile_says_which_one_joins_on_which_side(pages):
    for page in pages:
        if not kind(page).startswith("Tile A1"):
            continue
        (joins,) = [w for w in words(page) if w.text == "joins A2"]
        right = "above" in kind(page)
        assert (joins.at[0] > page.picture.width_mm / 2) == right


def test_a_tile_without_wiring_is_not_printed_and_the_map_says_so():
    plan = board_plan()
    far = replace(next(iter(plan.parts.values())), id="p999", designation="E99", x_mm=3000.0)
    plan = plan.with_changes(parts={**plan.parts, far.id: far})
    made = tiles_of(plan, 2.0)
    above = [p for p in made if "above" in kind(p)]
    tiles = [kind(p).split()[1] for p in above if kind(p).startswith("Tile ")]
    said = " ".join(w.text for w in words(above[0]))
    assert "hold no wiring and are not printed" in said
    crossed = {w.text for w in words(above[0]) if re.fullmatch(r"A\d", w.text)} - set(tiles)
    assert len(crossed) >= 3 and f"{len(crossed)} tiles hold no wiring" in said
    last = above[-1]
    assert any(w.text == f"A{int(tiles[-1][1:]) - 1} holds no wiring" for w in words(last))


@pytest.mark.parametrize("reduction", [1.0, 5.0, 7.5])
def test_no_words_of_tiles_lie_on_other_words_or_outside_the_frame(reduction):
    for page in tiles_of(quay(), reduction):
        boxes = sorted((words_box(w), w.text) for w in words(page))
        for i, (one, text) in enumerate(boxes):
            if len(text) > 1:  # the names of zones stand in the border
                assert one[0] >= 19.9 and one[2] <= page.picture.width_mm - 9.9, text
            for other, more in boxes[i + 1 :]:
                if other[0] >= one[2]:
                    break
                assert not overlap(one, other, 0.45), (kind(page), text, more)


@pytest.mark.parametrize("overlap_mm", [0.0, 10.0, 25.0])
@given(reduction=st.floats(1.0, 20.0), below=st.booleans())
@settings(deadline=None, max_examples=25)
def test_tiles_cover_the_whole_plan_and_share_what_they_should(overlap_mm, reduction, below):
    plan = board_plan()
    grid = tile_grid(plan, KINDS, 1 / reduction, (247.0, 130.0), overlap_mm, below=below)
    right, bottom = grid.size_mm
    for x, y in plan.board:
        at = grid.fit.at((x, y))
        assert 0.0 <= at[0] <= right and 0.0 <= at[1] <= bottom
    for column in range(grid.columns - 1):
        assert grid.box(0, column)[2] - grid.box(0, column + 1)[0] == pytest.approx(overlap_mm)
    names = {grid.name(r, c) for r in range(grid.rows) for c in range(grid.columns)}
    assert len(names) == grid.rows * grid.columns


@given(
    points=st.lists(st.tuples(st.floats(-50, 50), st.floats(-50, 50)), min_size=3, max_size=6),
    closed=st.booleans(),
    smooth=st.booleans(),
)
@settings(deadline=None, max_examples=60)
def test_what_is_cut_lies_within_its_tile(points, closed, smooth):
    box = (-10.0, -20.0, 30.0, 15.0)
    items = (Path(tuple(points), Pen("ink", 0.5), "raised", closed, smooth), Disc(points[0], 9.0, 4.0))
    for item in clipped(items, box):
        left, top, right, bottom = item_box(item)
        air = item.pen.width_mm / 2 + 1e-6
        assert left >= box[0] - air and top >= box[1] - air
        assert right <= box[2] + air and bottom <= box[3] + air


@pytest.mark.parametrize(
    ("typed", "reduction"),
    [("1:5", 5.0), ("5", 5.0), (" 1 : 7,5 ", 7.5), ("1:1", 1.0), ("fit", None), ("", None)],
)
def test_scales_are_read_as_they_are_typed(typed, reduction):
    tiling = read_tiling(typed)
    assert (tiling.reduction if tiling else None) == reduction


@pytest.mark.parametrize("typed", ["0", "2:1", "1:1000", "1:-5", "half", "1:5:2", "nan", "٣"])
def test_what_is_no_scale_is_refused_in_one_sentence(typed):
    with pytest.raises(ValueError, match=r"^“.*” is no scale for tiles; write one from 1:1 to 1:100 .*\.$"):
        read_tiling(typed)


def test_what_neighbours_share_brings_no_tile_of_its_own():
    """A lamp that stands where two tiles overlap is shown by the first of them alone."""
    plan = board_plan()
    grid = tile_grid(plan, KINDS, 0.5, (247.0, 134.4))
    left = (grid.box(0, 1)[0] + 5.0 - grid.fit.paper[0]) / 0.5 + grid.fit.middle[0]  # middle of the overlap
    keep = next(p for p in plan.parts.values() if p.designation.startswith("E"))
    lamp = replace(keep, x_mm=left, y_mm=100.0)
    made = tiles_of(plan.with_changes(parts={lamp.id: lamp}, wires={}), 2.0)
    above = [kind(p) for p in made if kind(p).startswith("Tile ") and "above" in kind(p)]
    assert above == ["Tile A1 from above"]


def test_a_scale_that_takes_hundreds_of_sheets_is_refused():
    plan = quay().with_changes(board=((0.0, 0.0), (20000.0, 0.0), (20000.0, 8000.0)))
    with pytest.raises(ValueError, match=r"^At 1:1 the plan takes \d+ sheets of A4 a side; choose .*\.$"):
        tiles_of(plan, 1.0)
