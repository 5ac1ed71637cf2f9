"""The colour a wire is drawn in; one whose letters say nothing is drawn as bare paper, never refused."""

from wiring.standards.colours import WireColour, colour


def wire_colour(letters: str) -> WireColour:
    """Return the colour of the letters, or white named "unknown" for letters that name no wire colour."""
    try:
        return colour(letters)
    except KeyError:
        return WireColour(letters, "unknown", "#ffffff")
