"""The window comes quickly: heavy libraries wait until it has been painted."""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
HEAVY = ("scipy", "pint", "schemdraw", "reportlab", "networkx")
PAINTS_ONCE = """
import sys, tempfile
from pathlib import Path
from PySide6.QtWidgets import QApplication
from app.settings import Remembered
from app.start import Editor
application = QApplication([])
editor = Editor(application, Remembered(Path(tempfile.mkdtemp()) / "editor.ini"))
editor.window.show()
application.processEvents()
assert not editor.window.grab().isNull()
print(",".join(name for name in sys.argv[1:] if name in sys.modules))
editor.close()
"""


def run(code: str, *arguments: str, home: Path) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(home)}
    environment |= {"XDG_STATE_HOME": str(home), "XDG_DATA_HOME": str(home)}
    return subprocess.run(
        [sys.executable, "-c", code, *arguments], cwd=ROOT, env=environment, capture_output=True, text=True
    )


def test_the_first_picture_of_the_window_loads_no_heavy_library(tmp_path):
    result = run(PAINTS_ONCE, *HEAVY, home=tmp_path)
    assert result.returncode == 0, result.stderr
    assert result.stdout.strip() == ""


def test_a_word_that_is_no_plan_goes_to_the_command_line(monkeypatch):
    import wiring.commands.main
    from app.__main__ import main

    seen = []
    monkeypatch.setattr(wiring.commands.main, "main", lambda arguments: seen.append(arguments) or 0)
    assert main(["check", "some.underboard"]) == 0
    assert main(["--help"]) == 0
    assert seen == [["check", "some.underboard"], ["--help"]]


def test_a_plan_or_nothing_opens_the_window(monkeypatch):
    import app.start
    from app.__main__ import main

    seen = []
    monkeypatch.setattr(app.start, "run", lambda path: seen.append(path) or 0)
    main([])
    main(["quay.underboard"])
    assert seen == [None, Path("quay.underboard")]


def test_large_libraries_are_there_before_they_are_needed():
    code = (
        "import sys; from app.early_import import import_early;"
        "assert 'networkx' not in sys.modules; import_early().join(); assert 'networkx' in sys.modules"
    )
    subprocess.run([sys.executable, "-c", code], check=True, timeout=60)
