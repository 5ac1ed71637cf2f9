"""What stands at the top of a module serves the program: a name that only tests know belongs to the tests."""

import re
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
SOURCES = sorted(p for d in ("app", "wiring") for p in (ROOT / d).rglob("*.py") if "_data" not in p.parts)
DEFINED = re.compile(r"^(?:(?:def|class) )?([A-Za-z_]\w*)(?=\(|:$|: [^=\n]+ = | = )", re.MULTILINE)
WORD = re.compile(r"[A-Za-z_]\w*")


def test_definitions_of_every_sort_are_seen():
    text = "def a(x):\n    inner = 3\nclass B:\nclass C(B):\nD = 1\n_E: dict[str, int] = {}\nF == 2\n"
    assert DEFINED.findall(text) == ["a", "B", "C", "D", "_E"]


def test_every_name_at_the_top_of_a_module_is_used_by_the_program():
    texts = {str(p.relative_to(ROOT)): p.read_text("utf-8") for p in SOURCES}
    seen = Counter(word for text in texts.values() for word in WORD.findall(text))
    unused = {
        (file, name) for file, text in texts.items() for name in DEFINED.findall(text) if seen[name] == 1
    }
    assert unused == set()
