"""``underboard kinds``: every kind of part the catalogue has, or all about one of them.

With ``--json``: ``kinds``, each with ``key title purpose designation behaviour terminals positions settings
note``; each setting with ``name title quantity default lowest highest choices source full nought expert``, in
SI units: ``full`` says in words what it is, ``nought`` what 0 stands for, ``expert`` that few need change it.
"""

from argparse import ArgumentParser, Namespace
from collections.abc import Mapping
from typing import Any

from wiring.catalogue.kind import Kind, Setting, Value
from wiring.catalogue.known_names import PURPOSES
from wiring.commands.json_text import json_text
from wiring.commands.opening import add_catalogue_argument, kinds_for
from wiring.commands.refusal import FINE, Refused
from wiring.commands.table import Column, paragraph, table
from wiring.quantities.wording import worded


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    parser.add_argument("key", nargs="?", metavar="KEY", help="show all about this kind")
    parser.add_argument("--json", action="store_true", help="write JSON for another program")
    add_catalogue_argument(parser)


def run(args: Namespace) -> int:
    """Print the catalogue."""
    kinds = kinds_for(args)
    if args.key is not None and args.key not in kinds:
        raise Refused(f"The catalogue has no kind “{args.key}”; underboard kinds lists them all.")
    chosen = [kinds[args.key]] if args.key else list(kinds.values())
    if args.json:
        print(json_text({"kinds": [_data(kind) for kind in chosen]}))
    elif args.key:
        print(_one(chosen[0]))
    else:
        print("\n\n".join(_by_purpose(kinds)))
    return FINE


def _by_purpose(kinds: Mapping[str, Kind]) -> list[str]:
    columns = (Column("Key"), Column("What it is", wraps=True), Column("Terminals", wraps=True))
    sections = []
    for purpose, heading in PURPOSES.items():
        rows = [
            [k.key, k.title, " ".join(t.name for t in k.terminals)]
            for k in kinds.values()
            if k.purpose == purpose
        ]
        if rows:
            sections.append(f"{heading}\n\n{table(columns, rows)}")
    return sections


def _one(kind: Kind) -> str:
    columns = (
        Column("Setting"),
        Column("What it is", wraps=True),
        Column("Typical", right=True),
        Column("From", right=True),
        Column("To", right=True),
        Column("Source", wraps=True),
    )
    rows = [
        [s.name, s.title, _value(s.default, s), _value(s.lowest, s), _value(s.highest, s), s.source]
        for s in kind.settings
    ]
    lines = [
        f"{kind.title} ({kind.key})",
        paragraph(f"Terminals: {', '.join(t.name for t in kind.terminals)}", "  ", ""),
    ]
    if kind.positions:
        stands = ", ".join(p.name for p in kind.positions)
        lines.append(
            paragraph(f"Positions: {stands}; in use: {kind.in_use or kind.positions[0].name}", "  ", "")
        )
    if kind.note:
        lines.append(paragraph(kind.note))
    return "\n".join(lines) + ("\n\n" + table(columns, rows) if rows else "")


def _value(value: Value | None, setting: Setting) -> str:
    if value is None:
        return ""
    return value if isinstance(value, str) else worded(value, setting.quantity)


def _data(kind: Kind) -> dict[str, Any]:
    return {
        "key": kind.key,
        "title": kind.title,
        "purpose": kind.purpose,
        "designation": kind.designation,
        "behaviour": kind.behaviour,
        "terminals": [t.name for t in kind.terminals],
        "positions": [p.name for p in kind.positions],
        "settings": [{f: getattr(s, f) for f in Setting.__struct_fields__} for s in kind.settings],
        "note": kind.note,
    }
