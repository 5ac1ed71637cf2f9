"""Run ngspice on a netlist and read back what it prints."""

import re
import shutil
import subprocess
from collections.abc import Sequence
from pathlib import Path

import pytest

needs_ngspice = pytest.mark.skipif(
    shutil.which("ngspice") is None, reason="the ngspice program is not installed"
)
_LINE = re.compile(r"^\s*(\S+)\s*=\s*([-+0-9.eE]+)")


def run(netlist: str, folder: Path, name: str = "plan") -> dict[str, float]:
    """Values by the name ngspice prints them under: nodes, and rms_<node> after a transient."""
    path = folder / f"{name}.cir"
    path.write_text(netlist, encoding="ascii")
    done = subprocess.run(
        ["ngspice", "-b", str(path)], capture_output=True, text=True, timeout=60, check=False
    )
    found = {}
    for line in done.stdout.splitlines():
        match = _LINE.match(line)
        if match:
            found[match[1].lower()] = float(match[2])
    assert found, done.stdout[-2000:] + done.stderr[-2000:]
    return found


def run_many(netlists: Sequence[str], folder: Path) -> list[dict[str, float]]:
    """The same for many operating points, all in one run of the program."""
    # Where its search finds no point it falls back on a run in time: long enough to charge capacitors.
    lines = ["many plans", ".control", "optran 1 1 1 100u 200m 0"]
    for number, netlist in enumerate(netlists):
        path = folder / f"plan{number}.cir"
        path.write_text(netlist.split(".control")[0] + ".end\n", encoding="ascii")
        lines += [f"source {path}", "set numdgt=15", f"echo plan_number = {number}", "op", "print all",
                  "remcirc", "destroy all"]  # fmt: skip
    (folder / "many.cir").write_text("\n".join([*lines, "quit", ".endc", ".end", ""]), encoding="ascii")
    done = subprocess.run(
        ["ngspice", "-b", str(folder / "many.cir")], capture_output=True, text=True, timeout=240, check=False
    )
    found: list[dict[str, float]] = []
    for line in done.stdout.splitlines():
        match = _LINE.match(line)
        if match and match[1] == "plan_number":
            found.append({})
        elif match and found:
            found[-1][match[1].lower()] = float(match[2])
    assert len(found) == len(netlists), done.stdout[-2000:] + done.stderr[-2000:]
    return found
