"""The battery view of the quay, and the outlook it shows."""

import pytest
from support.editors import open_demo, part_id

from app.outlook.battery_page import BatteryPage
from app.start import Editor
from wiring.studies.outlook import Outlook


@pytest.fixture
def page(editor: Editor) -> BatteryPage:
    open_demo(editor)
    editor.window.show_view("battery")
    return editor.window.battery_page


def outlook(editor: Editor) -> Outlook:
    return editor.solving.answer.situation.outlooks[part_id(editor, "G1")]
