"""Links of a PDF page, written as they stand in the file: a set has thousands, and dictionaries cost time."""

from functools import cache
from typing import Any

Rectangle = tuple[float, float, float, float]  # left, bottom, right, top in points


def link_annotation(canvas: Any, name: str, place: Rectangle) -> Any:  # noqa: ANN401 - reportlab's own objects
    """Return the annotation of a link without a border to a place named before or after it."""
    return _annotation()(place, canvas._bookmarkReference(name))


@cache
def _annotation() -> Any:  # noqa: ANN401 - made when the first PDF is: reportlab is slow to load
    from reportlab.pdfbase.pdfdoc import PDFObject

    class Annotation(PDFObject):  # type: ignore[misc]
        """ISO 32000-1, 12.5.6.5: a link annotation."""

        def __init__(self, place: Rectangle, destination: Any) -> None:  # noqa: ANN401
            self.place, self.destination = place, destination

        def format(self, document: Any) -> bytes:  # noqa: ANN401
            left, bottom, right, top = self.place
            rect = f"/Rect [ {left:.2f} {bottom:.2f} {right:.2f} {top:.2f} ]"
            head = f"<< /Type /Annot /Subtype /Link /Border [ 0 0 0 ] {rect} /Dest "
            target: bytes = self.destination.format(document)
            return head.encode() + target + b" >>"

    return Annotation
