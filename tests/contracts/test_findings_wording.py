"""Findings are sentences for a hobbyist: short, whole, in plain words, and they name what they are about."""

import functools
import re
from datetime import date

import msgspec
import pytest
from support.findings import situation

from tests.properties.test_findings_of_feeding import CASES as FEEDING
from tests.properties.test_findings_of_parts import CASES as PARTS
from tests.properties.test_findings_of_poles import CASES as POLES

CASES = {**FEEDING, **PARTS, **POLES}
LONGEST = 200
TODAY = date(2026, 6, 1)
# Words an electrician uses, or that only the program knows.
JARGON = re.compile(
    r"\b(nan|inf|None|null|node|branch|EMF|ampacity|netlist|kwarg|galvanic|ohmic|convergence|p\d+|w\d+)\b|_|\{|\}"
)
LABEL = "the third lamp from the left on the long quay, by the crane"


def _labelled(plan):
    return plan.with_changes(
        parts={k: msgspec.structs.replace(p, label=LABEL) for k, p in plan.parts.items()},
        habits=msgspec.structs.replace(plan.habits, units="us"),
    )


@functools.cache
def _findings(rule, labelled):
    plan = CASES[rule][0]
    return situation(_labelled(plan) if labelled else plan, today=TODAY).findings


@pytest.mark.parametrize("labelled", [False, True], ids=["bare", "labelled"])
@pytest.mark.parametrize("rule", CASES)
def test_every_sentence_is_short_whole_and_plain(rule, labelled):
    for finding in _findings(rule, labelled):
        for sentence in (finding.what, finding.why, finding.mend):
            assert sentence.endswith("."), sentence
            assert len(sentence) < LONGEST, sentence
            assert sentence[0].isupper() or sentence[0] == "-", sentence
            assert "  " not in sentence
            assert ".." not in sentence
            assert not JARGON.search(sentence.replace(LABEL[:20], "")), sentence


@pytest.mark.parametrize("rule", CASES)
def test_every_finding_says_what_to_select(rule):
    plan = CASES[rule][0]
    for finding in _findings(rule, False):
        assert finding.parts or finding.wires
        assert set(finding.parts) <= set(plan.parts)
        assert set(finding.wires) <= set(plan.wires)
        assert re.fullmatch(r"[a-z]+(-[a-z]+)*", finding.rule)


@pytest.mark.parametrize("rule", CASES)
def test_what_is_wrong_names_a_part_or_wire(rule):
    plan = CASES[rule][0]
    names = {f"-{p.designation}" for p in plan.parts.values()} | {f"-{w.label}" for w in plan.wires.values()}
    for finding in _findings(rule, False):
        assert any(name in finding.what for name in names), finding.what
