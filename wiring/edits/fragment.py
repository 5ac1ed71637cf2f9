"""Parts, the wires between them and joists as text for the clipboard, and back into any plan."""

import math
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, Literal

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.copies import wires_between, with_copies
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.set_plan import set_plan
from wiring.edits.tables import rounded_mm
from wiring.plan.joist import Joist
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

LONGEST_TEXT = 8_000_000  # characters; a few ten thousand parts


class Fragment(msgspec.Struct, frozen=True, kw_only=True):
    """A piece of a plan: parts, wires between them only, and joists where there are any."""

    format: Literal["underboard fragment"] = "underboard fragment"
    version: Literal[1] = 1
    parts: tuple[Part, ...]
    wires: tuple[Wire, ...]
    joists: tuple[Joist, ...] | msgspec.UnsetType = msgspec.UNSET


def copied(plan: Plan, ids: Iterable[str], joists: Iterable[int] = ()) -> str:
    """Return those parts, the wires between them and joists by index as text; "" when there are none."""
    chosen = frozenset(ids)
    parts = tuple(p for p in plan.parts.values() if p.id in chosen)
    beams = tuple(plan.joists[i] for i in sorted(joists))
    if not parts and not beams:
        return ""
    wires = wires_between(plan, chosen)
    fragment = Fragment(parts=parts, wires=wires, joists=beams or msgspec.UNSET)
    return msgspec.json.encode(fragment, enc_hook=plain_table).decode()


def plain_table(value: Any) -> dict[str, Any]:  # noqa: ANN401 - msgspec hands over whatever it does not know
    """Return a frozen table as one that can be written."""
    if isinstance(value, Mapping):
        return dict(value)
    raise TypeError(type(value))


def read_fragment(text: str) -> Fragment:
    """Return the fragment a text holds; EditRefused when it holds none."""
    if len(text) > LONGEST_TEXT:
        raise EditRefused("The clipboard holds too much to paste into a plan.")
    try:
        fragment = msgspec.json.decode(text.encode("utf-8", "replace"), type=Fragment)
    except (msgspec.MsgspecError, ValueError, RecursionError):
        raise EditRefused("The clipboard holds no parts of a plan; copy some parts first.") from None
    if len({p.id for p in fragment.parts}) < len(fragment.parts):
        raise EditRefused("The clipboard holds the same part twice; copy the parts again.")
    if not fragment.parts and not fragment.joists:
        raise EditRefused(
            "The clipboard holds no parts; track lines and legends are pasted onto a panel’s face."
        )
    return fragment


def paste(
    text: str,
    dx_mm: float = 20.0,
    dy_mm: float = 20.0,
    *,
    at: Point | None = None,
    turn_deg: float = 0.0,
    as_one: bool = False,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Set down what :func:`copied` gave, with fresh ids: shifted, or with its middle on the point `at`.

    `turn_deg` turns the whole of it clockwise first; `as_one` joins its parts as one thing; with `kinds`
    settings and terminals are checked.
    """

    def apply(plan: Plan) -> Plan:
        fragment = _turned(read_fragment(text), turn_deg)
        shift = (dx_mm, dy_mm) if at is None else _shift_to(at, fragment)
        # Checked as all that comes from elsewhere is: the text may have been written by anything.
        whole = set_plan(joists=(*plan.joists, *_shifted(fragment, shift))).apply(plan)
        return with_copies(whole, fragment.parts, fragment.wires, *shift, kinds, as_one=as_one)

    return Edit("Paste", apply)


def _turned(fragment: Fragment, turn_deg: float) -> Fragment:
    if turn_deg % 360.0 == 0.0:
        return fragment
    cos, sin = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))

    def at(x: float, y: float) -> Point:
        return rounded_mm(x * cos - y * sin), rounded_mm(x * sin + y * cos)

    parts = []
    for part in fragment.parts:
        x_mm, y_mm = at(part.x_mm, part.y_mm)
        turned = rounded_mm((part.turn_deg + turn_deg) % 360.0)
        parts.append(msgspec.structs.replace(part, x_mm=x_mm, y_mm=y_mm, turn_deg=turned))
    wires = [msgspec.structs.replace(w, bends=tuple(at(*bend) for bend in w.bends)) for w in fragment.wires]
    joists = tuple(msgspec.structs.replace(j, start=at(*j.start), end=at(*j.end)) for j in _joists(fragment))
    return Fragment(parts=tuple(parts), wires=tuple(wires), joists=joists or msgspec.UNSET)


def _joists(fragment: Fragment) -> tuple[Joist, ...]:
    return fragment.joists or ()


def _shifted(fragment: Fragment, by: Point) -> Iterator[Joist]:
    for joist in _joists(fragment):
        start, end = ((rounded_mm(x + by[0]), rounded_mm(y + by[1])) for x, y in (joist.start, joist.end))
        yield msgspec.structs.replace(joist, start=start, end=end)


def _shift_to(at: Point, fragment: Fragment) -> Point:
    places = [(p.x_mm, p.y_mm) for p in fragment.parts]
    places += [end for joist in _joists(fragment) for end in (joist.start, joist.end)]
    if not places:
        return 0.0, 0.0
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return at[0] - (min(xs) + max(xs)) / 2, at[1] - (min(ys) + max(ys)) / 2
