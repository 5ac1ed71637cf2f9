"""Identifiers of what stands in a plan, and the point a wire ends on."""

from typing import NamedTuple

PartId = str
WireId = str
SceneId = str
PanelId = str
WirewayId = str


class TerminalRef(NamedTuple):
    """One terminal of one part; printed as ``-X1:3`` by :func:`wiring.plan.designations.terminal_label`."""

    part: PartId
    terminal: str
