"""A user's catalogue files: good kinds load, bad ones are named with their line, nothing ever fails."""

import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from wiring.catalogue.kind_file import read_kinds
from wiring.catalogue.shelf import built_in_file, builtin_kinds, load_shelf

LAMP = """\
[[kind]]
key = "quay-lamp"
like = "led-warm-white"
title = "Quay lamp"
[kind.settings]
forward_v = 2.9
series_ohm = { typical = 1500, source = "measured" }
"""


@pytest.fixture
def folder(tmp_path):
    return tmp_path


def test_a_kind_like_another_needs_four_lines(folder):
    (folder / "mine.toml").write_text(LAMP, encoding="utf-8")
    shelf = load_shelf(folder)
    assert shelf.complaints == () and shelf.replaced == ()
    kind = shelf.kinds["quay-lamp"]
    assert kind.setting("forward_v").default == 2.9
    assert kind.setting("forward_v").source == "as mine.toml gives it"
    assert kind.setting("series_ohm").source == "measured"
    assert kind.terminals == builtin_kinds()["led-warm-white"].terminals
    assert list(shelf.kinds)[: len(builtin_kinds())] == list(builtin_kinds())


def test_a_kind_of_the_user_takes_the_place_of_a_built_in_one_and_that_is_said(folder):
    (folder / "mine.toml").write_text(LAMP.replace("quay-lamp", "led-white"), encoding="utf-8")
    shelf = load_shelf(folder)
    assert shelf.replaced == ("led-white",) and shelf.complaints == ()
    assert shelf.kinds["led-white"].title == "Quay lamp"
    assert builtin_kinds()["led-white"].title == "White LED for 12 V"


def test_a_battery_like_another_keeps_its_choices(folder):
    row = "[[kind]]\nkey = 'quay-battery'\nlike = 'battery-9v'\n[kind.settings]\ncell = '{}'\n"
    (folder / "a.toml").write_text(row.format("nimh 9 V"), encoding="utf-8")
    (folder / "b.toml").write_text(row.format("nimh AA"), encoding="utf-8")
    shelf = load_shelf(folder)
    cell = shelf.kinds["quay-battery"].setting("cell")
    assert cell.default == "nimh 9 V"
    assert cell.choices == builtin_kinds()["battery-9v"].setting("cell").choices
    assert len(shelf.complaints) == 1 and "must be one of alkaline 9 V" in shelf.complaints[0]


def test_no_folder_is_no_complaint(folder):
    shelf = load_shelf(folder / "nowhere")
    assert dict(shelf.kinds) == dict(builtin_kinds()) and shelf.complaints == ()


def test_a_bad_file_does_not_keep_others_from_loading(folder):
    (folder / "a.toml").write_text("key = [\n", encoding="utf-8")
    (folder / "b.toml").write_text(LAMP, encoding="utf-8")
    (folder / "c.toml").write_bytes(b"[[kind]]\n# caf\xe9\n")
    (folder / "d.toml").write_text("title = 'no kinds'\n", encoding="utf-8")
    (folder / "e.toml").write_text("[[kind]]\nkey = 'x'\nmade = 2020-02-30\n", encoding="utf-8")
    shelf = load_shelf(folder)
    assert "quay-lamp" in shelf.kinds
    assert [c.split(":")[0] for c in shelf.complaints] == ["a.toml", "c.toml", "d.toml", "e.toml"]
    assert "line 1" in shelf.complaints[0] and "line 2" in shelf.complaints[1]
    for complaint in shelf.complaints:
        assert complaint.endswith(".") and "\n" not in complaint


