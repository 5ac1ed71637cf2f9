"""The quay scene from an empty plan to printed sheets, by hand: every act is one key, click, drag or word."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from time import perf_counter
from typing import NamedTuple

from PySide6.QtWidgets import QFileDialog
from support.hands import Hands
from support.surfaces import SHIFT

from app.start import Editor

TITLE, FITTED = "Fish quay", date.today().isoformat()


class Act(NamedTuple):
    """One act of the hand: what it is part of, what was done, and how long the editor took over it."""

    step: str
    words: str
    taken_s: float


class Walk(Hands):
    """Hands that list what they did, and keep a picture of the window after each act where asked to."""

    def __init__(
        self, editor: Editor, after: Callable[[int], None] = lambda _: None, pictures: Path | None = None
    ) -> None:
        super().__init__(editor)
        self.done: list[Act] = []
        self._after, self._pictures = after, pictures
        self._step, self._since_s = "", perf_counter()

    def step(self, words: str) -> None:
        """Say what the next acts are for."""
        self._step, self._since_s = words, perf_counter()

    def list(self) -> str:
        """Return every act, numbered, under what it was for, with the milliseconds the editor took."""
        lines, step = [], ""
        for number, act in enumerate(self.done, 1):
            lines += [f"{act.step}:"] if act.step != step else []
            step = act.step
            lines.append(f"{number:4}  {act.words:<50} {act.taken_s * 1000:6.0f} ms")
        total_s = sum(act.taken_s for act in self.done)
        return "\n".join((*lines, f"{len(self.done)} acts, over which the editor took {total_s:.2f} s"))

    def _did(self, words: str) -> None:
        super()._did(words)
        self.done.append(Act(self._step, words, perf_counter() - self._since_s))
        self._after(len(self.done))
        if self._pictures is not None:
            name = "".join(c if c.isalnum() else "-" for c in words)
            self.window.grab().save(str(self._pictures / f"{len(self.done):02}-{name}.png"))
        self._since_s = perf_counter()


def walk_the_quay(walk: Walk, pdf: Path, monkeypatch) -> None:
    """Battery, fuse, switch, eight lamps and two buildings, fed, tried and printed."""
    walk.step("A title")
    walk.click_widget(walk.window.header.title, "the title")
    walk.key("Ctrl+A")
    walk.words(TITLE)
    walk.key("Return")
    walk.step("A battery, and the day it was fitted")
    walk.place("alkaline", (150, 420))
    walk.key("Esc")
    walk.click_field("setting_fitted")
    walk.word(FITTED)
    walk.key("Return")
    walk.step("A fuse and a switch")
    walk.place("fuse", (300, 420))
    walk.place("toggle", (610, 520))
    walk.step("Eight lamps in a row")
    walk.place("warm white")
    walk.drag((130, 330), (1082, 332), SHIFT)
    walk.word("8")
    walk.key("Return")
    walk.step("Two buildings")
    walk.place("building", (330, 230), (830, 230))
    walk.key("Esc")
    walk.step("A scene about the lamps")
    walk.act("scene")
    walk.drag((60, 170), (1180, 480))
    walk.step("Feed everything")
    walk.act("select_all")
    walk.act("feed")
    walk.key("Return")
    walk.step("Switch it off and on again")
    walk.click(1000, 700)
    walk.click(610, 520)
    walk.key("T")
    walk.step("See how long the battery lasts")
    walk.act("battery")
    walk.step("Save the sheets")
    walk.act("sheets")
    asked = lambda *_args: (str(pdf), "")  # noqa: E731 - the box itself belongs to the system
    monkeypatch.setattr(QFileDialog, "getSaveFileName", asked)
    walk.act("save_pdf")
    walk.done += [Act(walk.done[-1].step, words, 0.0) for words in ("type the file’s name", "press Return")]
