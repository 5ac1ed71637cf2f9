"""Sheet sizes, and the areas of a sheet: frame, body, foot; all in millimetres from its top left corner."""

from typing import NamedTuple

Box = tuple[float, float, float, float]  # left, top, right, bottom

PAPERS: dict[str, tuple[float, float]] = {
    "A4": (210.0, 297.0),
    "Letter": (215.9, 279.4),
    "A3": (297.0, 420.0),
}
# ISO 5457: 20 mm at the filing edge, 10 mm at the others, a frame line of 0.7 mm.
FILING_MM, EDGE_MM, FRAME_PEN_MM = 20.0, 10.0, 0.7
PAD_MM = 6.0  # between frame and text
TITLE_MM = 22.0  # height of the title block
CHECK_MM = 9.0  # height of the strip with the check bar over it


class Sheet(NamedTuple):
    """One size of paper the way it is held."""

    name: str
    width_mm: float
    height_mm: float

    @property
    def landscape(self) -> bool:
        """Whether it is wider than high."""
        return self.width_mm > self.height_mm

    @property
    def frame(self) -> Box:
        """The drawing frame."""
        return FILING_MM, EDGE_MM, self.width_mm - EDGE_MM, self.height_mm - EDGE_MM

    @property
    def title_block(self) -> Box:
        """The title block: 180 mm wide as ISO 7200 has it, in the lower right corner of the frame."""
        left, _, right, bottom = self.frame
        return max(left, right - 180.0), bottom - TITLE_MM, right, bottom

    @property
    def body(self) -> Box:
        """Where text, lists and drawings go."""
        left, top, right, bottom = self.frame
        return left + PAD_MM, top + PAD_MM, right - PAD_MM, bottom - TITLE_MM - CHECK_MM


def sheet(paper: str = "A4", *, landscape: bool = False) -> Sheet:
    """Return a sheet of "A4", "Letter" or "A3"; ValueError with a plain sentence for any other paper."""
    if paper not in PAPERS:
        raise ValueError(f"Sheets are printed on A4, Letter or A3, not on “{paper}”.")
    width, height = PAPERS[paper]
    return Sheet(paper, height, width) if landscape else Sheet(paper, width, height)
