"""Lists and times each act from an empty plan to the printed quay; keeps pictures in a folder if named."""

import os
import sys
import tempfile
from pathlib import Path

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[2]))

from support.editors import close_editor, made_editor
from support.quay_walk import Walk, walk_the_quay


def walked(folder: Path, pictures: Path | None) -> Walk:
    """Walk from an empty plan to printed sheets and return what was done."""
    with pytest.MonkeyPatch.context() as patch:
        editor = made_editor(folder, size=(1440, 900))
        walk = Walk(editor, pictures=pictures)
        walk_the_quay(walk, folder / "quay.pdf", patch)
        close_editor(editor)
    return walk


if __name__ == "__main__":
    wanted = Path(sys.argv[1]) if len(sys.argv) > 1 else None
    if wanted is not None:
        wanted.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as made:
        walk = walked(Path(made), wanted)
    print(walk.list())
    print(f"quay acts = {len(walk.done)}")
    print(f"quay editor time = {sum(act.taken_s for act in walk.done):.2f} s")
