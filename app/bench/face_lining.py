"""Lining what is chosen on a face up, and spacing it evenly; each is one step of the history."""

from collections.abc import Callable

from app.bench.bench import Bench, FaceItem
from app.bench.face_arrange import LINES, SPACED, SWAPPED, Box, lined_up, spaced_out
from app.bench.face_pointer import FaceAround
from app.bench.face_sight import item_box
from app.selection import Selection
from app.session import Session
from wiring.edits.face_shift import shift_each_on_face
from wiring.edits.panel_spacing import spacing_of
from wiring.edits.tables import counted
from wiring.plan.panel_bodies import body_of
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point

LINE_UP = "Choose at least two things on the face to line them up."
SPACE = "Choose at least three things on the face to space them evenly."


class FaceLining:
    """Shifts the chosen parts, track lines and legends by what brings them into line."""

    def __init__(
        self, session: Session, selection: Selection, bench: Bench, around: Callable[[], FaceAround]
    ) -> None:
        self._session, self._selection, self._bench, self._around = session, selection, bench, around
        self.does: dict[str, Callable[[], object]] = {
            **{name: self._lining_up(name) for name in LINES},
            **{name: self._spacing_out(axis) for name, axis in SPACED.items()},
        }

    def _lining_up(self, line: str) -> Callable[[], None]:
        def act() -> None:
            boxes, around = self._boxes(edges=line not in ("row", "column")), self._around()
            step = spacing_of(around.plan, around.panel)
            if len(boxes) < 2:
                self._session.refused.emit(LINE_UP)
                return
            seen = SWAPPED.get(line, line) if self._bench.behind else line
            shifts = lined_up(boxes, seen, lambda at: round(at / step) * step)
            self._shift("Line up {}", shifts)

        return act

    def _spacing_out(self, axis: int) -> Callable[[], None]:
        def act() -> None:
            boxes = self._boxes(edges=False)
            if len(boxes) < 3:
                self._session.refused.emit(SPACE)
                return
            self._shift("Space {} evenly", spaced_out(boxes, axis))

        return act

    def _shift(self, label: str, shifts: dict[str | FaceItem, Point]) -> None:
        moved = {key: by for key, by in shifts.items() if by != (0.0, 0.0)}
        items = {key: by for key, by in moved.items() if isinstance(key, FaceItem)}
        edit = shift_each_on_face(
            label.format(counted(len(shifts), "item")),
            self._bench.panel,
            {key: by for key, by in moved.items() if not isinstance(key, FaceItem)},
            {key.number: by for key, by in items.items() if key.sort == "line"},
            {key.number: by for key, by in items.items() if key.sort == "text"},
            kinds=self._session.kinds,
        )
        self._session.do(edit)

    def _boxes(self, *, edges: bool) -> dict[str | FaceItem, Box]:
        """Return the boxes of what is chosen, in mm of the face; without `edges` only lines have a size."""
        around = self._around()
        found: dict[str | FaceItem, Box] = {}
        for part in (p for p in around.plan.parts.values() if p.id in self._selection.ids):
            x, y = to_face(around.panel, (part.x_mm, part.y_mm))
            box = (x, y, x, y)
            if edges and part.kind in around.kinds:
                body = body_of(part, around.kinds[part.kind]).box
                corners = to_face(around.panel, body[:2]), to_face(around.panel, body[2:])
                box = (*corners[0], *corners[1])
            found[part.id] = box
        for item in sorted(self._bench.items):
            found[item] = item_box(around.panel, item)
            if item.sort == "text" and not edges:
                text = around.panel.texts[item.number]
                found[item] = (text.x_mm, text.y_mm, text.x_mm, text.y_mm)
        return found
