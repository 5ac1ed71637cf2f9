"""The outlook of a battery that nothing draws from."""

import math
from datetime import date, timedelta

from wiring.plan.names import PartId
from wiring.studies.cells.pack import Pack
from wiring.studies.outlook import Curve, Outlook, Span
from wiring.studies.time_words import time_words

KEEPS = 0.8  # of its charge: below this it no longer counts as fresh; common practice, no source
SPREAD = 0.3  # of the time: storage loss differs so much between makers and with the warmth of the room


def shelf_outlook(battery: PartId, pack: Pack | None, fitted: date | None, reason: str) -> Outlook:
    """Return an outlook of shelf life only: days until a fifth of the charge is lost."""
    days = -math.log(KEEPS) / pack.shelf_per_h / 24 if pack is not None and pack.shelf_per_h > 0 else 0.0
    return Outlook(
        battery=battery,
        hours=Span(0.0, 0.0, 0.0),
        sessions=Span(0.0, 0.0, 0.0),
        days=Span(days * (1 - SPREAD), days, days * (1 + SPREAD)),
        swap_on=fitted + timedelta(days=days) if fitted is not None and days > 0 else None,
        first_load_a=0.0,
        end_reason=reason,
        words=f"keeps {KEEPS:.0%} of its charge for about {time_words(days)} on the shelf"
        if days > 0
        else "no forecast",
        curve=Curve((), (), (), ()),
    )
