"""Sets the builder keeps: named in place, listed in the tray, placed again, renamed, taken away."""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from app.notices import Notice
from app.tray.set_files import (
    KeptSet,
    file_name,
    keep,
    read_set,
    read_sets,
    remove_set,
    rename_set,
    set_paths,
)
from app.window.set_names import set_name
from wiring.edits.fragment import copied

if TYPE_CHECKING:
    from app.window.main_window import MainWindow


def keep_set(window: "MainWindow") -> None:
    """Keep the selected parts, with the wires between them, under a name typed beside them."""
    text = copied(window.session.plan, window.selection.ids)
    if not text:
        window.session.refused.emit("Select the parts that belong to the set first.")
        return
    window.show_view("plan")
    first = _first_name(window)
    window.plan_view.ask_beside("Name of the set", first, partial(_keep, window, text), even_as_is=True)


def _keep(window: "MainWindow", text: str, words: str) -> str:
    sentence = keep(window.remembered.sets_folder, words, text)
    if not sentence:
        show_sets(window)
        window.notices.say(f"“{file_name(words)}” is kept; it stands in the tray under “Your own sets”.")
    return sentence


def _first_name(window: "MainWindow") -> str:
    session = window.session
    parts = [p for p in session.plan.parts.values() if p.id in window.selection.ids]
    taken = {KeptSet(path).name for path in set_paths(window.remembered.sets_folder)}
    return set_name(parts, session.kinds, taken)


def show_sets(window: "MainWindow") -> None:
    """Let the tray show the sets as they are now."""
    window.tray.model.show_sets(read_sets(window.remembered.sets_folder))


def tie_sets(window: "MainWindow") -> None:
    """Connect the tray's sets, and fill the menu of kept sets at the moment it opens."""
    window.tray.wanted_set.connect(partial(_place, window))
    window.tray.renamed.connect(partial(_rename, window))
    window.tray.dropped.connect(partial(_drop, window))
    menu = window.submenus["sets"]

    def fill() -> None:
        menu.clear()
        sets = [KeptSet(path) for path in set_paths(window.remembered.sets_folder)]
        for one in sets:
            menu.addAction(one.name, partial(_place_from, window, one.path))
        if not sets:
            menu.addAction("None kept yet").setEnabled(False)

    menu.aboutToShow.connect(fill)
    show_sets(window)


def _place_from(window: "MainWindow", path: Path) -> None:
    _place(window, read_set(path))


def _place(window: "MainWindow", kept: KeptSet) -> None:
    if kept.fragment is None:
        window.session.refused.emit(f"The set “{kept.name}” cannot be read; keep it anew.")
        return
    window.show_view("plan")
    window.plan_view.begin_set(kept.name, kept.text)
    window.plan_view.setFocus()


def _rename(window: "MainWindow", path: Path, words: str) -> None:
    sentence = rename_set(path, words)
    show_sets(window)
    if sentence:
        window.session.refused.emit(sentence)


def _drop(window: "MainWindow", path: Path) -> None:
    kept = read_set(path)
    sentence = remove_set(path)
    show_sets(window)
    if sentence:
        window.session.refused.emit(sentence)
    elif kept.text:
        put_back = partial(_put_back, window, kept)
        window.notices.offer(Notice(f"“{kept.name}” is taken away.", act_text="Put it back", act=put_back))


def _put_back(window: "MainWindow", kept: KeptSet) -> None:
    keep(window.remembered.sets_folder, kept.name, kept.text)
    show_sets(window)
