"""Write pictures as the pages of a PDF: vector only, exact millimetres, fonts embedded, text selectable."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from io import BytesIO
from typing import Any, NamedTuple

from wiring.pictures.many_records import collector_paused
from wiring.pictures.pdf_links import add_link
from wiring.pictures.pdf_operators import PT_PER_MM, Operators, Texts, texts_of
from wiring.pictures.picture import Anchor, Disc, Link, Path, Picture, Point, Words
from wiring.pictures.theme import PAPER, Theme
from wiring.pictures.typefaces import printable, typeface


class Page(NamedTuple):
    """One page, as large as its picture; an empty bookmark gives it no line in the outline."""

    picture: Picture
    bookmark: str = ""
    level: int = 0  # depth of the bookmark; one more than the bookmark before it at most
    under: str = ""  # a line of the outline below the bookmark, be that of an earlier page
    label: str = ""  # the number readers show for the page, where it is not its place in the file


def pdf_bytes(
    pages: Sequence[Page],
    title: str = "",
    author: str = "",
    theme: Theme = PAPER,
    repeatable: bool = False,
) -> bytes:
    """Return the pages as a PDF file; ValueError when there is no page.

    `repeatable` leaves out the date, so equal pages give equal bytes.
    """
    if not pages:
        raise ValueError("There is no page to write.")
    with collector_paused():
        return _written(pages, title, author, theme, repeatable)


def _written(pages: Sequence[Page], title: str, author: str, theme: Theme, repeatable: bool) -> bytes:
    from reportlab.pdfgen.canvas import Canvas

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
    texts = texts_of(canvas._doc)
    level = -1
    renumbered = any(page.label not in ("", str(i)) for i, page in enumerate(pages, start=1))
    for number, page in enumerate(pages):
        painter = _Painter(canvas, page.picture, theme, targets, texts)
        if page.bookmark:
            level = min(page.level, level + 1)
            canvas.bookmarkPage(f"page {number}")
            canvas.addOutlineEntry(printable(page.bookmark), f"page {number}", level)
        if page.under:
            canvas.bookmarkPage(f"under {number}")  # each line of the outline has a place of its own
            canvas.addOutlineEntry(printable(page.under), f"under {number}", level + 1)
        if renumbered:
            canvas.addPageLabel(number, prefix=printable(page.label))
        painter.paint()
        with _binary_streams():
            canvas.showPage()
    if level >= 0:
        canvas.showOutline()
    with _binary_streams():
        canvas.save()
    return stream.getvalue()


def _weights(pages: Sequence[Page]) -> set[str]:
    return {i.weight for page in pages for i in page.picture.items if isinstance(i, Words)} | {"regular"}


class _Painter:
    """Paints one picture on the canvas' current page."""

    def __init__(
        self,
        canvas: Any,  # noqa: ANN401
        picture: Picture,
        theme: Theme,
        targets: set[str],
        texts: Texts,
    ) -> None:
        self.canvas = canvas
        self.picture = picture
        self.targets = targets
        canvas.setPageSize((picture.width_mm * PT_PER_MM, picture.height_mm * PT_PER_MM))
        canvas.setLineJoin(1)
        self.operators = Operators(canvas, picture, theme, texts)

    def paint(self) -> None:
        write = self.operators
        paint = {
            Path: write.path,
            Words: write.words,
            Disc: write.disc,
            Link: self._link,
            Anchor: self._anchor,
        }
        for item in self.picture.items:
            paint[type(item)](item)  # type: ignore[operator]
        write.flush()

    def _at(self, point: Point) -> Point:
        x = (point[0] - self.picture.left_mm) * PT_PER_MM
        y = (self.picture.top_mm + self.picture.height_mm - point[1]) * PT_PER_MM
        return x, y

    def _link(self, link: Link) -> None:
        if link.target not in self.targets:
            return
        left, top = self._at((link.left_mm, link.top_mm))
        right, bottom = self._at((link.left_mm + link.width_mm, link.top_mm + link.height_mm))
        add_link(self.canvas, f"to {link.target}", (left, bottom, right, top))

    def _anchor(self, anchor: Anchor) -> None:
        left, top = self._at(anchor.at)
        self.canvas.bookmarkPage(f"to {anchor.name}", fit="XYZ", left=left, top=top, zoom=0)


@contextmanager
def _binary_streams() -> Iterator[None]:
    """Keep page contents as they are compressed: text armour costs time and a quarter more."""
    from reportlab import rl_config

    before = rl_config.useA85
    rl_config.useA85 = 0
    try:
        yield
    finally:
        rl_config.useA85 = before
