"""The menus whose entries change: recent plans, examples that came along, copies a crash left behind."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMenu

from app.data_files import data_folder

if TYPE_CHECKING:
    from app.window.main_window import MainWindow


def fill_when_opened(window: "MainWindow") -> None:
    """Let the menus be filled at the moment they open."""
    recent, examples = window.submenus["recent"], window.submenus["examples"]
    recent.aboutToShow.connect(lambda: _fill(recent, window.remembered.recent, window.documents.open_path))
    examples.aboutToShow.connect(lambda: _fill(examples, example_plans(), window.documents.open_example))
    rescues = window.submenus["rescues"]
    rescues.aboutToShow.connect(lambda: _fill_rescues(rescues, window.rescues()))


def example_plans() -> tuple[Path, ...]:
    """Return the example layouts that came with the program."""
    return tuple(sorted(data_folder("demo_layouts").glob("*.underboard")))


def _fill(menu: QMenu, paths: tuple[Path, ...], opens: object) -> None:
    menu.clear()
    for path in paths:
        action = menu.addAction(path.stem.replace("-", " ").replace("_", " ").capitalize())
        action.setToolTip(str(path))
        action.triggered.connect(lambda _checked=False, path=path: opens(path))  # type: ignore[operator]
    if not paths:
        menu.addAction("None yet").setEnabled(False)


def _fill_rescues(menu: QMenu, copies: tuple[tuple[str, Callable[[], object]], ...]) -> None:
    menu.clear()
    for words, take in copies:
        menu.addAction(words).triggered.connect(lambda _checked=False, take=take: take())
    if not copies:
        menu.addAction("None was left").setEnabled(False)
