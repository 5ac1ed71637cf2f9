"""Labels and names with letters that the sheets cannot print."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.pictures.letters import lacking, lacking_words
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan

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
    owners = tuple(dict.fromkeys(owner for *_, owner in found))
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


def _texts(plan: Plan) -> Iterator[tuple[str, str, str]]:
    """Yield texts that are not plain: in words what each is, the text, the part or wire it is of."""
    for part in plan.parts.values():
        if part.label.isascii() and part.designation.isascii() and part.note.isascii():
            continue
        for word, text in (("designation", part.designation), ("label", part.label), ("note", part.note)):
            of = "" if word == "designation" else f" of -{part.designation}"
            yield f"The {word} {_quoted(text)}{of}", text, part.id
    for wire in plan.wires.values():
        if wire.label.isascii() and wire.note.isascii():
            continue
        for word, text in (("label", wire.label), ("note", wire.note)):
            of = " of a wire" if word == "label" else f" of -{wire.label}"
            yield f"The {word} {_quoted(text)}{of}", text, wire.id
    named = (("scene", plan.scenes), ("panel", plan.panels), ("wireway", plan.wireways))
    for word, table in named:
        for one in table.values():
            yield f"The name {_quoted(one.name)} of a {word}", one.name, ""
    for panel in plan.panels.values():
        for legend in panel.texts:
            yield f"The legend {_quoted(legend.text)} on {panel.name}", legend.text, ""
    for word, text in (("title", plan.title), ("author", plan.author)):
        yield f"The {word} {_quoted(text)} of the plan", text, ""


def _quoted(text: str) -> str:
    return f"“{text if len(text) <= LONGEST else text[: LONGEST - 1] + '…'}”"