# What is changed in a good file, the line it must be found on, and a word of the reason.
BROKEN = [
    ('key = "quay-lamp"', 'key = "Quay Lamp"', 2, "key"),
    ('like = "led-warm-white"', 'like = "led-ultraviolet"', 3, "led-ultraviolet"),
    ('like = "led-warm-white"\n', "", 1, "is missing"),
    ("like =", "unlike =", 3, "unlike"),
    ('title = "Quay lamp"', "title = 3", 4, "a text in quotes"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\nbehaviour = "magic"', 5, "magic"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\nsign = "magic"', 5, "magic"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\nsymbol = "magic"', 5, "magic"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\npurpose = "magic"', 5, "light, move"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\nwidth_mm = 0', 5, "width_mm"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\nwidth_mm = nan', 5, "width_mm"),
    ('title = "Quay lamp"', 'title = "Quay lamp"\ncolour = "red"', 5, "colour"),
    ("forward_v = 2.9", "forward_v = 290", 6, "between"),
    ("forward_v = 2.9", "forward_v = inf", 6, "between"),
    ("forward_v = 2.9", 'forward_v = "2.9"', 6, "a number"),
    ("forward_v = 2.9", "forward_volts = 2.9", 6, "forward_volts"),
    ("forward_v = 2.9", "forward_v = { source = 'me' }", 6, "typical"),
    ("forward_v = 2.9", "in_series = 1.5", 6, "whole number"),
    ("[kind.settings]", "[kind.terminals]\nA = { x_mm = 1, y_mm = 1 }\n[kind.settings]", 5, "K"),
    (
        "[kind.settings]",
        "[kind.terminals]\nA = { x_mm = 1 }\nK = { x_mm = 9, y_mm = 1 }\n[kind.settings]",
        6,
        "y_mm",
    ),
    ("[kind.settings]", "terminals = {}\n[kind.settings]", 5, "“A” is missing"),
    ('"led-warm-white"', '"a\\nb"', 3, "“a b”"),
    ("forward_v = 2.9", "forward_v = 1" + "0" * 400, 6, "forward_v"),
    ("[kind.settings]", "[kind.positions]\non = { closes = [['A', 'Z']] }\n[kind.settings]", 6, "Z"),
]


@pytest.mark.parametrize(("old", "new", "line", "reason"), BROKEN)
def test_a_bad_kind_is_named_with_its_line_and_the_reason(folder, old, new, line, reason):
    assert old in LAMP
    after = "\n[[kind]]\nkey = 'pier-lamp'\nlike = 'lamp-12v'\ntitle = 'Pier lamp'\n"
    (folder / "mine.toml").write_text(LAMP.replace(old, new) + after, encoding="utf-8")
    shelf = load_shelf(folder)
    assert len(shelf.complaints) == 1
    assert re.match(rf"mine\.toml, line {line}: .*, so the kind is left out\.$", shelf.complaints[0])
    assert reason in shelf.complaints[0]
    assert "quay-lamp" not in shelf.kinds and "pier-lamp" in shelf.kinds


def test_two_files_with_one_key_are_told(folder):
    for name in ("a.toml", "b.toml"):
        (folder / name).write_text(LAMP, encoding="utf-8")
    assert load_shelf(folder).complaints == (
        "b.toml: it has a kind “quay-lamp” as a.toml does; this one is used.",
    )


def test_a_key_twice_in_a_file_is_told(folder):
    (folder / "a.toml").write_text(LAMP + LAMP, encoding="utf-8")
    shelf = load_shelf(folder)
    (complaint,) = shelf.complaints
    assert "a.toml, line 9:" in complaint and "twice" in complaint


@settings(deadline=None)
@given(st.binary(max_size=300))
def test_any_bytes_give_kinds_or_complaints(content):
    found = read_kinds("x.toml", content, {})
    assert found.kinds or found.complaints


toml_values = st.recursive(
    st.one_of(
        st.integers(), st.floats().map(lambda f: repr(f)), st.booleans().map(lambda b: str(b).lower()),
        st.text(alphabet="abc-A1 ", max_size=6).map(lambda t: f'"{t}"'), st.just("2020-01-01"),
    ).map(str),
    lambda inner: st.lists(inner, max_size=3).map(lambda v: f"[{', '.join(v)}]")
    | st.lists(inner, max_size=2).map(lambda v: "{" + ", ".join(f"k{i} = {x}" for i,
    x in enumerate(v)) + "}"),
    max_leaves=6,
)  # fmt: skip
FIELDS = [
    "key", "like", "title", "purpose", "designation", "behaviour", "sign", "symbol", "width_mm", "height_mm",
    "terminals", "settings", "positions", "in_use", "words", "note", "cautions",
]  # fmt: skip


@settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.dictionaries(st.sampled_from(FIELDS), toml_values, max_size=6))
def test_any_values_in_a_kind_give_a_kind_or_one_complaint(fields):
    given_lines = "".join(f"{name} = {value}\n" for name, value in fields.items())
    model = "" if "like" in fields else 'like = "toggle-on-off"\n'
    found = read_kinds("x.toml", ("[[kind]]\n" + model + given_lines).encode(), built_in_file().rows)
    assert len(found.kinds) + len(found.complaints) == 1
    for complaint in found.complaints:
        assert complaint.startswith("x.toml") and complaint.endswith(".") and "\n" not in complaint
