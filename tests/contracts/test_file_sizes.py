"""No source file grows past what a newcomer reads in one sitting, and none has a name that says nothing."""

from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SOURCES = sorted(p for d in ("app", "wiring") for p in (ROOT / d).rglob("*.py") if "_data" not in p.parts)
TESTS = sorted((ROOT / "tests").rglob("*.py"))
EMPTY_WORDS = {"utils", "helpers", "common", "misc", "base", "manager", "util", "helper"}


@pytest.mark.parametrize(("paths", "limit"), [(SOURCES, 250), (TESTS, 350)], ids=["source", "tests"])
def test_no_file_is_longer_than_its_limit(paths, limit):
    lengths = {str(p.relative_to(ROOT)): len(p.read_text().splitlines()) for p in paths}
    assert {name: n for name, n in lengths.items() if n > limit} == {}


def test_no_file_or_folder_has_an_empty_name():
    names = {part for p in SOURCES + TESTS for part in p.relative_to(ROOT).with_suffix("").parts}
    assert names & EMPTY_WORDS == set()
