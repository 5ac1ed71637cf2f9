"""The name of a box of choices as a screen reader tells it."""

from PySide6.QtWidgets import QComboBox


def name_box(box: QComboBox, name: str) -> None:
    """Name a box without a label; on Linux Qt tells what is chosen in place of a name, and this after it."""
    box.setAccessibleName(name)
    box.setAccessibleDescription(name)
