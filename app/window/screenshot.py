"""Takes a picture of the window with a plan in it, without a screen: for the README and for looking at."""

import argparse
import os
import sys
import tempfile
from pathlib import Path

SIZE = (1440, 900)


def save_screenshot(
    plan_path: Path | str,
    out_png: Path | str,
    view: str = "plan",
    theme: str = "light",
    size: tuple[int, int] = SIZE,
    select: tuple[str, ...] = (),
    findings: bool = False,
) -> None:
    """Open a plan in a real window and save what it looks like; NotReadable when the plan cannot be opened.

    `select` names parts or wires by designation, `findings` unfolds the list of them.
    """
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtWidgets import QApplication

    from app.settings import Remembered
    from app.start import Editor
    from app.window.open_save import Choice
    from wiring.files.store import load

    application = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(application, QApplication)
    with tempfile.TemporaryDirectory() as folder:
        editor = Editor(application, Remembered(Path(folder) / "editor.ini"), look=theme, at_once=True)
        window = editor.window
        window.resize(*size)
        window.show()
        application.processEvents()
        editor.session.open(load(Path(plan_path)), Path(plan_path))
        editor.solving.request()
        window.show_view(view)
        application.processEvents()
        plan = editor.session.plan
        if view == "plan":
            window.plan_view.show_all()
        if select:
            named = [p.id for p in plan.parts.values() if p.designation in select]
            window.selection.select([*named, *(w.id for w in plan.wires.values() if w.label in select)])
        window.strip.unfold(findings)
        for _ in range(3):
            application.processEvents()
        window.grab().save(str(out_png))
        editor.close()
        window.documents.ask = lambda: Choice.LEAVE
        window.close()


def main(argv: list[str] | None = None) -> int:
    """Take one picture as the command line asks; return the exit code."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("plan", type=Path)
    parser.add_argument("png", type=Path)
    parser.add_argument("--view", choices=("plan", "circuit", "battery", "sheets"), default="plan")
    parser.add_argument("--theme", choices=("light", "dark"), default="light")
    parser.add_argument("--size", default="1440x900", help="width x height in pixels")
    parser.add_argument("--select", nargs="*", default=(), help="designations to select")
    parser.add_argument("--findings", action="store_true", help="unfold the findings")
    asked = parser.parse_args(argv)
    width, height = (int(n) for n in asked.size.split("x"))
    save_screenshot(
        asked.plan, asked.png, asked.view, asked.theme, (width, height), tuple(asked.select), asked.findings
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
