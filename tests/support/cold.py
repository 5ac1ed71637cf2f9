"""A process that has just begun, as far as anything about plans is kept."""

from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from unittest.mock import patch


@contextmanager
def cold() -> Iterator[None]:
    """Keep nothing from before, and what is kept meanwhile only until the end."""
    with (
        patch("wiring.studies.keeping._answers", {}),
        patch("wiring.studies.keeping._older", {}),
        patch("wiring.studies.alike._recent", {}),
        patch("wiring.studies.best_ways._known", {}),
        patch("wiring.studies.kept_joints._recent", ()),
        patch("wiring.studies.load_lines._lines", deque(maxlen=12)),
        patch("wiring.studies.kept_bands._bands", deque(maxlen=8)),
        patch("wiring.studies.settings._typical", {}),
        patch("wiring.findings.all_rules._told", ()),
        patch("wiring.circuit.assembly._recent", ()),
        patch("wiring.circuit.compiled._moulds", {}),
        patch("wiring.circuit.turned_round._last", None),
        patch("wiring.circuit.wire_ohms._wires", {}),
        patch("wiring.plan.positions._last", None),
    ):
        yield
