"""The carry sheet goes out of the menu, and its ticks come back as one step that can be undone."""

import json

from PySide6.QtWidgets import QFileDialog
from support.editors import open_demo

from wiring.sheets.carry.tick_file import FORMAT, VERSION
from wiring.sheets.carry.tick_keys import wire_key


def test_the_carry_sheet_is_written_from_the_menu(editor, tmp_path, monkeypatch):
    open_demo(editor)
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", staticmethod(lambda *_a: (str(tmp_path / "quay"), ""))
    )
    editor.window.acts["export_carry"].trigger()
    text = (tmp_path / "quay.html").read_text(encoding="utf-8")
    assert text.lstrip().lower().startswith("<!doctype html") and "Kelpwater" in text


def ticked(path, plan, ids, **more):
    ticks = {"format": FORMAT, "version": VERSION, "plan": plan.title, "undone": {}}
    built = {i: wire_key(plan.wires[i]) for i in ids} | more.pop("built", {})
    path.write_text(json.dumps({**ticks, "built": built, **more}), encoding="utf-8")
    return str(path)


def test_ticks_come_back_as_built_wires(editor, tmp_path, monkeypatch):
    plan = open_demo(editor)
    ids = list(plan.wires)[:3]
    name = ticked(tmp_path / "ticks.json", plan, ids, built={"w999": "x"})
    monkeypatch.setattr(QFileDialog, "getOpenFileName", staticmethod(lambda *_a: (name, "")))
    editor.window.acts["take_ticks"].trigger()
    assert [i for i, w in editor.session.plan.wires.items() if w.built] == ids
    assert "3 of 24 wires are built" in editor.notices.last.text
    assert "no longer in the plan" in editor.notices.last.text
    editor.session.undo()
    assert editor.session.plan is plan


def test_a_file_without_ticks_is_refused_in_one_sentence(editor, tmp_path, monkeypatch):
    plan = open_demo(editor)
    for text in ("{", '{"format": "another"}'):
        (tmp_path / "no.json").write_text(text)
        monkeypatch.setattr(
            QFileDialog, "getOpenFileName", staticmethod(lambda *_a: (str(tmp_path / "no.json"), ""))
        )
        editor.window.acts["take_ticks"].trigger()
        assert "no ticks" in editor.notices.last.text
    name = ticked(tmp_path / "other.json", plan, (), built={"w999": "x"})
    monkeypatch.setattr(QFileDialog, "getOpenFileName", staticmethod(lambda *_a: (name, "")))
    editor.window.acts["take_ticks"].trigger()
    assert "None of the ticked wires" in editor.notices.last.text
    assert editor.session.plan is plan
