"""The pieces of a row that are about a wire: its colour as colour and letters, the box to tick."""

from wiring.drawings.wire_colour import wire_colour
from wiring.sheets.carry.markup import Markup, tag


def swatch(letters: str) -> Markup:
    """Return a piece of the wire with its letters and the name of its colour."""
    spec = wire_colour(letters)
    piece = tag("i", class_="swatch", style=f"--a:{spec.rgb};--b:{spec.stripe_rgb or spec.rgb}")
    return tag("span", piece, tag("b", spec.letters), f" {spec.name}", class_="colour")


def tick_box(key: str, says: str, *, wire: str = "", built: bool = False) -> Markup:
    """Return a box that stays ticked; `says` is read out, `wire` is the id of the wire it is for."""
    box = tag(
        "input",
        type="checkbox",
        data_tick=key,
        data_made=wire or False,
        checked=built,
        aria_label=says,
        autocomplete="off",
    )
    return tag("label", box, class_="tick")
