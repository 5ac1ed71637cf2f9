"""A small plan to edit, and plans at random, built by the same edits the editor uses."""

from datetime import date

from hypothesis import strategies as st

from wiring.catalogue.shelf import builtin_kinds
from wiring.edits.backdrop import lay_backdrop
from wiring.edits.benchwork import add_track, set_board
from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.face_items import add_line, add_text
from wiring.edits.groups import join
from wiring.edits.joists import add_joist
from wiring.edits.lay_along import lay_along
from wiring.edits.log_battery import log_battery
from wiring.edits.panels import add_panel
from wiring.edits.place_part import place
from wiring.edits.scenes import add_scene
from wiring.edits.set_plan import set_habits, set_plan
from wiring.edits.set_value import set_field
from wiring.edits.set_wire import set_wire
from wiring.edits.wireways import add_wireway
from wiring.plan.backdrop import Backdrop
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.routing.along_wireways import routes

KINDS = builtin_kinds()
COORDINATES = st.floats(-5000, 5000, allow_nan=False)
TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=20)


BACKDROPS = st.builds(
    Backdrop,
    media=st.sampled_from(["image/png", "image/svg+xml"]),
    path=st.sampled_from(["quay.png", "pictures/quay 2.svg"]),
    width_px=st.floats(1, 6000),
    height_px=st.floats(1, 6000),
    x_mm=COORDINATES,
    mm_per_px=st.floats(0.01, 50),
)


def done(plan: Plan, *edits) -> Plan:
    for edit in edits:
        plan = edit.apply(plan)
    return plan


def quay() -> Plan:
    """Return a battery p2, a switch p3 and a lamp p4 on the scene s1, joined by w5, w6 and w7."""
    return done(
        Plan(),
        add_scene("Quay", 0, 0, 600, 400),
        place(KINDS["battery-9v"], 100, 300),
        place(KINDS["toggle-on-off"], 100, 700),
        place(KINDS["led-warm-white"], 400, 100),
        connect(TerminalRef("p2", "+"), TerminalRef("p3", "13"), colour="RD"),
        connect(TerminalRef("p3", "14"), TerminalRef("p4", "A"), colour="RD", bends=[(400, 700)]),
        connect(TerminalRef("p4", "K"), TerminalRef("p2", "-")),
    )


def furnished_quay() -> Plan:
    """Return the quay with one of everything else a plan can hold, and lamps and blocks still to be wired."""
    return done(
        quay(),
        set_board(((0, 0), (2400, 0), (2400, 900))),
        add_track([(0, 50), (900, 50)]),
        add_joist((0, 500), (2400, 500)),
        add_wireway([(0, 600), (600, 600), (1200, 600)], "Beam"),
        lay_backdrop(Backdrop(media="image/png", path="quay.png", width_px=800, height_px=600)),
        add_panel("Fascia", 0, 650, 300, 200),  # under the switch, whose wires leave it
        add_line("n9", [(10, 10), (90, 10)]),
        add_text("n9", "UP MAIN", 50, 30),
        place(KINDS["push-to-make"], 163, 750),
        place(KINDS["indicator-red"], 222, 781),
        set_field(["p3", "p10"], label="Quay lights"),
        place(KINDS["led-warm-white-bare"], 500, 100),
        place(KINDS["terminal-strip-4"], 500, 400),
        place(KINDS["terminal-strip-4"], 800, 400),
        log_battery("p2", "fitted", date(2026, 3, 1)),
        join(["p13", "p14"]),
    )


@st.composite
def plans(draw) -> Plan:
    """Draw a sound plan with everything a plan can hold in it."""
    plan = done(
        Plan(),
        set_plan(title=draw(TEXTS), author=draw(TEXTS)),
        set_habits(units=draw(st.sampled_from(["us", "metric"])), slack_m=draw(st.floats(0, 1))),
        set_board(draw(st.sampled_from([(), ((0, 0), (2400, 0), (2400, 600.5))]))),
        add_track([(draw(COORDINATES), 0), (100, draw(COORDINATES))]),
        add_scene("Quay", 0, 0, draw(st.floats(0, 900)), 400),
        add_panel("Fascia", -500, 600, 300, 120),
        add_wireway([(draw(COORDINATES), 0), (100, draw(COORDINATES))], draw(st.sampled_from(["", "Beam"]))),
    )
    if draw(st.booleans()):
        plan = lay_backdrop(draw(BACKDROPS)).apply(plan)
    for kind in draw(st.lists(st.sampled_from(sorted(KINDS)), max_size=6)):
        plan = place(KINDS[kind], draw(COORDINATES), draw(COORDINATES), draw(COORDINATES)).apply(plan)
    for part_id in list(plan.parts):
        plan = set_field([part_id], label=draw(TEXTS), note=draw(TEXTS)).apply(plan)
    if len(plan.parts) > 1 and draw(st.booleans()):
        plan = join(list(plan.parts)[:2]).apply(plan)
    refs = [TerminalRef(p.id, t.name) for p in plan.parts.values() for t in KINDS[p.kind].terminals]
    for start, end in draw(st.lists(st.tuples(*[st.sampled_from(refs)] * 2), max_size=6)) if refs else ():
        try:
            plan = connect(start, end, draw(st.lists(st.tuples(COORDINATES, COORDINATES), max_size=2))).apply(
                plan
            )
        except EditRefused:
            continue
        wire_id = next(reversed(plan.wires))
        length_m = draw(st.none() | st.floats(0.001, 50))
        plan = set_wire([wire_id], length_m=length_m, solid=draw(st.booleans())).apply(plan)
    return lay_along(routes(plan, KINDS, plan.wires)).apply(plan) if draw(st.booleans()) else plan
