"""A short name for all that lies on a sheet, the same for sheets that look the same."""

from collections.abc import Iterator
from hashlib import blake2b

from wiring.pictures.picture import Anchor, Disc, Link, Path, Words
from wiring.sheets.section import Leaf

_BYTES = 9


def digest(leaf: Leaf) -> str:
    """Return the digest of a sheet before its references are written out, to a tenth of a millimetre.

    Numbers of sheets, the date and the references to other sheets do not count.
    """
    told = "\n".join((repr(leaf.sheet), leaf.kind, leaf.scale, leaf.side, *_lines(leaf)))
    return blake2b(told.encode("utf-8", "replace"), digest_size=_BYTES).hexdigest()


def _lines(leaf: Leaf) -> Iterator[str]:
    for item in leaf.items:
        if isinstance(item, Words):
            x, y = item.at
            yield f"{item.text} {x:.1f} {y:.1f} {item.size_mm:.1f} {item.colour} {item.weight}"
        elif isinstance(item, Path):
            points = " ".join([f"{x:.1f} {y:.1f}" for x, y in item.points])
            yield f"{points} {item.pen.colour} {item.pen.width_mm:.1f} {item.fill} {item.opacity:.1f}"
        elif isinstance(item, Disc):
            (x, y), across = item.centre, item.radius_x_mm
            yield f"{x:.1f} {y:.1f} {across:.1f} {item.pen.colour} {item.fill} {item.opacity:.1f}"
        elif isinstance(item, Anchor | Link):
            continue  # they do not show
