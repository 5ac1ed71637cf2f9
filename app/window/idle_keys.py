"""Says why a key does nothing on the plan: what it works on is not selected."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QKeyEvent, QKeySequence

from app.notices import Notice

if TYPE_CHECKING:
    from app.window.main_window import MainWindow


class IdleKeys(QObject):
    """Listens to the plan for keys of acts that have nothing to act on."""

    def __init__(self, window: "MainWindow", names: tuple[str, ...]) -> None:
        super().__init__(window)
        self._window, self._names = window, names
        self._said: Notice | None = None
        window.plan_view.installEventFilter(self)
        window.selection.changed.connect(self._selected)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Speak up beside whatever the plan makes of the key."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress and not event.isAutoRepeat():
            self._pressed(QKeySequence(event.keyCombination()))
        return False

    def _pressed(self, keys: QKeySequence) -> None:
        window = self._window
        if window.plan_view.tool != "select" or window.selection.ids or window.selection.grounds:
            return
        for act in (window.acts[name] for name in self._names):
            if not act.isEnabled() and keys in act.shortcuts():
                words = act.text().replace("&", "").rstrip("…")
                shown = keys.toString(QKeySequence.SequenceFormat.NativeText)
                self._said = Notice(f"Select something first; {shown} is “{words}”.", "note", about_act=True)
                window.notices.offer(self._said)
                return

    def _selected(self) -> None:
        if self._said is not None:
            self._window.notices.take_back(self._said)
            self._said = None
