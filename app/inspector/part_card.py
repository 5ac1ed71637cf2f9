"""The card of one part, or of several of one kind: names, settings, how it stands, figures."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from app.inspector.card import Card
from app.inspector.choice_field import ChoiceField
from app.inspector.committing import committed
from app.inspector.figures_table import FiguresTable
from app.inspector.folded import Folded
from app.inspector.joined_rows import JoinedRows
from app.inspector.one_value import one_value
from app.inspector.position_row import PositionRow
from app.inspector.price_field import PriceField
from app.inspector.reading_words import battery_figures, part_figures, several_figures, terminal_figures
from app.inspector.section import Section
from app.inspector.setting_rows import SettingRows
from app.inspector.tab_order import order_tabs
from app.inspector.throwing import Throwing, ThrowLine
from app.inspector.typed_field import TypedField
from app.inspector.value_field import SEVERAL
from app.session import Session
from app.solving import Answer
from wiring.catalogue.kind import Kind, Setting, Value
from wiring.edits.panels import put_on_panel
from wiring.edits.scenes import put_in_scene
from wiring.edits.set_value import rename, set_field, set_setting
from wiring.plan.part import Part

NOWHERE = ("", "none")
TEXTS = (
    ("designation", "Designation", ""),
    ("label", "Label", "what you call it"),
    ("note", "Note", ""),
)


class PartCard(Card):
    """All parts are of one kind; the rows serve every kind."""

    def __init__(self, session: Session, parent: QWidget, *, throwing: Throwing) -> None:
        super().__init__(session, parent)
        self._kind: Kind | None = None
        self._of: tuple[tuple[str, ...], Kind | None] = ((), None)  # what the rows stand for
        self._title, self._subtitle = QLabel(self), QLabel(self)
        self._title.setProperty("look", "title")
        self._subtitle.setProperty("look", "quiet")
        for label in (self._title, self._subtitle):
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setWordWrap(True)
            self.add(label)
        self._joined = JoinedRows(self)
        self.add(self._joined)
        self._figures, self._terminals = FiguresTable(self), FiguresTable(self)
        self.throw = ThrowLine(throwing, self)
        self._add_section("Reads now", self._figures, self.throw)
        self._position = PositionRow(session, self)
        self._stands = self._add_section("Stands", self._position)
        self._rows = SettingRows(self._put_setting, self)
        self._more = Folded("More", self)
        self._more_rows = SettingRows(self._put_setting, self)
        self._more.add(self._more_rows)
        self._settings = self._add_section("Settings", self._rows, self._more)
        self._texts: dict[str, TypedField] = {}
        self._add_names()
        self._meter = self._add_section("A meter reads, against minus", self._terminals)
        self.close_up()

    def take_up(self, ids: tuple[str, ...]) -> None:
        """Show these parts from now on."""
        self._more.fold()
        super().take_up(ids)

    def refresh(self) -> None:
        """Show the parts as they are now."""
        parts = self._parts()
        if not parts:
            return
        kind = self._kind = self.session.kinds[parts[0].kind]
        if self._of != (self.ids, kind):
            self._of = (self.ids, kind)
            self._fit(kind)
        one = parts[0] if len(parts) == 1 else None
        self._title.setText(f"-{one.designation}" if one else f"{len(parts)} parts")
        if one and one.label:
            self._title.setText(f"-{one.designation}  {one.label}")
        for name, field in self._texts.items():
            text = one_value(str(getattr(p, name)) for p in parts)
            field.show_text(text or "", SEVERAL if text is None else None)
        self._joined.show_parts(self.session.plan, self.ids)
        self._show_settings(kind, parts)
        self._show_places(parts)
        self._price.refresh()
        self._position.refresh()

    def show_answer(self, answer: Answer | None) -> None:
        """Show the figures of the parts."""
        if answer is None:
            self._figures.show_figures(())
            self._terminals.show_figures(())
        elif len(self.ids) == 1:
            part_id = self.ids[0]
            self._figures.show_figures([*part_figures(answer, part_id), *battery_figures(answer, part_id)])
            self._terminals.show_figures(list(terminal_figures(answer, part_id)))
            self.throw.follow(answer)
        else:
            self._figures.show_figures(list(several_figures(answer, self.ids)))

    def _parts(self) -> list[Part]:
        plan = self.session.plan
        return [plan.parts[i] for i in self.ids if i in plan.parts]

    def _fit(self, kind: Kind) -> None:
        """Fit the rows to a kind, and to one part or several."""
        one = self.ids[0] if len(self.ids) == 1 else ""
        self._subtitle.setText(kind.title)
        self._texts["designation"].setVisible(bool(one))
        self._meter.setVisible(bool(one))
        thrown = one if len(kind.positions) > 1 else ""
        made = self._position.show_part(thrown, kind)
        self._stands.setVisible(bool(thrown))
        self.throw.show_part(one, kind)
        experts = [s for s in kind.settings if s.expert]
        made |= self._rows.show_settings([s for s in kind.settings if not s.expert])
        made |= self._more_rows.show_settings(experts)
        self._more.setVisible(bool(experts))
        self._settings.setVisible(bool(kind.settings))
        if made:
            order_tabs(self)

    def _show_settings(self, kind: Kind, parts: list[Part]) -> None:
        units = self.session.plan.habits.units
        for rows, expert in ((self._rows, False), (self._more_rows, True)):
            settings = [s for s in kind.settings if s.expert == expert]
            rows.show_values([_in_common(s, parts) for s in settings], units)
        changed = (any(s.name in p.settings for p in parts) for s in kind.settings if s.expert)
        self._more.mark(sum(changed))

    def _show_places(self, parts: list[Part]) -> None:
        plan = self.session.plan
        self._scene.offer([NOWHERE, *((s.id, s.name) for s in plan.scenes.values())])
        self._panel.offer([NOWHERE, *((p.id, p.name) for p in plan.panels.values())])
        self._scene.setVisible(bool(plan.scenes))
        self._panel.setVisible(bool(plan.panels))
        self._scene.show_value(one_value(p.scene for p in parts))
        self._panel.show_value(one_value(p.panel for p in parts))

    def _add_section(self, title: str, *rows: QWidget) -> Section:
        section = Section(title, self)
        for row in rows:
            section.add(row)
        self.add(section)
        return section

    def _add_names(self) -> None:
        for name, caption, hint in TEXTS:
            field = TypedField(caption, self._set_text(name), self, hint=hint)
            field.editor.setObjectName(f"part_{name}")
            self._texts[name] = field
        self._price = PriceField(self.session, self._bought, self)
        self._scene = ChoiceField(
            "Scene", [NOWHERE], lambda s: committed(self.session, put_in_scene(self.ids, s)), self
        )
        self._panel = ChoiceField(
            "Panel", [NOWHERE], lambda p: committed(self.session, put_on_panel(self.ids, p)), self
        )
        self._add_section("Name and place", *self._texts.values(), self._price, self._scene, self._panel)

    def _bought(self) -> tuple[Kind, list[Part]]:
        assert self._kind is not None
        return self._kind, self._parts()

    def _put_setting(self, setting: Setting, value: Value | None) -> str:
        edit = set_setting(self.ids, setting.name, value, title=setting.title, kinds=self.session.kinds)
        return committed(self.session, edit)

    def _set_text(self, name: str) -> Callable[[str], str]:
        def put(typed: str) -> str:
            if name == "designation":
                return committed(self.session, rename(self.ids[0], typed))
            return committed(self.session, set_field(self.ids, **{name: typed.strip()}))

        return put


def _in_common(setting: Setting, parts: list[Part]) -> Value | None:
    return one_value(p.settings.get(setting.name, setting.default) for p in parts)
