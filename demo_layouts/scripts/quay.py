"""The quay of Kelpwater Harbour: eight lamps and two lit buildings on batteries, one fascia switch."""

from itertools import pairwise

from draft import Draft, Habits


def quay():
    """Return the plan of the quay scene."""
    habits = Habits(units="us", wire_size="24 AWG", slack_m=0.1, fascia="bottom", paper="Letter")
    board = ((0, 0), (1220, 0), (1220, 460), (0, 460))
    tracks = [((0, 92), (760, 92), (1220, 120)), ((240, 92), (420, 138), (1160, 150))]
    draft = Draft("Kelpwater quay", habits, board, tracks)
    scene = draft.scene("Quay", 60, 180, 1100, 190, hours=3.0, sessions=4.0)
    panel = draft.panel("Quay panel", 500, 474, 220, 90)

    pack = draft.part(
        "battery-alkaline", 150, 420, "quay pack", scene=scene,
        cell="alkaline AA", in_series=8, in_parallel=1, fitted="2026-10-03",
    )  # fmt: skip
    fuse = draft.part("fuse", 300, 420, "pack fuse", scene=scene, rating_a=0.5)
    switch = draft.part("toggle-on-off", 610, 518, "QUAY LIGHTS", panel=panel, scene=scene, turn=180)
    feed = draft.part("distribution-block-6", 470, 420, "quay plus", scene=scene)
    back = draft.part("distribution-block-6", 742, 420, "quay return", scene=scene)

    draft.wire((pack, "+"), (fuse, "1"), "RD", "22 AWG")
    draft.over((fuse, "2"), (switch, "13"), 450, "RD", "22 AWG")
    draft.over((switch, "14"), (feed, "1"), 464, "RDWH", "22 AWG")
    draft.over((back, "6"), (pack, "-"), 396, "BK", "22 AWG")

    lamps = [
        draft.part("led-warm-white", 130 + 136 * i, 330, f"quay lamp {i + 1}", scene=scene) for i in range(8)
    ]
    chandler = draft.part("building-led", 330, 240, "ship chandler", scene=scene, in_parallel=3)
    customs = draft.part("building-led", 830, 240, "customs house", scene=scene, in_parallel=4)

    draft.over((feed, "2"), (lamps[3], "A"), 362, "RDWH")
    draft.over((back, "2"), (lamps[4], "K"), 370, "BK")
    for left, right in pairwise(lamps):
        draft.over((left, "A"), (right, "A"), 312, "RDWH")
        draft.over((left, "K"), (right, "K"), 348, "BK")
    draft.over((feed, "4"), (chandler, "A"), 292, "RDWH")
    draft.over((back, "3"), (chandler, "K"), 300, "BK")
    draft.over((feed, "5"), (customs, "A"), 284, "RDWH")
    draft.over((back, "4"), (customs, "K"), 302, "BK")
    return draft.plan()
