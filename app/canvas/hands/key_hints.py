"""What the strip says of the keys while a tool is steered by them."""

from app.canvas.gestures.pointer import Preview

_CORNERS = "Click at each corner, or arrows and Space. Enter: done. Backspace: one back. Esc: leave it."
BY_KEYS = {
    "place": "Click or Enter to place it; arrows move it, R turns it. Esc: done.",
    "set": "Click or Enter to set it down; arrows move it, R turns it. Esc: done.",
    "wire": "Tab: the next terminal. Enter: from here, then to there. Space: the other way round. Esc: done.",
    "measure": "Click, or arrows and Enter: from here, on from there. Backspace: one back. Esc: done.",
    "joist": "Click at both ends, or arrows and Enter. Esc: done.",
    "scene": "Drag from corner to corner, or arrows and Enter at both. Esc: leave it.",
    "panel": "Drag from corner to corner, or arrows and Enter at both. Esc: leave it.",
    **dict.fromkeys(("board", "track", "wireway"), _CORNERS),
}
FIRST = "Tab: the next part. N: wires and what else there is. Menu key: what can be done. F1: all keys."


def hint_for(tool: str, preview: Preview, *, steered: bool) -> str:
    """Return what the gesture asks for, or the keys while they steer it, unless it tells a measure."""
    tells = (
        (preview.types and not preview.begins)
        or (tool == "measure" and len(preview.outline) > 1)
        or bool(preview.line)
    )
    return BY_KEYS[tool] if steered and tool in BY_KEYS and not tells else preview.hint
