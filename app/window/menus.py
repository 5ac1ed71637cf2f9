"""Which acts stand in which menu."""

from PySide6.QtWidgets import QMenu, QMenuBar

from app.window.actions import DRAWN, LINES, MIRRORED, PICTURE, SPACED, Actions

RULE = "-"
MENUS: dict[str, tuple[str, ...]] = {
    "&Plan": (
        *("new", "open", "recent", "examples", "rescues", RULE, "save", "save_as", RULE),
        *("print", "save_pdf", "export", "take_ticks", RULE, "quit"),
    ),
    "&Edit": (
        *("undo", "redo", RULE, "cut", "copy", "paste", "duplicate", "remove", RULE),
        *("turn", "arrange", "rename", "join", "take_apart", "menu", RULE),
        *("feed", "one_to_one", "route", "lay_anew", "bring_out", RULE),
        *("select_all", "all_of", "find_part", RULE, "throw", "put_back"),
    ),
    "P&lace": (*("find_kind", "keep_set", "sets", RULE, "select", "wire", "draw", RULE, "measure", "under"),),
    "&View": (
        *(
            "plan",
            "circuit",
            "battery",
            "sheets",
            RULE,
            "to_circuit",
            "to_plan",
            "back",
            "onward",
            RULE,
            "nearer",
            "farther",
            "show_all",
            RULE,
        ),
        *("only", "focus", "bench", RULE, "show_tray", "show_card", RULE, "larger", "smaller", "look"),
    ),
    "&Help": ("keys", "log", "about"),
}
SUBMENUS: dict[str, tuple[str, tuple[str, ...]]] = {
    "recent": ("Open &recent", ()),
    "examples": ("Open an e&xample", ()),
    "sets": ("&Place a kept set", ()),
    "under": ("Picture &under the plan", PICTURE),
    "only": ("Show &only", ()),
    "all_of": ("Select all o&f", ()),
    "rescues": ("Open a kept &copy", ()),
    "arrange": ("Arran&ge", (*LINES, *SPACED, *MIRRORED)),
    "draw": ("&Draw", DRAWN),
    "export": ("&Export", ("export_carry", "export_svg", "export_csv", "export_spice", "export_json")),
}


def fill(bar: QMenuBar, actions: Actions) -> dict[str, QMenu]:
    """Fill the menu bar; return the submenus by name, so that the window can fill those that change."""
    submenus: dict[str, QMenu] = {}
    for title, names in MENUS.items():
        menu = bar.addMenu(title)
        for name in names:
            if name == RULE:
                menu.addSeparator()
            elif name in SUBMENUS:
                submenus[name] = menu.addMenu(SUBMENUS[name][0])
                submenus[name].addActions([actions[n] for n in SUBMENUS[name][1]])
            else:
                menu.addAction(actions[name])
    return submenus
