"""What a person wants printed, as it is kept from one day to the next."""

import json
from typing import Any, NamedTuple

from wiring.sheets.documents import DOCUMENTS
from wiring.sheets.tiling import FIT, MOST_OVERLAP_MM, Tiling, read_tiling

# Chosen by their own fields: the tiles by their scale.
TICKED = tuple(name for name in DOCUMENTS if name != "tiles")
OVERLAP_MM = Tiling().overlap_mm


class Wish(NamedTuple):
    """Which documents, of which scene, at which scale in tiles, and whether only what changed."""

    left_out: frozenset[str] = frozenset()
    scene: str = ""  # its name; "" for the whole layout
    tiles: str = FIT
    overlap_mm: float = OVERLAP_MM
    changed_only: bool = False

    @property
    def tiling(self) -> Tiling | None:
        """The tiles, None for none."""
        return read_tiling(self.tiles, self.overlap_mm)

    @property
    def only(self) -> tuple[str, ...] | None:
        """The documents, None for all of them."""
        if not self.left_out:
            return None
        return tuple(name for name in DOCUMENTS if name not in self.left_out)


def wish_text(wish: Wish) -> str:
    """Return what is kept of a wish: not the scene, which is another plan's tomorrow."""
    kept = {"left_out": sorted(wish.left_out), "tiles": wish.tiles, "overlap_mm": wish.overlap_mm}
    return json.dumps(kept)


def read_wish(text: str) -> Wish:
    """Return the wish that was kept; what cannot be understood is left as usual."""
    try:
        kept: Any = json.loads(text)
        left_out = frozenset(n for n in kept["left_out"] if n in TICKED)
        tiles, overlap = str(kept["tiles"]), float(kept["overlap_mm"])
        if not 0.0 <= overlap <= MOST_OVERLAP_MM:
            return Wish(left_out)
        read_tiling(tiles, overlap)
    except (ValueError, TypeError, KeyError):
        return Wish()
    return Wish(left_out, "", tiles, overlap)
