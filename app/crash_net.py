"""What happens when something nobody foresaw goes wrong: the work is rescued first, then one plain notice."""

import faulthandler
import logging
import sys
import threading
from io import TextIOWrapper
from pathlib import Path
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
SENTENCE = (
    "Something went wrong inside Underboard; a rescue copy of your plan was kept, "
    "and saving it now under a new name is the safe thing to do."
)


class CrashNet(QObject):
    """Catches faults of every thread and of Qt itself."""

    _fell = Signal()

    def __init__(self, rescuing: Rescuing, notices: Notices, log_path: Path) -> None:
        super().__init__()
        self._rescuing = rescuing
        self._notices = notices
        self._log_path = log_path
        self._traces: TextIOWrapper | None = None
        # By a signal, so that a fault in a worker thread is told in the window's own.
        self._fell.connect(self._tell)

    def spread(self) -> None:
        """Begin to catch."""
        sys.excepthook = self._caught
        threading.excepthook = lambda a: self._caught(
            a.exc_type, a.exc_value or a.exc_type(), a.exc_traceback
        )
        qInstallMessageHandler(_qt_said)
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
        self._rescuing.write_now()
        _LOG.critical("unforeseen fault", exc_info=(kind, fault, trace))
        self._fell.emit()

    def _tell(self) -> None:
        self._notices.say(SENTENCE, "danger")


def _qt_said(kind: QtMsgType, context: QMessageLogContext, message: str) -> None:
    level = _LEVELS.get(kind)
    if level is not None:
        _LOG.log(level, "Qt: %s", message)
