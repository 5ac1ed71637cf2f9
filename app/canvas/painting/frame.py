"""Paints one frame of the drawing surface: the still picture, then what lives above it."""

from PySide6.QtGui import QPainter

from app.canvas.gestures.pointer import Preview
from app.canvas.hits.hit import Hit
from app.canvas.loose_wires import loose_wires
from app.canvas.painting.focus_painter import paint_focus
from app.canvas.painting.ground_marks import paint_ground_mark
from app.canvas.painting.group_marks import paint_group_marks
from app.canvas.painting.mark_painter import paint_bends, paint_hovered, paint_selected
from app.canvas.painting.part_painter import PartPainter
from app.canvas.painting.preview_painter import paint_preview
from app.canvas.painting.reading_painter import paint_readings
from app.canvas.painting.rulers_kept import KeptRulers
from app.canvas.painting.still_picture import Progress, StillPicture, StirredSince
from app.canvas.painting.wire_painter import WirePainter
from app.canvas.readings import is_wrong
from app.canvas.sight import Sight
from app.canvas.touched import Touched
from wiring.plan.places import Point
from wiring.plan.plan import Plan

WRONG_FROM = 0.6  # pixels per millimetre from which figures that are wrong show unasked
READ_MOST = 24  # with more selected, figures would cover the plan
GLOW_MOST = 600
GRIPS_MOST = 300  # with more wires selected nobody takes one by its end


class Frame:
    """Owns the painters and what they keep."""

    def __init__(self) -> None:
        self.parts, self.wires = PartPainter(), WirePainter()
        self._rulers = KeptRulers()
        self._touched = Touched()
        self.still = StillPicture(self.parts, self.wires)
        self._chosen: tuple[Plan, frozenset[str], list[str], list[str]] | None = None

    def paint(
        self,
        painter: QPainter,
        sight: Sight,
        key: object,
        preview: Preview,
        selected: frozenset[str],
        grounds: frozenset[str],
        hovered: Hit | None,
        pointer_px: Point | None,
        wire_look: tuple[str, str],
        stirred_since: StirredSince,
        *,
        may_wait: bool,
    ) -> bool:
        """Paint everything; False when the still picture was an old one that has to be painted again soon."""
        held_out = _held_out(preview)
        fresh = self.still.paint(painter, sight, key, held_out, stirred_since, may_wait=may_wait)
        if preview.bar is None and not preview.bars:
            alone = len(grounds) == 1 and not selected
            for ground in sorted(grounds):
                paint_ground_mark(painter, sight, ground, grips=alone)
        self._paint_marks(painter, sight, preview, selected - held_out if held_out else selected, hovered)
        paint_preview(painter, sight, preview, self.parts, self.wires, wire_look, self._touched)
        self._rulers.paint(painter, sight, pointer_px)
        paint_focus(painter, sight)
        return fresh

    def paint_on(
        self, sight: Sight, key: object, preview: Preview, until: float, *, settled: bool
    ) -> Progress:
        """Paint on at the still picture until a time, while there is time between events."""
        return self.still.work(sight, key, _held_out(preview), until, settled=settled)

    def _paint_marks(
        self,
        painter: QPainter,
        sight: Sight,
        preview: Preview,
        selected: frozenset[str],
        hovered: Hit | None,
    ) -> None:
        wires, loose = self._wires_among(sight.plan, selected)
        idle = preview.plan is None and not preview.lands and preview.ghost is None
        if hovered is not None and idle and hovered.wire and hovered.wire not in selected:
            self._glow(painter, sight, [hovered.wire], 0.22)
        if wires:
            self._glow(painter, sight, wires[:GLOW_MOST], 0.55)
            if len(loose) <= GRIPS_MOST:
                paint_bends(painter, sight, loose)
        paint_group_marks(painter, sight, selected, hovered.part if hovered is not None and idle else "")
        paint_selected(painter, sight, selected, handle=idle)
        if not idle:
            return
        if hovered is not None and hovered.part and hovered.part not in selected:
            paint_hovered(painter, sight, hovered.part)
        paint_readings(painter, sight, self._to_read(sight, selected, hovered))

    def _wires_among(self, plan: Plan, selected: frozenset[str]) -> tuple[list[str], list[str]]:
        """Return the wires among what is selected, and those of them with grips; looked up once."""
        known = self._chosen
        if known is None or known[0] is not plan or known[1] is not selected:
            wires = [w for w in plan.wires if w in selected] if selected else []
            known = self._chosen = plan, selected, wires, loose_wires(plan, selected)
        return known[2:]

    def _glow(self, painter: QPainter, sight: Sight, wires: list[str], share: float) -> None:
        self.wires.glow(painter, sight, wires, share)
        ends = {ref.part for w in wires for ref in (sight.plan.wires[w].start, sight.plan.wires[w].end)}
        self.parts.paint(painter, sight, [p for p in sorted(ends) if p in sight.plan.parts])

    def _to_read(self, sight: Sight, selected: frozenset[str], hovered: Hit | None) -> list[str]:
        asked: list[str] = []
        if len(selected) <= READ_MOST:  # the wires within a whole thing are not asked for
            asked = [i for i in selected if i in sight.plan.parts]
            asked += self._wires_among(sight.plan, selected)[1]
        if hovered is not None and hovered.id and hovered.id not in selected:
            asked.append(hovered.id)
        if sight.camera.scale >= WRONG_FROM:
            box = sight.visible
            asked += [
                i
                for i in sight.worst
                if i in sight.geometry.parts
                and i not in asked
                and is_wrong(sight, i)
                and _inside(sight, i, box)
            ]
        return asked


def _held_out(preview: Preview) -> frozenset[str]:
    """Return what moves, and so is not to stand in the still picture."""
    return preview.touched if preview.plan is not None else frozenset()


def _inside(sight: Sight, part_id: str, box: tuple[float, float, float, float]) -> bool:
    x, y = sight.geometry.parts.get(part_id)[4:6]
    return bool(box[0] <= x <= box[2] and box[1] <= y <= box[3])
