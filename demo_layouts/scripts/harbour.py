"""All of Kelpwater Harbour: five fused lighting districts, twenty turnouts, three panels, one AC circuit."""

from itertools import pairwise

from draft import Draft, Habits
from panel_faces import harbour_faces

BUS, FEED, DROP = "1.5 mm²", "0.75 mm²", "0.25 mm²"


def harbour():
    """Return the plan of the whole layout."""
    habits = Habits(units="metric", wire_size="0.5 mm²", slack_m=0.15, fascia="bottom", paper="A4")
    board = (
        (0, 0), (4800, 0), (4800, 2400), (3900, 2400), (3900, 900), (900, 900), (900, 2400), (0, 2400),
    )  # fmt: skip
    tracks = [
        ((450, 2400), (450, 1100), (520, 700), (800, 470), (1200, 430), (3600, 430), (4000, 470), (4280, 700),
         (4350, 1100), (4350, 2400)),
        ((540, 2400), (540, 1100), (600, 760), (840, 550), (1200, 500), (3600, 500), (3960, 550), (4200, 760),
         (4260, 1100), (4260, 2400)),
        ((1500, 500), (1720, 580), (3000, 580)),
        ((1900, 580), (2100, 650), (2900, 650)),
    ]  # fmt: skip
    draft = Draft("Kelpwater Harbour, whole layout", habits, board, tracks)
    lights = draft.panel("Lights panel", 980, 1000, 800, 170)
    west = draft.panel("West panel", 980, 1300, 980, 230)
    east = draft.panel("East panel", 2840, 1300, 980, 230)

    supply = draft.part("supply-regulated", 1040, 820, "lighting supply", volts=12.0, limit_a=5.0)
    plus = draft.part("distribution-block-12", 1250, 800, "lighting plus")
    minus = draft.part("distribution-block-12", 1250, 865, "lighting return")
    draft.wire((supply, "+"), (plus, "1"), "RD", BUS)
    draft.wire((supply, "-"), (minus, "1"), "BK", BUS)
    _lighting(draft, lights, plus, minus)

    motors_supply = draft.part("supply-regulated", 2340, 820, "turnout supply", volts=12.0, limit_a=2.0)
    fuse = draft.part("fuse", 2545, 810, "turnout fuse", rating_a=1.0)
    t_plus = draft.part("distribution-block-6", 2745, 800, "turnout plus")
    t_minus = draft.part("distribution-block-6", 2745, 865, "turnout return")
    draft.wire((motors_supply, "+"), (fuse, "1"), "OG", FEED)
    draft.wire((fuse, "2"), (t_plus, "1"), "OG", FEED)
    draft.wire((motors_supply, "-"), (t_minus, "1"), "BU", FEED)
    left = [(420, 2250), (560, 2050), (420, 1850), (560, 1650), (420, 1450), (560, 1250), (640, 700)]
    right = [(4380, 2250), (4240, 2050), (4380, 1850), (4240, 1650), (4380, 1450), (4240, 1250), (4160, 700)]
    _turnouts(draft, west, left, (t_plus, "2"), (t_minus, "2"), 1060, "west")
    _turnouts(draft, east, right, (t_plus, "3"), (t_minus, "3"), 2920, "east")
    _ac(draft, east)
    return harbour_faces(draft.plan())


def _lighting(draft, panel, plus, minus):
    districts = [
        ("Old town", 940, 60, 1000, 300, "RDWH"),
        ("Quay", 2000, 60, 1000, 300, "RDYE"),
        ("Yard", 3060, 60, 1000, 300, "RDGN"),
        ("West shore", 40, 1000, 340, 1300, "RDBU"),
        ("East works", 4420, 1000, 340, 1300, "RDVT"),
    ]
    for i, (name, x, y, width, height, colour) in enumerate(districts):
        scene = draft.scene(name, x, y, width, height, hours=3.5, sessions=4.0)
        fuse = draft.part("fuse", 1060 + 160 * i, 960, f"{name} fuse", rating_a=1.0, scene=scene)
        switch = draft.part("toggle-on-off", 1060 + 160 * i, 1085, name.upper(), panel=panel, scene=scene)
        wide = width > height
        bx, by = (x + width / 2, y + height + 30) if wide else (x + width / 2, y - 60)
        feed = draft.part("distribution-block-6", bx - 70, by, f"{name} plus", scene=scene)
        back = draft.part("distribution-block-6", bx + 70, by, f"{name} return", scene=scene)
        draft.over((plus, str(i + 2)), (fuse, "1"), 905 + 6 * i, "RD", FEED)
        draft.beside((fuse, "2"), (switch, "13"), draft.at((fuse, "2"))[0] + 12, "RD", FEED)
        draft.over((switch, "14"), (feed, "1"), 760 - 14 * i, colour, FEED)
        draft.over((minus, str(i + 2)), (back, "1"), 753 - 14 * i, "BK", FEED)
        rows = 4
        for row in range(rows):
            row_parts = []
            for place in range(6):
                if wide:
                    at = (x + 80 + place * (width - 160) / 5, y + 45 + row * (height - 90) / 3)
                else:
                    at = (x + 50 + row * (width - 100) / 3, y + 80 + place * (height - 160) / 5)
                is_building = place == (row + 2) % 6
                kind = "building-led" if is_building else "led-warm-white"
                words = f"{name} {'house' if is_building else 'lamp'} {row * 6 + place + 1}"
                values = {"in_parallel": 2 + row % 3} if is_building else {}
                row_parts.append(draft.part(kind, *at, words, scene=scene, **values))
            first = row_parts[2] if wide else row_parts[0]
            draft.wire(
                (feed, str(row + 2)),
                (first, "A"),
                colour,
                DROP,
                _corner(draft, (feed, str(row + 2)), (first, "A"), wide),
            )
            draft.wire(
                (back, str(row + 2)),
                (first, "K"),
                "BK",
                DROP,
                _corner(draft, (back, str(row + 2)), (first, "K"), wide),
            )
            for one, other in pairwise(row_parts):
                _pair(draft, one, other, colour, wide)


