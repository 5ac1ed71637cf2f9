"""The column beside the sheets in which a person chooses what is printed."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.inspector.choice_field import ChoiceField
from app.inspector.section import Section
from app.inspector.typed_field import TypedField
from app.printing.tile_field import TileField
from app.printing.wish import TICKED, Wish
from app.theme.sizes import fix_width
from wiring.catalogue.kind import Kind
from wiring.plan.plan import Plan
from wiring.quantities.reading import NotUnderstood, read
from wiring.sheets.documents import DOCUMENTS
from wiring.sheets.printed_set import PrintedSet
from wiring.sheets.safety import earned_titles
from wiring.sheets.tiling import MOST_OVERLAP_MM

WIDTH = 268
WHOLE = ("", "whole layout")
SYMBOLS = (("iec", "IEC 60617"), ("ieee", "IEEE 315 (American)"))
NEVER = "No printed set of this plan is remembered yet."


class Choices(QScrollArea):
    """Holds the wish; `changed` says that it is another one."""

    changed = Signal()
    remember = Signal()

    def __init__(self, set_symbols: Callable[[str], str], parent: QWidget) -> None:
        super().__init__(parent)
        self.wish = Wish()
        self._scenes: tuple[str, ...] = ()
        fix_width(self, WIDTH)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("What to print")
        inside = QWidget(self)
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(16, 14, 14, 14)
        self._column.setSpacing(16)
        self.setWidget(inside)
        self._add_documents(inside)
        self._add_drawings(inside, set_symbols)
        self._add_changed(inside)
        self._column.addStretch(1)

    def show_wish(self, wish: Wish) -> None:
        """Show what is wanted without telling it."""
        self.wish = wish
        for name, box in self.boxes.items():
            box.setChecked(name not in wish.left_out)
        self.scene.show_value(wish.scene)
        self.tiles.show_scale(wish.tiles)
        self.overlap.show_text(f"{wish.overlap_mm:g} mm")
        self.changed_only.setChecked(wish.changed_only)

    def show_plan(self, plan: Plan, kinds: dict[str, Kind], printed: PrintedSet | None) -> None:
        """Offer the places of a plan, say why its safety notes stay, and what was printed last."""
        names = (*(s.name for s in plan.scenes.values()), *(p.name for p in plan.panels.values()))
        self.scene.offer([WHOLE, *((n, n) for n in dict.fromkeys(names))])
        self.symbols.show_value(plan.habits.symbols)
        earned = earned_titles(plan, kinds)
        self.boxes["safety"].setEnabled(not earned)
        self._stays.setVisible(bool(earned))
        self._stays.setText(f"Stay, as this plan calls for them: {', '.join(earned)}.")
        wish = self.wish
        if earned:
            wish = wish._replace(left_out=wish.left_out - {"safety"})
        if wish.scene and wish.scene not in names:
            wish = wish._replace(scene="")
        if printed is None:
            wish = wish._replace(changed_only=False)
        self._printed.setText(
            NEVER if printed is None else f"Set {printed.letter} was printed on {printed.day}."
        )
        self.changed_only.setEnabled(printed is not None)
        self.show_wish(wish)

    def _add_documents(self, inside: QWidget) -> None:
        section = Section("Documents", inside)
        self.boxes: dict[str, QCheckBox] = {}
        for name in TICKED:
            box = QCheckBox(DOCUMENTS[name], inside)
            box.setObjectName(f"print_{name}")
            box.setChecked(True)
            box.clicked.connect(self._documents_changed)
            self.boxes[name] = box
            section.add(box)
            if name == "safety":
                self._stays = QLabel(inside)
                self._stays.setProperty("look", "caption")
                self._stays.setWordWrap(True)
                self._stays.setTextFormat(Qt.TextFormat.PlainText)
                self._stays.hide()
                section.add(self._stays)
        self._column.addWidget(section)

    def _add_drawings(self, inside: QWidget, set_symbols: Callable[[str], str]) -> None:
        section = Section("How much of it, and how", inside)
        self.scene = ChoiceField("Of", [WHOLE], self._put("scene"), inside)
        self.scene.box.setObjectName("print_scene")
        self.tiles = TileField(self._put("tiles"), inside)
        self.overlap = TypedField("Tiles overlap", self._set_overlap, inside)
        self.overlap.editor.setObjectName("print_overlap")
        self.symbols = ChoiceField("Symbols", SYMBOLS, set_symbols, inside)
        self.symbols.box.setObjectName("print_symbols")
        for row in (self.scene, self.tiles, self.overlap, self.symbols):
            section.add(row)
        self._column.addWidget(section)

    def _add_changed(self, inside: QWidget) -> None:
        section = Section("Since the last printing", inside)
        self._printed = QLabel(NEVER, inside)
        self._printed.setProperty("look", "caption")
        self._printed.setWordWrap(True)
        self.changed_only = QCheckBox("Only what changed since", inside)
        self.changed_only.setObjectName("print_changed")
        self.changed_only.clicked.connect(lambda on: self._put("changed_only")(on))
        self.keep = QPushButton("Remember as printed", inside)
        self.keep.setObjectName("print_remember")
        self.keep.setToolTip(
            "For a set that was saved as a PDF and printed from there; printing from here does it by itself."
        )
        self.keep.clicked.connect(self.remember.emit)
        for row in (self._printed, self.changed_only, self.keep):
            section.add(row)
        self._column.addWidget(section)

    def _documents_changed(self) -> None:
        left_out = frozenset(name for name, box in self.boxes.items() if not box.isChecked())
        if len(left_out) == len(self.boxes):  # an empty set is no set: the last box stays ticked
            self.show_wish(self.wish)
            return
        self._put("left_out")(left_out)

    def _set_overlap(self, typed: str) -> str:
        try:
            overlap_mm = 1000.0 * read(typed, "length", "mm")
        except NotUnderstood as fault:
            return str(fault)
        if not 0.0 <= overlap_mm <= MOST_OVERLAP_MM:
            return f"Tiles overlap by 0 to {MOST_OVERLAP_MM:g} mm."
        return self._put("overlap_mm")(overlap_mm)

    def _put(self, field: str) -> Callable[[object], str]:
        def put(value: object) -> str:
            new = self.wish._replace(**{field: value})  # type: ignore[arg-type]
            if new != self.wish:
                self.show_wish(new)
                self.changed.emit()
            return ""

        return put
