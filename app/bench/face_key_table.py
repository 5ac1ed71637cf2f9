"""The keys of the panel on the bench in words, for the list of keys; a test holds them to what it obeys."""

from typing import NamedTuple


class FaceKey(NamedTuple):
    """Keys that do one thing, by the name the bench has for it."""

    name: str
    words: str
    keys: tuple[str, ...]


FACE_KEYS = (
    FaceKey("next", "To the next part, line or legend, and back", ("Tab", "Shift+Tab")),
    FaceKey("shift", "Move it by the spacing", ("Left", "Right", "Up", "Down")),
    FaceKey("turn over", "Turn the panel over", ("B",)),
    FaceKey("wire", "Pull a wire behind it", ("W",)),
    FaceKey("line", "Draw a track line", ("D",)),
    FaceKey("text", "Put a legend", ("L",)),
    FaceKey("select", "Select and move", ("V",)),
    FaceKey("whole", "Everything it is joined with as one thing", ("J",)),
    FaceKey("rename", "Type it anew", ("Return", "F2")),
    FaceKey("turn", "Turn a quarter", ("R",)),
    FaceKey("turn back", "Turn a quarter back", ("Shift+R",)),
    FaceKey("throw", "Throw the switch", ("T", "Space")),
    FaceKey("remove", "Remove", ("Del", "Backspace")),
    FaceKey("select_all", "Select all", ("Ctrl+A",)),
    FaceKey("copy", "Copy", ("Ctrl+C",)),
    FaceKey("cut", "Cut", ("Ctrl+X",)),
    FaceKey("paste", "Paste", ("Ctrl+V",)),
    FaceKey("duplicate", "Duplicate", ("Ctrl+D",)),
    FaceKey("onto", "Onto the spacing", ("G",)),
    FaceKey("across", "In equal steps across", ("X",)),
    FaceKey("down", "In equal steps down", ("Y",)),
    FaceKey("space_across", "Space evenly across", ("E",)),
    FaceKey("space_down", "Space evenly down", ("Shift+E",)),
    FaceKey("left", "Left edges in line", ("Ctrl+Shift+Left",)),
    FaceKey("right", "Right edges in line", ("Ctrl+Shift+Right",)),
    FaceKey("top", "Top edges in line", ("Ctrl+Shift+Up",)),
    FaceKey("bottom", "Bottom edges in line", ("Ctrl+Shift+Down",)),
    FaceKey("row", "Middles in a row", ("H",)),
    FaceKey("column", "Middles in a column", ("Shift+H",)),
    FaceKey("mirror_across", "Swap left and right", ("Ctrl+M",)),
    FaceKey("mirror_down", "Swap top and bottom", ("Ctrl+Shift+M",)),
    FaceKey("leave", "Leave what is under way, then go back to the plan", ("Esc",)),
)
