"""Brings the picture under the plan into sight when its scale was set: it grows many times over by that."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from app.canvas.backdrop_box import backdrop_box
from app.canvas.geometry import Box
from app.session import PlanChanged, Session


class BackdropSight(QObject):
    """Follows the session for one view."""

    def __init__(self, session: Session, seen: Callable[[], Box], show_all: Callable[[], object]) -> None:
        super().__init__(session)
        self._seen, self._show_all = seen, show_all
        session.changed.connect(self._follow)

    def _follow(self, change: PlanChanged) -> None:
        old, new = change.old.backdrop, change.new.backdrop
        if change.cause != "edit" or old is None or new is None or old.mm_per_px == new.mm_per_px:
            return
        box, seen = backdrop_box(new), self._seen()
        is_outside = (
            box.left < seen.left or box.top < seen.top or box.right > seen.right or box.bottom > seen.bottom
        )
        is_speck = box.right - box.left < (seen.right - seen.left) / 4
        if is_outside or is_speck:
            self._show_all()
