"""The face of a panel on a plan view: its track diagram and legends, from behind only as pencil lines."""

from wiring.drawings.panel_face import legend, line_colour
from wiring.drawings.plan_clip import Box, pieces
from wiring.drawings.plan_fit import Fit
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Item, Path, Pen
from wiring.plan.panel import Panel
from wiring.plan.panel_places import from_face

_LEAST_EM_MM = 2.5  # smaller letters are no use on paper
_LEAST_LINE_MM = 0.2
_PENCIL = Pen("faint", 0.3, (2.0, 1.2))


def painted(panel: Panel, fit: Fit, clip: Box) -> tuple[Item, ...]:
    """Return what is painted on a face, where it lies on the paper; a face seen from behind shows through."""
    corner, far = (
        fit.at((panel.x_mm, panel.y_mm)),
        fit.at(from_face(panel, (panel.width_mm, panel.height_mm))),
    )
    face = min(corner[0], far[0]), min(corner[1], far[1]), max(corner[0], far[0]), max(corner[1], far[1])
    box = max(face[0], clip[0]), max(face[1], clip[1]), min(face[2], clip[2]), min(face[3], clip[3])
    items: list[Item] = []
    for line in panel.lines:
        width = max(line.width_mm * fit.scale, _LEAST_LINE_MM)
        pens = [_PENCIL] if fit.below else [Pen(line_colour(line.colour), width)]
        if line.colour == "WH" and not fit.below:
            pens.insert(0, Pen("quiet", width + 0.2))
        course = [fit.at(from_face(panel, p)) for p in line.points]
        items += [Path(piece.points, pen) for pen in pens for piece in pieces(course, box)]
    for text in panel.texts:
        words = legend(text, fit.scale)
        at = fit.at(from_face(panel, (text.x_mm, text.y_mm)))
        turn = -text.turn_deg if fit.below else text.turn_deg
        words = words._replace(at=at, turn_deg=turn)
        if fit.below:
            words = words._replace(colour="faint", ground="")
        left, top, right, bottom = words_box(words)
        inside = box[0] <= left and box[1] <= top and right <= box[2] and bottom <= box[3]
        if words.size_mm >= _LEAST_EM_MM and inside:
            items.append(words)
    return tuple(items)
