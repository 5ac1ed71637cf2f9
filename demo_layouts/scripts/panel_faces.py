"""What is painted on the faces of the demo panels, and how their wires come out."""

from wiring.edits.face_items import add_line, add_text
from wiring.edits.face_legends import legends_from_labels
from wiring.edits.panel_harness import bring_out
from wiring.edits.panels import change_panel

MAIN, ROAD = ("BK", 5), ("GN", 4)


def painted(plan, panel, lines, texts, **fields):
    """Return the plan with lines (sort, points) and texts (words, x, y, height) on a face."""
    plan = change_panel(panel, **fields).apply(plan)
    for (colour, width), points in lines:
        plan = add_line(panel, points, width, colour).apply(plan)
    for words, x, y, high in texts:
        plan = add_text(panel, words, x, y, high_mm=high).apply(plan)
    return plan


def siding_face(plan):
    """Return the siding with the main line, timber road, stone road and dock on its panel, and a harness."""
    (panel,) = plan.panels
    lines = [
        (ROAD, [(90, 40), (110, 60), (540, 60)]),
        (ROAD, [(340, 60), (360, 80), (540, 80)]),
        (ROAD, [(590, 40), (610, 20), (700, 20)]),
        (MAIN, [(20, 40), (700, 40)]),
    ]
    texts = [("WEST THROAT", 110, 154, 4), ("TIMBER ROAD", 360, 154, 4), ("STONE ROAD", 610, 154, 4)]
    texts += [
        ("TO THE HARBOUR", 42, 31, 2.5),
        ("TIMBER", 560, 60, 3),
        ("STONE", 560, 80, 3),
        ("DOCK", 690, 29, 2.5),
    ]
    texts += [("TIMBER SIDING", 74, 196, 7)]
    plan = painted(plan, panel, lines, texts, spacing_mm=10, room_mm=60)
    return bring_out(panel).apply(plan)


def harbour_faces(plan):
    """Return the harbour with its three panels painted, and the west panel's wires as a harness."""
    lights, west, east = plan.panels
    plan = painted(plan, lights, [], [("LIGHTS", 60, 30, 7)], spacing_mm=20, room_mm=60)
    plan = legends_from_labels(lights, 4.5).apply(plan)
    lines = [(MAIN, [(20, 50), (960, 50)]), (MAIN, [(20, 70), (960, 70)])]
    for i in range(7):
        x, outer = 80 + 136 * i, i % 2 == 0
        y, way = (50, -1) if outer else (70, 1)
        lines.insert(0, (ROAD, [(x - 20, y), (x, y + 20 * way), (x + 50, y + 20 * way)]))
    texts = [("OUTER", 940, 42, 3), ("INNER", 940, 79, 3), ("WEST SIDE", 66, 210, 7)]
    plan = painted(plan, west, lines, texts, room_mm=60)
    plan = legends_from_labels(west, 3).apply(plan)
    quay = [(ROAD, [(90 + 136 * i, 32), (130 + 136 * i, 60)]) for i in range(6)]
    texts = [("QUAY LINE", 930, 24, 3), ("EAST SIDE", 64, 210, 7)]
    plan = painted(plan, east, [*quay, (MAIN, [(20, 32), (960, 32)])], texts, room_mm=60)
    plan = legends_from_labels(east, 2.5).apply(plan)
    return bring_out(west).apply(plan)
