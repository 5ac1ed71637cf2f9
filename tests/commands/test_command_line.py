"""The command line as a person or a script meets it: statuses, sentences, files and JSON."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from support.editing import KINDS, done, quay

from wiring.commands.main import COMMANDS, main
from wiring.edits.connect import connect
from wiring.edits.place_part import place
from wiring.edits.set_plan import set_plan
from wiring.files.store import save
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

DEMOS = sorted((Path(__file__).parents[2] / "demo_layouts").glob("*.underboard"))


def shorted() -> Plan:
    """Return a battery that feeds an LED which has no resistor."""
    return done(
        Plan(title="Shed"),
        place(KINDS["battery-alkaline"], 0, 0),
        place(KINDS["led-red-bare"], 300, 0),
        connect(TerminalRef("p1", "+"), TerminalRef("p2", "A")),
        connect(TerminalRef("p2", "K"), TerminalRef("p1", "-")),
    )


@pytest.fixture
def run(tmp_path, capsys, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")
    save(set_plan(title="Quay").apply(quay()), tmp_path / "quay.underboard")
    save(shorted(), tmp_path / "shed.underboard")
    save(Plan(), tmp_path / "empty.underboard")
    monkeypatch.chdir(tmp_path)

    def call(*arguments):
        status = main([str(a) for a in arguments])
        said = capsys.readouterr()
        assert "Traceback" not in said.err
        return status, said.out, said.err

    return call


@pytest.mark.parametrize("command", ["figures", "outlook", "check"])
def test_status_is_fine_for_a_sound_plan_and_one_for_a_danger(run, command):
    assert run(command, "quay.underboard")[::2] == (0, "")
    status, out, _ = run(command, "shed.underboard")
    assert status == 1 and "Shed" in out
    assert run(command, "empty.underboard")[0] == 0


@pytest.mark.parametrize("demo", DEMOS, ids=lambda p: p.stem)
@pytest.mark.parametrize("command", ["figures", "check"])
def test_every_demo_layout_is_free_of_danger_and_fits_eighty_columns(run, demo, command):
    status, out, err = run(command, demo)
    assert (status, err) == (0, "")
    assert max(map(len, out.splitlines())) <= 80


BAD = {
    "no such file": (["figures", "none.underboard"], "none.underboard cannot be opened"),
    "not a plan": (["check", "prose.underboard"], "not a plan"),
    "unknown part": (["figures", "quay.underboard", "--positions", "S9=off"], "no part -S9"),
    "unknown position": (["figures", "quay.underboard", "--positions", "S1=up"], "it can be off or on"),
    "no position": (["figures", "quay.underboard", "--positions", "S1"], "sets no position"),
    "not a switch": (["figures", "quay.underboard", "--positions", "E1=on"], "put into a position"),
    "no command": ([], "required: COMMAND"),
    "odd command": (["dance"], "'dance'"),
    "no plan": (["figures"], "required: PLAN"),
    "odd units": (["figures", "quay.underboard", "--units", "yards"], "'yards'"),
    "odd date": (["outlook", "quay.underboard", "--today", "soon"], "“soon” is not a date"),
    "end of the calendar": (["outlook", "quay.underboard", "--today", "9999-12-31"], "between 1900 and 2999"),
    "a place without a name": (["check", "."], ". cannot be opened: it is a folder"),
    "position of nothing": (["figures", "quay.underboard", "--positions", "=off"], "“=off” sets no position"),
    "endless price": (["outlook", "quay.underboard", "--prices", "alkaline AA=inf"], "between 0 and 1000000"),
    "odd paper": (["sheets", "quay.underboard", "x.pdf", "--paper", "a5"], "'a5'"),
    "sheets to text": (["sheets", "quay.underboard", "x.txt"], "end in .pdf"),
    "odd ending": (["export", "quay.underboard", "x.doc"], "must end in .cir, .csv, .svg, .json"),
    "onto the plan": (["export", "quay.underboard", "quay.underboard"], "must end in"),
    "no folder": (["export", "quay.underboard", "none/x.csv"], "folder does not exist"),
    "nothing to draw": (["export", "empty.underboard", "x.svg"], "no fed circuit"),
    "odd kind": (["kinds", "lantern"], "no kind “lantern”"),
    "no catalogue": (["kinds", "--catalogue", "none"], "no catalogue folder none"),
}


@pytest.mark.parametrize("name", BAD)
def test_bad_input_gives_status_two_and_one_plain_line(run, name):
    Path("prose.underboard").write_text("Dear diary")
    arguments, words = BAD[name]
    before = sorted(Path().iterdir())
    status, out, err = run(*arguments)
    assert (status, out) == (2, "")
    assert words in err and err.count("\n") == 1 and err.startswith("underboard")
    assert sorted(Path().iterdir()) == before


def test_an_unexpected_error_of_the_disk_is_one_line_too(run, monkeypatch):
    def broken(*_):
        raise OSError(5, "Input/output error", "quay.underboard")

    monkeypatch.setattr("wiring.commands.opening.load", broken)
    status, out, err = run("figures", "quay.underboard")
    assert (status, out, err.count("\n")) == (2, "", 1)
    assert "quay.underboard (Input/output error)" in err


@pytest.mark.parametrize("command", [None, *COMMANDS])
def test_help_and_version_end_well(run, command):
    status, out, err = run(*filter(None, [command]), "--help")
    assert (status, err) == (0, "") and "usage: underboard" in out
    if command is None:
        assert all(word in out for word in (*COMMANDS, "examples:", "exit status:"))
        assert run("--version")[1].startswith("underboard ")


def test_figures_follow_the_positions_and_the_units(run):
    _, on, _ = run("figures", "quay.underboard")
    _, off, _ = run("figures", "quay.underboard", "--positions", "-S1=off", "--units", "us")
    assert "Everything stands as while a session runs." in on and " cm" in on
    assert "-S1 off; everything else" in off and " in" in off and " cm" not in off
    lamp = {text: next(x for x in text.splitlines() if x.startswith("-E1")) for text in (on, off)}
    assert "0 A" not in lamp[on] and "0 A" in lamp[off]


def test_plans_own_units_are_used(run):
    _, out, _ = run("figures", next(p for p in DEMOS if p.stem == "quay"))
    assert " ft" in out and " cm" not in out


def test_a_kind_the_catalogue_lacks_is_told_and_the_rest_is_worked_out(run):
    path = Path("quay.underboard")
    path.write_text(path.read_text().replace("toggle-on-off", "lever"))
    status, out, err = run("check", path)
    assert status == 1 and "“lever”" in err and "-S1" in err and "Quay" in out
    status, out, err = run("figures", path, "--json")
    assert "“lever”" in json.loads(out)["notes"][0]


def test_users_own_kinds_are_read_and_complained_about(run, tmp_path):
    folder = tmp_path / "own"
    folder.mkdir()
    (folder / "bad.toml").write_text("[lantern\n")
    status, out, err = run("kinds", "--catalogue", folder)
    assert status == 0 and "led-red" in out and "bad.toml" in err


@pytest.mark.parametrize(
    ("name", "start"),
    [
        ("x.cir", b"* "),
        ("x.csv", b"\xef\xbb\xbfplace,wire,"),
        ("x.json", b"{"),
        ("X.SVG", b"<?xml"),
    ],
)
def test_export_writes_what_the_ending_says(run, name, start):
    status, out, err = run("export", "quay.underboard", name)
    assert (status, err) == (0, "") and name in out
    assert Path(name).read_bytes().lstrip()[: len(start)] == start


def test_export_draws_the_plan_from_either_side(run):
    for side in ("above", "below"):
        status, out, _ = run("export", "quay.underboard", f"{side}.svg", "--drawing", side)
        assert status == 0 and side in out
    assert Path("above.svg").read_text() != Path("below.svg").read_text()


def test_several_circuits_go_to_numbered_files_that_are_named(run):
    plan = done(
        quay(),
        place(KINDS["battery-9v"], 900, 0),
        place(KINDS["led-red"], 1200, 0),
        connect(TerminalRef("p8", "+"), TerminalRef("p9", "A")),
        connect(TerminalRef("p9", "K"), TerminalRef("p8", "-")),
    )
    save(plan, "two.underboard")
    status, out, _ = run("export", "two.underboard", "two.svg")
    assert status == 0
    assert sorted(p.name for p in Path().glob("*.svg")) == ["two-1.svg", "two-2.svg"]
    assert "two-1.svg" in out and "two-2.svg" in out


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_sheets_are_a_pdf_on_the_paper_asked_for(run, paper):
    from pypdf import PdfReader

    status, out, _ = run("sheets", "quay.underboard", "quay.pdf", "--paper", paper)
    pages = PdfReader("quay.pdf").pages
    assert status == 0 and f"{len(pages)} sheets" in out
    sizes = {tuple(sorted(round(float(x)) for x in page.mediabox[2:])) for page in pages}
    assert sizes == {(612, 792) if paper == "letter" else (595, 842)}


def test_output_goes_through_a_pipe_as_utf_8_and_a_closed_pipe_is_no_error(run):
    root = Path(__file__).parents[2]
    environment = {**os.environ, "PYTHONIOENCODING": "latin-1", "PYTHONPATH": str(root)}
    command = [sys.executable, "-m", "wiring", "kinds"]
    result = subprocess.run(command, env=environment, capture_output=True, check=False)
    assert result.returncode == 0 and "Stall motor" in result.stdout.decode("utf-8")
    with subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as piped:
        piped.stdout.close()
        assert piped.stderr.read() == b""
        assert piped.wait() == 0
