"""The small menu of a panel: onto the bench, and its wires out as one harness."""

from collections.abc import Callable

from PySide6.QtWidgets import QMenu

from app.session import Session
from wiring.edits.panel_harness import bring_out
from wiring.plan.harness import leaving


def for_panel(menu: QMenu, session: Session, panel_id: str, lay: Callable[[str], None]) -> None:
    """Add what can be done with a panel."""
    menu.addAction("Lay on the bench\tdouble click", lambda: lay(panel_id))
    out = menu.addAction(
        "Bring out as a harness", lambda: session.do(bring_out(panel_id, kinds=session.kinds))
    )
    out.setEnabled(bool(leaving(session.plan, session.kinds, session.plan.panels[panel_id])))
    menu.addSeparator()
