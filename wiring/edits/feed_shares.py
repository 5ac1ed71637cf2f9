"""Which way out feeds which load: one that feeds its scene already, else the one with the shortest wire."""

from collections.abc import Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.feed_colours import Colours
from wiring.edits.feed_ends import FUSES, Group
from wiring.edits.feed_gates import behind, is_passed
from wiring.edits.feed_leads import Lead
from wiring.edits.feed_tiers import Far, Slot, parts_behind, way_out
from wiring.edits.load_ends import load_ends
from wiring.edits.poles import Pole
from wiring.plan.names import PanelId, PartId, SceneId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan

ROOT = -1  # the number of the way out before all fuses
OWN, ON_PANEL, OF_COLOUR, OTHER = range(4)  # how close a way out is to a scene; the first is the best


class Share(NamedTuple):
    """The loads one way out feeds."""

    via: tuple[PartId, ...]
    loads: tuple[PartId, ...]
    by_scene: tuple[PartId, ...] = ()  # those of them that another way out would reach by a shorter wire


class Sharing:
    """Chooses the way out of each load; nothing is balanced, two loads side by side go the same way."""

    def __init__(
        self,
        plan: Plan,
        kinds: Mapping[str, Kind],
        known: Mapping[TerminalRef, Pole],
        found: Sequence[Slot],
        colours: Colours,
        far: Far,
    ) -> None:
        self._plan, self._kinds, self._slots, self._far = plan, kinds, tuple(found), far
        self._known, self._colours = known, colours

    def choose(self, load: Part, lead: Lead) -> tuple[int, bool]:
        """Return the number of a load's way out, and whether its scene decided against a shorter wire.

        What hangs on a fuse of its own is fed from ahead of all others.
        """
        if lead.at is not None and self._kinds[self._plan.parts[lead.at.part].kind].behaviour in FUSES:
            return ROOT, False
        at = load.x_mm, load.y_mm
        lengths = [round(self._far(s.at, at), 3) if s.at is not None else 0.0 for s in self._slots]
        ranks = [self._rank(slot, load.scene) for slot in self._slots]
        best = min(range(len(lengths)), key=lambda i: (ranks[i], lengths[i]))
        return best, lengths[best] > min(lengths)

    def via(self, number: int) -> tuple[PartId, ...]:
        """Return the gates a way out leads over."""
        return tuple(gate.id for gate in self._slots[number].via)

    @property
    def ways(self) -> range:
        """The numbers of the ways out."""
        return range(len(self._slots))

    def _rank(self, slot: Slot, scene: SceneId) -> int:
        if not scene or not slot.via:
            return OWN
        if any(gate.scene == scene or scene in self._scenes(gate) for gate in slot.via):
            return OWN
        on_panel = any(scene in self._by_panel.get(gate.panel, ()) for gate in slot.via if gate.panel)
        if on_panel:
            return ON_PANEL
        return OF_COLOUR if self._colour(slot) in self._scene_colours.get(scene, ()) else OTHER

    def _scenes(self, gate: Part) -> frozenset[SceneId]:
        """Return the scenes a gate feeds already."""
        return self._fed_by.get(gate.id, frozenset())

    def _colour(self, slot: Slot) -> str:
        """Return the colour of the wires on a way out: that of those it has, else that of the rule."""
        ids = {gate.id for gate in slot.via[-1:]}
        laid = [w.colour for w in self._plan.wires.values() if w.start.part in ids or w.end.part in ids]
        rule = behind(self._kinds[slot.via[-1].kind], self._colours.plus, self._colours)
        return laid[-1] if laid else rule

    @cached_property
    def _fed_by(self) -> Mapping[PartId, frozenset[SceneId]]:
        """Return the scenes each selected gate feeds, and each gate on a panel of one."""
        panels = {gate.panel for slot in self._slots for gate in slot.via if gate.panel}
        chosen = {gate.id for slot in self._slots for gate in slot.via}
        found = {}
        for part in self._plan.parts.values():
            kind = self._kinds.get(part.kind)
            asked = part.id in chosen or part.panel in panels
            if (
                kind is None
                or not asked
                or not kind.positions
                or not is_passed(part, self._kinds, self._known)
            ):
                continue
            others = parts_behind(self._plan, self._kinds, way_out(part, self._kinds, self._known))
            scenes = (self._plan.parts[i].scene for i in others - {part.id} if self._is_load(i))
            found[part.id] = frozenset(scene for scene in scenes if scene)
        return found

    @cached_property
    def _by_panel(self) -> Mapping[PanelId, set[SceneId]]:
        found: dict[PanelId, set[SceneId]] = {}
        for part, scenes in self._fed_by.items():
            found.setdefault(self._plan.parts[part].panel, set()).update(scenes)
        return found

    @cached_property
    def _scene_colours(self) -> Mapping[SceneId, set[str]]:
        """Return the colours of the wires that bring plus to the loads of each scene."""
        found: dict[SceneId, set[str]] = {}
        for wire in self._plan.wires.values():
            for ref in (wire.start, wire.end):
                part = self._plan.parts.get(ref.part)
                kind = self._kinds.get(part.kind) if part is not None else None
                ends = load_ends(part, kind) if part is not None and kind is not None else None
                if part is not None and ends is not None and ref == ends[0] and part.scene:
                    found.setdefault(part.scene, set()).add(wire.colour)
        return found

    def _is_load(self, part_id: PartId) -> bool:
        part = self._plan.parts[part_id]
        kind = self._kinds.get(part.kind)
        return kind is not None and load_ends(part, kind) is not None


def shares_of(sharing: Sharing, chosen: Sequence[tuple[Group, int, bool]]) -> tuple[Share, ...]:
    """Return the share of every way out, those with nothing to feed as well."""
    made = []
    for number in sharing.ways:
        mine = [(group, decided) for group, way, decided in chosen if way == number]
        made.append(
            Share(
                sharing.via(number),
                tuple(part for group, _ in mine for part in group.parts),
                tuple(part for group, decided in mine if decided for part in group.parts),
            )
        )
    return tuple(made)
