"""Sizes of widgets that follow the size of words: given once at factor 1, worn anew when words change."""

from collections.abc import Callable

from PySide6.QtWidgets import QApplication, QHeaderView, QWidget

from app.theme.words import lined, scaled, softly

WAYS: dict[str, Callable[[QWidget, float], None]] = {
    "fixedWidth_px": lambda widget, px: widget.setFixedWidth(scaled(px)),
    "leastWidth_px": lambda widget, px: widget.setMinimumWidth(scaled(px)),
    "columnWidth_px": lambda widget, px: widget.setMinimumWidth(softly(px)),
    "mostWidth_px": lambda widget, px: widget.setMaximumWidth(scaled(px)),
    "leastHeight_px": lambda widget, px: widget.setMinimumHeight(lined(px, LINES_OF_CHART)),
    "fixedHeight_px": lambda widget, px: widget.setFixedHeight(lined(px)),
    "hintHeight_px": lambda widget, px: widget.setFixedHeight(lined(px, LINES_OF_HINT)),
    "listHeight_px": lambda widget, px: widget.setFixedHeight(lined(px, LINES_OF_LIST)),
}
LINES_OF_CHART = 6.0  # of words, above, below and between its plots
LINES_OF_HINT = 2.0  # of words in a bar that says what to do next
LINES_OF_LIST = 4.0  # of words that a low list shows at least
SECTIONS = "sections_px"


def fix_width(widget: QWidget, px: float) -> None:
    """Give a widget one width."""
    _give(widget, "fixedWidth_px", px)


def least_width(widget: QWidget, px: float) -> None:
    """Give a widget the width it needs at least."""
    _give(widget, "leastWidth_px", px)


def column_width(widget: QWidget, px: float) -> None:
    """Give a column of the window the width it needs at least; in it words are broken into lines."""
    _give(widget, "columnWidth_px", px)


def most_width(widget: QWidget, px: float) -> None:
    """Give a widget the width it has at most."""
    _give(widget, "mostWidth_px", px)


def fix_height(widget: QWidget, px: float) -> None:
    """Give a widget one height, for one line of words."""
    _give(widget, "fixedHeight_px", px)


def chart_height(widget: QWidget, px: float) -> None:
    """Give a chart the height it needs at least."""
    _give(widget, "leastHeight_px", px)


def hint_height(widget: QWidget, px: float) -> None:
    """Give a bar one height, for two lines of words."""
    _give(widget, "hintHeight_px", px)


def list_height(widget: QWidget, px: float) -> None:
    """Give a low list one height, for a few lines of words."""
    _give(widget, "listHeight_px", px)


def section_width(header: QHeaderView, column: int, px: float) -> None:
    """Give a column of a table its width."""
    header.setProperty(SECTIONS, {**(header.property(SECTIONS) or {}), str(column): px})
    header.resizeSection(column, scaled(px))


def wear_sizes() -> None:
    """Give every widget its size at the factor of now."""
    for widget in QApplication.allWidgets():
        for way, wear in WAYS.items():
            px = widget.property(way)
            if px is not None:
                wear(widget, px)
        if isinstance(widget, QHeaderView):
            for column, px in (widget.property(SECTIONS) or {}).items():
                widget.resizeSection(int(column), scaled(px))


def _give(widget: QWidget, way: str, px: float) -> None:
    widget.setProperty(way, float(px))
    WAYS[way](widget, px)
