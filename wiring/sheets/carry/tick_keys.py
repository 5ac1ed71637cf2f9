"""What a tick on a carry sheet stands for: a short key made from all that is done when it is ticked."""

import hashlib

from wiring.plan.wire import Wire


def tick_key(*texts: str) -> str:
    """Return ten characters that change when any of the texts does."""
    whole = "\x1f".join(texts).encode("utf-8", "surrogatepass")
    return hashlib.sha256(whole).hexdigest()[:10]


def wire_key(wire: Wire) -> str:
    """Return the key of a wire being made; another end, size or colour gives another, swapped ends do not."""
    ends = sorted((":".join(wire.start), ":".join(wire.end)))
    return tick_key("wire", wire.id, *ends, wire.size, wire.colour, "solid" if wire.solid else "stranded")
