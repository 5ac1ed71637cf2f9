"""Whatever raises, wherever Qt calls it from: a rescue copy has the work, one sentence tells, all goes on."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
# The whole program in a process of its own; each fault is raised while an edit nobody has saved is new.
CHILD = """
import os, sys, threading
from pathlib import Path
from PySide6.QtCore import QEvent, QPointF, Qt, QThreadPool, QTimer
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
import app.start as start
from app.canvas.view import PlanView
from app.crash_net import SENTENCE
from app.settings import state_folder
from app.tray.row_painter import RowPainter
from app.window.first_steps import FirstSteps
from app.window.main_window import MainWindow
from wiring.edits.set_plan import set_plan

armed = [""]

def in_c():
    1 / 0

def in_python():
    raise ValueError("boom")

def leaving():
    sys.exit(3)

def arm(kind, name, case, fault):
    was = getattr(kind, name)
    def armed_method(self, *given):
        if armed[0] == case:
            fault()
        return was(self, *given)
    setattr(kind, name, armed_method)

def press(view):
    QTest.mouseClick(view, Qt.MouseButton.LeftButton)

def post(view):
    at, left, plain = QPointF(5, 5), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QApplication.postEvent(view, QMouseEvent(QEvent.Type.MouseButtonPress, at, at, left, left, plain))

CASES = {
    "paint": lambda e: e.window.plan_view.repaint(),
    "paint later": lambda e: e.window.plan_view.update(),
    "press": lambda e: press(e.window.plan_view),
    "press posted": lambda e: post(e.window.plan_view),
    "press leaving": lambda e: press(e.window.plan_view),
    "filter": lambda e: e.window.plan_view.resize(700, 500),
    "delegate": lambda e: e.window.tray.list.viewport().grab(),
    "slot": lambda e: (e.window.acts["select"].triggered.connect(in_c), e.window.acts["select"].trigger()),
    "timer": lambda e: QTimer.singleShot(0, in_c),
    "thread": lambda e: threading.Thread(target=in_c).start(),
    "pool": lambda e: QThreadPool.globalInstance().start(in_c),
    "close": lambda e: e.window.close(),
}
arm(PlanView, "paintEvent", "paint", in_c)
arm(PlanView, "paintEvent", "paint later", in_c)
arm(PlanView, "mousePressEvent", "press", in_c)
arm(PlanView, "mousePressEvent", "press posted", in_python)
arm(PlanView, "mousePressEvent", "press leaving", leaving)
arm(FirstSteps, "eventFilter", "filter", in_c)
arm(RowPainter, "paint", "delegate", in_python)
arm(MainWindow, "closeEvent", "close", in_c)

def copies():
    return [f.read_text(encoding="utf-8") for f in (state_folder() / "rescue").glob("*.rescue")]

def begin(editor, left):
    if not left:
        return
    case = left[0]
    editor.notices.last = None
    editor.session.do(set_plan(title="work at " + case))
    armed[0] = case
    CASES[case](editor)
    QTimer.singleShot(60, lambda: judge(editor, left))

def judge(editor, left):
    armed[0] = ""
    case, told = left[0], editor.notices.last
    kept = any("work at " + case in text for text in copies())
    print(f"{case}: kept {kept}, told {told is not None and told.text == SENTENCE}", flush=True)
    begin(editor, left[1:])

first_steps = start._first_steps
def steps(editor, rescuing, path):
    first_steps(editor, rescuing, path)
    rescuing._timer.setInterval(10**6)
    QTimer.singleShot(0, lambda: begin(editor, list(CASES)))
start._first_steps = steps
print("ended", start.run(), "close: kept", any("work at close" in text for text in copies()), flush=True)
"""
CASES = (
    *("paint", "paint later", "press", "press posted", "press leaving", "filter", "delegate"),
    *("slot", "timer", "thread", "pool"),
)


@pytest.fixture(scope="module")
def told(tmp_path_factory):
    home = str(tmp_path_factory.mktemp("home"))
    kept = {f"XDG_{name}_HOME": home for name in ("CONFIG", "STATE", "DATA", "CACHE")}
    environment = {**os.environ, **kept, "QT_QPA_PLATFORM": "offscreen"}
    ran = subprocess.run(
        [sys.executable, "-c", CHILD], cwd=ROOT, env=environment, capture_output=True, text=True, timeout=120
    )
    assert ran.returncode == 0, ran.stderr
    return ran.stdout.splitlines()


@pytest.mark.parametrize("case", CASES)
def test_a_fault_keeps_the_work_and_is_told(told, case):
    assert f"{case}: kept True, told True" in told


def test_a_fault_while_the_window_closes_leaves_the_copy_for_the_next_start(told):
    assert told[-1] == "ended 0 close: kept True"
