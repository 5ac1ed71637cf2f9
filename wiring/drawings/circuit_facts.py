"""All that the layout of one circuit asks about: its plan, nets, tails and figures."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.circuit_nets import Nets
from wiring.drawings.circuit_pieces import Piece
from wiring.drawings.circuit_tails import Steps, Tails
from wiring.drawings.circuit_values import reading_words, value_words
from wiring.pictures.metrics import fitted, wrapped
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from wiring.drawings.circuit_block import Block

DESIGNATION_MM = 2.6  # text sizes on paper; a drawing is never scaled
TEXT_MM = 2.3
SMALL_MM = 2.2
REFERENCE_BELOW_MM = 2.4  # from the name of a net down to where its other places are told
REFERENCE_ROOM_MM = 9.0  # kept free for one reference such as 27/B4
LEAST_V = 1e-3  # less than that a multimeter shows as nothing
ASIDE_MM = 20.0  # room for words beside a symbol


class Facts(NamedTuple):
    """One circuit's facts."""

    plan: Plan
    kinds: Mapping[str, Kind]
    figures: Figures
    nets: Nets
    tails: Tails
    short: Mapping[TerminalRef, Steps] = MappingProxyType({})  # what is left of tails that lie along a rail
    poles: Mapping[PartId, tuple[Piece, ...]] = MappingProxyType({})  # of parts drawn in several pieces
    symbols: str = "iec"  # the set they are drawn with
    drawn: "dict[object, Block] | None" = None  # blocks already drawn; dividing a circuit asks for them again

    def kept(self, key: object, make: "Callable[[], Block]") -> "Block":
        """Return what was made for a key, made now if it is not there."""
        if self.drawn is None:
            return make()
        if key not in self.drawn:
            self.drawn[key] = make()
        return self.drawn[key]

    def steps(self, ref: TerminalRef) -> Steps:
        """Return the wires and strip terminals from a terminal outward."""
        found = self.short.get(ref)
        return self.tails.at.get(ref, ()) if found is None else found

    def volts(self, ref: TerminalRef) -> str:
        """Return the solved volts of a terminal, empty when there are none."""
        value = self.figures.terminals.get(ref)
        if value is None:
            return ""
        return worded(0.0 if abs(value) < LEAST_V else value, "voltage")

    def words(self, piece: Piece) -> list[tuple[str, bool]]:
        """Return the lines beside a symbol; the flag marks what is a reading or the user's own word."""
        part = self.plan.parts[piece.part]
        if not piece.main:
            return []
        kind = self.kinds[part.kind]
        lines: list[tuple[str, bool]] = []
        value = value_words(part, kind, self.plan.habits.units)
        lines.extend((line, False) for line in wrapped(value, ASIDE_MM, TEXT_MM) if line)
        reading = reading_words(part.id, kind, self.figures)
        if reading:
            lines.append((reading, True))
        label = wrapped(part.label, ASIDE_MM, TEXT_MM) if part.label.strip() else ()
        if len(label) > 2:
            label = (label[0], fitted(" ".join(label[1:]), ASIDE_MM, TEXT_MM))
        lines.extend((line, True) for line in label)
        return lines

    def designation(self, piece: Piece) -> str:
        """Return ``-E4``, as much of it as fits."""
        return fitted(part_label(self.plan, piece.part), ASIDE_MM, DESIGNATION_MM, "semibold")

    def idle_words(self, piece: Piece) -> list[str]:
        """Return where the idle throw of a changeover leads, in short lines; its number first."""
        if not piece.idle:
            return []
        words = [piece.idle, *(step.words for step in self.steps(piece.idle_ref))]
        if self.leads_on(piece):
            words.append(f"→ {self.idle_target(piece)}")
        elif len(words) == 1:
            words.append("free")
        return list(wrapped(" ".join(words), ASIDE_MM + 6, SMALL_MM))

    def leads_on(self, piece: Piece) -> bool:
        """Tell whether the idle throw of a changeover is wired to anything."""
        return bool(piece.idle) and len(self.nets.members[self.nets.of[piece.idle_ref]]) > 1

    def idle_target(self, piece: Piece) -> str:
        """Return the name of the net an idle throw is on."""
        return self.tails.names.get(self.nets.of[piece.idle_ref], "")