def _corner(draft, start, end, wide):
    (x1, y1), (x2, y2) = draft.at(start), draft.at(end)
    return [(x1, y2 + 30), (x2, y2 + 30)] if wide else [(x1, y1 + 30), (x2, y1 + 30)]


def _pair(draft, one, other, colour, wide):
    if wide:
        y = draft.at((one, "A"))[1]
        draft.over((one, "A"), (other, "A"), y - 16, colour, DROP)
        draft.over((one, "K"), (other, "K"), y + 16, "BK", DROP)
    else:
        draft.beside((one, "A"), (other, "A"), draft.at((one, "A"))[0] - 10, colour, DROP)
        draft.beside((one, "K"), (other, "K"), draft.at((one, "K"))[0] + 10, "BK", DROP)


def _turnouts(draft, panel, spots, plus, minus, left_x, side):
    switches = []
    for i, (x, y) in enumerate(spots):
        name = f"{side} turnout {i + 1}"
        motor = draft.part(
            "stall-motor", x, y, name, position="normal", turn=180.0 if side == "west" else 0.0
        )
        switch = draft.part("toggle-on-on-2p", left_x + 136 * i, 1430, name.upper(), panel=panel, turn=90)
        switches.append(switch)
        inside = 940 - 6 * i if side == "west" else 3860 + 6 * i
        lane = 1270 + 6 * (i if side == "west" else 6 - i)
        draft.along((switch, "11"), (motor, "M1"), lane, inside, "GN", DROP)
        draft.along(
            (switch, "21"), (motor, "M2"), lane + 3, inside + (3 if side == "east" else -3), "WH", DROP
        )
        draft.wire((switch, "12"), (switch, "24"), "OG", DROP, length=0.06)
        draft.wire((switch, "14"), (switch, "22"), "BU", DROP, length=0.06)
    near = switches[-1] if side == "west" else switches[0]
    draft.over(plus, (near, "12"), 1245, "OG", FEED)
    draft.over(minus, (near, "14"), 1255, "BU", FEED)
    for one, other in pairwise(switches):
        draft.over((one, "12"), (other, "12"), 1490, "OG")
        draft.over((one, "14"), (other, "14"), 1500, "BU")


def _ac(draft, panel):
    scene = draft.scene("Boatyard", 1180, 595, 1700, 110, hours=3.5, sessions=4.0)
    supply = draft.part("supply-ac", 3160, 820, "16 V AC accessory supply", rated_v=16.0, rated_a=2.0)
    fuse = draft.part("fuse", 3300, 860, "AC fuse", rating_a=2.0)
    one = draft.part("distribution-block-12", 3480, 800, "AC leg 1")
    two = draft.part("distribution-block-12", 3480, 865, "AC leg 2")
    draft.wire((supply, "~1"), (fuse, "1"), "BN", FEED)
    draft.wire((fuse, "2"), (one, "1"), "BN", FEED)
    draft.wire((supply, "~2"), (two, "1"), "GY", FEED)
    lamps = [
        draft.part("lamp-16v", 1260 + 110 * i, 690, f"boatyard lamp {i + 1}", scene=scene) for i in range(8)
    ]
    draft.over((one, "2"), (lamps[-1], "1"), 722, "BN")
    draft.over((two, "2"), (lamps[-1], "2"), 730, "GY")
    for left, right in pairwise(lamps):
        draft.over((left, "1"), (right, "1"), 674, "BN", DROP)
        draft.over((left, "2"), (right, "2"), 706, "GY", DROP)
    before = (one, "3")
    for i in range(6):
        coil = draft.part(
            "twin-coil", 1880 + 200 * i, 545 + 60 * (i % 2), f"quay turnout {i + 1}", scene=scene
        )
        button_n = draft.part(
            "push-to-make", 2920 + 136 * i, 1360, f"Q{i + 1} STRAIGHT", panel=panel, turn=90
        )
        button_r = draft.part("push-to-make", 2970 + 136 * i, 1360, f"Q{i + 1} TURN", panel=panel, turn=90)
        draft.over((button_n, "13"), (coil, "N"), 1210 + 8 * i, "YE")
        draft.over((button_r, "13"), (coil, "R"), 1214 + 8 * i, "OG")
        draft.over((two, str(i + 3)), (coil, "C"), 736 + 4 * i, "GY")
        draft.over(before, (button_n, "14"), 1384, "BN", FEED if i == 0 else None)
        draft.over((button_n, "14"), (button_r, "14"), 1380, "BN")
        before = (button_r, "14")
