"""The same scene on other packs and on the mains, best first; one click puts a pack into the plan."""

from collections.abc import Callable
from datetime import date
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHeaderView, QLabel, QPushButton, QTableWidget, QTableWidgetItem, QWidget

from app.outlook.late_table import LateTable
from app.solving import Answer
from app.theme.sizes import section_width
from wiring.plan.positions import lasting

if TYPE_CHECKING:
    from wiring.studies.compare_packs import Candidate

HEADS = ("Pack", "Lasts", "To spare", "Price of one", "A year", "Why", "")
PACK, LASTS, SPARE, PRICE, COST, WHY, USE = range(len(HEADS))
PACK_WIDTH, USE_WIDTH = 216, 92
TIPS = {
    SPARE: "Volts under load when fresh, above those at which it is over",
    PRICE: "What you pay for one of them, in whatever money; kept in the plan",
    COST: "What a year of it costs at the use of the plan's scenes",
}
NOTHING = "Nothing can be compared: its cell type is not in the list, or nothing hangs on it."
TRYING = "Trying other packs…"
COMPARED = (
    "Best first, all of them fresh from today. Type prices to order them by cost; none is looked up. "
    "What you put into the plan counts as fitted today."
)
SAID_ALREADY = ("One set lasts about", "One charge lasts about")  # the column beside says it

SetPrice = Callable[[str, str], str]  # type's key, what was typed; returns "" or why it cannot be


class OtherPacks(LateTable):
    """One row a pack."""

    wanted = Signal(object)  # Candidate

    def __init__(self, set_price: SetPrice, parent: QWidget, *, at_once: bool = False) -> None:
        super().__init__("Other packs", HEADS, _compared, parent, meanwhile=TRYING, at_once=at_once)
        self.found.connect(self._show_packs)
        self._set_price = set_price
        self._prices: dict[str, float] = {}
        self._filling = False
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(WHY, QHeaderView.ResizeMode.Stretch)
        for column, width in ((PACK, PACK_WIDTH), (USE, USE_WIDTH)):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Fixed)
            section_width(header, column, width)
        self.heads_right((SPARE, PRICE, COST))
        for column, tip in TIPS.items():
            head = self.table.horizontalHeaderItem(column)
            if head is not None:
                head.setToolTip(tip)
        triggers = QTableWidget.EditTrigger
        self.table.setEditTriggers(
            triggers.DoubleClicked | triggers.EditKeyPressed | triggers.SelectedClicked
        )
        self.table.itemChanged.connect(self._price_typed)
        self.table.setWordWrap(True)
        self.candidates: tuple[Candidate, ...] = ()
        self.buttons: dict[int, QPushButton] = {}

    def _show_packs(self, found: object) -> None:
        """Show the packs in their order."""
        assert isinstance(found, tuple)
        self._prices, self.candidates = found
        self.words.setText(COMPARED if self.candidates else NOTHING)
        self.table.setVisible(bool(self.candidates))
        self._filling = True
        self.table.setRowCount(len(self.candidates))
        self.buttons = {}
        for row, candidate in enumerate(self.candidates):
            self._fill(row, candidate)
        self._filling = False
        self.table.setColumnHidden(COST, all(c.cost_a_year is None for c in self.candidates))
        self.fit_rows()

    def _fill(self, row: int, one: "Candidate") -> None:
        texts = {
            PACK: "\n".join(filter(None, (title_words(one), size_words(one)))),
            LASTS: lasts_words(one),
            SPARE: f"{one.spare_v:.1f} V" if one.lights else "none",
            COST: "" if one.cost_a_year is None else f"{one.cost_a_year:.2f}",
            WHY: " ".join(r for r in one.reasons if not r.startswith(SAID_ALREADY)),
        }
        for column, text in texts.items():
            right = column in (SPARE, COST)
            item = self.put(row, column, text, right=right, strong=one.there and column == PACK)
            item.setToolTip(text)
            item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEditable)
        price = self.put(row, PRICE, self._price_words(one), right=True)
        unit = "one of them" if one.cell else "a kilowatt-hour"
        price.setToolTip(f"What {unit} costs; press F2 or double-click to type it")
        if one.there or (one.mates and one.outlook is None):
            here = QLabel("in the plan" if one.there else "–", self.table)
            here.setProperty("look", "quiet")
            here.setAlignment(Qt.AlignmentFlag.AlignCenter)
            self.table.setCellWidget(row, USE, here)
            return
        button = QPushButton("Use it", self.table)
        button.setProperty("look", "plain")
        button.setAccessibleName(f"Put {title_words(one)} into the plan")
        button.setToolTip("Put into the plan as fitted today; change the day on its card")
        button.clicked.connect(partial(self.wanted.emit, one))
        self.table.setCellWidget(row, USE, button)
        self.buttons[row] = button

    def _price_typed(self, item: QTableWidgetItem) -> None:
        if self._filling or item.column() != PRICE:
            return
        fault = self._set_price(price_key(self.candidates[item.row()]), item.text().strip().strip("–"))
        if fault:
            self.words.setText(fault)
            self._filling = True
            item.setText(self._price_words(self.candidates[item.row()]))
            self._filling = False

    def _price_words(self, one: "Candidate") -> str:
        price = self._prices.get(price_key(one))
        return "–" if price is None else f"{price:.2f}"


def price_key(one: "Candidate") -> str:
    """Return the name its price is kept under in the plan."""
    from wiring.studies.compare_packs import MAINS_PRICE

    return one.cell or MAINS_PRICE


def title_words(one: "Candidate") -> str:
    """Return what it is called."""
    return one.title if one.outlook is not None else f"Mains adapter, {one.nominal_v:g} V DC"


def size_words(one: "Candidate") -> str:
    """Return how much room the bare cells take, four to a row; "" where it is not known."""
    return "" if one.size_mm is None else " × ".join(f"{side:.0f}" for side in one.size_mm) + " mm"


def lasts_words(one: "Candidate") -> str:
    """Return how long one set or charge lasts, in words."""
    from wiring.studies.time_words import time_words

    if one.outlook is None:
        return "always"
    if not one.lights:
        return "not one session"
    return f"{time_words(one.outlook.days.typical)} a {'charge' if one.rechargeable else 'set'}"


def _compared(answer: Answer, battery: str, today: date) -> object:
    from wiring.studies.compare_packs import compare

    plan, kinds = answer.situation.plan, answer.situation.kinds
    found = compare(plan, kinds, lasting(plan, kinds, answer.situation.positions), battery, today)
    return dict(plan.prices), found
