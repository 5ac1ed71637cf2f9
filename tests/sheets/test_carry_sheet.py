"""The carry sheet as text: complete, whole, escaped, and with nothing in it that reaches out."""

import base64
import hashlib
import json
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from msgspec.structs import replace
from support.editing import KINDS, plans, quay

from wiring.edits.set_built import set_built
from wiring.edits.set_wire import set_wire, swap_ends
from wiring.files.store import load
from wiring.findings.situation import examine
from wiring.plan.plan import Plan
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.carry.carry_sheet import carry_sheet
from wiring.sheets.carry.tick_keys import wire_key
from wiring.sheets.meter_checks import volt_checks
from wiring.sheets.safety import earned_notes

DEMOS = sorted((Path(__file__).parents[2] / "demo_layouts").glob("*.underboard"))
VOID = {"meta", "link", "input", "br", "img"}
ODD = [
    '<&">',
    "🚂🔥",
    "מנורה",
    "x" * 200,
    "</script>",
    "]]>",
    "--!>",
    "a\u202eb",
    "W\u0000",
    "$title",
    "&amp;",
]


class Page(HTMLParser):
    """The elements of a page: tag, attributes and own text; fails when they do not nest."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.open, self.elements = [], []
        self.feed(text)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag, attrs):
        assert len(dict(attrs)) == len(attrs)
        element = [tag, dict(attrs), ""]
        self.elements.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_endtag(self, tag):
        assert self.open.pop()[0] == tag

    def handle_data(self, data):
        for element in self.open:
            element[2] += data

    def all(self, tag="", **attributes):
        wanted = {key.rstrip("_").replace("_", "-"): value for key, value in attributes.items()}
        return [
            e for e in self.elements if tag in ("", e[0]) and all(e[1].get(k) == v for k, v in wanted.items())
        ]


def page_of(plan, **settings):
    return Page(carry_sheet(examine(plan, KINDS, outlooks=False, **settings)))


@pytest.fixture(scope="module", params=DEMOS, ids=lambda p: p.stem)
def demo(request):
    situation = examine(load(request.param), KINDS, outlooks=False)
    text = carry_sheet(situation)
    return situation, text, Page(text)


def test_every_wire_has_one_row_in_working_order_and_one_line_on_the_plan(demo):
    situation, _, page = demo
    ids = [row.wire for row in bench_rows(situation.plan, KINDS)]
    assert [e[1]["data-made"] for e in page.elements if "data-made" in e[1]] == ids
    assert sorted(e[1]["data-wire"] for e in page.all("g", class_="wire")) == sorted(ids)


def test_every_end_on_a_strip_every_check_note_and_finding_is_there(demo):
    situation, _, page = demo
    plan = situation.plan
    charted = {p.id for p in plan.parts.values() if KINDS[p.kind].behaviour in ("separate", "bus", "pairs")}
    ends = sum(ref.part in charted for w in plan.wires.values() for ref in (w.start, w.end))
    strips = next(e for e in page.elements if e[1].get("id") == "page-strips")
    assert len(re.findall("to -", strips[2])) == ends > 0
    assert len([e for e in page.all("li") if "red" in e[1].get("data-marks", "")]) == len(
        volt_checks(situation)
    )
    titles = {e[2] for e in page.all("h2")}
    assert {note.title for note in earned_notes(plan, KINDS)} <= titles
    said = " ".join(e[2] for e in page.all(class_="row finding"))
    assert all(f.what in said and f.mend in said for f in situation.findings)


def test_no_two_boxes_share_a_key(demo):
    keys = [e[1]["data-tick"] for e in demo[2].elements if "data-tick" in e[1]]
    assert len(set(keys)) == len(keys)


def test_nothing_reaches_out_and_only_the_pages_own_script_may_run(demo):
    _, text, page = demo
    for _, attributes, _ in page.elements:
        for name, value in attributes.items():
            assert not (name in ("src", "href") and value != "data:,") and not name.startswith("on")
    addresses = re.findall(r"[a-z]+://[^\s\"')]+", text)
    assert set(addresses) == {"http://www.w3.org/2000/svg"}  # a name, not an address that is fetched
    assert "@import" not in text and "@font-face" not in text
    policy = page.all("meta", http_equiv="Content-Security-Policy")[0][1]["content"]
    script = next(e[2] for e in page.all("script") if not e[1])
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    assert f"script-src 'sha256-{digest}'" in policy and "default-src 'none'" in policy


@pytest.mark.parametrize("text", ODD)
def test_odd_words_stand_in_the_page_as_text_wherever_they_come_from(text):
    plan = quay()
    label = text.replace(" ", "") or "W1"
    plan = plan.with_changes(
        title=text,
        parts={i: replace(p, label=text, note=text) for i, p in plan.parts.items()},
        wires={i: replace(w, label=f"{label}{i}", note=text) for i, w in plan.wires.items()},
        scenes={i: replace(s, name=text) for i, s in plan.scenes.items()},
    )
    page = page_of(plan)
    shown = text.replace("\u202e", "").replace("\u0000", "")
    assert page.all("h1")[0][2] == shown
    assert shown in page.all("section", id="page-wires")[0][2]
    assert json.loads(next(e[2] for e in page.all("script", id="facts")))["title"] == shown
    assert len(page.all("script")) == 2


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plans())
def test_any_plan_gives_a_whole_page(plan):
    page = page_of(plan)
    assert len([e for e in page.elements if "data-made" in e[1]]) == len(plan.wires)


def test_a_plan_with_nothing_in_it_and_one_of_unknown_kinds_give_a_page():
    assert "no wires yet" in page_of(Plan()).all("section", id="page-wires")[0][2]
    plan = quay()
    lost = plan.with_changes(parts={i: replace(p, kind="lantern") for i, p in plan.parts.items()})
    assert len([e for e in page_of(lost).elements if "data-made" in e[1]]) == len(plan.wires)


def test_built_wires_come_ticked_and_the_sheet_has_another_name_for_them():
    plan = quay()
    built = set_built(["w5"], True).apply(plan)
    ticked = [e[1]["data-made"] for e in page_of(built).elements if "checked" in e[1]]
    assert ticked == ["w5"]
    sheets = {json.loads(page_of(p).all("script", id="facts")[0][2])["sheet"] for p in (plan, built)}
    assert len(sheets) == 2


def test_a_wires_key_changes_with_what_is_made_of_it_and_with_nothing_else():
    plan = quay()
    key = wire_key(plan.wires["w6"])

    def after(edit):
        return wire_key(edit.apply(plan).wires["w6"])

    same = [
        swap_ends(["w6"]),
        set_wire(["w6"], note="x"),
        set_wire(["w6"], label="W77"),
        set_built(["w6"], True),
    ]
    other = [set_wire(["w6"], colour="BU"), set_wire(["w6"], size="0.5 mm2"), set_wire(["w6"], solid=True)]
    assert {after(edit) for edit in same} == {key}
    assert key not in {after(edit) for edit in other} and len({after(edit) for edit in other}) == 3


def test_the_plan_is_drawn_from_below():
    plan = quay()
    page = page_of(plan)
    ways = {}
    for element in page.elements:
        if element[1].get("class") == "wire":
            ways[element[1]["data-wire"]] = None
        elif element[1].get("class") == "edge":
            last = next(reversed(ways))
            ways[last] = [float(n) for n in re.findall(r"-?[\d.]+", element[1]["d"])]
    x_of = {i: p.x_mm for i, p in plan.parts.items()}
    assert x_of["p3"] < x_of["p4"]
    assert ways["w6"][0] > ways["w6"][-2]  # left and right are swapped, up and down are not
    assert ways["w6"][1] > ways["w6"][-1]
