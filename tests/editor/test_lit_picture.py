"""After a throw only what looks otherwise is painted anew; every pixel is as if all of it had been."""

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QRect
from support.networks import draw
from support.surfaces import Desk

from app.canvas.geometry import Box
from app.canvas.lit_lamps import LitLamps
from app.canvas.painting.clips import apart, boxes_apart
from app.canvas.painting.still_picture import StillPicture
from app.solving import Solving
from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.solve import solve
from wiring.files.store import load
from wiring.pictures.theme import DARK, LIGHT


@pytest.fixture
def mended(monkeypatch):
    """How many pixels were painted anew each time; None for all of them."""
    seen = []
    real = StillPicture._to_mend

    def told(self, *a):
        clips = real(self, *a)
        seen.append(None if clips is None else sum(c.width() * c.height() for c in clips))
        return clips

    monkeypatch.setattr(StillPicture, "_to_mend", told)
    return seen


def switches(desk):
    kinds = desk.session.kinds
    return [
        p
        for p in desk.plan.parts.values()
        if {"off", "on"} == {position.name for position in kinds[p.kind].positions}
    ]


class WithoutOutlooks(Solving):
    def _examined(self, question):
        return super()._examined(question._replace(outlooks=False))


@pytest.mark.parametrize(
    ("name", "scale", "theme"),
    [
        ("quay", 0.35, DARK),
        ("quay", 0.6, LIGHT),
        ("quay", 1.4, DARK),
        ("quay", 2.4, LIGHT),
        ("harbour", 0.19, LIGHT),
        ("harbour", 2.4, DARK),
    ],
)
def test_throws_are_painted_to_the_pixel_as_if_all_had_been(qtbot, mended, name, scale, theme):
    desk = Desk(qtbot)
    desk.session.open(load(f"demo_layouts/{name}.underboard"), None)
    desk.view.set_theme(theme)
    solving = WithoutOutlooks(desk.session, at_once=True)
    solving.answered.connect(desk.view.set_answer)
    solving.request()
    first = switches(desk)[0]
    desk.look(scale, first.x_mm, first.y_mm)
    desk.shot()
    mended.clear()
    for switch in switches(desk)[:2]:
        for stand in ("off", "on"):
            desk.session.throw(switch.id, stand)
            shot = desk.shot()
            desk.view._state.look_at(None)  # nothing is known of where it changed: all is painted
            assert shot == desk.shot(), f"{switch.designation} {stand}"
    assert any(pixels is not None for pixels in mended)


def test_flags_that_come_and_go_are_painted_to_the_pixel(qtbot, mended):
    parts = {"G1": "supply-regulated", "S1": "toggle-on-off", "E1": "lamp-12v", "E2": "lamp-1v5"}
    wires = [("G1:+", "S1:13"), ("S1:14", "E1:1"), ("S1:14", "E2:1"), ("E1:2", "G1:-"), ("E2:2", "G1:-")]
    desk = Desk(qtbot, plan=draw(parts, wires, length_m=0.5), centre=(150, 50))
    solving = Solving(desk.session, at_once=True)
    solving.answered.connect(desk.view.set_answer)
    flags = []
    for stand in ("off", "on", "off", "on"):
        desk.session.throw("S1", stand)
        shot = desk.shot()
        desk.view._state.look_at(None)
        assert shot == desk.shot()
        flags.append(frozenset(desk.view._state.worst))
    assert flags[0] == flags[2] != flags[1] == flags[3]
    assert [pixels for pixels in mended if pixels is not None]


def test_lamps_whose_light_changes_by_less_than_shows_are_left_alone():
    kinds = builtin_kinds()
    plan = draw(
        {"G1": "supply-regulated", "E1": "lamp-12v", "R1": ("resistor", {"resistance": 0.01})},
        [("G1:+", "R1:1"), ("R1:2", "E1:1"), ("E1:2", "G1:-")],
    )
    part = plan.parts["R1"]
    weaker = plan.with_changes(parts={**plan.parts, "R1": replace(part, settings={"resistance": 0.011})})
    far = plan.with_changes(parts={**plan.parts, "R1": replace(part, settings={"resistance": 300.0})})
    lamps = LitLamps()
    one, other, dim = (solve(p, kinds, {}) for p in (plan, weaker, far))
    assert lamps.follow(one, plan, kinds, 1.0) == ["E1"]
    assert one.parts["E1"].light != other.parts["E1"].light
    assert lamps.follow(other, weaker, kinds, 1.0) == []
    assert lamps.follow(dim, far, kinds, 1.0) == ["E1"]


def test_rectangles_are_made_few_and_stay_apart():
    within = QRect(0, 0, 500, 400)
    assert apart([QRect(10, 10, 20, 20), QRect(20, 20, 20, 20)], within) == [QRect(10, 10, 30, 30)]
    assert apart([QRect(600, 10, 20, 20)], within) == []
    assert boxes_apart([Box(0.5, 0.5, 9.5, 9.5), Box(200.2, 3, 210, 9)], within) == [
        QRect(0, 0, 10, 10),
        QRect(200, 3, 10, 6),
    ]
    chain = [QRect(40 * n, 0, 20, 20) for n in (0, 2, 1)]
    assert len(apart(chain, within)) == 3
    assert apart([*chain, QRect(0, 5, 200, 4)], within) == [QRect(0, 0, 200, 20)]
    many = [QRect(50 * (n % 10), 20 * (n // 10), 3, 3) for n in range(300)]
    assert apart(many, QRect(0, 0, 999, 999)) == [QRect(0, 0, 453, 583)]
