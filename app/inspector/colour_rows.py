"""The colours of each circuit's wires as a small table: feed, return, and the feed behind a switch."""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStyleOptionComboBox,
    QVBoxLayout,
    QWidget,
)

from app.inspector.named_row import NamedRow, drop
from app.inspector.wire_choice import ColourBox
from app.session import Session
from app.theme.box_name import name_box
from app.theme.elided import Elided
from app.theme.sizes import least_width
from wiring.edits.feed_colours import Colours, colours_of_all
from wiring.edits.recolour import by_rule, recolour, set_circuit_colours
from wiring.plan.circuit_colours import CircuitColours

LEAST_WIDTH = 66
COUNTED_MOST = 600  # wires; to count in a larger plan at every edit would be felt
FIRST_SHOWN = 6  # supplies; a row is slow to make, and a plan of twenty districts seldom wants them all
FIELDS = {"plus": "Feed", "minus": "Return", "switched": "Switched"}
USUAL_TIP = "As usual; choose another colour for all wires this supply feeds"


class ColourRows(QWidget):
    """One row a supply, and the button that colours the wires so."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self.rows: dict[str, ColourRow] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 4, 0, 0)
        self._column.setSpacing(10)
        self.built = QCheckBox("Also wires marked as built", self)
        self.built.setObjectName("recolourBuilt")
        self.built.toggled.connect(lambda _yes: self.refresh())
        self.apply = QPushButton("Colour the wires so", self)
        self.apply.setObjectName("recolour")
        self.apply.setProperty("look", "plain")
        self.apply.clicked.connect(self._recolour)
        self.more = QPushButton(self)
        self.more.setObjectName("moreColours")
        self.more.setProperty("look", "plain")
        self.more.clicked.connect(self._show_rest)
        self._most = FIRST_SHOWN
        self._column.addWidget(self.more, 0, Qt.AlignmentFlag.AlignLeft)
        foot = QHBoxLayout()
        foot.addWidget(self.apply)
        foot.addStretch(1)
        self._column.addWidget(self.built)
        self._column.addLayout(foot)

    def begin(self) -> None:
        """Forget the rows of another plan, and what was ticked for it."""
        drop(self.rows, self.rows.keys())
        self._most = FIRST_SHOWN
        self.built.blockSignals(True)
        self.built.setChecked(False)
        self.built.blockSignals(False)

    def refresh(self) -> None:
        """Show the supplies as they are now."""
        plan, kinds = self._session.plan, self._session.kinds
        used = colours_of_all(plan, kinds)
        there = list(used)[: self._most]
        self.more.setVisible(len(used) > len(there))
        self.more.setText(f"The other {len(used) - len(there)} supplies")
        drop(self.rows, self.rows.keys() - set(there))
        for supply in there:
            if supply not in self.rows:
                self.rows[supply] = ColourRow(self._session, supply, self)
                self._column.insertWidget(len(self.rows) - 1, self.rows[supply])
            own = plan.circuit_colours.get(supply, CircuitColours())
            part = plan.parts[supply]
            name = f"-{part.designation}  {part.label}".rstrip()
            self.rows[supply].show_colours(name, own, used[supply])
            self.rows[supply].heads.setVisible(supply == there[0])
        self._tell_number()
        self.built.setVisible(any(w.built for w in plan.wires.values()))

    def _show_rest(self) -> None:
        self._most = len(colours_of_all(self._session.plan, self._session.kinds))
        self.refresh()

    def _tell_number(self) -> None:
        plan, kinds = self._session.plan, self._session.kinds
        if not self.rows or len(plan.wires) > COUNTED_MOST:
            self.apply.setText("Colour the wires so")
            self.apply.setEnabled(bool(plan.wires))
            return
        number = len(by_rule(plan, kinds, plan.wires.values(), built_too=self.built.isChecked()))
        words = f"Colour {number} {'wire' if number == 1 else 'wires'} so"
        self.apply.setText(words if number else "All wires are coloured so")
        self.apply.setEnabled(number > 0)

    def _recolour(self) -> None:
        self._session.do(recolour(built_too=self.built.isChecked(), kinds=self._session.kinds))


class ColourRow(NamedRow):
    """The three colours of one supply."""

    def __init__(self, session: Session, supply: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._supply = session, supply
        self.name = Elided(self)
        self.heads = QWidget(self)  # over the colours of the first supply, which stands for all
        heads = QHBoxLayout(self.heads)
        heads.setContentsMargins(0, 2, 0, 0)
        heads.setSpacing(4)
        for word in FIELDS.values():
            head = QLabel(word, self.heads)
            head.setProperty("look", "caption")
            heads.addWidget(head, 1)
        self.column.insertWidget(0, self.name)
        self.column.insertWidget(1, self.heads)
        self.boxes: dict[str, ColourBox] = {}
        for field, word in FIELDS.items():
            box = _LettersBox(self)
            box.setProperty("look", "slim")
            box.setMinimumContentsLength(1)
            least_width(box, LEAST_WIDTH)
            box.setIconSize(QSize(11, 11))
            box.setObjectName(f"circuit_{field}")
            least_width(box.view(), 190)
            box.chosen.connect(self._chosen(field, box))
            self.boxes[field] = box
            self.line.addWidget(box, 1)
            name_box(box, f"{word}, colour of its wires")

    def show_colours(self, name: str, own: CircuitColours, used: Colours) -> None:
        """Show the colours; what the builder has not chosen is the usual one."""
        self.name.setText(name)
        for field, box in self.boxes.items():
            box.show_value(getattr(used, field))
            box.setToolTip("" if getattr(own, field) else USUAL_TIP)
            name_box(box, f"{FIELDS[field]} of {name}, colour of its wires")

    def _chosen(self, field: str, box: ColourBox) -> Callable[[], object]:
        return lambda: self._session.do(set_circuit_colours(self._supply, **{field: box.value}))


class _LettersBox(ColourBox):
    """Shows swatch and letters only; the names stand in the list."""

    @property
    def words(self) -> str:
        """The letters."""
        return self.value

    def initStyleOption(self, option: QStyleOptionComboBox) -> None:
        """Show them alone."""
        super().initStyleOption(option)
        option.currentText = self.value
