"""The timber siding of Kelpwater Harbour: three turnouts with slow motors, one panel, one 12 V supply."""

from itertools import pairwise

from draft import Draft, Habits
from panel_faces import siding_face


def siding():
    """Return the plan of the siding."""
    habits = Habits(units="metric", wire_size="0.5 mm²", slack_m=0.15, fascia="bottom", paper="A4")
    board = ((0, 0), (2100, 0), (2100, 620), (0, 620))
    tracks = [
        ((0, 110), (2100, 110)),
        ((380, 110), (620, 190), (1900, 190)),
        ((820, 190), (1060, 270), (1900, 270)),
        ((1260, 110), (1480, 50), (2100, 50)),
    ]
    draft = Draft("Timber siding turnouts", habits, board, tracks)
    scene = draft.scene("Timber siding", 40, 20, 2020, 300, hours=4.0, sessions=3.0)
    panel = draft.panel("Siding panel", 690, 690, 720, 220)

    supply = draft.part("supply-regulated", 140, 540, "12 V adapter", volts=12.0, limit_a=2.0)
    fuse = draft.part("fuse", 300, 520, "siding fuse", rating_a=0.5)
    plus = draft.part("distribution-block-6", 500, 520, "plus under the siding")
    minus = draft.part("distribution-block-6", 500, 580, "return under the siding")
    strip = draft.part("terminal-strip-12", 1050, 540, "panel strip")
    draft.wire((supply, "+"), (fuse, "1"), "RD", "0.75 mm²")
    draft.wire((fuse, "2"), (plus, "1"), "RD", "0.75 mm²")
    draft.wire((supply, "-"), (minus, "1"), "BU", "0.75 mm²")

    names = ("west throat", "timber road", "stone road")
    spots = ((440, 160), (880, 240), (1310, 60))
    columns = (800, 1050, 1300)
    # green stands on the road straight on, red on the road that leaves, as the panel's diagram has them
    signals = (((30, 40), (60, 60)), ((40, 60), (70, 80)), ((40, 40), (70, 20)))
    screws = iter(range(1, 13))
    motors, switches, lamps = [], [], []
    for i, (name, (x, y), column) in enumerate(zip(names, spots, columns, strict=True)):
        motors.append(draft.part("stall-motor", x, y + 30, name, scene=scene, position="normal"))
        switches.append(draft.part("toggle-on-on-2p", column, 820, name.upper(), panel=panel, turn=90))
        (green_x, green_y), (red_x, red_y) = signals[i]
        on_panel = {"panel": panel, "scene": scene, "turn": 90}
        green = draft.part("indicator-green", column + green_x, 690 + green_y, f"{name} straight", **on_panel)
        red = draft.part("indicator-red", column + red_x, 690 + red_y, f"{name} turned", **on_panel)
        lamps.append((green, red))
        motor, switch = motors[i], switches[i]
        run = 360 + 24 * i
        for number, (source, target, colour) in enumerate(
            (
                ((switch, "11"), (motor, "M1"), "GN"),
                ((switch, "21"), (motor, "M2"), "WH"),
                ((green, "A"), (motor, "12"), "YE"),
                ((red, "A"), (motor, "14"), "OG"),
            )
        ):
            screw = str(next(screws))
            draft.over((strip, screw), source, 600 + 6 * (4 * i + number), colour, "0.25 mm²")
            draft.over((strip, screw), target, run + 6 * number, colour, "0.25 mm²")

    draft.over((plus, "2"), (switches[0], "12"), 872, "RD")
    draft.over((minus, "2"), (switches[0], "14"), 880, "BU")
    for left, right in pairwise(switches):
        draft.over((left, "12"), (right, "12"), 850, "RD")
        draft.over((left, "14"), (right, "14"), 858, "BU")
    for switch in switches:
        draft.wire((switch, "12"), (switch, "24"), "RD", "0.25 mm²", length=0.06)
        draft.wire((switch, "14"), (switch, "22"), "BU", "0.25 mm²", length=0.06)
    chain = [lamp for pair in lamps for lamp in pair]
    draft.over((minus, "3"), (chain[0], "K"), 800, "BU", "0.25 mm²")
    for left, right in pairwise(chain):
        draft.over((left, "K"), (right, "K"), 794, "BU", "0.25 mm²")
    for terminal, motor, run in zip(("3", "4", "5"), motors, (330, 338, 346), strict=True):
        draft.over((plus, terminal), (motor, "11"), run, "RD", "0.25 mm²")
    return siding_face(draft.plan())
