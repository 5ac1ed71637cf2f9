"""What the hand sees of a part that sits in a face: nut and lever, button, lens; its body only as a hint."""

from functools import lru_cache

import msgspec

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.all_signs import sign
from wiring.drawings.signs.halo import halo
from wiring.drawings.signs.hand import State
from wiring.pictures.picture import Disc, Item, Path, Pen
from wiring.plan.panel_bodies import body_of, is_mounted
from wiring.plan.part import Part

_HINT = Pen("quiet", 0.13, (1.2, 0.8))
_BODY_FIRST = ("toggle", "push")  # signs that begin with the body, which is behind the face


def front_part(kind: Kind, part: Part, state: State) -> tuple[Item, ...]:
    """Return the part from the front about its centre, unturned; what sits in no hole as from above."""
    if not is_mounted(kind):
        return sign(kind, part, state)
    shown = sign(_bare(kind), part, state)
    if kind.sign in _BODY_FIRST:
        shown = shown[1:]
    return *halo(kind, state.lightness, part), _body(kind, part), *shown


def _body(kind: Kind, part: Part) -> Item:
    radius = body_of(part, kind).radius_mm
    if radius:
        return Disc((0.0, 0.0), radius, radius, _HINT)
    w, h = kind.width_mm / 2, kind.height_mm / 2
    return Path(((-w, -h), (w, -h), (w, h), (-w, h)), _HINT, closed=True)


@lru_cache(maxsize=128)
def _bare(kind: Kind) -> Kind:
    """Return a kind without its terminals, which the face hides."""
    return msgspec.structs.replace(kind, terminals=())
