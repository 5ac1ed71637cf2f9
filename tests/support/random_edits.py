"""Every edit there is, each with odd and ordinary arguments drawn by dice: a table, one line an edit."""

import importlib
import pkgutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from random import Random
from typing import Any

from support.editing import KINDS
from support.mending import spoilt_and_mended

import wiring.edits
from wiring.edits import align as lines
from wiring.edits import backdrop as picture
from wiring.edits import (
    benchwork,
    bends,
    face_items,
    joist_rows,
    joists,
    log_battery,
    panels,
    recolour,
    scenes,
    set_plan,
)
from wiring.edits import set_value as value
from wiring.edits import set_wire as wire
from wiring.edits import swap_pack as packs
from wiring.edits import wireways as ways
from wiring.edits.connect import connect, reconnect
from wiring.edits.connect_each import connect_each
from wiring.edits.distribute import distribute
from wiring.edits.duplicate import duplicate
from wiring.edits.edit import Edit
from wiring.edits.face_fragment import copied_from_face, paste_on_face
from wiring.edits.face_legends import legends_from_labels
from wiring.edits.face_shift import mirror_on_face, remove_from_face, shift_each_on_face
from wiring.edits.feed import feed
from wiring.edits.fragment import copied, paste
from wiring.edits.groups import join, take_apart
from wiring.edits.into_lead import put_into_lead
from wiring.edits.into_leads import put_into_leads
from wiring.edits.joined import followed, in_turn, remembered
from wiring.edits.lay_along import lay_along
from wiring.edits.lay_anew import lay_anew
from wiring.edits.lead_over import lead_over, split_at_new
from wiring.edits.mirror import mirror
from wiring.edits.move import move
from wiring.edits.panel_harness import bring_out
from wiring.edits.panel_spacing import in_steps, onto_spacing
from wiring.edits.place_part import place
from wiring.edits.place_row import place_row
from wiring.edits.remove import remove
from wiring.edits.set_built import set_built
from wiring.edits.split_wire import insert_in_wire, split_wire
from wiring.edits.swap_leads import swap_leads
from wiring.edits.throw import keep_position
from wiring.edits.turn import turn
from wiring.plan.backdrop import Backdrop
from wiring.plan.battery_log import EVENTS
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.scene import UsePattern
from wiring.routing.along_wireways import routes
from wiring.studies.feeding import groups

ODD_NUMBERS = (0.0, 1.0, 3.0, 470.0, -1.0, 1e9, float("nan"), float("inf"))
COLOURS = ("OG", "", "GNYE", "bu", "no colour")
IN_LINE, AC, DC = {"terminal-strip-4", "fuse", "toggle-on-off"}, ("~1", "~2"), ("+", "-")


@dataclass(frozen=True)
class Hand:
    """A plan and dice: draws what an edit is given, mostly things that are there, sometimes not."""

    plan: Plan
    dice: Random

    def pick(self, *options: Any) -> Any:
        return self.dice.choice(options)

    def mm(self) -> float:
        return self.pick(0.0, 50.0, round(self.dice.uniform(-5000.0, 5000.0), 3))

    def at(self) -> tuple[float, float]:
        return self.mm(), self.mm()

    def index(self) -> int:
        return self.dice.randint(-1, 2)

    def one(self, *tables: str) -> str:
        ids = [i for table in tables for i in getattr(self.plan, table)]
        return self.dice.choice(ids) if ids and self.dice.random() < 0.95 else "x99"

    def some(self, *tables: str) -> list[str]:
        ids = [i for table in tables for i in getattr(self.plan, table)]
        return [self.dice.choice(ids) for _ in range(self.dice.randint(1, 5))] if ids else []

    def kind(self) -> Any:
        return KINDS[self.dice.choice(sorted(KINDS))]

    def ref(self) -> TerminalRef:
        part = self.plan.parts.get(self.one("parts"))
        names = [t.name for t in KINDS[part.kind].terminals] if part else []
        return TerminalRef(part.id if part else "x99", self.pick(*names, "no such"))

    def battery(self) -> str:
        fitting = [p.id for p in self.plan.parts.values() if KINDS[p.kind].behaviour == "battery"]
        return self.pick(*fitting, self.one("parts"))

    def on_panel(self) -> tuple[str, list[str]]:
        """A panel, and parts that mostly sit on it."""
        panel = self.one("panels")
        return panel, [i for i in self.plan.parts if self.plan.parts[i].panel == panel] or self.some("parts")

    def from_face(self) -> str:
        """What is on a face as text, mostly."""
        panel, parts = self.on_panel()
        if panel not in self.plan.panels:
            return "a shopping list"
        return copied_from_face(self.plan, panel, parts, {self.index()}, {self.index()})

    def scene_to_set(self) -> dict[str, Any]:
        use = UsePattern(hours_per_session=self.pick(1.0, 4.0, -1.0))
        return self.pick({"x_mm": self.mm()}, {"name": self.pick("Pier", "")}, {"use": use})

    def text(self, *ids: str) -> str:
        return copied(self.plan, ids or self.some("parts")) or "a shopping list"


