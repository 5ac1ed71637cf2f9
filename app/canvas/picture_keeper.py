"""Keeps the picture under the plan: reads it, holds it, and carries its file along when the plan moves."""

import base64
import binascii
from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QPixmap

from app.canvas.picture_file import image_of
from app.session import PlanChanged, Session
from wiring.plan.backdrop import Backdrop

LEAST_LEVEL_PX = 128


class PictureKeeper(QObject):
    """Follows the session; `levels` is what the painter draws from."""

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._session = session
        self._bytes: dict[str, bytes] = {}  # by the name of the file beside the plan
        self._shown: tuple[str, str, str] | None = None
        self._levels: tuple[QPixmap, ...] = ()
        self._missed: Path | None = None
        self._damaged: Backdrop | None = None
        session.changed.connect(self._plan_changed)
        session.saved_state.connect(lambda _unsaved: self._follow())
        self._follow()

    def hold(self, name: str, data: bytes) -> None:
        """Hold the bytes of a picture that is to lie beside the plan under that name."""
        self._bytes[name] = data

    def levels(self) -> tuple[QPixmap, ...]:
        """Return the picture whole, at half its size, at a quarter ...; empty when there is none."""
        backdrop = self._session.plan.backdrop
        if backdrop is None:
            return ()
        key = backdrop.media, backdrop.data, backdrop.path
        if key != self._shown:
            self._shown, self._levels = key, self._made(backdrop)
        return self._levels

    def _plan_changed(self, change: PlanChanged) -> None:
        if change.cause == "open":  # another plan's picture may well have the same name
            self._bytes.clear()
            self._shown = self._missed = None
        self._follow()

    def _follow(self) -> None:
        """Read the file beside the plan while it is there; put it where the plan is now when it is not."""
        backdrop, path = self._session.plan.backdrop, self._session.path
        if backdrop is not None and backdrop.data and not self.levels() and backdrop is not self._damaged:
            self._damaged = backdrop
            self._session.faulted.emit("The picture kept in this plan is damaged; choose it again.")
        if backdrop is None or not backdrop.path or path is None:
            return
        name, there = backdrop.path, path.parent / backdrop.path
        try:
            if there.is_file():
                if name not in self._bytes:
                    self._bytes[name] = there.read_bytes()
                    self._shown = None
            elif name in self._bytes:
                there.parent.mkdir(parents=True, exist_ok=True)
                there.write_bytes(self._bytes[name])
            elif self._missed != there:
                self._missed = there  # told once, not again after every edit
                self._session.faulted.emit(
                    f"The picture {name} is not beside the plan any more; put it back or choose it again."
                )
        except OSError as fault:
            why = fault.strerror or "the disk refused"
            self._session.faulted.emit(f"The picture {name} could not be kept beside the plan: {why}.")

    def _made(self, backdrop: Backdrop) -> tuple[QPixmap, ...]:
        data = self._data(backdrop)
        image = image_of(backdrop.media, data) if data else None
        if image is None:
            return ()
        levels = [QPixmap.fromImage(image)]
        while min(levels[-1].width(), levels[-1].height()) >= 2 * LEAST_LEVEL_PX:
            half = levels[-1].size() / 2
            mode = Qt.TransformationMode.SmoothTransformation
            levels.append(levels[-1].scaled(half, Qt.AspectRatioMode.IgnoreAspectRatio, mode))
        return tuple(levels)

    def _data(self, backdrop: Backdrop) -> bytes:
        if not backdrop.data:
            return self._bytes.get(backdrop.path, b"")
        try:
            return base64.b64decode(backdrop.data, validate=True)
        except (binascii.Error, ValueError):
            return b""


def free_name(folder: Path, wanted: str, data: bytes) -> str:
    """Return a name in a folder that is free, or under which these very bytes lie already."""
    stem, suffix = Path(wanted).stem, Path(wanted).suffix.lower()
    name, number = f"{stem}{suffix}", 2
    while (folder / name).exists() and (folder / name).read_bytes() != data:
        name, number = f"{stem}-{number}{suffix}", number + 1
    return name
