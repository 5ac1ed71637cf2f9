"""What happens when something nobody foresaw goes wrong: the work is rescued first, then one plain notice."""

import faulthandler
import logging
import sys
import threading
from io import TextIOWrapper
from pathlib import Path
from traceback import walk_tb
from types import TracebackType

from PySide6.QtCore import QMessageLogContext, QObject, QtMsgType, Signal, qInstallMessageHandler

from app.notices import Notices
from app.rescuing import Rescuing

_LOG = logging.getLogger("underboard")
_LEVELS = {
    QtMsgType.QtWarningMsg: logging.WARNING,
    QtMsgType.QtCriticalMsg: logging.ERROR,
    QtMsgType.QtFatalMsg: logging.CRITICAL,
}
LOGGED_OF_ONE = 3  # times: a fault in a painter comes back with each frame
SENTENCE = (
    "Something went wrong inside Underboard; a rescue copy of your plan was kept, "
    "and saving it now under a new name is the safe thing to do."
)


class CrashNet(QObject):
    """Catches faults of every thread and of Qt itself; guarded_overrides passes on those in what Qt calls."""

    _fell = Signal()

    def __init__(self, rescuing: Rescuing, notices: Notices, log_path: Path) -> None:
        super().__init__()
        self._rescuing = rescuing
        self._notices = notices
        self._log_path = log_path
        self._traces: TextIOWrapper | None = None
        self._times: dict[str, int] = {}  # each fault was met, by kind and the way to it
        # By a signal, so that a fault in a worker thread is told in the window's own.
        self._fell.connect(self._tell)

    def spread(self) -> None:
        """Begin to catch."""
        sys.excepthook = self._caught
        threading.excepthook = lambda a: self._caught(
            a.exc_type, a.exc_value or a.exc_type(), a.exc_traceback
        )
        qInstallMessageHandler(self._qt_said)
        self._traces = self._log_path.with_suffix(".crash").open("a", encoding="utf-8")
        faulthandler.enable(self._traces)

    def furl(self) -> None:
        """Stop catching."""
        sys.excepthook = sys.__excepthook__
        threading.excepthook = threading.__excepthook__
        qInstallMessageHandler(None)
        if self._traces is not None:
            faulthandler.disable()
            self._traces.close()
            self._traces = None

    def _caught(self, kind: type[BaseException], fault: BaseException, trace: TracebackType | None) -> None:
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, fault, trace)
            return
        self._rescuing.write_after_fault()
        spot = f"{kind.__name__} {_way_to(trace)}"
        times = self._times[spot] = self._times.get(spot, 0) + 1
        if times <= LOGGED_OF_ONE:
            _LOG.critical("unforeseen fault", exc_info=(kind, fault, trace))
            self._fell.emit()

    def _tell(self) -> None:
        self._notices.say(SENTENCE, "danger")

    def _qt_said(self, kind: QtMsgType, context: QMessageLogContext, message: str) -> None:
        if kind == QtMsgType.QtFatalMsg:  # the program ends when this returns
            self._rescuing.write_after_fault()
        level = _LEVELS.get(kind)
        if level is not None:
            _LOG.log(level, "Qt: %s", message)


def _way_to(trace: TracebackType | None) -> str:
    """By which lines a fault was reached."""
    return " ".join(f"{frame.f_code.co_filename}:{line}" for frame, line in walk_tb(trace))
