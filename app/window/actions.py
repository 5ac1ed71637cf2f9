"""Every act of the window: its words, keys and icon. Menus, buttons and the list of keys read this table."""

from typing import NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QWidget

from app.canvas.hands.key_table import keys_of
from app.theme.icons import icon


class Act(NamedTuple):
    """One act: its name in code, its words in menus, its keys."""

    name: str
    text: str
    keys: str = ""
    icon: str = ""
    checkable: bool = False
    tip: str = ""


VIEWS = ("plan", "circuit", "battery", "sheets")
TOOLS = ("select", "wire")
SIDES = ("show_tray", "show_card")
ZOOMS = ("farther", "nearer", "show_all")
LINES = ("left", "right", "top", "bottom", "row", "column")  # what parts are lined up by
SPACED = ("space_across", "space_down")
MIRRORED = ("mirror_across", "mirror_down")
PICTURE = ("picture", "scale_picture", "move_picture", "no_picture")
# The plan obeys these keys itself; in menus they are shown, elsewhere they belong to what is typed in.
OF_THE_PLAN = ("cut", "copy", "paste", "throw", "menu")
# What is drawn on the plan besides parts and wires.
DRAWN = ("board", "joist", "track", "wireway", "scene", "panel")

ACTS = (
    Act("new", "&New plan", "Ctrl+N"),
    Act("open", "&Open…", "Ctrl+O"),
    Act("save", "&Save", "Ctrl+S"),
    Act("save_as", "Save &as…", "Ctrl+Shift+S"),
    Act("save_pdf", "Save sheets as &PDF…", "Ctrl+E", "save-page"),
    Act("print", "Pr&int sheets…", "Ctrl+P", "print", tip="Print the sheets"),
    Act("export_svg", "Circuit &drawings (.svg)…", "Ctrl+Shift+D"),
    Act("export_csv", "&Bench list (.csv)…", "Ctrl+Shift+B"),
    Act("export_spice", "Circuit for a &simulator (.cir)…", "Ctrl+Shift+E"),
    Act("export_json", "&Figures (.json)…", "Ctrl+Shift+J"),
    Act("export_carry", "&Carry sheet for a phone (.html)…", "Ctrl+Shift+Y"),
    Act(
        "take_ticks",
        "Take &ticks from a carry sheet…",
        "Ctrl+Shift+I",
        tip="Mark the wires ticked on the phone as built",
    ),
    Act("quit", "&Quit", "Ctrl+Q"),
    Act("undo", "&Undo", "Ctrl+Z", "undo"),
    Act("redo", "&Redo", "Ctrl+Shift+Z", "redo"),
    Act("cut", "Cu&t", keys_of("cut")),
    Act("copy", "&Copy", keys_of("copy"), tip="Parts, the wires between them and joists, as text"),
    Act("paste", "Pa&ste", keys_of("paste")),
    Act("duplicate", "&Duplicate", "Ctrl+D"),
    Act("turn", "Turn a &quarter", "R", "turn"),
    Act("rename", "Re&name", "F2", tip="Type another name beside what is selected"),
    Act("remove", "Re&move", "Del", "remove"),
    Act("select_all", "Select &all", "Ctrl+A"),
    Act("find_kind", "&Find a part to place", "Ctrl+F", "search"),
    Act(
        "find_part",
        "F&ind on the plan",
        "Ctrl+G",
        tip="Parts, wires, scenes, panels and wireways by their labels",
    ),
    Act("feed", "F&eed these", "F", tip="Wire what is selected to its supply, block or switch"),
    Act(
        "one_to_one",
        "Wire two parts &one to one",
        "Shift+F",
        tip="Terminal by terminal, each in its own colour",
    ),
    Act(
        "keep_set",
        "&Keep as a set…",
        "Ctrl+Shift+G",
        tip="Keep the selected parts and their wires to place again",
    ),
    Act("join", "&Join as one thing", "Ctrl+J", tip="A lit building with its lamps and plug, say"),
    Act("take_apart", "Ta&ke apart", "Ctrl+U", tip="Every part stands for itself again"),
    Act("lay_anew", "&Lay wires anew, clear of others", "Ctrl+Shift+R"),
    Act("route", "Route along wire&ways", "Ctrl+R"),
    Act("measure", "&Measure", "M", tip="How far it is from place to place"),
    Act("picture", "&Choose a picture…", "Ctrl+Shift+T", tip="A track plan or a photograph under the plan"),
    Act("scale_picture", "Bring it to &scale", "Ctrl+Shift+K"),
    Act("move_picture", "&Move it", "Ctrl+Shift+O", tip="The picture alone; what is drawn stays"),
    Act("no_picture", "&Take it away", "Ctrl+Shift+N"),
    Act("bench", "A panel on the benc&h", "Ctrl+Shift+P", tip="The face of a panel, front and back"),
    Act("bring_out", "&Panel’s wires out as a harness", "Ctrl+Shift+H", tip="Through a plug of enough ways"),
    Act("focus", "Show only &what is selected", "O", tip="Dim the rest; once more: show everything"),
    Act("row", "Middles in a &row", "H"),
    Act("column", "Middles in a &column", "Shift+H"),
    Act("left", "&Left edges in line", "Ctrl+Shift+Left"),
    Act("right", "R&ight edges in line", "Ctrl+Shift+Right"),
    Act("top", "&Top edges in line", "Ctrl+Shift+Up"),
    Act("bottom", "&Bottom edges in line", "Ctrl+Shift+Down"),
    Act("space_across", "Space evenly &across", "E"),
    Act("space_down", "Space evenly &down", "Shift+E"),
    Act("mirror_across", "&Swap left and right", "Ctrl+M"),
    Act("mirror_down", "Swap top and bott&om", "Ctrl+Shift+M"),
    Act("throw", "Throw to the ne&xt position", keys_of("throw")),
    Act("menu", "W&hat can be done with it…", keys_of("menu"), tip="The menu of what is selected"),
    Act("put_back", "Put all switches &back as in use", "Ctrl+B", "put-back"),
    Act("select", "&Select", "V", "select", True, "Select and move parts"),
    Act("wire", "&Wire", "W", "wire", True, "Draw a wire from terminal to terminal"),
    Act("board", "The outline of the &board", "Shift+B"),
    Act("joist", "&Joists under it", "Shift+J"),
    Act("track", "A &track", "Shift+T"),
    Act("wireway", "A &wireway", "Shift+W"),
    Act("scene", "A &scene", "Shift+S"),
    Act("panel", "A &panel", "Shift+P"),
    Act("plan", "&Plan", "Ctrl+1", "", True, "The plan, seen from above"),
    Act("circuit", "&Circuit", "Ctrl+2", "", True, "The circuit drawings"),
    Act("battery", "&Battery", "Ctrl+3", "", True, "How long each battery lasts"),
    Act("sheets", "&Sheets", "Ctrl+4", "", True, "The pages to work from at the bench"),
    Act("back", "B&ack to where you were", "Alt+Left", tip="Back to where you were"),
    Act("onward", "On a&gain", "Alt+Right", tip="On again to where you came back from"),
    Act("to_circuit", "Show its c&ircuit", "C", tip="What is selected, in the drawing of its circuit"),
    Act("to_plan", "Show it on th&e plan", "Shift+C", tip="What is selected, on the plan"),
    Act("nearer", "&Nearer", "Ctrl+=", "nearer"),
    Act("farther", "&Farther", "Ctrl+-", "farther"),
    Act("show_all", "Show a&ll", "Ctrl+0", "fit", tip="Show the whole page"),
    Act("show_tray", "Par&ts on the left", "F7", "", True, "Show or hide the parts to place"),
    Act("show_card", "Car&d on the right", "F8", "", True, "Show or hide what is said of the selection"),
    Act("larger", "La&rger words", "F9"),
    Act("smaller", "S&maller words", "Shift+F9"),
    Act("look", "Change between light and dar&k", "Ctrl+L", "dark-look", tip="Light or dark"),
    Act("keys", "&Keys", "F1"),
    Act("log", "Show the &log folder", "Ctrl+Shift+L"),
    Act("about", "&About Underboard", "Shift+F1"),
)


