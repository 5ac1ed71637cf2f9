"""Where a file made of a plan is proposed to lie."""

from pathlib import Path

LONGEST = 50  # characters; file systems take 255 bytes, and a letter can be four of them


def proposed_file(plan_file: Path | None, title: str, suffix: str, folder: Path | None = None) -> Path:
    """Return a path beside the plan's file; without one, named by its title in that folder, or at home."""
    if plan_file is not None:
        return plan_file.with_suffix(suffix)
    return (folder or Path.home()) / (file_stem(title) + suffix)


def file_stem(title: str) -> str:
    """Return a title as a file can be called; "plan" when nothing is left of it."""
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in title)
    return " ".join(kept.split())[:LONGEST].strip() or "plan"
