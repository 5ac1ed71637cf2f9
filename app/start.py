"""Starts the editor: the one place that makes the long-lived objects and ties them together."""

import logging
import sys
from collections.abc import Callable
from functools import partial
from logging.handlers import RotatingFileHandler
from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from app.crash_net import CrashNet
from app.early_import import import_early
from app.guarded_overrides import guard_overrides
from app.notices import Notices
from app.rescuing import Rescuing
from app.selection import Selection
from app.session import Session
from app.settings import PROGRAM, Remembered, state_complaint, state_folder
from app.solving import Solving
from app.theme.icons import app_icon
from app.theme.look import Look
from app.window.main_window import MainWindow
from wiring.catalogue.shelf import load_shelf
from wiring.files.rescue import Rescue
from wiring.plan.plan import Plan

LOG_NAME = "underboard.log"
LOG_BYTES = 500_000
EARLY_MS = 300  # by then the plan is painted


class Editor:
    """The objects of one running editor, kept alive together."""

    def __init__(
        self, application: QApplication, remembered: Remembered, *, look: str = "", at_once: bool = False
    ) -> None:
        self.remembered = remembered
        self.look = Look(look or remembered.look, remembered.words)
        self.look.dress(application)
        application.setWindowIcon(app_icon())
        shelf = load_shelf()
        self.notices = Notices()
        self.session = Session(Plan(), shelf.kinds)
        self.selection = Selection()
        self.window = MainWindow(
            self.session, self.selection, self.look, self.notices, remembered, at_once=at_once
        )
        # They end with it: a closure that listens to one holds the window, and Python sees no such ring.
        for heard in (self.session, self.selection, self.notices, self.look):
            heard.setParent(self.window)
        self.look.finish(application)
        self.window.plan_page.keep_room()
        self.solving: Solving = self.window.solving
        for complaint in shelf.complaints:
            self.notices.say(complaint, "weak")

    def close(self) -> None:
        """Let the worker threads end."""
        self.solving.close()


def run(plan_path: Path | None = None) -> int:
    """Open the window, with a plan when one is named, and stay until it is closed; return the exit code."""
    log_path = begin_log()
    application = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(application, QApplication)
    application.setApplicationName(PROGRAM)
    application.setApplicationDisplayName("Underboard")
    application.setDesktopFileName(PROGRAM)
    guard_overrides()
    editor = Editor(application, Remembered())
    rescuing = Rescuing(editor.session, state_folder() / "rescue")
    net = CrashNet(rescuing, editor.notices, log_path)
    net.spread()
    editor.window.show()
    # The first picture of the window comes before anything that takes time.
    QTimer.singleShot(0, lambda: _first_steps(editor, rescuing, plan_path))
    code = application.exec()
    editor.close()
    rescuing.close()
    net.furl()
    return code


def begin_log() -> Path:
    """Write warnings and faults to a file that never grows large; return its path."""
    path = state_folder() / LOG_NAME
    handler = RotatingFileHandler(path, maxBytes=LOG_BYTES, backupCount=1, encoding="utf-8")
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    logging.getLogger().addHandler(handler)
    return path


def _first_steps(editor: Editor, rescuing: Rescuing, plan_path: Path | None) -> None:
    if plan_path is not None:
        editor.window.documents.open_path(plan_path)
    for complaint in (state_complaint(), editor.remembered.complaint):
        if complaint:
            editor.notices.say(complaint, "weak")
    rescuing.offer_left_over(editor.notices, editor.window.documents.take_up)
    editor.window.rescues = lambda: kept_copies(editor, rescuing)
    rescuing.begin()
    editor.solving.request()
    QTimer.singleShot(EARLY_MS, import_early)


def kept_copies(editor: Editor, rescuing: Rescuing) -> tuple[tuple[str, Callable[[], object]], ...]:
    """Return the copies a crash left, each in words and with what opens it."""
    documents = editor.window.documents

    def opens(left: Rescue) -> None:
        if documents.may_leave():
            rescuing.take(left, editor.notices, documents.take_up)

    return tuple(
        (f"{left.title}, {left.written.astimezone():%d %B, %H:%M}", partial(opens, left))
        for left in rescuing.left_over()
    )
