"""Finds a placed part by its designation or its label."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCompleter, QDialog, QDialogButtonBox, QLabel, QLineEdit, QVBoxLayout, QWidget

from app.session import Session


def ask_for_part(parent: QWidget, session: Session) -> str | None:
    """Let the person name a part; return its id, None when they leave it."""
    names = part_names(session)
    dialog = QDialog(parent)
    dialog.setWindowTitle("Go to a part")
    field = QLineEdit(dialog)
    field.setAccessibleName("Designation or label")
    field.setPlaceholderText("E4, or “lamp by the crane”")
    completer = QCompleter(list(names), dialog)
    completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
    completer.setFilterMode(Qt.MatchFlag.MatchContains)
    field.setCompleter(completer)
    buttons = QDialogButtonBox(
        QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel, dialog
    )
    buttons.accepted.connect(dialog.accept)
    buttons.rejected.connect(dialog.reject)
    column = QVBoxLayout(dialog)
    column.setContentsMargins(18, 18, 18, 14)
    for widget in (QLabel("Which part?", dialog), field, buttons):
        column.addWidget(widget)
    dialog.resize(380, 120)
    if dialog.exec() != QDialog.DialogCode.Accepted:
        return None
    found = found_part(names, field.text())
    if found is None:
        session.refused.emit(f"No part of this plan is called “{field.text().strip()}”.")
    return found


def part_names(session: Session) -> dict[str, str]:
    """Return the id of each part by the words it is shown with."""
    parts = session.plan.parts.values()
    return {f"-{p.designation}  {p.label}".rstrip(): p.id for p in parts}


def found_part(names: dict[str, str], typed: str) -> str | None:
    """Return the part that is meant: by its whole name, its designation, or words that occur in it."""
    wanted = typed.strip().lstrip("-").casefold()
    if not wanted:
        return None
    said = {name.lstrip("-").casefold(): part for name, part in names.items()}
    for fits in (
        lambda name: name == wanted,
        lambda name: name.split("  ")[0] == wanted,
        lambda name: wanted in name,
    ):
        for name, part in said.items():
            if fits(name):
                return part
    return None
