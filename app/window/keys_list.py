"""Every key there is, in a window beside the plan, to be searched while one works."""

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QColor, QKeySequence, QResizeEvent
from PySide6.QtWidgets import (
    QDialog,
    QHeaderView,
    QLabel,
    QLineEdit,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
)

from app.canvas.hands.key_table import KEYS, where
from app.theme.icons import icon
from app.theme.words import scaled
from app.window.actions import ACTS, DRAWN, LINES, OF_THE_PLAN, PICTURE
from app.window.menus import MENUS, SUBMENUS

if TYPE_CHECKING:
    from app.window.main_window import MainWindow

WIDTH, HEIGHT, FRAME = 680, 640, (40, 80)
SHARE_OF_WORDS = 0.58  # of what the keys leave; the rest says where
# What stands in a submenu needs the submenu's word when it stands in a list.
SAID = {
    **dict.fromkeys(DRAWN, "Draw: "),
    **dict.fromkeys(LINES, "Arrange: "),
    **dict.fromkeys(PICTURE, "Picture: "),
}
TEXTS = {act.name: act.text.replace("&", "").rstrip("…") for act in ACTS}
OTHER_WORDS = {
    **dict.fromkeys(("row", "column", "left", "right", "top", "bottom"), "align line up"),
    **dict.fromkeys(("space_across", "space_down"), "distribute spread"),
    **dict.fromkeys(("mirror_across", "mirror_down"), "mirror flip"),
    **dict.fromkeys(("nearer", "farther"), "zoom in out magnify"),
    "show_all": "zoom fit whole",
    "turn": "rotate",
    "remove": "delete erase",
    "duplicate": "copy again",
    "throw": "toggle switch",
    "feed": "wire power connect",
    "route": "reroute",
    "focus": "isolate dim hide others",
    "look": "theme dark light",
    "join": "group",
    "take_apart": "ungroup",
    "bring_out": "plug cable loom",
    "measure": "ruler distance",
    "rename": "label",
}
OTHERS = (
    ("Window", "Show or hide the findings", ("Ctrl+I",)),
    ("Window", "From field to field, and back", ("Tab", "Shift+Tab")),
    ("Window", "The menus", ("F10", "Alt")),
    ("Findings", "Show what the finding is about", ("Return",)),
    ("Findings", "Do what mends it, as its button says", ("Ctrl+Return",), "fix repair mend solve"),
    ("Findings", "Mend all findings of its sort", ("Ctrl+Shift+Return",), "fix repair mend every"),
    ("Find on the plan", "The next that fits, and the one before", ("Return", "Shift+Return")),
    ("Circuit drawing", "To the part or wire that lies there", ("Left", "Right", "Up", "Down")),
    ("Circuit drawing", "To the next part or wire", ("Tab", "Shift+Tab")),
    ("Circuit drawing", "Shift the drawing", ("Ctrl+Left", "Ctrl+Right", "Ctrl+Up", "Ctrl+Down")),
    ("Circuit drawing", "Show it on the plan", ("Return",)),
)


class KeyRow(NamedTuple):
    """One line of the list."""

    where: str
    words: str
    keys: tuple[str, ...]
    other_words: str = ""  # by which the same thing is also known

    def fits(self, typed: str) -> bool:
        """Whether every word that was typed stands in it."""
        line = " ".join((self.where, self.words, shown(self.keys), self.other_words)).casefold()
        return all(word in line for word in typed.casefold().split())


def key_rows(window: "MainWindow") -> tuple[KeyRow, ...]:
    """Return every key, read from the acts and from the tables that plan and bench obey."""
    surfaces = tuple(KeyRow(where(k), k.words, k.keys, OTHER_WORDS.get(k.name, "")) for k in KEYS)
    return (*_of_menus(window), *surfaces, *(KeyRow(*other) for other in OTHERS))


