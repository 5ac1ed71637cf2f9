"""A scene in the inspector: its name, how it is used, its size, and a way to take it away."""

from collections.abc import Callable
from typing import Any

import msgspec
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QToolButton, QVBoxLayout, QWidget

from app.inspector.committing import committed
from app.inspector.typed_field import TypedField
from app.inspector.value_field import ValueField
from app.session import Session
from app.theme.icons import icon
from wiring.edits.scenes import change_scene, remove_scene
from wiring.plan.scene import Scene, UsePattern


class UseFields(QWidget):
    """Hours a session and sessions a month."""

    def __init__(
        self, title: str, session: Session, apply: Callable[[UsePattern], str], parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._session, self._apply = session, apply
        self._use = UsePattern()
        self._hours = ValueField("Lit a session", "duration", self._set("hours_per_session"), self)
        self._sessions = ValueField("Sessions a month", "count", self._set("sessions_per_month"), self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(5)
        if title:
            column.addWidget(QLabel(title, self))
        column.addWidget(self._hours)
        column.addWidget(self._sessions)

    def show_use(self, use: UsePattern) -> None:
        """Show a use pattern."""
        self._use = use
        self._hours.show_value(use.hours_per_session)
        self._sessions.show_value(use.sessions_per_month)

    def _set(self, name: str) -> Callable[[Any], str]:
        return lambda value: self._apply(msgspec.structs.replace(self._use, **{name: value}))


class SceneBlock(QWidget):
    """One scene."""

    def __init__(self, session: Session, scene_id: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._id = session, scene_id
        self._name = TypedField("Name", lambda typed: self._change(name=typed.strip()), self)
        self._use = UseFields("", session, lambda use: self._change(use=use), self)
        remove = QToolButton(self)
        remove.setIcon(icon("remove"))
        remove.setToolTip("Take this scene away; its parts stay")
        remove.setAccessibleName("Take this scene away")
        remove.clicked.connect(lambda: session.do(remove_scene(scene_id)))
        head = QHBoxLayout()
        head.setContentsMargins(0, 6, 0, 0)
        head.addWidget(self._name, 1)
        head.addWidget(remove)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(5)
        column.addLayout(head)
        column.addWidget(self._use)

    @property
    def name_line(self) -> QLineEdit:
        """The line the scene's name is typed in."""
        return self._name.line

    def show_scene(self, scene: Scene) -> None:
        """Show the scene as it is now."""
        self._name.show_text(scene.name)
        self._use.show_use(scene.use)

    def _change(self, **fields: Any) -> str:  # noqa: ANN401 - each field has its own type
        return committed(self._session, change_scene(self._id, **fields))
