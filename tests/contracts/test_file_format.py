"""Version 1 of the plan file, pinned: a field or a usual value that changes needs a new version."""

import textwrap

import pytest
from support.editing import KINDS, quay

from wiring.edits.set_value import set_setting
from wiring.files import format as plan_format
from wiring.files.decode import decode
from wiring.files.encode import encode, plain_record, written_by
from wiring.plan.backdrop import Backdrop
from wiring.plan.battery_log import BatteryReading
from wiring.plan.circuit_colours import CircuitColours
from wiring.plan.joist import Joist
from wiring.plan.names import TerminalRef
from wiring.plan.panel import FaceLine, FaceText, Panel
from wiring.plan.part import Part
from wiring.plan.plan import Habits, Plan
from wiring.plan.scene import Scene, UsePattern
from wiring.plan.soundness import missing_kinds, unsound
from wiring.plan.wire import Wire
from wiring.plan.wireway import Wireway

VERSION_1 = b"""{
"format": "underboard plan",
"version": 1,
"written_by": "%s",
"scenes": [
{"id": "s1", "name": "Quay", "width_mm": 600, "height_mm": 400}
],
"parts": [
{"id": "p2", "kind": "battery-9v", "designation": "G1", "x_mm": 100, "y_mm": 300, "scene": "s1"},
{"id": "p3", "kind": "toggle-on-off", "designation": "S1", "x_mm": 100, "y_mm": 700},
{"id": "p4", "kind": "led-warm-white", "designation": "E1", "x_mm": 400, "y_mm": 100, "scene": "s1"}
],
"wires": [
{"id": "w5", "label": "W1", "start": ["p2", "+"], "end": ["p3", "13"], "colour": "RD"},
{"id": "w6", "label": "W2", "start": ["p3", "14"], "end": ["p4", "A"], "colour": "RD", "bends": [[400, 700]]},
{"id": "w7", "label": "W3", "start": ["p4", "K"], "end": ["p2", "-"]}
],
"next_number": 8
}
"""


def test_a_plan_is_written_as_version_1_says():
    assert encode(quay()) == VERSION_1 % written_by().encode()


def test_a_version_1_file_opens():
    assert decode(VERSION_1 % b"underboard 0.0.1") == quay()


def _example():
    block = plan_format.__doc__.split("::\n", 1)[1].split("Only ``format``", 1)[0]
    return textwrap.dedent(block)


def test_the_example_in_the_formats_description_opens_and_is_sound():
    plan = decode(_example().encode())
    assert [p.designation for p in plan.parts.values()] == ["G1", "E1"]
    assert unsound(plan, KINDS) == () and missing_kinds(plan, KINDS) == ()
    assert plan.next_number == 6


RECORD_TYPES = (Habits, UsePattern, Scene, Panel, FaceLine, FaceText, Wireway, Joist, Backdrop, Part, Wire)
RECORD_TYPES = (*RECORD_TYPES, BatteryReading, CircuitColours, Plan)
USUAL = {
    "habits": (Habits(), "metric|22 AWG|0.1|20.0|0.1|50.0|bottom|A4|iec|"),
    "use": (UsePattern(), "3.0|4.0|()|0"),
    "scene": (Scene(id="s1", name="n"), "s1|n|0.0|0.0|0.0|0.0|UsePattern()"),
    "part": (
        Part(id="p1", kind="k", designation="E1", x_mm=1, y_mm=2),
        "p1|k|E1|1|2|0.0||{}|||||",
    ),
    "panel": (
        Panel(id="n1", name="n", x_mm=1, y_mm=2, width_mm=3, height_mm=4),
        "n1|n|1|2|3|4|0.0|0.0|()|()",
    ),
    "wireway": (Wireway(id="y1", name="n", points=((1, 2), (3, 4))), "y1|n|((1, 2), (3, 4))|20.0|80.0|None"),
    "joist": (Joist(start=(1, 2), end=(3, 4)), "(1, 2)|(3, 4)|20.0|70.0"),
    "backdrop": (
        Backdrop(media="image/png", width_px=3, height_px=4),
        "image/png|||3|4|0.0|0.0|1.0|0.0|0.45",
    ),
    "wire": (
        Wire(id="w1", label="W1", start=TerminalRef("a", "1"), end=TerminalRef("b", "2")),
        "w1|W1|TerminalRef(part='a', terminal='1')|TerminalRef(part='b', terminal='2')|22 AWG|BK|False|None|"
        "()||False|()",
    ),
}


@pytest.mark.parametrize("name", USUAL)
def test_usual_values_are_those_of_version_1(name):
    record, expected = USUAL[name]
    values = [getattr(record, field) for field in record.__struct_fields__]
    values = ["UsePattern()" if value == UsePattern() else value for value in values]
    assert "|".join(map(str, values)) == expected, (
        "a new usual value changes what old files mean: new version"
    )


@pytest.mark.parametrize("record_type", RECORD_TYPES)
def test_every_field_is_described(record_type):
    for field in record_type.__struct_fields__:
        assert f"``{field}``" in plan_format.__doc__ or f"and ``{field}``" in plan_format.__doc__, field


def test_fields_with_their_usual_value_are_left_out():
    assert plain_record(Habits()) == {}
    assert plain_record(Habits(units="us")) == {"units": "us"}


def test_the_order_settings_were_made_in_does_not_show():
    one = set_setting(["p4"], "max_a", 0.03).apply(set_setting(["p4"], "in_series", 2).apply(quay()))
    other = set_setting(["p4"], "in_series", 2).apply(set_setting(["p4"], "max_a", 0.03).apply(quay()))
    assert one == other and encode(one) == encode(other)
    assert b'"settings": {"in_series": 2, "max_a": 0.03}' in encode(one)


def test_a_kind_the_catalogue_lacks_stays_in_the_plan_and_is_reported():
    data = VERSION_1.replace(b"led-warm-white", b"lantern") % b""
    plan = decode(data)
    assert plan.parts["p4"].kind == "lantern"
    (words,) = missing_kinds(plan, KINDS)
    assert "lantern" in words and "-E1" in words
    assert b'"kind": "lantern"' in encode(plan)


def test_a_file_made_by_hand_needs_no_next_number_and_may_have_other_ids():
    data = b"""{"format": "underboard plan", "version": 1,
      "parts": [{"id": "crane_lamp", "kind": "lamp-12v", "designation": "E1", "x_mm": 1, "y_mm": 2},
                {"id": "p41", "kind": "lamp-12v", "designation": "E2", "x_mm": 1, "y_mm": 2}]}"""
    assert decode(data).next_number == 42
    assert decode(b"\xef\xbb\xbf" + data) == decode(data)
