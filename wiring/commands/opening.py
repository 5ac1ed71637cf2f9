"""Open the plan a command is about, with the user's catalogue, and say what in it does not fit."""

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

import msgspec

from wiring.catalogue.kind import Kind
from wiring.catalogue.shelf import load_shelf
from wiring.commands.positions_text import read_positions
from wiring.commands.refusal import Refused
from wiring.files.refusals import NotReadable
from wiring.files.store import load
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.soundness import missing_kinds, unsound


class Opened(NamedTuple):
    """A plan with what it is read against, and sentences about what in it does not fit the catalogue."""

    plan: Plan
    kinds: Mapping[str, Kind]
    positions: Mapping[PartId, str]
    notes: tuple[str, ...]

    @property
    def units(self) -> str:
        """Units lengths are shown in: "metric" or "us"."""
        return self.plan.habits.units


def add_plan_arguments(parser: ArgumentParser) -> None:
    """Let a command take a plan, positions, units and a catalogue folder."""
    parser.add_argument("plan", type=Path, metavar="PLAN", help="a plan file, ending in .underboard")
    parser.add_argument(
        "--positions",
        default="",
        metavar="S1=off,...",
        help="how switches and motors stand; those not named stand as while a session runs",
    )
    parser.add_argument("--units", choices=("metric", "us"), help="units of lengths (the plan's own)")
    add_catalogue_argument(parser)


def add_catalogue_argument(parser: ArgumentParser) -> None:
    """Let a command take another folder for the user's own kinds."""
    parser.add_argument(
        "--catalogue", type=Path, metavar="FOLDER", help="folder of your own kinds (the usual one)"
    )


def kinds_for(args: Namespace) -> Mapping[str, Kind]:
    """Return all kinds; what is wrong with the user's own is told on the error stream."""
    if args.catalogue is not None and not args.catalogue.is_dir():
        raise Refused(f"There is no catalogue folder {args.catalogue}; check its name.")
    shelf = load_shelf(args.catalogue)
    for complaint in shelf.complaints:
        tell(complaint)
    return shelf.kinds


def open_plan(args: Namespace) -> Opened:
    """Return the plan the arguments name; Refused when it cannot be opened."""
    try:
        plan = load(args.plan)
    except NotReadable as reason:
        raise Refused(str(reason)) from None
    if args.units:
        plan = plan.with_changes(habits=msgspec.structs.replace(plan.habits, units=args.units))
    kinds = kinds_for(args)
    positions = {**in_use(plan, kinds), **read_positions(args.positions, plan, kinds)}
    notes = (*missing_kinds(plan, kinds), *unsound(plan, kinds))
    for note in notes:
        tell(note)
    return Opened(plan, kinds, positions, notes)


def tell(sentence: str) -> None:
    """Say something beside the output."""
    print(f"underboard: {sentence}", file=sys.stderr)