def _setting(h: Hand) -> Edit:
    part = h.plan.parts.get(h.one("parts"))
    names = [s.name for s in KINDS[part.kind].settings] if part else []
    return value.set_setting([part.id if part else "x99"], h.pick(*names, "odd"), h.pick(*ODD_NUMBERS, None))


def _position(h: Hand) -> tuple[str, str]:
    part = h.plan.parts.get(h.one("parts"))
    return (
        (part.id, h.pick("", *(p.name for p in KINDS[part.kind].positions), "sideways"))
        if part
        else ("x99", "")
    )


def _feed(h: Hand) -> Edit:
    ids, two = [*h.some("parts"), h.battery()], h.pick(0, 1, 2)
    strings, row = groups(h.plan, KINDS, ids, 9.0, in_series=h.pick(True, False)), h.pick(True, False)
    return feed(ids, h.pick("chain", "star"), h.pick((), strings), wanted_poles=two, in_series=row)


def _row(h: Hand) -> Edit:
    many: dict[str, Any] = h.pick({"count": h.dice.randint(0, 6)}, {"spacing_mm": h.pick(60.0, 0.0, 1e-9)})
    return place_row(h.kind(), (0.0, 0.0), (300.0, 40.0), via=h.pick((), ((100.0, 90.0),)), **many)


def _backdrop(h: Hand) -> Backdrop:
    return Backdrop(
        media="image/png", path="quay.png", width_px=h.pick(800.0, -1.0), height_px=600.0, x_mm=h.mm()
    )


def _reading(h: Hand) -> Edit:
    day = date(2026, h.dice.randint(1, 12), 3)
    return log_battery.log_battery(h.battery(), h.pick(*EVENTS, "dropped"), day, h.pick(0.0, 8.4, -1.0))


def _move_and_route(h: Hand) -> Edit:
    wires = h.some("wires")
    return followed(move(h.some("parts"), h.mm(), 5.0), lambda _, new: lay_along(routes(new, KINDS, wires)))


