"""Write pictures as the pages of a PDF: vector only, exact millimetres, fonts embedded, text selectable."""

from collections.abc import Sequence
from io import BytesIO
from pathlib import Path as FilePath
from typing import Any, NamedTuple

from wiring.pictures.metrics import baseline_mm, ground_corners, start_mm
from wiring.pictures.picture import Anchor, Disc, Link, Path, Pen, Picture, Point, Words
from wiring.pictures.theme import PAPER, Theme, resolve
from wiring.pictures.typefaces import BOX_EM, printable, runs, typeface

PT_PER_MM = 72 / 25.4


class Page(NamedTuple):
    """One page, as large as its picture; an empty bookmark gives it no line in the outline."""

    picture: Picture
    bookmark: str = ""
    level: int = 0  # depth of the bookmark; one more than the bookmark before it at most


def write_pdf(
    pages: Sequence[Page],
    path: FilePath | str,
    title: str = "",
    author: str = "",
    theme: Theme = PAPER,
    repeatable: bool = False,
) -> None:
    """Write the pages to a file; OSError when it cannot be written, ValueError when there is no page."""
    FilePath(path).write_bytes(pdf_bytes(pages, title, author, theme, repeatable))


def pdf_bytes(
    pages: Sequence[Page],
    title: str = "",
    author: str = "",
    theme: Theme = PAPER,
    repeatable: bool = False,
) -> bytes:
    """Return the pages as a PDF file; `repeatable` leaves out the date, so equal pages give equal bytes."""
    from reportlab.pdfgen.canvas import Canvas

    if not pages:
        raise ValueError("There is no page to write.")
    for weight in _weights(pages):
        typeface(weight)  # registers it
    stream = BytesIO()
    canvas = Canvas(
        stream, pageCompression=1, invariant=1 if repeatable else 0, initialFontName=typeface().name
    )
    canvas.setTitle(printable(title))
    canvas.setAuthor(printable(author))
    canvas.setCreator("Underboard")
    canvas.setProducer("Underboard")
    canvas.setSubject("")
    targets = {i.name for page in pages for i in page.picture.items if isinstance(i, Anchor)}
    level = -1
    for number, page in enumerate(pages):
        painter = _Painter(canvas, page.picture, theme, targets)
        if page.bookmark:
            level = min(page.level, level + 1)
            canvas.bookmarkPage(f"page {number}")
            canvas.addOutlineEntry(printable(page.bookmark), f"page {number}", level)
        painter.paint()
        canvas.showPage()
    if level >= 0:
        canvas.showOutline()
    canvas.save()
    return stream.getvalue()


def _weights(pages: Sequence[Page]) -> set[str]:
    return {i.weight for page in pages for i in page.picture.items if isinstance(i, Words)} | {"regular"}