class Actions(dict[str, QAction]):
    """All acts by name, owned by the window."""

    def __init__(self, window: QWidget) -> None:
        super().__init__()
        for act in ACTS:
            self[act.name] = _made(act, window)
            window.addAction(self[act.name])
        self["redo"].setShortcuts([QKeySequence("Ctrl+Shift+Z"), QKeySequence("Ctrl+Y")])
        self["nearer"].setShortcuts([QKeySequence("Ctrl+="), QKeySequence("Ctrl++")])
        for names in (VIEWS, TOOLS):
            group = QActionGroup(window)
            # While a part is being placed neither of the two tools is in hand.
            group.setExclusionPolicy(QActionGroup.ExclusionPolicy.ExclusiveOptional)
            for name in names:
                group.addAction(self[name])
            self[names[0]].setChecked(True)
        for name in SIDES:
            self[name].setChecked(True)


def _made(act: Act, window: QWidget) -> QAction:
    action = QAction(act.text, window)
    action.setObjectName(act.name)
    action.setCheckable(act.checkable)
    action.setShortcut(QKeySequence(act.keys))
    own = act.name in OF_THE_PLAN
    context = Qt.ShortcutContext
    action.setShortcutContext(context.WidgetShortcut if own else context.WindowShortcut)
    if act.icon:
        action.setIcon(icon(act.icon))
        action.setIconVisibleInMenu(False)
    words = act.tip or act.text.replace("&", "").rstrip("…")
    keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    action.setToolTip(f"{words}  {keys}" if keys else words)
    return action
