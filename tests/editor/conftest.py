"""One editor per file of tests, as new for each; nothing is read from or written to the home folder."""

import pytest


@pytest.fixture(autouse=True)
def own_home(tmp_path, monkeypatch):
    for name in ("XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"):
        monkeypatch.setenv(name, str(tmp_path / name.lower()))


@pytest.fixture(scope="module")
def running(qapp, tmp_path_factory):
    from support.editors import close_editor, made_editor

    made = made_editor(tmp_path_factory.mktemp("editor"))
    yield made
    close_editor(made)


@pytest.fixture
def editor(running, tmp_path):
    from support.editors import as_new

    return as_new(running, tmp_path)


@pytest.fixture
def hands(editor):
    """Hands on the whole window, with all of the plan in sight."""
    from support.hands import Hands

    hands = Hands(editor)
    hands.view.show_all()
    hands.view.setFocus()
    yield hands
    hands.let_go()
