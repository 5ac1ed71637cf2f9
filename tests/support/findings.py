"""What is found in a plan, for tests that ask about one rule at a time."""

from collections import Counter
from datetime import date

from support.networks import kinds

from wiring.findings.finding import Finding
from wiring.findings.situation import Situation, examine
from wiring.plan.plan import Plan


def situation(plan: Plan, positions=None, today: date | None = None) -> Situation:
    return examine(plan, kinds(), positions, today=today)


def rules(plan: Plan, positions=None, today: date | None = None) -> Counter[str]:
    return Counter(f.rule for f in situation(plan, positions, today).findings)


def found(plan: Plan, rule: str, positions=None, today: date | None = None) -> Finding:
    (finding,) = [f for f in situation(plan, positions, today).findings if f.rule == rule]
    return finding