def _of_menus(window: "MainWindow") -> Iterator[KeyRow]:
    for title, names in MENUS.items():
        for name in names:
            for one in SUBMENUS[name][1] if name in SUBMENUS else (name,):
                act = window.acts.get(one)
                if act is None or one in OF_THE_PLAN or not act.shortcuts():
                    continue
                keys = tuple(k.toString() for k in act.shortcuts())
                words = SAID.get(one, "Export: " if one.startswith("export") else "") + TEXTS[one]
                yield KeyRow(f"Menu {_plain(title)}", words, keys, OTHER_WORDS.get(one, ""))


def show_keys(window: "MainWindow") -> None:
    """Show the list; the plan stays at hand."""
    open_already = window.findChild(KeysList)
    keys = open_already if isinstance(open_already, KeysList) else KeysList(window)
    keys.show()
    keys.raise_()
    keys.activateWindow()
    keys.search.setFocus()


class KeysList(QDialog):
    """Narrows down to what is typed; Escape puts it away."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Keys")
        room = window.screen().availableSize() - QSize(*FRAME)
        self.resize(QSize(scaled(WIDTH), HEIGHT).boundedTo(room))
        self._quiet = QColor(window.look.surfaces.quiet)
        self._rows = key_rows(window)
        self.search = QLineEdit(self)
        self.search.setPlaceholderText("What do you want to do? “turn”, “wire”, “print” or a key")
        self.search.setAccessibleName("Find a key")
        self.search.setClearButtonEnabled(True)
        self.search.addAction(icon("search"), QLineEdit.ActionPosition.LeadingPosition)
        self.search.textChanged.connect(self._show)
        self.table = QTableWidget(0, 3, self)
        self.table.setAccessibleName("Keys")
        self.table.setHorizontalHeaderLabels(["What it does", "Keys", "Where"])
        header = self.table.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        header.setStretchLastSection(True)
        self._late = QTimer(self)
        self._late.setSingleShot(True)
        self._late.setInterval(0)
        self._late.timeout.connect(self._fit)  # once the table has its width
        self.table.verticalHeader().hide()
        self.table.setShowGrid(False)
        self.table.setWordWrap(True)
        self.table.setTabKeyNavigation(False)
        self.table.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.table.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self._none = QLabel("No key does that; look through the menus.", self)
        self._none.setProperty("look", "quiet")
        column_ = QVBoxLayout(self)
        column_.setContentsMargins(18, 16, 18, 16)
        column_.setSpacing(10)
        for widget in (self.search, self._none, self.table):
            column_.addWidget(widget)
        self._show("")

    def _show(self, typed: str) -> None:
        rows = [row for row in self._rows if row.fits(typed)]
        self._none.setVisible(not rows)
        self.table.setRowCount(len(rows))
        for number, row in enumerate(rows):
            for column, text in enumerate((row.words, shown(row.keys), row.where)):
                item = QTableWidgetItem(text)
                item.setToolTip(text)
                if column == 2:
                    item.setForeground(self._quiet)
                self.table.setItem(number, column, item)
        self._late.start()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break the words anew for the new width."""
        super().resizeEvent(event)
        self._late.start()

    def _fit(self) -> None:
        """Give the keys the room they need unbroken, and the words on both sides what is left."""
        table = self.table
        keys = max(table.sizeHintForColumn(1), table.horizontalHeader().sectionSizeHint(1))
        table.setColumnWidth(1, keys)
        table.setColumnWidth(0, round((table.viewport().width() - keys) * SHARE_OF_WORDS))
        table.resizeRowsToContents()


def shown(keys: tuple[str, ...]) -> str:
    """Return keys as this machine writes them; four arrows are told in one word."""
    stems = {k.rpartition("+")[0] for k in keys}
    if len(keys) == 4 and len(stems) == 1 and {k.rpartition("+")[2] for k in keys} == ARROWS:
        stem = stems.pop()
        return f"{stem}+arrows" if stem else "Arrows"
    written = (QKeySequence(k).toString(QKeySequence.SequenceFormat.NativeText) for k in keys)
    return ", ".join(dict.fromkeys(w.replace("Return", "Enter") for w in written))


ARROWS = {"Left", "Right", "Up", "Down"}


def _plain(text: str) -> str:
    return text.replace("&", "").rstrip("…")
