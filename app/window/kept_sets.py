"""Sets the builder keeps: a lit building with its resistor and plug, say, as one thing to place again."""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QInputDialog, QLineEdit

from wiring.edits.edit import EditRefused
from wiring.edits.fragment import copied, read_fragment

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

SUFFIX = ".underboard-set"
LONGEST_NAME = 60


def keep_set(window: "MainWindow") -> None:
    """Ask for a name and keep the selected parts, with the wires between them, as a set."""
    text = copied(window.session.plan, window.selection.ids)
    if not text:
        window.session.refused.emit("Select the parts that belong to the set first.")
        return
    words, agreed = QInputDialog.getText(
        window, "Keep as a set", "Name of the set:", QLineEdit.EchoMode.Normal, ""
    )
    name = _file_name(words)
    if not agreed or not name:
        return
    folder = window.remembered.sets_folder
    try:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / f"{name}{SUFFIX}").write_text(text, encoding="utf-8")
    except OSError as fault:
        window.session.refused.emit(f"The set could not be kept: {fault.strerror or 'the disk refused'}.")
        return
    window.notices.say(f"“{name}” is kept; Edit, Place a kept set puts it down in any plan.")


def kept_sets(folder: Path) -> tuple[Path, ...]:
    """Return the files of the sets, in order of their names."""
    return tuple(sorted(folder.glob(f"*{SUFFIX}"), key=lambda path: path.name.casefold()))


def fill_sets(window: "MainWindow") -> None:
    """Fill the menu of kept sets at the moment it opens."""
    menu = window.submenus["sets"]

    def fill() -> None:
        menu.clear()
        paths = kept_sets(window.remembered.sets_folder)
        for path in paths:
            menu.addAction(path.name.removesuffix(SUFFIX), partial(_place, window, path))
        if not paths:
            menu.addAction("None kept yet").setEnabled(False)

    menu.aboutToShow.connect(fill)


def _place(window: "MainWindow", path: Path) -> None:
    name = path.name.removesuffix(SUFFIX)
    try:
        text = path.read_text(encoding="utf-8")
        read_fragment(text)
    except (OSError, UnicodeDecodeError, EditRefused):
        window.session.refused.emit(f"The set “{name}” cannot be read; keep it anew.")
        return
    window.show_view("plan")
    window.plan_view.begin_set(name, text)
    window.plan_view.setFocus()


def _file_name(words: str) -> str:
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in words)
    return " ".join(kept.split())[:LONGEST_NAME].strip()
