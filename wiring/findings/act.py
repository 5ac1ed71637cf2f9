"""What mends a finding, as data: an act of `wiring.findings.doing`, on what, and with which values."""

from typing import NamedTuple

from wiring.plan.names import PartId, WireId

Value = float | str


class Act(NamedTuple):
    """One definite act, given by the rule that found what is wrong; values are in SI units or plain text."""

    name: str  # a row of `wiring.findings.doing.EDITS`
    words: str  # on the button that does it: "Put in 470 Ω"
    parts: tuple[PartId, ...] = ()
    wires: tuple[WireId, ...] = ()
    values: tuple[tuple[str, Value], ...] = ()

    def text(self, name: str) -> str:
        """Return a value as text."""
        return str(dict(self.values)[name])

    def number(self, name: str) -> float:
        """Return a value as a number."""
        return float(dict(self.values)[name])