DRAWS: dict[str, Callable[[Hand], Edit]] = {
    "align.align": lambda h: lines.align(
        h.some("parts"), h.pick("left", "right", "top", "bottom", "row", "column")
    ),
    "backdrop.lay_backdrop": lambda h: picture.lay_backdrop(_backdrop(h)),
    "backdrop.remove_backdrop": lambda _: picture.remove_backdrop(),
    "backdrop.calibrate": lambda h: picture.calibrate(h.at(), h.at(), h.pick(900.0, 0.0, float("nan"))),
    "backdrop.set_backdrop": lambda h: picture.set_backdrop(
        **h.pick({"x_mm": h.mm()}, {"strength": h.pick(0.3, 9)})
    ),
    "backdrop.shift_backdrop": lambda h: picture.shift_backdrop(h.mm(), h.pick(0.0, 40.0)),
    "backdrop.turn_backdrop": lambda h: picture.turn_backdrop(h.pick(30.0, -90.0, float("inf"))),
    "benchwork.set_board": lambda h: benchwork.set_board(
        h.pick((), ((0, 0), (2400, 0), (2400, h.mm())), ((0, 0),))
    ),
    "benchwork.add_track": lambda h: benchwork.add_track(h.pick([h.at(), (0, 0)], [(0, 0)])),
    "benchwork.set_track": lambda h: benchwork.set_track(h.index(), [h.at(), h.at(), (0, 0)]),
    "benchwork.remove_track": lambda h: benchwork.remove_track(h.index()),
    "bends.add_bend": lambda h: bends.add_bend(h.one("wires"), h.index(), *h.at()),
    "bends.move_bend": lambda h: bends.move_bend(h.one("wires"), h.index(), *h.at()),
    "bends.remove_bend": lambda h: bends.remove_bend(h.one("wires"), h.index()),
    "bends.straighten": lambda h: bends.straighten(h.one("wires")),
    "bends.lay_bends": lambda h: bends.lay_bends(h.one("wires"), (h.at(), h.at())),
    "connect.connect": lambda h: connect(h.ref(), h.ref(), h.pick((), [h.at()]), h.pick(None, "odd")),
    "connect.reconnect": lambda h: reconnect(h.one("wires"), h.pick("start", "end"), h.ref()),
    "connect_each.connect_each": lambda h: connect_each(h.one("parts"), h.one("parts")),
    "distribute.distribute": lambda h: distribute(h.some("parts"), h.pick("across", "down")),
    "duplicate.duplicate": lambda h: duplicate(h.some("parts", "wires"), h.mm(), h.mm()),
    "face_fragment.paste_on_face": lambda h: paste_on_face(
        h.pick(h.text(), h.from_face()), h.one("panels"), h.pick(None, h.at()), (h.mm(), 5.0)
    ),
    "face_items.add_line": lambda h: face_items.add_line(
        h.one("panels"), [h.at(), (9, 9)], h.pick(4.0, -1.0)
    ),
    "face_items.add_text": lambda h: face_items.add_text(h.one("panels"), h.pick("UP MAIN", ""), *h.at()),
    "face_items.change_item": lambda h: face_items.change_item(
        h.one("panels"), h.pick("line", "text"), h.index(), colour=h.pick(*COLOURS)
    ),
    "face_items.move_line_corner": lambda h: face_items.move_line_corner(
        h.one("panels"), h.index(), h.index(), *h.at()
    ),
    "face_items.move_items": lambda h: face_items.move_items(
        h.one("panels"), {h.index()}, {h.index()}, *h.at()
    ),
    "face_legends.legends_from_labels": lambda h: legends_from_labels(h.one("panels")),
    "face_shift.mirror_on_face": lambda h: mirror_on_face(
        *h.on_panel(), {h.index()}, {h.index()}, h.pick("across", "down")
    ),
    "face_shift.remove_from_face": lambda h: remove_from_face(
        h.one("panels"), h.some("parts", "wires")[:1], {h.index()}, {h.index()}
    ),
    "face_shift.shift_each_on_face": lambda h: shift_each_on_face(
        "Line up", h.one("panels"), {h.one("parts"): h.at()}, {h.index(): h.at()}, {h.index(): h.at()}
    ),
    "feed.feed": _feed,
    "fragment.paste": lambda h: paste(
        h.text(), h.mm(), 0.0, turn_deg=h.pick(0.0, 90.0, 45.0), as_one=h.pick(True, False), kinds=KINDS
    ),
    "groups.join": lambda h: join(h.some("parts", "wires")),
    "groups.take_apart": lambda h: take_apart(h.some("parts")),
    "into_lead.put_into_lead": lambda h: put_into_lead(
        [h.ref(), h.ref()][: h.index()], KINDS["fuse"], {"rating_a": h.pick(1.0, -1.0)}, "1", "2"
    ),
    "into_leads.put_into_leads": lambda h: put_into_leads([(h.ref(), h.ref())], KINDS["rectifier"], AC, DC),
    "joined.followed": _move_and_route,
    "joined.in_turn": lambda h: in_turn("Do both", [swap_leads([h.one("parts")], "A", "K"), _setting(h)]),
    "joined.remembered": lambda h: remembered(move(h.some("parts"), h.mm(), 5.0)),
    "joists.add_joist": lambda h: joists.add_joist(h.at(), (0, 50)),
    "joists.change_joist": lambda h: joists.change_joist(
        h.index(), **h.pick({"end": h.at()}, {"width_mm": h.mm()}, {"depth_mm": 90.0})
    ),
    "joists.size_joists": lambda h: joists.size_joists(**h.pick({"width_mm": h.mm()}, {"depth_mm": 70.0})),
    "joist_rows.space_joists": lambda h: joist_rows.space_joists(
        (0, h.index()), h.mm(), clear=h.pick(True, False)
    ),
    "joist_rows.size_several": lambda h: joist_rows.size_several((h.index(),), width_mm=h.mm()),
    "joist_rows.move_joists": lambda h: joist_rows.move_joists((h.index(),), *h.at()),
    "joist_rows.remove_joists": lambda h: joist_rows.remove_joists((h.index(),)),
    "joists.remove_joist": lambda h: joists.remove_joist(h.index()),
    "lay_along.lay_along": lambda h: lay_along(routes(h.plan, KINDS, h.some("wires"))),
    "lay_anew.lay_anew": lambda h: lay_anew(h.some("wires")),
    "lead_over.lead_over": lambda h: lead_over(h.some("wires")[:2], h.one("parts")),
    "lead_over.split_at_new": lambda h: split_at_new(h.some("wires")[:2], KINDS["terminal-strip-4"], *h.at()),
    "log_battery.log_battery": _reading,
    "log_battery.strike_reading": lambda h: (
        log_battery.strike_reading(h.pick(*h.plan.battery_log)) if h.plan.battery_log else _reading(h)
    ),
    "mirror.mirror": lambda h: mirror(h.some("parts"), h.pick("across", "down")),
    "move.move": lambda h: move(h.some("parts", "wires"), h.mm(), h.pick(0.0, 5.0, 1e12)),
    "panel_harness.bring_out": lambda h: bring_out(h.one("panels")),
    "panel_spacing.onto_spacing": lambda h: onto_spacing(*h.on_panel()),
    "panel_spacing.in_steps": lambda h: in_steps(*h.on_panel(), h.pick("across", "down")),
    "panels.add_panel": lambda h: panels.add_panel(
        h.pick("Fascia", ""), h.mm(), -1000, h.pick(600, 0, -1), 2000
    ),
    "panels.change_panel": lambda h: panels.change_panel(
        h.one("panels"), **h.pick({"x_mm": h.mm()}, {"spacing_mm": h.pick(10.0, -1.0)}, {"room_mm": 40.0})
    ),
    "panels.remove_panel": lambda h: panels.remove_panel(h.one("panels")),
    "panels.put_on_panel": lambda h: panels.put_on_panel(h.some("parts"), h.one("panels")),
    "place_part.place": lambda h: place(h.kind(), *h.at(), h.pick(0.0, 450.0)),
    "place_row.place_row": _row,
    "recolour.set_circuit_colours": lambda h: recolour.set_circuit_colours(
        h.battery(), plus=h.pick(*COLOURS)
    ),
    "recolour.recolour": lambda h: recolour.recolour(
        h.pick(None, h.some("wires")), built_too=h.pick(True, False)
    ),
    "remove.remove": lambda h: remove(h.some("parts", "wires")[:1]),
    "scenes.add_scene": lambda h: scenes.add_scene(
        h.pick("Quay", ""), h.mm(), -1000, h.pick(0, 300, -1), 2000
    ),
    "scenes.change_scene": lambda h: scenes.change_scene(h.one("scenes"), **h.scene_to_set()),
    "scenes.remove_scene": lambda h: scenes.remove_scene(h.one("scenes")),
    "scenes.put_in_scene": lambda h: scenes.put_in_scene(h.some("parts"), h.pick("", h.one("scenes"))),
    "set_built.set_built": lambda h: set_built(h.some("wires"), h.pick(True, False)),
    "set_plan.set_plan": lambda h: set_plan.set_plan(
        **h.pick({"title": f"Quay {h.mm():g}"}, {"prices": {"lamp-12v": h.pick(2.0, -1.0)}})
    ),
    "set_plan.set_habits": lambda h: set_plan.set_habits(
        **h.pick(
            {"units": h.pick("us", "metric", "feet")}, {"wire_size": "20AWG"}, {"slack_m": h.pick(0.2, -1.0)}
        )
    ),
    "set_value.set_setting": _setting,
    "set_value.set_field": lambda h: value.set_field(
        h.some("parts"),
        **h.pick({"note": "checked", "x_mm": h.mm()}, {"label": "Lamp"}, {"turn_deg": h.pick(*ODD_NUMBERS)}),
    ),
    "set_value.rename": lambda h: value.rename(h.one("parts"), h.pick("E1", "-X7", "two words", "", "G1")),
    "set_wire.set_wire": lambda h: wire.set_wire(
        h.some("wires"),
        **h.pick({"colour": h.pick(*COLOURS)}, {"label": "W1"}, {"length_m": h.pick(None, 2.0, -1.0)}),
    ),
    "set_wire.swap_ends": lambda h: wire.swap_ends(h.some("wires")),
    "split_wire.insert_in_wire": lambda h: insert_in_wire(
        h.one("wires"), KINDS[h.pick(*sorted(IN_LINE))], *h.at()
    ),
    "split_wire.split_wire": lambda h: split_wire(
        h.one("wires"), h.one("parts"), *h.pick((), ("no such", "1"))
    ),
    "swap_leads.swap_leads": lambda h: swap_leads(
        h.some("parts"), *h.pick(("A", "K"), ("+", "-"), ("1", "2"))
    ),
    "swap_pack.swap_pack": lambda h: packs.swap_pack(
        h.battery(), h.pick("alkaline AA", "nimh AA", "cheese"), h.pick(6, -1)
    ),
    "swap_pack.swap_for_mains": lambda h: packs.swap_for_mains(
        h.battery(), h.pick(12.0, -1.0), h.pick(0.0, 2.0)
    ),
    "throw.keep_position": lambda h: keep_position(*_position(h)),
    "turn.turn": lambda h: turn(h.some("parts"), h.pick(0, 15, 90, 360, -90), h.pick(None, h.at())),
    "usual_values.usual_values": lambda h: spoilt_and_mended(h.some("parts"), h.dice),
    "wireways.add_wireway": lambda h: ways.add_wireway([h.at(), (0, 0), h.at()], h.pick("Beam", "")),
    "wireways.move_corner": lambda h: ways.move_corner(h.one("wireways"), h.index(), *h.at()),
    "wireways.add_corner": lambda h: ways.add_corner(h.one("wireways"), *h.at()),
    "wireways.remove_corner": lambda h: ways.remove_corner(h.one("wireways"), h.index()),
    "wireways.shift_wireway": lambda h: ways.shift_wireway(h.one("wireways"), *h.at()),
    "wireways.set_wireway": lambda h: ways.set_wireway(
        h.one("wireways"),
        **h.pick({"hole_mm": h.mm()}, {"fascia_drop_mm": h.pick(None, 40.0)}, {"name": "Beam"}),
    ),
    "wireways.remove_wireway": lambda h: ways.remove_wireway(h.one("wireways")),
}


def edits_there_are() -> Iterator[str]:
    """The name of every function below wiring/edits that returns an Edit."""
    for module in pkgutil.iter_modules(wiring.edits.__path__):
        made = importlib.import_module(f"wiring.edits.{module.name}")
        for name, thing in vars(made).items():
            own = getattr(thing, "__module__", "") == made.__name__ and not name.startswith("_")
            if own and getattr(thing, "__annotations__", {}).get("return") in (Edit, "Edit"):
                yield f"{module.name}.{name}"
