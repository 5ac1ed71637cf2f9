"""What is still being typed counts before the window shows something else."""

from PySide6.QtWidgets import QApplication


def commit_typing() -> None:
    """Let a field that is still being typed in commit, as when the focus leaves it."""
    focus = QApplication.focusWidget()
    if focus is not None:
        focus.clearFocus()
