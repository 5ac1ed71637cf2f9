"""The card of one part, or of several of one kind: names, settings, how it stands, figures."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from app.inspector.card import Card
from app.inspector.choice_field import ChoiceField
from app.inspector.committing import committed
from app.inspector.figures_table import FiguresTable
from app.inspector.folded import Folded
from app.inspector.position_row import PositionRow
from app.inspector.price_field import PriceField
from app.inspector.reading_words import battery_figures, part_figures, several_figures, terminal_figures
from app.inspector.section import Section
from app.inspector.throwing import Throwing, ThrowLine
from app.inspector.typed_field import TypedField
from app.inspector.value_field import SEVERAL, ValueField
from app.session import Session
from app.solving import Answer
from wiring.catalogue.kind import Kind, Setting, Value
from wiring.edits.panels import put_on_panel
from wiring.edits.scenes import put_in_scene
from wiring.edits.set_value import rename, set_field, set_setting
from wiring.plan.part import Part

NOWHERE = ("", "none")
DATE_HINT = "2026-03-01"


class PartCard(Card):
    """All parts are of one kind."""

    def __init__(
        self, session: Session, ids: tuple[str, ...], parent: QWidget, *, throwing: Throwing
    ) -> None:
        super().__init__(session, parent)
        self._ids = ids
        self._kind: Kind = session.kinds[session.plan.parts[ids[0]].kind]
        self._title = QLabel(self)
        self._title.setProperty("look", "title")
        self._title.setTextFormat(Qt.TextFormat.PlainText)
        self._subtitle = QLabel(self._kind.title, self)
        self._subtitle.setProperty("look", "quiet")
        for label in (self._title, self._subtitle):
            label.setWordWrap(True)
            self.add(label)
        self._texts: dict[str, TypedField] = {}
        self._values: dict[str, ValueField | TypedField | ChoiceField] = {}
        self._more: Folded | None = None
        self._figures = FiguresTable(self)
        self._terminals = FiguresTable(self)
        self.throw = ThrowLine(throwing, ids, self._kind, self)
        self._add_figures()
        self._position = self._added_position()
        self._add_settings()
        self._add_names()
        self.close_up()
        self.refresh()

    def refresh(self) -> None:
        """Show the parts as they are now."""
        parts = self._parts()
        if not parts:
            return
        one = parts[0] if len(parts) == 1 else None
        self._title.setText(f"-{one.designation}" if one else f"{len(parts)} parts")
        if one and one.label:
            self._title.setText(f"-{one.designation}  {one.label}")
        for name, field in self._texts.items():
            text = _same([str(getattr(p, name)) for p in parts])
            field.show_text(text or "", SEVERAL if text is None else None)
        for setting in self._kind.settings:
            self._show_setting(setting, _same([p.settings.get(setting.name, setting.default) for p in parts]))
        if self._more is not None:
            experts = [s.name for s in self._kind.settings if s.expert]
            self._more.mark(sum(any(name in p.settings for p in parts) for name in experts))
        plan = self.session.plan
        self._scene.offer([NOWHERE, *((s.id, s.name) for s in plan.scenes.values())])
        self._panel.offer([NOWHERE, *((p.id, p.name) for p in plan.panels.values())])
        self._scene.setVisible(bool(plan.scenes))
        self._panel.setVisible(bool(plan.panels))
        self._scene.show_value(_same([p.scene for p in parts]))
        self._panel.show_value(_same([p.panel for p in parts]))
        self._price.refresh()
        if self._position is not None:
            self._position.refresh()

    def show_answer(self, answer: Answer) -> None:
        """Show the figures of the parts."""
        if len(self._ids) == 1:
            part_id = self._ids[0]
            self._figures.show_figures([*part_figures(answer, part_id), *battery_figures(answer, part_id)])
            self._terminals.show_figures(list(terminal_figures(answer, part_id)))
            self.throw.follow(answer)
        else:
            self._figures.show_figures(list(several_figures(answer, self._ids)))
        if self._position is not None:
            self._position.refresh()

    def _parts(self) -> list[Part]:
        return [self.session.plan.parts[i] for i in self._ids if i in self.session.plan.parts]

    def _add_figures(self) -> None:
        section = Section("Reads now", self)
        section.add(self._figures)
        section.add(self.throw)
        self.add(section)

    def _added_position(self) -> PositionRow | None:
        if not self._kind.positions or len(self._ids) != 1 or len(self._kind.positions) < 2:
            return None
        section = Section("Stands", self)
        row = PositionRow(self.session, self._ids[0], self._kind, self)
        section.add(row)
        self.add(section)
        return row

    def _add_settings(self) -> None:
        if not self._kind.settings:
            return
        section = Section("Settings", self)
        more = Folded("More", self)
        for setting in self._kind.settings:
            field = self._setting_field(setting)
            field.editor.setObjectName(f"setting_{setting.name}")
            field.setToolTip(_tip(setting))
            self._values[setting.name] = field
            (more if setting.expert else section).add(field)
        if any(s.expert for s in self._kind.settings):
            section.add(more)
            self._more = more
        self.add(section)

    def _add_names(self) -> None:
        section = Section("Name and place", self)
        fields: list[tuple[str, str, str]] = [("label", "Label", "what you call it"), ("note", "Note", "")]
        if len(self._ids) == 1:
            fields.insert(0, ("designation", "Designation", ""))
        for name, caption, hint in fields:
            field = TypedField(caption, self._set_text(name), self, hint=hint)
            field.editor.setObjectName(f"part_{name}")
            self._texts[name] = field
            section.add(field)
        self._price = PriceField(self.session, self._kind, self._parts, self)
        section.add(self._price)
        self._scene = ChoiceField(
            "Scene", [NOWHERE], lambda s: committed(self.session, put_in_scene(self._ids, s)), self
        )
        self._panel = ChoiceField(
            "Panel", [NOWHERE], lambda p: committed(self.session, put_on_panel(self._ids, p)), self
        )
        section.add(self._scene)
        section.add(self._panel)
        self.add(section)
        terminals = Section("A meter reads, against minus", self)
        terminals.add(self._terminals)
        terminals.setVisible(len(self._ids) == 1)
        self.add(terminals)

    def _setting_field(self, setting: Setting) -> ValueField | TypedField | ChoiceField:
        put = self._put_setting(setting)
        if setting.choices:
            return ChoiceField(setting.title, [(c, c) for c in setting.choices], put, self)
        if setting.quantity == "text":
            hint = DATE_HINT if setting.name == "fitted" else ""
            return TypedField(setting.title, lambda typed: put(typed.strip()), self, hint=hint)
        units = self.session.plan.habits.units
        return ValueField(setting.title, setting.quantity, put, self, units=units, may_be_empty=True)

    def _put_setting(self, setting: Setting) -> Callable[[Any], str]:
        def put(value: Value | None) -> str:
            edit = set_setting(self._ids, setting.name, value, title=setting.title, kinds=self.session.kinds)
            return committed(self.session, edit)

        return put

    def _set_text(self, name: str) -> Callable[[str], str]:
        def put(typed: str) -> str:
            if name == "designation":
                return committed(self.session, rename(self._ids[0], typed))
            return committed(self.session, set_field(self._ids, **{name: typed.strip()}))

        return put

    def _show_setting(self, setting: Setting, value: Value | None) -> None:
        field = self._values[setting.name]
        if isinstance(field, ChoiceField):
            field.show_value(None if value is None else str(value))
        elif isinstance(field, ValueField):
            stands = setting.nought if value == 0 else ""
            hint = SEVERAL if value is None else stands or "typical"
            field.show_value(None if value is None or stands else float(value), hint)
        else:
            date_hint = DATE_HINT if setting.name == "fitted" else ""
            field.show_text("" if value is None else str(value), SEVERAL if value is None else date_hint)


def _tip(setting: Setting) -> str:
    """Return what a setting is and where its typical value is from."""
    full = f"{setting.full or setting.title}."
    return f"{full} Typical value from: {setting.source}." if setting.source else full


def _same(values: list[Any]) -> Any:  # noqa: ANN401 - whatever the field holds
    return values[0] if all(v == values[0] for v in values) else None