class _Painter:
    """Paints one picture on the canvas' current page."""

    def __init__(self, canvas: Any, picture: Picture, theme: Theme, targets: set[str]) -> None:  # noqa: ANN401
        self.canvas = canvas
        self.picture = picture
        self.theme = theme
        self.targets = targets
        canvas.setPageSize((picture.width_mm * PT_PER_MM, picture.height_mm * PT_PER_MM))
        canvas.setLineJoin(1)

    def paint(self) -> None:
        for item in self.picture.items:
            if isinstance(item, Path):
                self._path(item)
            elif isinstance(item, Disc):
                self._disc(item)
            elif isinstance(item, Words):
                self._words(item)
            elif isinstance(item, Link):
                self._link(item)
            else:
                self._anchor(item)

    def _at(self, point: Point) -> Point:
        x = (point[0] - self.picture.left_mm) * PT_PER_MM
        y = (self.picture.top_mm + self.picture.height_mm - point[1]) * PT_PER_MM
        return x, y

    def _path(self, path: Path) -> None:
        if len(path.points) < 2:
            return
        outline = self.canvas.beginPath()
        outline.moveTo(*self._at(path.points[0]))
        rest = [self._at(p) for p in path.points[1:]]
        if path.smooth:
            for step in range(0, len(rest) - 2, 3):
                outline.curveTo(*rest[step], *rest[step + 1], *rest[step + 2])
        else:
            for point in rest:
                outline.lineTo(*point)
        if path.closed:
            outline.close()
        with _State(self.canvas):
            stroke, fill = self._brush(path.pen, path.fill, path.opacity)
            if stroke or fill:
                self.canvas.drawPath(outline, stroke=stroke, fill=fill, fillMode=1)

    def _disc(self, disc: Disc) -> None:
        x, y = self._at(disc.centre)
        across, down = disc.radius_x_mm * PT_PER_MM, disc.radius_y_mm * PT_PER_MM
        with _State(self.canvas):
            stroke, fill = self._brush(disc.pen, disc.fill, disc.opacity)
            if stroke or fill:
                self.canvas.ellipse(x - across, y - down, x + across, y + down, stroke=stroke, fill=fill)

    def _words(self, words: Words) -> None:
        if not printable(words.text).strip() or words.size_mm <= 0:
            return
        if words.ground:
            self._path(Path(ground_corners(words), Pen(width_mm=0.0), words.ground, closed=True))
        face = typeface(words.weight)
        size = words.size_mm * PT_PER_MM
        with _State(self.canvas):
            self.canvas.translate(*self._at(words.at))
            if words.turn_deg:
                self.canvas.rotate(-words.turn_deg)
            self.canvas.setFillColor(self._colour(words.colour))
            self.canvas.setStrokeColor(self._colour(words.colour))
            self.canvas.setLineWidth(0.04 * size)
            self.canvas.setFont(face.name, size)
            x, y = start_mm(words) * PT_PER_MM, -baseline_mm(words) * PT_PER_MM
            for run in runs(words.text, words.weight):
                if run:
                    self.canvas.drawString(x, y, run)
                    x += sum(face.advances_em[ord(c)] for c in run) * size
                else:
                    side = 0.08 * size
                    self.canvas.rect(x + side, y, BOX_EM * size - 2 * side, face.cap_em * size)
                    x += BOX_EM * size

    def _link(self, link: Link) -> None:
        if link.target not in self.targets:
            return
        left, top = self._at((link.left_mm, link.top_mm))
        right, bottom = self._at((link.left_mm + link.width_mm, link.top_mm + link.height_mm))
        self.canvas.linkAbsolute("", f"to {link.target}", (left, bottom, right, top), Border="[0 0 0]")

    def _anchor(self, anchor: Anchor) -> None:
        left, top = self._at(anchor.at)
        self.canvas.bookmarkPage(f"to {anchor.name}", fit="XYZ", left=left, top=top, zoom=0)

    def _brush(self, pen: Pen, fill: str, opacity: float) -> tuple[int, int]:
        if pen.width_mm > 0:
            self.canvas.setStrokeColor(self._colour(pen.colour))
            self.canvas.setLineWidth(pen.width_mm * PT_PER_MM)
            if any(d > 0 for d in pen.dashes_mm):
                self.canvas.setDash([d * PT_PER_MM for d in pen.dashes_mm])
        if fill:
            self.canvas.setFillColor(self._colour(fill))
        if opacity < 1:
            self.canvas.setFillAlpha(max(0.0, opacity))
            self.canvas.setStrokeAlpha(max(0.0, opacity))
        return int(pen.width_mm > 0), int(bool(fill))

    def _colour(self, colour: str) -> Any:  # noqa: ANN401 - a reportlab colour
        from reportlab.lib.colors import HexColor

        return HexColor(resolve(colour, self.theme))


class _State:
    """Keeps what one item sets on the canvas from reaching the next."""

    def __init__(self, canvas: Any) -> None:  # noqa: ANN401
        self.canvas = canvas

    def __enter__(self) -> None:
        self.canvas.saveState()

    def __exit__(self, *_: object) -> None:
        self.canvas.restoreState()
