"""``check --json`` tells the act that mends a finding; what a person reads stays as it is."""

import json

import pytest
from support.mending import sound
from support.networks import draw

from wiring.commands import check
from wiring.commands.main import main
from wiring.files.store import save

KEYS = {"rule", "rank", "what", "why", "mend", "parts", "wires", "act"}


@pytest.fixture
def bare_led(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    supply = "supply-regulated", {"limit_a": 1.0}
    path = tmp_path / "bare.underboard"
    plan = draw({"G1": supply, "E1": "led-red-bare"}, [("G1:+", "E1:A"), ("E1:K", "G1:-")])
    save(sound(plan), path)
    return str(path)


def test_the_act_is_told_with_designations_and_si_units(bare_led, capsys):
    assert main(["check", bare_led, "--json"]) == 1
    found = {f["rule"]: f for f in json.loads(capsys.readouterr().out)["findings"]}
    assert all(set(f) == KEYS for f in found.values())
    # (12 V − 1.8 V) / 20 mA = 510 Ω, which is of the E24 row
    assert found["led-without-resistor"]["act"] == {
        "name": "resistor",
        "words": "Put in 510 Ω",
        "parts": ["-E1"],
        "wires": [],
        "values": {"resistance": 510.0, "rated_power": 0.5},
    }
    assert found["safety-mains-adapter"]["act"] is None
    assert "name words parts wires values" in check.__doc__


def test_what_a_person_reads_has_no_buttons(bare_led, capsys):
    main(["check", bare_led])
    said = capsys.readouterr().out
    assert "Put a resistor of 510 Ω" in said and "Put in 510 Ω" not in said
