"""Make legends of the labels that the parts of a panel have already."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.face_items import add_text
from wiring.edits.panels import panel_of
from wiring.edits.tables import known_kinds
from wiring.plan.panel_bodies import bodies_on
from wiring.plan.panel_places import to_face
from wiring.plan.plan import Plan

BELOW_MM = 5.0  # from the body of a part to the middle of its legend, at the usual height of letters


def legends_from_labels(
    panel_id: str,
    high_mm: float = 3.5,
    colour: str = "BK",
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Put each part's label below it as a legend, unless the face says these words already."""

    def apply(plan: Plan) -> Plan:
        panel = panel_of(plan, panel_id)
        said = {text.text.casefold() for text in panel.texts}
        new = plan
        for body in bodies_on(plan, known_kinds(kinds), panel):
            words = " ".join(body.part.label.split())
            if not words or words.casefold() in said:
                continue
            said.add(words.casefold())
            middle, below = to_face(panel, ((body.box[0] + body.box[2]) / 2, body.box[3]))
            down = below + BELOW_MM + high_mm / 2
            new = add_text(panel_id, words, middle, down, high_mm=high_mm, colour=colour).apply(new)
        if new is plan:
            raise EditRefused(
                f"No part on the panel {panel.name} has a label that the face does not say already."
            )
        return new

    return Edit("Legends from labels", apply)
