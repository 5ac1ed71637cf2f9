"""A key that has nothing to work on says so, and is silent while it means something else."""

import pytest
from PySide6.QtWidgets import QApplication, QPushButton, QToolButton
from support.editors import open_demo, part_id


@pytest.mark.parametrize(
    ("key", "words"),
    [("F", "Feed these"), ("Ctrl+J", "Join as one thing"), ("Del", "Remove"), ("T", "Throw"), ("E", "Space")],
)
def test_a_key_without_anything_selected_asks_for_it(hands, key, words):
    open_demo(hands.editor)
    before = hands.editor.session.plan
    hands.view.setFocus()
    hands.key(key)
    bar = hands.window.notice_bar
    assert bar.isVisible() and bar.text.startswith(f"Select something first; {key} is “{words}")
    hands.editor.selection.select((part_id(hands.editor, "E1"),))
    QApplication.processEvents()
    assert not bar.isVisible() and hands.editor.session.plan is before


def test_it_is_silent_while_a_part_is_in_hand_or_words_are_typed(hands):
    hands.place("toggle", (300, 300))
    hands.window.notice_bar.put_away()
    hands.window.acts["find_kind"].trigger()
    hands.words("fuse")
    hands.key("Return")
    hands.key("R")
    assert not hands.window.notice_bar.isVisible()
    hands.key("Esc")


def test_it_is_silent_when_the_key_does_something(hands):
    open_demo(hands.editor)
    hands.editor.selection.select((part_id(hands.editor, "E1"),))
    hands.view.setFocus()
    hands.key("R")
    assert not hands.window.notice_bar.isVisible()


def test_the_keys_stay_on_the_card_when_the_button_that_had_them_goes(hands):
    open_demo(hands.editor)
    card = hands.window.inspector
    button = next(b for b in card.findChildren(QPushButton) if b.text() == "Try every position")
    button.setFocus()
    hands.key("Space")
    QApplication.processEvents()
    held = QApplication.focusWidget()
    assert not button.isVisible() and isinstance(held, QPushButton | QToolButton) and card.isAncestorOf(held)
