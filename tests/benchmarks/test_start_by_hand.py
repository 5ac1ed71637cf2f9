"""Every benchmark finds what it needs when it is run by hand, from any folder."""

import subprocess
import sys
from pathlib import Path

import pytest

PROGRAMS = [p for p in Path(__file__).parent.glob("*.py") if '__name__ == "__main__"' in p.read_text("utf-8")]


@pytest.mark.parametrize("program", PROGRAMS, ids=lambda program: program.stem)
def test_its_imports_are_found(program: Path, tmp_path: Path) -> None:
    run = "import runpy, sys; runpy.run_path(sys.argv[1], run_name='looked_at')"
    done = subprocess.run(
        [sys.executable, "-c", run, str(program)], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
