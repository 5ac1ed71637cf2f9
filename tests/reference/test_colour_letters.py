"""Wire colours against IEC 60757."""

import itertools
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.standards.colours import COLOURS, colour

# IEC 757:1983 as GOST 28763-90 translates it, in the order of the table; gold and silver are no insulation.
TABLE = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ"]
NAMES = [
    "black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white", "pink",
    "turquoise",
]  # fmt: skip


def test_letters_and_names_are_those_of_the_standard_in_its_order():
    single = [c for c in COLOURS.values() if not c.stripe_rgb]
    assert [(c.letters, c.name) for c in single] == list(zip(TABLE, NAMES, strict=True))


def test_two_colours_are_written_in_the_order_of_the_table():
    # IEC 60757:2021: red and blue is RDBU, never BURD.
    assert colour("BURD").letters == colour("rdbu").letters == "RDBU"
    for letters in COLOURS:
        if len(letters) == 4:
            assert TABLE.index(letters[:2]) < TABLE.index(letters[2:])


def test_every_pair_but_green_and_yellow_is_a_colour():
    for first, second in itertools.combinations(TABLE, 2):
        if {first, second} == {"GN", "YE"}:
            # IEC 60445 keeps it for the protective conductor.
            with pytest.raises(KeyError):
                colour(first + second)
        else:
            found = colour(second + first)
            assert (found.rgb, found.stripe_rgb) == (COLOURS[first].rgb, COLOURS[second].rgb)


@pytest.mark.parametrize("letters", ["", "XX", "RDRD", "RDXX", "RDBUWH", "OR"])
def test_what_is_no_colour_is_refused(letters):
    with pytest.raises(KeyError):
        colour(letters)


@settings(deadline=None)
@given(st.text(max_size=6) | st.text(alphabet="bkrdgnyewhBKRDGNYEWH", max_size=4))
def test_any_text_is_a_colour_or_a_key_error(text):
    try:
        found = colour(text)
    except KeyError:
        return
    assert colour(found.letters) == found


def test_shades_can_be_told_apart():
    shades = {c.letters: c.rgb for c in COLOURS.values() if not c.stripe_rgb}
    assert all(re.fullmatch("#[0-9a-f]{6}", rgb) for rgb in shades.values())
    apart = min(
        sum((int(a[i : i + 2], 16) - int(b[i : i + 2], 16)) ** 2 for i in (1, 3, 5)) ** 0.5
        for a, b in itertools.combinations(shades.values(), 2)
    )
    assert apart > 60
