"""The carry sheet as one page of HTML that needs nothing beside itself, not even a network."""

import base64
import hashlib
import json
import re
from collections.abc import Callable, Mapping
from importlib.resources import files
from string import Template
from typing import Any

from wiring.findings.situation import Situation
from wiring.pictures.picture import Point
from wiring.pictures.theme import DARK, LIGHT, Theme
from wiring.pictures.typefaces import printable
from wiring.plan.names import TerminalRef
from wiring.plan.plan import UNTITLED, Plan
from wiring.sheets.carry.check_list import check_list
from wiring.sheets.carry.markup import Markup, joined, own, tag
from wiring.sheets.carry.note_list import finding_list, safety_list
from wiring.sheets.carry.plan_drawing import PlanDrawing, plan_drawing
from wiring.sheets.carry.strip_list import strip_list
from wiring.sheets.carry.tick_keys import tick_key, wire_key
from wiring.sheets.carry.wire_list import wire_list

_SCRIPTS = ("ticks.js", "plan.js", "lists.js", "dialog.js", "awake.js", "sheet.js")
_ON_COPPER = {"light": "#ffffff", "dark": "#1e262c"}
_LONGEST_FILE_NAME = 60
_CHECK = (
    "url(\"data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 24 24' fill='none' "
    "stroke='%23{colour}' stroke-width='3.6' stroke-linecap='round' stroke-linejoin='round'%3E"
    "%3Cpath d='M5 12.5l4.5 4.5L19 7'/%3E%3C/svg%3E\")"
)


def carry_sheet(situation: Situation) -> str:
    """Return the page: wires in working order, terminal charts, meter checks, notes, findings, and the plan.

    Ticks stay in the browser and can be brought back into the plan. No text of the plan can break the page:
    it is escaped wherever it stands, and only the page's own script may run.
    """
    plan = situation.plan
    drawing = plan_drawing(situation)
    script = "\n".join(_page_file(name) for name in _SCRIPTS)
    script = f'(function () {{\n"use strict";\n{script}\n}})();\n'
    title = printable(plan.title) or UNTITLED
    return Template(_page_file("page.html")).substitute(
        script_hash=_hash(script),
        title=joined([f"{title}: carry sheet"]),
        style=_style(),
        heading=own(title),
        progress=f"{len(plan.wires)} {'wire' if len(plan.wires) == 1 else 'wires'}",
        plan=_stage(drawing),
        fascia=_fascia(drawing),
        wires=wire_list(situation),
        strips=strip_list(situation),
        meter=check_list(situation, _where(situation, drawing)),
        safety=safety_list(situation),
        findings=finding_list(situation, drawing.centres() if drawing is not None else {}),
        finding_count=str(len(situation.findings) or "none"),
        imprint=joined([f"Made with Underboard on {situation.today.isoformat()}. Works without a network."]),
        facts=_json(_facts(plan, title)),
        script=script,
    )


def _stage(drawing: PlanDrawing | None) -> Markup:
    if drawing is None:
        return tag("p", "Nothing is drawn on this plan yet.", class_="nothing")
    return drawing.svg


def _fascia(drawing: PlanDrawing | None) -> Markup:
    """Return which way the fascia lies, which holds however far the plan is zoomed."""
    if drawing is None:
        return Markup()
    arrow = {"bottom": "↓", "top": "↑", "left": "←", "right": "→"}[drawing.fascia]
    return tag("p", f"fascia {arrow}", class_="fascia-words", data_side=drawing.fascia)


def _where(situation: Situation, drawing: PlanDrawing | None) -> Callable[[TerminalRef], Point | None]:
    def where(ref: TerminalRef) -> Point | None:
        return drawing.at(situation.plan, situation.kinds, ref) if drawing is not None else None

    return where


def _facts(plan: Plan, title: str) -> dict[str, Any]:
    """Return what the script cannot read off the page: what the ticks are kept and saved under."""
    wires = [f"{wire_key(wire)}{'+' if wire.built else ''}" for wire in plan.wires.values()]
    name = re.sub(r"[^\w-]+", "-", title).strip("-_")[:_LONGEST_FILE_NAME]
    return {"title": title, "sheet": tick_key("sheet", *wires), "file": name or "plan"}


def _json(data: Mapping[str, Any]) -> str:
    """Return JSON that cannot end the element it stands in."""
    text = json.dumps(data, ensure_ascii=False)
    for sign in "<>&\u2028\u2029":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return text


def _style() -> str:
    dark, light = _variables(DARK, "dark"), _variables(LIGHT, "light")
    looks = (
        f":root {{ {light} }}",
        f"@media (prefers-color-scheme: dark) {{ :root:not([data-look='light']) {{ {dark} }} }}",
        f":root[data-look='dark'] {{ {dark} }}",
    )
    return "\n".join((*looks, _page_file("page.css")))


def _variables(theme: Theme, look: str) -> str:
    colours = {**theme, "edge": theme["ink"], "on-copper": _ON_COPPER[look]}
    check = _CHECK.format(colour=_ON_COPPER[look].removeprefix("#"))
    return " ".join(f"--{role}: {value};" for role, value in {**colours, "check": check}.items())


def _hash(script: str) -> str:
    digest = hashlib.sha256(script.encode()).digest()
    return f"sha256-{base64.b64encode(digest).decode()}"


def _page_file(name: str) -> str:
    return (files("wiring.sheets.carry") / "page" / name).read_text(encoding="utf-8")
