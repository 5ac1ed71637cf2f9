"""Run ngspice on a netlist and read back what it prints."""

import re
import shutil
import subprocess
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
