"""Everything the painters look at, as one value."""

from collections.abc import Mapping
from typing import NamedTuple

from PySide6.QtGui import QPixmap

from app.canvas.camera import Camera
from app.canvas.geometry import Box, Geometry
from app.canvas.painting.shades import Shades
from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.findings.finding import Finding
from wiring.plan.names import PartId
from wiring.plan.plan import Plan


class Sight(NamedTuple):
    """A plan, where it lies, what is known about it, and how it is looked at."""

    plan: Plan
    kinds: Mapping[str, Kind]
    geometry: Geometry
    camera: Camera
    shades: Shades
    width_px: float
    height_px: float
    ratio: float = 1.0  # device pixels per pixel
    positions: Mapping[PartId, str] = {}
    figures: Figures | None = None
    worst: Mapping[str, Finding] = {}  # the gravest finding of each part and wire
    stale: bool = False  # the figures belong to an older plan
    lit: frozenset[str] | None = None  # with a focus: what is not in it is dimmed
    focus_words: str = ""
    picture: tuple[QPixmap, ...] = ()  # the picture under the plan, whole, at half its size, and so on
    lands: bool = False  # a wire is being pulled: terminals stand out
    window: Box | None = None  # the pixels that are looked at; None for all, from corner to corner

    @property
    def visible(self) -> Box:
        """The part of the plan in the window."""
        if self.window is None:
            return self.camera.visible(self.width_px, self.height_px)
        left, top, right, bottom = self.window
        return Box(*self.camera.to_plan(left, top), *self.camera.to_plan(right, bottom))
