"""What is painted on the face of a panel: the track diagram and the legends."""

from typing import Literal

from wiring.drawings.plan_clip import Box, pieces
from wiring.drawings.wire_colour import wire_colour
from wiring.pictures.metrics import cap_mm, words_box
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.plan.panel import FaceLine, FaceText, Panel

WEIGHT: Literal["semibold"] = "semibold"
_EDGE_MM = 0.35  # round a light line, so that it shows on light paper
_LIGHT = ("WH", "YE", "PK", "TQ")  # legends in these are engraved through to a dark ground
_GROUND = "#3a3d42"
_HAIR = Pen("quiet", 0.13, (2.0, 1.0))


def decoration(panel: Panel, scale: float = 1.0, least_em_mm: float = 0.0) -> tuple[Item, ...]:
    """Return lines and legends in their colours, mm from the upper left corner of the face, from the front.

    On a reduced face no letters are smaller than `least_em_mm`.
    """
    items: list[Item] = []
    for line in panel.lines:
        for points in _on_face(panel, line, scale):
            if line.colour in _LIGHT:
                items.append(Path(points, Pen("quiet", line.width_mm * scale + _EDGE_MM)))
            items.append(Path(points, Pen(line_colour(line.colour), line.width_mm * scale)))
    for text in panel.texts:
        words = legend(text, scale)
        items.append(words._replace(size_mm=max(words.size_mm, least_em_mm)))
    return tuple(items)


def pencilled(panel: Panel, clip: Box) -> tuple[Item, ...]:
    """Return what lies in a box of the face as hairlines and grey letters, at full size.

    On a template they help to see what is where, and that no hole goes through a word.
    """
    lines = [points for line in panel.lines for points in _on_face(panel, line, 1.0)]
    hairs: list[Item] = [Path(piece.points, _HAIR) for points in lines for piece in pieces(points, clip)]
    grey = [legend(text)._replace(colour="quiet", weight="regular", ground="") for text in panel.texts]
    return (*hairs, *(words for words in grey if _holds(clip, words_box(words))))


def legend(text: FaceText, scale: float = 1.0) -> Words:
    """Return one legend, its capitals as high as it says."""
    return Words(
        text.text,
        (text.x_mm * scale, text.y_mm * scale),
        em_mm(text.high_mm) * scale,
        line_colour(text.colour),
        WEIGHT,
        "centre",
        "middle",
        turn_deg=text.turn_deg,
        ground=_GROUND if text.colour in _LIGHT else "",
    )


def em_mm(high_mm: float) -> float:
    """Return the em of letters whose capitals are that high."""
    return high_mm / cap_mm(1.0, WEIGHT)


def line_colour(letters: str) -> str:
    """Return what a colour of the face is painted in; black is the ink of whatever it is shown on."""
    return "ink" if letters == "BK" else wire_colour(letters).rgb


def _holds(box: Box, inner: Box) -> bool:
    return box[0] <= inner[0] and box[1] <= inner[1] and inner[2] <= box[2] and inner[3] <= box[3]


def _on_face(panel: Panel, line: FaceLine, scale: float) -> list[tuple[tuple[float, float], ...]]:
    """Return the pieces of a line that lie on the face, scaled."""
    box = (0.0, 0.0, panel.width_mm, panel.height_mm)
    return [tuple((x * scale, y * scale) for x, y in piece.points) for piece in pieces(line.points, box)]
