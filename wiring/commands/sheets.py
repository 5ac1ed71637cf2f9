"""``underboard sheets PLAN OUT.pdf``: everything for the bench and for under the layout, as one PDF."""

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from wiring.commands.opening import add_plan_arguments, open_plan, tell
from wiring.commands.refusal import FINE, Refused

if TYPE_CHECKING:
    from wiring.commands.opening import Opened
    from wiring.sheets.printed_set import PrintedSet
    from wiring.sheets.sheet_set import MadeSet

PAPERS = {"a4": "A4", "letter": "Letter", "a3": "A3"}
SYMBOLS = ("iec", "ieee")


def add_arguments(parser: ArgumentParser) -> None:
    """Describe the arguments."""
    add_plan_arguments(parser)
    parser.add_argument("out", type=Path, metavar="OUT.pdf", help="the PDF to write")
    parser.add_argument(
        "--paper", type=str.lower, choices=tuple(PAPERS), help="size of paper (the plan's own)"
    )
    parser.add_argument(
        "--only",
        metavar="DOCUMENTS",
        help="the documents wanted, with commas between: cover, safety, plan, tiles, circuits, bench, cut, "
        "strips, parts, meter, panels, labels (all)",
    )
    parser.add_argument("--scene", metavar="NAME", help="only what stands in this scene or on this panel")
    parser.add_argument(
        "--tiles",
        metavar="SCALE",
        default="",
        help="add the plan in tiles to glue together, from above and from below, at 1:1, 1:2, 1:5 ...",
    )
    parser.add_argument(
        "--overlap", type=float, default=10.0, metavar="MM", help="how far tiles overlap (10)"
    )
    parser.add_argument("--symbols", type=str.lower, choices=SYMBOLS, help="circuit symbols (the plan's own)")
    parser.add_argument(
        "--changed",
        action="store_true",
        help="only the sheets that changed since the last remembered set, with a list of what changed",
    )
    parser.add_argument(
        "--remember",
        action="store_true",
        help="remember this set as the printed one, in a file beside the plan",
    )


def run(args: Namespace) -> int:
    """Write the sheets and say how many there are."""
    if args.out.suffix.lower() != ".pdf":
        raise Refused(f"Sheets are written as PDF; let the name {args.out.name} end in .pdf.")
    if args.remember and (args.only or args.scene):
        raise Refused("Only a whole set can be remembered as printed; leave out --only and --scene.")
    from wiring.pictures.many_records import collector_paused

    with collector_paused():  # to the end: the process ends with it
        return _write(args)


def _write(args: Namespace) -> int:
    from wiring.files.store import write_whole
    from wiring.pictures.pdf import pdf_bytes

    opened = open_plan(args)
    since = _since(args)
    made = _made(args, opened, since)
    if not made.pages and since is not None:
        print(f"Nothing changed since set {since.letter} of {since.day}; no file was written")
        return FINE
    write_whole(pdf_bytes(made.pages, opened.plan.title, opened.plan.author), args.out)
    print(f"Wrote {args.out}: {len(made.pages)} {'sheet' if len(made.pages) == 1 else 'sheets'}")
    if args.remember:
        _remember(args, made)
    return FINE


def _since(args: Namespace) -> "PrintedSet | None":
    from wiring.sheets.printed_file import read_printed

    try:
        since = read_printed(args.plan)
    except ValueError as fault:
        if args.changed:
            raise Refused(str(fault)) from None
        tell(str(fault))
        return None
    if since is None and args.changed:
        raise Refused(
            f"No printed set of {args.plan.name} is remembered; print a whole set with --remember first."
        )
    return since


def _made(args: Namespace, opened: "Opened", since: "PrintedSet | None") -> "MadeSet":
    from wiring.findings.situation import examine
    from wiring.sheets.safety import earned_titles
    from wiring.sheets.sheet_set import made_set
    from wiring.sheets.tiling import read_tiling

    only = [name.strip().lower() for name in args.only.split(",") if name.strip()] if args.only else None
    plan = opened.plan
    if args.symbols:
        plan = plan.with_changes(habits=msgspec.structs.replace(plan.habits, symbols=args.symbols))
    situation = examine(plan, opened.kinds, opened.positions)
    try:
        tiling = read_tiling(args.tiles, args.overlap)
        if tiling is None and only and "tiles" in only:
            raise ValueError("Tiles need a scale: add --tiles 1:5, or another scale.")
        made = made_set(
            situation,
            PAPERS[args.paper] if args.paper else opened.plan.habits.paper,
            only=only,
            scene=args.scene,
            tiling=tiling,
            since=since,
            changed_only=args.changed,
        )
    except ValueError as fault:
        raise Refused(str(fault)) from None
    earned = earned_titles(opened.plan, opened.kinds)
    if only and "safety" not in only and earned:
        tell(f"The safety notes are left out, though this plan calls for them: {', '.join(earned)}.")
    return made


def _remember(args: Namespace, made: "MadeSet") -> None:
    from wiring.sheets.printed_file import write_printed

    printed = made.printed()
    path = write_printed(printed, args.plan)
    print(f"Remembered as set {printed.letter} in {path}")
