"""What the solver had to say: shorts, parts fed by nothing, volts that collapse, relays that buzz."""

from collections.abc import Iterator
from typing import NamedTuple

from wiring.circuit.figures import Problem
from wiring.findings import mixed_voltages
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.plan.record_faults import kind_faults


class _Meaning(NamedTuple):
    rule: str
    rank: Rank
    why: str
    mend: str


# "backward", "turned" and "over limit" are told by polarity.py and supplies.py with more to go by.
_MEANINGS: dict[str, _Meaning] = {
    "shorted": _Meaning(
        "supply-shorted",
        Rank.DANGER,
        "All its current goes through wire and contacts alone; they get hot and nothing else works.",
        "Follow the marked wires and take apart the place where plus and minus meet.",
    ),
    "floating": _Meaning(
        "floating",
        Rank.NOTE,
        "Parts without a supply do nothing and cannot be checked.",
        "Join them to a supply through both plus and minus.",
    ),
    "loop": _Meaning(
        "supplies-against",
        Rank.DANGER,
        "One supply pushes current backward through another, which is not made for that.",
        "Take the wires between them apart, so that each supply has its own circuit.",
    ),
    "not solved": _Meaning(
        "not-solved",
        Rank.WEAK,
        "No figures are shown for it, rather than wrong ones.",
        "Look at the settings and wires of the marked parts; undo the last change if you see nothing wrong.",
    ),
    "collapsed": _Meaning(
        "collapsed",
        Rank.DANGER,
        "The module wants more power than the wires and supply can bring, so it starts and "
        "drops out again and again.",
        "Use thicker or shorter wire, or a stronger supply.",
    ),
    "buzzing": _Meaning(
        "relay-buzzing",
        Rank.WEAK,
        "It switches itself off as soon as it is on, and wears out.",
        "Feed the coil from a point that its own contacts do not switch.",
    ),
}
_TOLD_ELSEWHERE = frozenset({"backward", "turned", "over limit"})
_OTHER = _Meaning(
    "not-solved", Rank.WEAK, "The figures there may be incomplete.", "Look at the marked parts."
)


def find(situation: Situation) -> Iterator[Finding]:
    """Turn each problem the solver met into a finding."""
    problems = situation.figures.problems
    loops = any(problem.code == "loop" for problem in problems)
    tied = mixed_voltages.tied_pairs(situation) if loops else frozenset()
    for problem in problems:
        told = problem.code == "loop" and any(pair <= set(problem.parts) for pair in tied)
        if problem.code not in _TOLD_ELSEWHERE and not told and not _told_of_part(situation, problem):
            meaning = _MEANINGS.get(problem.code, _OTHER)
            yield Finding(
                meaning.rule,
                meaning.rank,
                _first_sentence(problem.words),
                meaning.why,
                meaning.mend,
                problem.parts,
                problem.wires,
            )


def _told_of_part(situation: Situation, problem: Problem) -> bool:
    """Whether the only trouble is a part whose kind or settings another finding names already."""
    if problem.code != "not solved" or len(problem.parts) != 1:
        return False
    part = situation.plan.parts[problem.parts[0]]
    kind = situation.kinds.get(part.kind)
    return kind is None or next(kind_faults(part, kind), None) is not None


def _first_sentence(words: str) -> str:
    """Return what is wrong without the advice that follows it, which stands in the mend."""
    return words.split(". ")[0].rstrip(".") + "."
