"""No class of the editor defines `event`: a fault in a handler below one ends the whole program.

An override that Qt calls while Python waits for Qt cannot raise what the interpreter raises by itself, an
IndexError say, in PySide6 6.11 with Python 3.11. Below an overridden `event` every handler is such a one.
"""

import ast
from pathlib import Path

APP = Path(__file__).parents[2] / "app"
NEVER = {"event", "notify", "viewportEvent"}


def overrides(source):
    """Return the class and method of each definition that must not be."""
    return [
        (one.name, method.name)
        for one in ast.walk(ast.parse(source))
        if isinstance(one, ast.ClassDef)
        for method in one.body
        if isinstance(method, ast.FunctionDef) and method.name in NEVER
    ]


def test_an_override_is_seen():
    assert overrides("class A:\n def event(self, e): return True\n def mine(self): pass") == [("A", "event")]


def test_no_class_of_the_editor_defines_event():
    found = {str(p.relative_to(APP)): overrides(p.read_text()) for p in sorted(APP.rglob("*.py"))}
    assert {name: them for name, them in found.items() if them} == {}
