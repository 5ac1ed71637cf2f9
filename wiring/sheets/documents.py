"""The documents a set is made of, by the names they are chosen by."""

from collections.abc import Collection, Mapping

DOCUMENTS: Mapping[str, str] = {
    "cover": "Summary",
    "safety": "Safety notes",
    "plan": "Plan, above and below",
    "tiles": "Plan in tiles",
    "circuits": "Circuit drawings",
    "bench": "Bench list",
    "cut": "Cut list, with harnesses",
    "strips": "Terminal charts",
    "parts": "Parts list, with resistors",
    "meter": "Meter checks",
    "panels": "Panels",
    "labels": "Wire labels",
}


def chosen(only: Collection[str] | None) -> Collection[str]:
    """Return the documents that are wanted, all for none named; ValueError in one sentence for another."""
    for name in only or ():
        if name not in DOCUMENTS:
            raise ValueError(f"There is no document “{name}” in the set; choose from {', '.join(DOCUMENTS)}.")
    return only or DOCUMENTS


def is_whole(only: Collection[str] | None, scene: str | None) -> bool:
    """Return whether nothing but the tiles is left out, so that the set counts as printed."""
    return scene is None and not (DOCUMENTS.keys() - {"tiles"}) - set(chosen(only))
