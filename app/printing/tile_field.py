"""At which scale the plan is printed in tiles: one of those offered, or typed."""

from collections.abc import Callable

from PySide6.QtWidgets import QComboBox, QWidget

from app.inspector.field_row import FieldRow
from wiring.sheets.tiling import FIT, SCALES, read_tiling

NONE = "none"


class TileField(FieldRow):
    """A list one may type in; what is no scale is said beneath it and not taken."""

    def __init__(self, put: Callable[[str], str], parent: QWidget) -> None:
        self.box = QComboBox()
        super().__init__("Plan in tiles at", self.box, parent)
        self._put = put
        self._shown = FIT
        self.box.setObjectName("print_tiles")
        self.box.setEditable(True)
        self.box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.box.addItems([NONE, *SCALES])
        self.box.setToolTip("From above and from below, to be glued together; type any scale such as 1:7.5.")
        self.box.activated.connect(lambda _index: self._take())
        line = self.box.lineEdit()
        if line is not None:
            line.setAccessibleName(self.box.accessibleName())
            line.editingFinished.connect(self._take)

    def show_scale(self, tiles: str) -> None:
        """Show a scale, or that there are no tiles."""
        self._shown = tiles
        if not self.fault:
            self.box.setEditText(NONE if tiles == FIT else tiles)

    def _take(self) -> None:
        typed = self.box.currentText().strip()
        wanted = FIT if typed.lower() in ("", NONE, FIT) else typed
        try:
            tiling = read_tiling(wanted)
        except ValueError as fault:
            self.show_fault(str(fault))
            return
        self.show_fault("")
        self._put(FIT if tiling is None else f"1:{tiling.reduction:g}")
        self.box.setEditText(NONE if tiling is None else f"1:{tiling.reduction:g}")
