"""Every key of the plan in words: what the surface obeys, the list of keys shows and tests check."""

from typing import NamedTuple


class PlanKey(NamedTuple):
    """Keys that do one thing; `when` says what must be so: "always", "chosen", "in hand" or "nothing"."""

    when: str
    name: str
    words: str
    keys: tuple[str, ...]


# Names of "in hand" are those of `gestures.pointer.GestureKey`; a "+" joins the modifiers as Qt writes them.
PLAN_KEYS = (
    PlanKey("always", "next", "Next part, wire or whatever was reached last", ("Tab",)),
    PlanKey("always", "previous", "The one before", ("Shift+Tab",)),
    PlanKey("always", "take next", "The next one too, beside what is selected", ("A",)),
    PlanKey("always", "take previous", "The one before too", ("Shift+A",)),
    PlanKey("always", "leave out", "Take the one reached last out of the selection", ("X",)),
    PlanKey(
        "always",
        "next sort",
        "Another sort of thing: parts, wires, wireways, joists, tracks, board, scenes, panels",
        ("N",),
    ),
    PlanKey("always", "previous sort", "The sort before", ("Shift+N",)),
    PlanKey("always", "select all", "Select all", ("Ctrl+A",)),
    PlanKey("always", "paste", "Paste", ("Ctrl+V",)),
    PlanKey("always", "menu", "What can be done with it, as a menu", ("Menu", "Shift+F10")),
    PlanKey("always", "nearer", "Nearer", ("+", "=", "Shift++")),
    PlanKey("always", "farther", "Farther", ("-",)),
    PlanKey("always", "show all", "See everything", ("Home",)),
    PlanKey("always", "leave", "Leave what is under way, then the tool, then what is selected", ("Esc",)),
    PlanKey("nothing", "pull", "Pull the paper", ("Left", "Right", "Up", "Down")),
    PlanKey("chosen", "shift", "Move it by 10 mm (half an inch)", ("Left", "Right", "Up", "Down")),
    PlanKey(
        "chosen",
        "shift a little",
        "Move it by 1 mm (a sixteenth of an inch)",
        ("Shift+Left", "Shift+Right", "Shift+Up", "Shift+Down"),
    ),
    PlanKey("chosen", "next grip", "Take hold of its next corner, end or bend; arrows move that", ("G",)),
    PlanKey("chosen", "previous grip", "Take hold of the corner before", ("Shift+G",)),
    PlanKey("chosen", "whole", "Everything it is joined with as one thing", ("J",)),
    PlanKey("chosen", "turn", "Turn a quarter", ("R",)),
    PlanKey("chosen", "turn back", "Turn a quarter back", ("Shift+R",)),
    PlanKey("chosen", "throw", "Throw the switch", ("T", "Space")),
    PlanKey("chosen", "open", "Its panel on the bench, or its circuit", ("Return", "Enter")),
    PlanKey("chosen", "remove", "Remove", ("Del", "Backspace")),
    PlanKey("chosen", "duplicate", "Duplicate", ("Ctrl+D",)),
    PlanKey("chosen", "copy", "Copy", ("Ctrl+C",)),
    PlanKey("chosen", "cut", "Cut", ("Ctrl+X",)),
    PlanKey("in hand", "steer", "Move the pointer by 10 mm", ("Left", "Right", "Up", "Down")),
    PlanKey(
        "in hand",
        "steer a little",
        "Move the pointer by 1 mm",
        ("Shift+Left", "Shift+Right", "Shift+Up", "Shift+Down"),
    ),
    PlanKey("in hand", "next terminal", "Go to the next terminal, while a wire is pulled", ("Tab",)),
    PlanKey("in hand", "previous terminal", "Go to the terminal before", ("Shift+Tab",)),
    PlanKey("in hand", "enter", "Set it down, start or end the line, agree", ("Return", "Enter")),
    PlanKey("in hand", "row", "Begin a row of parts", ("Shift+Return", "Shift+Enter")),
    PlanKey("in hand", "flip", "A corner here, or the wire's other way round", ("Space",)),
    PlanKey("in hand", "back", "One corner or character back", ("Backspace",)),
    PlanKey("in hand", "turn", "Turn it a quarter", ("R",)),
    PlanKey("in hand", "turn back", "Turn it a quarter back", ("Shift+R",)),
)
WHEN = {
    "always": "On the plan",
    "nothing": "On the plan, with nothing selected",
    "chosen": "On the plan, with something selected",
    "in hand": "On the plan, with a tool in hand",
}


def keys_of(name: str, when: str = "chosen") -> str:
    """Return the first key of what has that name, as menus write it; "" for none."""
    return next((k.keys[0] for k in PLAN_KEYS if k.name == name and k.when in (when, "always")), "")
