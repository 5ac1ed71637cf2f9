"""``underboard sheets PLAN OUT.pdf``: everything for the bench and for under the layout, as one PDF."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from wiring.commands.opening import add_plan_arguments, open_plan
from wiring.commands.refusal import FINE, Refused

PAPERS = {"a4": "A4", "letter": "Letter", "a3": "A3"}


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
        help="the documents wanted, with commas between: cover, safety, plan, circuits, bench, cut, strips, "
        "parts, meter, panels, labels (all)",
    )
    parser.add_argument("--scene", metavar="NAME", help="only what stands in this scene or on this panel")


def run(args: Namespace) -> int:
    """Write the sheets and say how many there are."""
    if args.out.suffix.lower() != ".pdf":
        raise Refused(f"Sheets are written as PDF; let the name {args.out.name} end in .pdf.")
    from wiring.pictures.many_records import collector_paused

    with collector_paused():  # to the end: the process ends with it
        return _write(args)


def _write(args: Namespace) -> int:
    from wiring.files.store import write_whole
    from wiring.findings.situation import examine
    from wiring.pictures.pdf import pdf_bytes
    from wiring.sheets.sheet_set import sheet_set

    opened = open_plan(args)
    situation = examine(opened.plan, opened.kinds, opened.positions)
    paper = PAPERS[args.paper] if args.paper else opened.plan.habits.paper
    only = [name.strip().lower() for name in args.only.split(",") if name.strip()] if args.only else None
    try:
        pages = sheet_set(situation, paper, only=only, scene=args.scene)
    except ValueError as fault:
        raise Refused(str(fault)) from None
    write_whole(pdf_bytes(pages, opened.plan.title, opened.plan.author), args.out)
    print(f"Wrote {args.out}: {len(pages)} {'sheet' if len(pages) == 1 else 'sheets'}")
    return FINE
