"""Every benchmark finds what it needs when it is run by hand, from any folder."""

import subprocess
import sys
from pathlib import Path

TESTS = Path(__file__).parents[1]
PROGRAMS = [p for p in Path(__file__).parent.glob("*.py") if '__name__ == "__main__"' in p.read_text("utf-8")]

# One process for all, for the modules of the program itself take long to load; what one benchmark has put on
# the path or loaded of the tests is gone before the next.
RUN = """
import runpy, sys
tests, *programs = sys.argv[1:]
for program in programs:
    print(program, file=sys.stderr)
    path = list(sys.path)
    runpy.run_path(program, run_name="looked_at")
    sys.path[:] = path
    for name, module in list(sys.modules.items()):
        if (getattr(module, "__file__", None) or "").startswith(tests) or name == "support":
            del sys.modules[name]
"""


def test_imports_are_found(tmp_path: Path) -> None:
    assert len(PROGRAMS) > 5
    command = [sys.executable, "-c", RUN, str(TESTS), *map(str, PROGRAMS)]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert [line for line in done.stderr.splitlines() if line.endswith(".py")] == [str(p) for p in PROGRAMS]
