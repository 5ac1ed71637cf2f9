"""Where a picture under the plan can be kept: in the plan's own file, or in a file beside it."""

import base64
from pathlib import Path
from typing import NamedTuple

import msgspec

from app.canvas.geometry import Box
from app.canvas.picture_file import NotAPicture, PictureFile, read_picture, smaller_copy
from app.canvas.picture_keeper import PictureKeeper, free_name
from app.session import Session
from wiring.edits.backdrop import lay_backdrop
from wiring.edits.edit import Edit
from wiring.plan.backdrop import Backdrop

MOST_INSIDE = 2 * 1024 * 1024  # bytes; more would make every saving slow, so a copy is kept instead
SAME_SHAPE = 0.01  # two pictures of one page differ by no more in width over height
FIRST_SHARE = 0.8  # of what is in sight that a new picture fills, until it is brought to scale


class PictureWay(NamedTuple):
    """One way to keep the picture."""

    words: str
    tip: str
    edit: Edit


def picture_ways(path: Path, session: Session, keeper: PictureKeeper, seen: Box) -> tuple[PictureWay, ...]:
    """Return the ways to keep a picture; NotAPicture when it cannot be shown or kept.

    A picture of the same shape as the one that lies there takes its place, scale and turn.
    """
    picture = read_picture(path)
    inside: PictureFile | None = picture
    tip = "One file that holds everything"
    if len(picture.data) >= MOST_INSIDE:
        inside = smaller_copy(picture, MOST_INSIDE)
        if inside is not None:
            tip = f"In one file, as a copy of {inside.width_px} × {inside.height_px} pixels"
    old = session.plan.backdrop
    ways = []
    if inside is not None:
        data = base64.b64encode(inside.data).decode("ascii")
        ways.append(PictureWay("In the plan", tip, _lay(inside, old, seen, data=data)))
    if session.path is not None:
        name = free_name(session.path.parent, path.name, picture.data)
        keeper.hold(name, picture.data)
        tip = f"As {name} in the plan’s folder; it goes along when the plan is saved elsewhere"
        ways.append(PictureWay("Beside the plan", tip, _lay(picture, old, seen, path=name)))
    if not ways:
        raise NotAPicture("Save the plan first: a drawing of more than 2 MB is kept in a file beside it.")
    return tuple(ways)


def _lay(picture: PictureFile, old: Backdrop | None, seen: Box, *, data: str = "", path: str = "") -> Edit:
    width, height = float(picture.width_px), float(picture.height_px)
    new = Backdrop(media=picture.media, data=data, path=path, width_px=width, height_px=height)
    if old is not None and abs(old.width_px * height / (old.height_px * width) - 1.0) < SAME_SHAPE:
        new = msgspec.structs.replace(
            new,
            x_mm=old.x_mm,
            y_mm=old.y_mm,
            turn_deg=old.turn_deg,
            strength=old.strength,
            mm_per_px=old.mm_per_px * old.width_px / width,
        )
        return lay_backdrop(new)
    mm_per_px = FIRST_SHARE * min((seen.right - seen.left) / width, (seen.bottom - seen.top) / height)
    new = msgspec.structs.replace(
        new,
        x_mm=round((seen.left + seen.right - width * mm_per_px) / 2, 3),
        y_mm=round((seen.top + seen.bottom - height * mm_per_px) / 2, 3),
        mm_per_px=mm_per_px,
    )
    return lay_backdrop(new)
