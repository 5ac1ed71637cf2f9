"""The quay scene from an empty plan to printed sheets in sixty acts of the hand, with real events."""

from pypdf import PdfReader
from support.editors import close_editor, made_editor
from support.quay_walk import Walk, walk_the_quay

from wiring.findings.finding import Rank

MOST_ACTS = 60


def test_the_quay_goes_from_empty_to_printed_in_sixty_acts(qtbot, tmp_path, monkeypatch):
    editor = made_editor(tmp_path, size=(1440, 900))
    try:
        assert not editor.session.plan.parts
        walk, pdf = Walk(editor), tmp_path / "quay.pdf"
        walk_the_quay(walk, pdf, monkeypatch)
        plan, situation = editor.session.plan, editor.solving.answer.situation
        kinds = [p.kind for p in plan.parts.values()]
        assert kinds.count("led-warm-white") == 8 and kinds.count("building-led") == 2
        assert {"battery-alkaline", "fuse", "toggle-on-off"} <= set(kinds)
        lights = {i: f.light for i, f in situation.figures.parts.items() if f.light is not None}
        assert len(lights) == 10 and all(light > 0.8 for light in lights.values())
        assert not [f.what for f in situation.findings if f.rank >= Rank.WEAK]
        assert len(situation.outlooks) == 1
        pages = PdfReader(pdf).pages
        assert len(pages) >= 5
        words = "".join(page.extract_text() for page in pages)
        assert "W20" in words or "W19" in words
        listed = "\n".join(f"{i:2} {words}" for i, words in enumerate(walk.done, 1))
        assert len(walk.done) <= MOST_ACTS, listed
    finally:
        close_editor(editor)
