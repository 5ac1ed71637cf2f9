"""Labels and names with letters that the sheets cannot print."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.pictures.letters import lacking, lacking_words
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan

Text = tuple[str, str, tuple[str, ...]]  # in words what it is, itself, the parts or wires it is about
LONGEST = 40  # letters of a text that is named
WHY = "On paper, in PDF and on wire labels each of them is an empty box."
MEND = "Write it with Latin, Greek or Cyrillic letters; accents and most signs of trade can be printed."


def find(situation: Situation) -> Iterator[Finding]:
    """Find the texts of a plan that cannot be printed as they are, all in one note that names the first."""
    found = [each for each in _texts(situation.plan) if lacking(each[1])]
    if not found:
        return
    words, text, _ = found[0]
    letters = "a letter" if len(lacking(text)) == 1 else "letters"
    more = len(found) - 1
    others = f", and {more} more {'text' if more == 1 else 'texts'}," if more else ""
    owners = tuple(dict.fromkeys(owner for *_, them in found for owner in them))
    yield Finding(
        "letters-not-printed",
        Rank.NOTE,
        f"{words}{others} {'have' if more else 'has'} {letters} the sheets cannot print: "
        f"{lacking_words(text)}.",
        WHY,
        MEND,
        parts=tuple(PartId(i) for i in owners if i in situation.plan.parts),
        wires=tuple(WireId(i) for i in owners if i in situation.plan.wires),
    )


def _texts(plan: Plan) -> Iterator[Text]:
    yield from _of_parts_and_wires(plan)
    yield from _of_areas(plan)
    for word, text in (("title", plan.title), ("author", plan.author)):
        yield f"The {word} {_quoted(text)} of the plan", text, ()


def _of_parts_and_wires(plan: Plan) -> Iterator[Text]:
    for part in plan.parts.values():
        if part.label.isascii() and part.designation.isascii() and part.note.isascii():
            continue
        for word, text in (("designation", part.designation), ("label", part.label), ("note", part.note)):
            of = "" if word == "designation" else f" of -{part.designation}"
            yield f"The {word} {_quoted(text)}{of}", text, (part.id,)
    for wire in plan.wires.values():
        if wire.label.isascii() and wire.note.isascii():
            continue
        for word, text in (("label", wire.label), ("note", wire.note)):
            of = " of a wire" if word == "label" else f" of -{wire.label}"
            yield f"The {word} {_quoted(text)}{of}", text, (wire.id,)


def _of_areas(plan: Plan) -> Iterator[Text]:
    for scene in plan.scenes.values():
        if not scene.name.isascii():
            there = tuple(p.id for p in plan.parts.values() if p.scene == scene.id)
            yield f"The name {_quoted(scene.name)} of a scene", scene.name, there
    for panel in plan.panels.values():
        if not (panel.name.isascii() and all(legend.text.isascii() for legend in panel.texts)):
            there = tuple(p.id for p in plan.parts.values() if p.panel == panel.id)
            yield f"The name {_quoted(panel.name)} of a panel", panel.name, there
            for legend in panel.texts:
                yield f"The legend {_quoted(legend.text)} on {panel.name}", legend.text, there
    for way in plan.wireways.values():
        if not way.name.isascii():
            along = tuple(w.id for w in plan.wires.values() if way.id in w.along)
            yield f"The name {_quoted(way.name)} of a wireway", way.name, along


def _quoted(text: str) -> str:
    return f"“{text if len(text) <= LONGEST else text[: LONGEST - 1] + '…'}”"
