"""What keys and the small menu do with the selection."""

from app.canvas.gestures.throw import next_position
from app.canvas.hands.ground_edits import with_grounds_removed, with_grounds_shifted
from app.canvas.joining import join_selected, take_selected_apart, take_whole
from app.ground_keys import ground_is_there, joist_index, joist_key
from app.selection import Selection
from app.session import Session
from wiring.edits.duplicate import duplicate
from wiring.edits.edit import Edit
from wiring.edits.fragment import copied, paste
from wiring.edits.turn import turn
from wiring.plan.changes import changes_between
from wiring.plan.places import Point

BESIDE_MM = 20.0
QUARTER_DEG = 90.0
NOT_COPIED = "Parts and joists are copied, and wires with the parts at both their ends; select those too."


class Deeds:
    """Acts on what is selected; each is one step of the history."""

    def __init__(self, session: Session, selection: Selection) -> None:
        self._session, self._selection = session, selection

    @property
    def parts(self) -> tuple[str, ...]:
        """The selected parts, in plan order."""
        ids = self._selection.ids
        return tuple(i for i in self._session.plan.parts if i in ids) if ids else ()

    @property
    def wires(self) -> tuple[str, ...]:
        """The selected wires, in plan order."""
        ids = self._selection.ids
        return tuple(i for i in self._session.plan.wires if i in ids) if ids else ()

    @property
    def grounds(self) -> frozenset[str]:
        """What of the ground is selected and still there."""
        plan = self._session.plan
        return frozenset(g for g in self._selection.grounds if ground_is_there(plan, g))

    @property
    def joists(self) -> tuple[int, ...]:
        """The indices of the selected joists."""
        return tuple(sorted(i for i in map(joist_index, self.grounds) if i >= 0))

    def nudge(self, dx_mm: float, dy_mm: float) -> None:
        """Shift the selection a little; nudges in a row are undone together."""
        ids, grounds = self._selection.ids, self.grounds
        if ids or grounds:
            plan, kinds = self._session.plan, self._session.kinds
            edit = with_grounds_shifted(plan, ids, grounds, dx_mm, dy_mm, kinds)
            label = f"Nudge {self._name()}" if ids else edit.label
            self._session.do(edit._replace(label=label), joins_last=True)

    def turn(self, degrees: float = QUARTER_DEG) -> None:
        """Turn the selected parts."""
        if self.parts:
            self._session.do(turn(self.parts, degrees, kinds=self._session.kinds))

    def remove(self) -> None:
        """Take the selection away."""
        ids, grounds = self._selection.ids, self.grounds
        if ids or grounds:
            self._session.do(with_grounds_removed(self._session.plan, ids, grounds))

    def duplicate(self) -> None:
        """Set copies beside the selected parts and joists and select them."""
        if self.joists:
            edit = paste(self.copied(), BESIDE_MM, BESIDE_MM)
            self._do_and_pick(edit._replace(label="Duplicate"))
        elif self.parts:
            self._do_and_pick(duplicate(self.parts, BESIDE_MM, BESIDE_MM))

    def paste(self, text: str, at: Point | None = None) -> None:
        """Set down what the clipboard holds and select it."""
        self._do_and_pick(paste(text, at=at, kinds=self._session.kinds))

    def copied(self) -> str:
        """Return the selection as text for the clipboard; "" after saying why there is none."""
        text = copied(self._session.plan, self._selection.ids, self.joists)
        if not text and (self._selection.ids or self.grounds):
            self._session.refused.emit(NOT_COPIED)
        return text

    def select_all(self) -> None:
        """Select every part, wire and joist."""
        plan = self._session.plan
        self._selection.select((*plan.parts, *plan.wires), map(joist_key, range(len(plan.joists))))

    def join(self) -> None:
        """Make one thing of the selected parts."""
        join_selected(self._session, self._selection)

    def take_apart(self) -> None:
        """Let the parts of the selected things stand for themselves."""
        take_selected_apart(self._session, self._selection)

    def take_whole(self) -> None:
        """Select everything that is joined with what is selected."""
        take_whole(self._session, self._selection)

    def throw(self) -> None:
        """Put each selected switch or motor into its next position."""
        session = self._session
        for part_id in self.parts:
            kind = session.kinds.get(session.plan.parts[part_id].kind)
            position = next_position(kind, session.positions.get(part_id, "")) if kind is not None else None
            if position is not None:
                session.throw(part_id, position)

    def _name(self) -> str:
        """Return words for what is selected, so that steps about different things are not joined."""
        plan, ids = self._session.plan, self._selection.ids
        first = next((f"-{p.designation}" for p in plan.parts.values() if p.id in ids), "wire")
        return first if len(ids) == 1 else f"{first} and {len(ids) - 1} more"

    def _do_and_pick(self, edit: Edit) -> None:
        before = self._session.plan
        if self._session.do(edit):
            changes = changes_between(before, self._session.plan)
            joists = range(len(before.joists), len(self._session.plan.joists))
            self._selection.select(changes.parts.added | changes.wires.added, map(joist_key, joists))
