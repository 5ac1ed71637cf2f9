"""The rows of the tray: a heading for each purpose, below it the kinds that serve it."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from PySide6.QtCore import (
    QAbstractListModel,
    QByteArray,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)

from app.tray.set_files import KeptSet
from app.typed_words import says_all, says_joined
from wiring.catalogue.kind import Kind
from wiring.catalogue.known_names import PURPOSES

KIND_MIME = "application/x-underboard-kind"
Index = QModelIndex | QPersistentModelIndex
ROW_ROLE = Qt.ItemDataRole.UserRole
SETS, OWN_SETS = "sets", "Your own sets"
_NOWHERE = QModelIndex()


class Row(NamedTuple):
    """A heading (nothing else), a kind of part, or a set the builder has kept."""

    purpose: str
    kind: Kind | None = None
    kept: KeptSet | None = None

    @property
    def is_heading(self) -> bool:
        """Whether there is nothing to take."""
        return self.kind is None and self.kept is None

    @property
    def words(self) -> str:
        """What stands in the row."""
        if self.kept is not None:
            return self.kept.name
        if self.purpose == SETS:
            return OWN_SETS
        return self.kind.title if self.kind else PURPOSES.get(self.purpose, self.purpose.capitalize())


def rows(
    kinds: Mapping[str, Kind],
    wanted: str = "",
    closed: frozenset[str] = frozenset(),
    sets: Sequence[KeptSet] = (),
) -> Iterator[Row]:
    """Walk the rows that match what is looked for; a search opens every group."""
    parts_of_search = wanted.casefold().split()
    kept = [s for s in sets if _is_meant(s, parts_of_search)]
    if kept:
        yield Row(SETS)
        if parts_of_search or SETS not in closed:
            yield from (Row(SETS, kept=one) for one in kept)
    purposes = [*PURPOSES, *sorted({k.purpose for k in kinds.values()} - set(PURPOSES))]
    for purpose in purposes:
        found = [k for k in kinds.values() if k.purpose == purpose and _matches(k, parts_of_search)]
        if not found:
            continue
        yield Row(purpose)
        if parts_of_search or purpose not in closed:
            yield from (Row(purpose, kind) for kind in found)


def _is_meant(kept: KeptSet, wanted: Sequence[str]) -> bool:
    said = f"{kept.name} {OWN_SETS}".casefold()
    return says_all(said, wanted)


def _matches(kind: Kind, wanted: Sequence[str]) -> bool:
    said = " ".join((kind.title, *kind.words, kind.key, PURPOSES.get(kind.purpose, ""))).casefold()
    return says_all(said, wanted)


def _has_words(name: str, wanted: str) -> bool:
    """Whether each word that is looked for begins a word of a name."""
    own = name.casefold().replace("-", " ").split()
    return all(
        any(word.startswith(part) for word in own) or says_joined(name.casefold(), part)
        for part in wanted.split()
    )


class ShelfModel(QAbstractListModel):
    """The catalogue as a list that can be searched, with groups that open and close."""

    renamed = Signal(object, str)  # path of a set, and what it is to be called

    def __init__(self, kinds: Mapping[str, Kind], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._kinds = kinds
        self._wanted = ""
        self._closed: frozenset[str] = frozenset()
        self._sets: tuple[KeptSet, ...] = ()
        self.rows = tuple(rows(kinds))

    def search(self, wanted: str) -> None:
        """Show only what matches."""
        self._wanted = wanted
        self._refill()

    def best(self) -> int | None:
        """Return the row meant most likely: called so, else beginning so, with such words, or the first."""
        wanted = " ".join(self._wanted.casefold().split())
        things = [n for n, row in enumerate(self.rows) if not row.is_heading]
        called = [n for n in things if self.rows[n].words.casefold() == wanted]
        begun = [n for n in things if wanted and self.rows[n].words.casefold().startswith(wanted)]
        named = [n for n in things if wanted and _has_words(self.rows[n].words, wanted)]
        return next(iter((*called, *begun, *named, *things)), None)

    def show_sets(self, sets: Sequence[KeptSet]) -> None:
        """Show these sets of the builder's above the kinds."""
        self._sets = tuple(sets)
        self._refill()

    def toggle(self, purpose: str) -> None:
        """Open or close a group."""
        self._closed ^= {purpose}
        self._refill()

    def is_open(self, purpose: str) -> bool:
        """Whether the kinds of a group are shown."""
        return bool(self._wanted.split()) or purpose not in self._closed

    def _refill(self) -> None:
        self.beginResetModel()
        self.rows = tuple(rows(self._kinds, self._wanted, self._closed, self._sets))
        self.endResetModel()

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Count the rows."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return what a row shows or means."""
        row = self.rows[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return row.words
        if role == ROW_ROLE:
            return row
        if role == Qt.ItemDataRole.ToolTipRole and row.kind is not None:
            return row.kind.note or None
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{row.words}, {'group' if row.is_heading else PURPOSES.get(row.purpose, OWN_SETS)}"
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Say what can be done with a row."""
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        row = self.rows[index.row()] if index.isValid() else Row("")
        if row.kept is not None:
            return usual | Qt.ItemFlag.ItemIsEditable
        return usual | Qt.ItemFlag.ItemIsDragEnabled if row.kind is not None else usual

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Let a kept set be called something else; the answer comes as new sets."""
        kept = self.rows[index.row()].kept
        if kept is None or role != Qt.ItemDataRole.EditRole or str(value).strip() == kept.name:
            return False
        self.renamed.emit(kept.path, str(value))
        return True

    def mimeTypes(self) -> list[str]:
        """Name what can be dragged."""
        return [KIND_MIME]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """Carry the kind that is dragged."""
        data = QMimeData()
        for index in indexes:
            kind = self.rows[index.row()].kind
            if kind is not None:
                data.setData(KIND_MIME, QByteArray(kind.key.encode()))
        return data
