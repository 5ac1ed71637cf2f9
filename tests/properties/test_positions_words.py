"""What is said of a worst case that was not gone through completely."""

import math

from wiring.studies.positions.words import bound_words
from wiring.studies.positions.worst import Worst


def test_nothing_is_said_where_every_set_was_solved() -> None:
    assert bound_words(Worst(1.0, {}, True, 1.0)) == ""


def test_what_was_met_and_what_is_proved() -> None:
    words = bound_words(Worst(1.0, {}, False, 1.5))
    assert (
        words == "There are too many positions to try them all: 1 A was met, and none brings more than 1.5 A."
    )
    assert "none brings more than 1 A" in bound_words(Worst(1.0, {}, False, 1.0001))


def test_where_nothing_is_proved_it_says_so() -> None:
    assert "no limit is known" in bound_words(Worst(1.0, {}, False, math.inf))
