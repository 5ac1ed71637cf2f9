"""The name proposed for a set that is kept: its building's, else what its parts have in common."""

from collections.abc import Collection, Mapping, Sequence
from itertools import chain, count, takewhile

from wiring.catalogue.kind import Kind
from wiring.plan.part import Part


def set_name(parts: Sequence[Part], kinds: Mapping[str, Kind], taken: Collection[str]) -> str:
    """Return a name no other set has: the building's, the words all labels begin with, the largest part's.

    Without any label it is a number.
    """
    label = _label(parts, kinds)
    folded = {one.casefold() for one in taken}
    numbered = (f"{label}, {n}" if label else f"Set {n}" for n in count(2 if label else len(taken) + 1))
    return next(name for name in chain([label] if label else [], numbered) if name.casefold() not in folded)


def _label(parts: Sequence[Part], kinds: Mapping[str, Kind]) -> str:
    labelled = sorted((p for p in parts if p.label), key=lambda p: -_area_mm2(kinds.get(p.kind)))
    if not labelled:
        return ""
    houses = [p.label for p in labelled if _is_building(kinds.get(p.kind))]
    return houses[0] if houses else _in_common([p.label for p in labelled]) or labelled[0].label


def _is_building(kind: Kind | None) -> bool:
    return kind is not None and kind.sign == "building"


def _area_mm2(kind: Kind | None) -> float:
    return kind.width_mm * kind.height_mm if kind is not None else 0.0


def _in_common(labels: Sequence[str]) -> str:
    """Return the words that all those labels begin with; "" for a single label."""
    if len(labels) < 2:
        return ""
    columns = zip(*(label.split() for label in labels), strict=False)
    return " ".join(words[0] for words in takewhile(lambda words: len(set(words)) == 1, columns))
