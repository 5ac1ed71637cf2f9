"""What was worked out from a plan, kept while the very same records are asked about.

Plans, joints and nets are values that are never written to, so an answer that is a function of them alone
is good as long as they are the same objects. Only functions of what they are given may be asked this way;
several threads may ask at once, for answers are only ever put in place whole.
"""

from collections.abc import Callable
from typing import Any, TypeVar, TypeVarTuple

T = TypeVar("T")
Given = TypeVarTuple("Given")
MOST = 128  # answers; then those that nobody has asked for since the last clearing go

_Answers = dict[tuple[object, ...], tuple[tuple[object, ...], Any]]
_answers: _Answers = {}
_older: _Answers = {}


def kept(work_out: Callable[[*Given], T], *given: *Given) -> T:
    """Return what a function makes of those values; its last answers are kept, by identity."""
    global _answers, _older
    question = (work_out, *map(id, given))
    known = _answers.get(question)
    if known is None:
        known = _older.get(question)
        if known is None:
            known = given, work_out(*given)  # holding them, so that no other object is given their ids
        if len(_answers) >= MOST:
            _answers, _older = {}, _answers
        _answers[question] = known
    answer: T = known[1]
    return answer


def forget() -> None:
    """Keep nothing any more, as in a process that has just begun."""
    global _answers, _older
    _answers, _older = {}, {}
