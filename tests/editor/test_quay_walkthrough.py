"""The quay scene from an empty plan to printed sheets in sixty acts of the hand, with real events."""

from pypdf import PdfReader
from support.editors import close_editor, made_editor
from support.quay_walk import FITTED, TITLE, Walk, walk_the_quay

from wiring.findings.finding import Rank

MOST_ACTS = 60
LONGEST_S = 30.0  # the editor's share of it all; two and a half on two cores


def test_the_quay_goes_from_empty_to_printed_in_sixty_acts(qtbot, tmp_path, monkeypatch):
    editor = made_editor(tmp_path, size=(1440, 900))
    try:
        assert not editor.session.plan.parts
        walk, pdf = Walk(editor), tmp_path / "quay.pdf"
        walk_the_quay(walk, pdf, monkeypatch)
        print(walk.list())  # noqa: T201 - to be read with -s
        plan, situation = editor.session.plan, editor.solving.answer.situation
        parts = {kind: [p for p in plan.parts.values() if p.kind == kind] for kind in _kinds(plan)}
        assert len(parts["led-warm-white"]) == 8 and len(parts["building-led"]) == 2
        assert len(parts["fuse"]) == len(parts["toggle-on-off"]) == 1
        (battery,) = parts["battery-alkaline"]
        assert plan.title == TITLE and battery.settings["fitted"] == FITTED
        lights = {i: f.light for i, f in situation.figures.parts.items() if f.light is not None}
        assert len(lights) == 10 and all(light > 0.8 for light in lights.values())
        assert not [f.what for f in situation.findings if f.rank >= Rank.WEAK]
        (outlook,) = situation.outlooks.values()
        assert outlook.swap_on is not None
        pages = PdfReader(pdf).pages
        assert len(pages) >= 5
        words = "".join(page.extract_text() for page in pages)
        assert TITLE in words and all(wire.label in words for wire in plan.wires.values())
        assert len(walk.done) <= MOST_ACTS, walk.list()
        assert sum(act.taken_s for act in walk.done) < LONGEST_S, walk.list()
    finally:
        close_editor(editor)


def _kinds(plan):
    return {p.kind for p in plan.parts.values()}


def test_every_act_of_a_walk_is_counted_and_pictured_when_asked(qtbot, tmp_path):
    editor = made_editor(tmp_path)
    try:
        walk = Walk(editor, pictures=tmp_path)
        walk.step("One lamp")
        walk.place("warm white", (150, 420), (250, 420))
        walk.drag((150, 420), (150, 400))
        walk.click_widget(editor.window.header.title, "the title")
        assert [act.words for act in walk.done] == [
            "press Ctrl+F",
            "type “warm”",
            "type “white”",
            "press Return",
            "click at 150, 420 mm",
            "click at 250, 420 mm",
            "drag from 150, 420 to 150, 400 mm",
            "click the title",
        ]
        assert len(list(tmp_path.glob("*.png"))) == len(walk.done)
        assert walk.list().startswith("One lamp:\n   1  press Ctrl+F")
    finally:
        close_editor(editor)
