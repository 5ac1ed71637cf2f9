"""Links of a PDF page, written as they stand in the file: a set has thousands, and dictionaries cost time."""

from functools import cache
from typing import Any

Rectangle = tuple[float, float, float, float]  # left, bottom, right, top in points


def add_link(canvas: Any, name: str, place: Rectangle) -> None:  # noqa: ANN401 - a reportlab canvas
    """Add a link without a border, on the page at hand, to a place named before or after it."""
    # right in the page's own list: an object of its own for each link takes longer to write than the link
    canvas._annotationrefs.append(_annotation()(place, canvas._bookmarkReference(name)))


@cache
def _annotation() -> Any:  # noqa: ANN401 - made when the first PDF is: reportlab is slow to load
    from reportlab.pdfbase.pdfdoc import PDFObject

    class Annotation(PDFObject):  # type: ignore[misc]
        """ISO 32000-1, 12.5.6.5: a link annotation."""

        def __init__(self, place: Rectangle, destination: Any) -> None:  # noqa: ANN401
            self.place, self.destination = place, destination

        def format(self, document: Any) -> Any:  # noqa: ANN401
            left, bottom, right, top = self.place
            rect = f"/Rect [ {left:.2f} {bottom:.2f} {right:.2f} {top:.2f} ]"
            head = f"<< /Type /Annot /Subtype /Link /Border [ 0 0 0 ] {rect} /Dest "
            target = getattr(self.destination, "written", None)
            if target is None:  # most places are led to from several sheets
                target = self.destination.written = self.destination.format(document)
            return head.encode() + target + b" >>"

    return Annotation
