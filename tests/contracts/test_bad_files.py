"""Every kind of bad file is refused with one sentence that names the place."""

import pytest
from support.editing import quay

from wiring.files import decode as decoding
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.files.store import load

GOOD = encode(quay())


def changed(old: bytes, new: bytes) -> bytes:
    assert old in GOOD
    return GOOD.replace(old, new, 1)


BAD = {
    "empty": (b"", "empty"),
    "blank": (b" \n\t ", "empty"),
    "prose": (b"Dear diary", "not a plan"),
    "picture": (b"\x89PNG\r\n\x1a\n\x00", "not readable text"),
    "latin 1": (changed(b"Quay", "Qu\xe4y".encode("latin-1")), "Line 6 is not readable text"),
    "utf 16": (GOOD.decode().encode("utf-16"), "not readable text"),
    "list": (b"[]", "not a plan"),
    "other json": (b'{"name": "x"}', "not a plan"),
    "cut short": (GOOD[: len(GOOD) // 2], "Line|breaks off"),
    "cut at the end": (GOOD[:-2], "breaks off at line 1[0-9]"),
    "broken line": (changed(b'"x_mm": 400', b'"x_mm" 400'), "Line 11 is damaged at character"),
    "no version": (changed(b'"version": 1,', b""), "which version"),
    "odd version": (changed(b'"version": 1', b'"version": "one"'), "which version"),
    "newer": (changed(b'"version": 1', b'"version": 2'), "in format 2.* newer version of the program"),
    "nan": (changed(b'"x_mm": 400', b'"x_mm": NaN'), "NaN"),
    "infinity": (changed(b'"x_mm": 400', b'"x_mm": -Infinity'), "-Infinity"),
    "overflow": (changed(b'"x_mm": 400', b'"x_mm": 1e999'), "-E1 lies outside"),
    "endless digits": (changed(b'"x_mm": 400', b'"x_mm": ' + b"9" * 6000), "too many digits"),
    "far away": (changed(b'"x_mm": 400', b'"x_mm": 4e9'), "-E1 lies outside"),
    "wrong type": (
        changed(b'"x_mm": 400', b'"x_mm": "400"'),
        r"Part p4 \(-E1\) has a text .* “x_mm” must be a number",
    ),
    "missing field": (changed(b'"x_mm": 400, ', b""), r"Part p4 \(-E1\) lacks its “x_mm”"),
    "misspelt field": (changed(b'"x_mm": 400', b'"xmm": 400'), "part p4 has a field “xmm”"),
    "line break in a field": (changed(b'"x_mm": 400', b'"x\\nmm": 400'), "part p4 has a field “x mm”"),
    "endless designation": (changed(b'"E1"', b'"' + b"E" * 9999 + b'"'), "needs a designation.*…"),
    "misspelt top field": (changed(b'"scenes"', b'"scens"'), "“scens”"),
    "twice a field": (changed(b'"x_mm": 400', b'"x_mm": 1, "x_mm": 400'), "“x_mm” stands twice in p4"),
    "half an end": (changed(b'["p4", "K"]', b'["p4"]'), r"Wire w7 \(-W3\) must have its “start”"),
    "unknown part": (changed(b'["p4", "K"]', b'["p9", "K"]'), "-W3 ends on the part p9"),
    "onto itself": (changed(b'["p4", "K"]', b'["p2", "-"]'), "-W3 runs from a terminal to the same"),
    "id twice": (changed(b'"id": "p4"', b'"id": "p3"'), "Two parts have the id p3"),
    "id across tables": (changed(b'"id": "w7"', b'"id": "p4"'), "p4 is given twice"),
    "odd id": (changed(b'"id": "w7"', b'"id": "w 7"'), "cannot be an id"),
    "designation twice": (changed(b'"E1"', b'"S1"'), "two parts are called -S1"),
    "label twice": (changed(b'"W3"', b'"W1"'), "two wires are called -W1"),
    "no designation": (changed(b'"E1"', b'""'), "needs a designation"),
    "unknown scene": (changed(b'"scene": "s1"}\n]', b'"scene": "s9"}\n]'), "scene s9"),
    "odd size": (changed(b'"colour": "RD"', b'"size": "22 AGW"'), "-W1.*22 AGW"),
    "odd colour": (changed(b'"colour": "RD"', b'"colour": "crimson"'), "-W1.*crimson"),
    "colour of the mains": (changed(b'"colour": "RD"', b'"colour": "YEGN"'), "-W1.*earth wire of the mains"),
    "odd habit": (changed(b'"scenes"', b'"habits": {"unit": "us"},"scenes"'), "habits have a field “unit”"),
    "odd unit": (
        changed(b'"scenes"', b'"habits": {"units": "yards"},"scenes"'),
        "habit units must be one of",
    ),
    "negative length": (changed(b'"colour": "RD"', b'"length_m": -1'), "length of -W1"),
    "settings a list": (changed(b'"x_mm": 400', b'"settings": [], "x_mm": 400'), "Part p4.*“settings”"),
    "setting a list": (changed(b'"x_mm": 400', b'"settings": {"a": []}, "x_mm": 400'), "Part p4"),
    "control character": (changed(b'"Quay"', b'"Qu\\u0000ay"'), "name"),
    "lone surrogate": (changed(b'"Quay"', b'"Qu\\ud800ay"'), "name"),
    "nested lists": (b"[" * 200_000, "nested too deeply|not a plan"),
    "nested objects": (b'{"a":' * 200_000, "nested too deeply|not a plan"),
    "rows no list": (changed(b'"parts": [', b'"parts": 5, "x": ['), "“parts”|“x”"),
    "row no object": (changed(b'"wires": [', b'"wires": [7,'), "Wire number 1"),
}


@pytest.mark.parametrize("name", BAD)
def test_bad_file_is_refused_in_one_sentence(name):
    data, words = BAD[name]
    with pytest.raises(NotReadable, match=words) as refused:
        decode(data)
    text = str(refused.value)
    assert "\n" not in text and len(text) < 330 and text[-1] == "."
    assert not any(foreign in text for foreign in ("Expected `", "$.", "Traceback", "msgspec"))


def test_a_file_too_large_to_be_a_plan_is_not_parsed(monkeypatch):
    monkeypatch.setattr(decoding, "LARGEST_BYTES", 2 * 2**20)
    with pytest.raises(NotReadable, match="larger than 2 MB"):
        decode(b" " * (2 * 2**20 + 1))


def test_the_file_is_named(tmp_path):
    path = tmp_path / "harbour.underboard"
    path.write_bytes(GOOD[:-40])
    with pytest.raises(NotReadable, match=r"^harbour\.underboard cannot be opened: "):
        load(path)
