"""The scenes of a plan as a small table: name, hours lit a session, sessions a month."""

from collections.abc import Callable
from typing import Any

import msgspec
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.inspector.committing import committed
from app.inspector.named_row import REMOVE_WIDTH, NamedRow, drop, heads, remove_button
from app.inspector.typed_field import TypedField
from app.inspector.use_details import UseDetails
from app.inspector.value_field import ValueField
from app.session import Session
from app.theme.sizes import fix_width
from app.theme.words import LEAST, factor
from wiring.edits.scenes import change_scene, remove_scene
from wiring.edits.set_plan import set_plan
from wiring.plan.scene import Scene, UsePattern

HOURS_WIDTH, SESSIONS_WIDTH = 58, 46
HEADS = (("", 0), ("Hours lit", HOURS_WIDTH), ("a month", SESSIONS_WIDTH), ("", REMOVE_WIDTH))
OUTSIDE = "Outside any scene"


class SceneRows(QWidget):
    """One row a scene, and one for what lies in none."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self.rows: dict[str, SceneRow] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)
        self._column.addLayout(heads(self, HEADS))
        self._outside = SceneRow(session, "", self)
        self._column.addWidget(self._outside)

    def begin(self) -> None:
        """Forget the rows of another plan."""
        drop(self.rows, self.rows.keys())
        self._outside.details.fold()

    def refresh(self) -> None:
        """Show the scenes as they are now."""
        plan = self._session.plan
        drop(self.rows, self.rows.keys() - plan.scenes.keys())
        for scene_id, scene in plan.scenes.items():
            if scene_id not in self.rows:
                self.rows[scene_id] = SceneRow(self._session, scene_id, self)
                self._column.insertWidget(self._column.count() - 1, self.rows[scene_id])
            self.rows[scene_id].show_scene(scene)
        self._outside.show_use(plan.use)


class SceneRow(NamedRow):
    """One scene; an empty id stands for what lies in none."""

    def __init__(self, session: Session, scene_id: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._id = session, scene_id
        self._use = UsePattern()
        self.hours = ValueField(
            "Hours lit a session", "duration", self._set_use("hours_per_session"), self, bare=True
        )
        self.sessions = ValueField(
            "Sessions a month", "number", self._set_use("sessions_per_month"), self, bare=True
        )
        fix_width(self.hours, HOURS_WIDTH)
        fix_width(self.sessions, SESSIONS_WIDTH)
        self.name: TypedField | None = None
        if scene_id:
            self.name = TypedField(
                "Name of the scene", lambda t: self._change(name=t.strip()), self, bare=True
            )
            self.lead_with(self.name)
        else:
            self.line.addWidget(_Outside(OUTSIDE, self), 1)
        self.line.addWidget(self.hours)
        self.line.addWidget(self.sessions)
        self.line.addWidget(self._remove_button())
        self.listen_to(filter(None, (self.name, self.hours, self.sessions)))
        self.details = UseDetails("this scene" if scene_id else OUTSIDE.lower(), self._put_use, self)
        self.column.addWidget(self.details)

    def show_scene(self, scene: Scene) -> None:
        """Show the scene as it is now."""
        if self.name is not None:
            self.name.show_text(scene.name)
            self.fit_name()
        self.show_use(scene.use)

    def show_use(self, use: UsePattern) -> None:
        """Show how it is used."""
        self._use = use
        self.hours.show_value(use.hours_per_session)
        self.sessions.show_value(use.sessions_per_month)
        self.details.show_use(use)

    def _remove_button(self) -> QWidget:
        if not self._id:
            room = QWidget(self)
            room.setFixedWidth(REMOVE_WIDTH)
            return room
        return remove_button(self, "scene", lambda: self._session.do(remove_scene(self._id)))

    def _set_use(self, name: str) -> Callable[[Any], str]:
        def put(value: float) -> str:
            return self._put_use(msgspec.structs.replace(self._use, **{name: value}))

        return put

    def _put_use(self, use: UsePattern) -> str:
        return self._change(use=use) if self._id else committed(self._session, set_plan(use=use))

    def _change(self, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self._session, change_scene(self._id, **fields))


class _Outside(QLabel):
    """What stands for a name; large words are broken into lines."""

    def changeEvent(self, event: QEvent) -> None:
        if event.type() is QEvent.Type.FontChange:
            self.setWordWrap(factor() > LEAST)
        super().changeEvent(event)
