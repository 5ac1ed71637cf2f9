"""Every key of plan and panel bench in words: what both obey, the list of keys shows and tests check."""

from typing import NamedTuple

PLAN, BENCH, BOTH = "plan", "bench", "both"


class SurfaceKey(NamedTuple):
    """Keys that do one thing; `when` says what must be so: "always", "chosen", "in hand" or "nothing"."""

    when: str
    name: str  # as the window calls it, where that has it too
    words: str
    keys: tuple[str, ...]
    on: str = PLAN


ARROWS = ("Left", "Right", "Up", "Down")
WITH_SHIFT = ("Shift+Left", "Shift+Right", "Shift+Up", "Shift+Down")
SORTS = "Another sort of thing: parts, wires, wireways, joists, tracks, board, scenes, panels"
LEAVE = "Leave what is under way, then the tool, then what is selected"
# Names of "in hand" are those of `gestures.pointer.GestureKey`; a "+" joins the modifiers as Qt writes them.
KEYS = (
    SurfaceKey("always", "next", "Next part, wire or whatever was reached last", ("Tab",)),
    SurfaceKey("always", "previous", "The one before", ("Shift+Tab",)),
    SurfaceKey("always", "next", "The next part, line, legend or, from behind, wire", ("Tab",), BENCH),
    SurfaceKey("always", "previous", "The one before", ("Shift+Tab",), BENCH),
    SurfaceKey("always", "take next", "The next one too, beside what is selected", ("A",)),
    SurfaceKey("always", "take previous", "The one before too", ("Shift+A",)),
    SurfaceKey("always", "leave out", "Take the one reached last out of the selection", ("X",)),
    SurfaceKey("always", "next sort", SORTS, ("N",)),
    SurfaceKey("always", "previous sort", "The sort before", ("Shift+N",)),
    SurfaceKey("always", "select_all", "Select all", ("Ctrl+A",), BOTH),
    SurfaceKey("always", "paste", "Paste", ("Ctrl+V",), BOTH),
    SurfaceKey("always", "menu", "What can be done with it, as a menu", ("Menu", "Shift+F10")),
    SurfaceKey("always", "nearer", "Nearer", ("+", "=", "Shift++"), BOTH),
    SurfaceKey("always", "farther", "Farther", ("-",), BOTH),
    SurfaceKey("always", "show all", "See everything", ("Home",), BOTH),
    SurfaceKey("always", "leave", LEAVE, ("Esc",)),
    SurfaceKey("always", "leave", f"{LEAVE}, then the bench", ("Esc",), BENCH),
    SurfaceKey("always", "turn over", "Turn the panel over", ("B",), BENCH),
    SurfaceKey("always", "wire", "Pull a wire behind it", ("W",), BENCH),
    SurfaceKey("always", "line", "Draw a track line", ("D",), BENCH),
    SurfaceKey("always", "text", "Put a legend", ("L",), BENCH),
    SurfaceKey("always", "select", "Select and move", ("V",), BENCH),
    SurfaceKey("nothing", "pull", "Pull the paper", ARROWS, BOTH),
    SurfaceKey("chosen", "shift", "Move it by 10 mm (half an inch)", ARROWS),
    SurfaceKey("chosen", "shift", "Move it by the spacing", ARROWS, BENCH),
    SurfaceKey("chosen", "shift a little", "Move it by 1 mm (a sixteenth of an inch)", WITH_SHIFT, BOTH),
    SurfaceKey("chosen", "next grip", "Take hold of its next corner, end or bend; arrows move that", ("G",)),
    SurfaceKey("chosen", "previous grip", "Take hold of the corner before", ("Shift+G",)),
    SurfaceKey("chosen", "whole", "Everything it is joined with as one thing", ("J",), BOTH),
    SurfaceKey("chosen", "turn", "Turn a quarter", ("R",), BOTH),
    SurfaceKey("chosen", "turn back", "Turn a quarter back", ("Shift+R",), BOTH),
    SurfaceKey("chosen", "throw", "Throw the switch", ("T", "Space"), BOTH),
    SurfaceKey("chosen", "open", "Its panel on the bench, or its circuit", ("Return", "Enter")),
    SurfaceKey("chosen", "rename", "Type it anew", ("Return", "Enter", "F2"), BENCH),
    SurfaceKey("chosen", "remove", "Remove", ("Del", "Backspace"), BOTH),
    SurfaceKey("chosen", "duplicate", "Duplicate", ("Ctrl+D",), BOTH),
    SurfaceKey("chosen", "copy", "Copy", ("Ctrl+C",), BOTH),
    SurfaceKey("chosen", "cut", "Cut", ("Ctrl+X",), BOTH),
    SurfaceKey("chosen", "onto", "Onto the spacing", ("G",), BENCH),
    SurfaceKey("chosen", "across", "In equal steps across", ("X",), BENCH),
    SurfaceKey("chosen", "down", "In equal steps down", ("Y",), BENCH),
    SurfaceKey("chosen", "space_across", "Space evenly across", ("E",), BENCH),
    SurfaceKey("chosen", "space_down", "Space evenly down", ("Shift+E",), BENCH),
    SurfaceKey("chosen", "left", "Left edges in line", ("Ctrl+Shift+Left",), BENCH),
    SurfaceKey("chosen", "right", "Right edges in line", ("Ctrl+Shift+Right",), BENCH),
    SurfaceKey("chosen", "top", "Top edges in line", ("Ctrl+Shift+Up",), BENCH),
    SurfaceKey("chosen", "bottom", "Bottom edges in line", ("Ctrl+Shift+Down",), BENCH),
    SurfaceKey("chosen", "row", "Middles in a row", ("H",), BENCH),
    SurfaceKey("chosen", "column", "Middles in a column", ("Shift+H",), BENCH),
    SurfaceKey("chosen", "mirror_across", "Swap left and right", ("Ctrl+M",), BENCH),
    SurfaceKey("chosen", "mirror_down", "Swap top and bottom", ("Ctrl+Shift+M",), BENCH),
    SurfaceKey("in hand", "steer", "Move the pointer by 10 mm", ARROWS),
    SurfaceKey("in hand", "steer", "Move the pointer by the spacing", ARROWS, BENCH),
    SurfaceKey("in hand", "steer a little", "Move the pointer by 1 mm", WITH_SHIFT, BOTH),
    SurfaceKey("in hand", "next terminal", "Go to the next terminal, while a wire is pulled", ("Tab",), BOTH),
    SurfaceKey("in hand", "previous terminal", "Go to the terminal before", ("Shift+Tab",), BOTH),
    SurfaceKey("in hand", "enter", "Set it down, start or end the line, agree", ("Return", "Enter"), BOTH),
    SurfaceKey("in hand", "row", "Begin a row of parts", ("Shift+Return", "Shift+Enter")),
    SurfaceKey("in hand", "flip", "A corner here, or the wire's other way round", ("Space",), BOTH),
    SurfaceKey("in hand", "back", "One corner or character back", ("Backspace",), BOTH),
    SurfaceKey("in hand", "turn", "Turn it a quarter", ("R",), BOTH),
    SurfaceKey("in hand", "turn back", "Turn it a quarter back", ("Shift+R",), BOTH),
)
PLAN_KEYS = tuple(key for key in KEYS if key.on != BENCH)
BENCH_KEYS = tuple(key for key in KEYS if key.on != PLAN)
PLACES = {PLAN: "On the plan", BENCH: "On the panel bench", BOTH: "On plan and panel bench"}
WHEN = {
    "always": "",
    "nothing": ", with nothing selected",
    "chosen": ", with something selected",
    "in hand": ", with a tool in hand",
}


def where(key: SurfaceKey) -> str:
    """Return in words where and when a key holds."""
    return PLACES[key.on] + WHEN[key.when]


def keys_of(name: str, when: str = "chosen") -> str:
    """Return the first key of what has that name on the plan, as menus write it; "" for none."""
    return next((k.keys[0] for k in PLAN_KEYS if k.name == name and k.when in (when, "always")), "")
