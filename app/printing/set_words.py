"""What is said of a set of sheets: how many, what is left out, and what its typeface cannot write."""

from collections.abc import Iterable

from app.printing.wish import Wish
from wiring.pictures.pdf import Page
from wiring.pictures.picture import Words
from wiring.pictures.typefaces import runs

LONGEST = 30


def counted_words(number: int, wish: Wish) -> str:
    """Return how many sheets there are, and what the set lacks when it is not the whole one."""
    left_out = len(wish.left_out)
    said = (
        "1 sheet" if number == 1 else f"{number} sheets",
        "only what changed" if wish.changed_only else "",
        f"only {wish.scene}" if wish.scene else "",
        f"{left_out} document{'s' if left_out > 1 else ''} left out" if left_out else "",
    )
    return ", ".join(words for words in said if words)


def boxed_words(pages: Iterable[Page]) -> str:
    """Return a sentence, with a space before it, when letters come out as empty boxes; "" when none does."""
    words = (item for page in pages for item in page.picture.items if isinstance(item, Words))
    found = next((w.text for w in words if "" in runs(w.text, w.weight)), "")
    if not found:
        return ""
    quoted = found if len(found) <= LONGEST else f"{found[:LONGEST]}…"
    return (
        f" “{quoted}” has letters the printed typeface lacks, and each shows as a box; use others for them."
    )
