"""Where a picture under the plan can be kept: in the plan's own file, or in a file beside it."""

import base64
from pathlib import Path
from typing import NamedTuple

import msgspec

from app.canvas.geometry import Box
from app.canvas.picture_file import NotAPicture, read_picture
from app.canvas.picture_keeper import PictureKeeper, free_name
from app.session import Session
from wiring.edits.backdrop import lay_backdrop
from wiring.edits.edit import Edit
from wiring.plan.backdrop import Backdrop

MOST_INSIDE = 2 * 1024 * 1024  # bytes; a larger picture would make every saving slow
FIRST_SHARE = 0.8  # of what is in sight that a new picture fills, until it is brought to scale


class PictureWay(NamedTuple):
    """One way to keep the picture."""

    words: str
    tip: str
    edit: Edit


def picture_ways(path: Path, session: Session, keeper: PictureKeeper, seen: Box) -> tuple[PictureWay, ...]:
    """Return the ways to keep a picture; NotAPicture when it cannot be shown or kept."""
    picture = read_picture(path)
    mm_per_px = FIRST_SHARE * min(
        (seen.right - seen.left) / picture.width_px, (seen.bottom - seen.top) / picture.height_px
    )
    plain = Backdrop(
        media=picture.media,
        width_px=float(picture.width_px),
        height_px=float(picture.height_px),
        x_mm=round((seen.left + seen.right - picture.width_px * mm_per_px) / 2, 3),
        y_mm=round((seen.top + seen.bottom - picture.height_px * mm_per_px) / 2, 3),
        mm_per_px=mm_per_px,
    )
    ways = []
    if len(picture.data) < MOST_INSIDE:
        data = base64.b64encode(picture.data).decode("ascii")
        inside = msgspec.structs.replace(plain, data=data)
        ways.append(PictureWay("In the plan", "One file that holds everything", lay_backdrop(inside)))
    if session.path is not None:
        name = free_name(session.path.parent, path.name, picture.data)
        keeper.hold(name, picture.data)
        beside = msgspec.structs.replace(plain, path=name)
        tip = f"As {name} in the plan’s folder; it goes along when the plan is saved elsewhere"
        ways.append(PictureWay("Beside the plan", tip, lay_backdrop(beside)))
    if not ways:
        raise NotAPicture("Save the plan first: a picture of more than 2 MB is kept in a file beside it.")
    return tuple(ways)
