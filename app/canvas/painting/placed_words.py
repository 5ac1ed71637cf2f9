"""What words and flags of a picture stand where."""

from collections.abc import Sequence
from typing import NamedTuple

from app.canvas.painting.area_names import AreaName
from app.canvas.painting.flag_painter import FlagAt
from app.canvas.painting.harness_painter import Count


class Words(NamedTuple):
    """Places in pixels of the picture; the labels of parts are kept by their painter."""

    names: Sequence[AreaName] = ()
    counts: Sequence[Count] = ()
    flags: Sequence[FlagAt] = ()
