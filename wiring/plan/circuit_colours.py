"""Which colours the wires of one supply have, by what they carry."""

import msgspec


class CircuitColours(msgspec.Struct, frozen=True, omit_defaults=True):
    """Letters of IEC 60757; "" leaves a colour to the usual rule.

    `plus` is the feed, or the first leg of an AC supply, `minus` the return or second leg, `switched` the
    feed behind a switch.
    """

    plus: str = ""
    minus: str = ""
    switched: str = ""
