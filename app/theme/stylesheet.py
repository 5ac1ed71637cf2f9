"""The few rules a palette cannot say; widgets are found by their object name or a `look` property."""

import re

from app.theme.surfaces import surfaces
from app.theme.words import scaled, softly
from wiring.pictures.theme import Theme

_RULES = """
QWidget {{ font-size: 13px; }}
QToolTip {{ background: {ink}; color: {side}; border: 0; padding: 5px 8px; }}
QLabel[look="quiet"], QLabel[look="caption"] {{ color: {quiet}; }}
QLabel[look="caption"] {{ font-size: 12px; }}
QLabel[look="heading"] {{ font-size: 12px; font-weight: 600; color: {quiet}; }}
QLabel[look="title"] {{ font-size: 16px; font-weight: 600; }}
QLabel[look="strong"] {{ font-weight: 600; }}
QLabel[look="wrong"] {{ color: {danger}; font-size: 12px; }}
QLabel[look="big"] {{ font-size: 22px; font-weight: 600; }}

#header, #strip {{ background: {header}; }}
#header {{ border-bottom: 1px solid {hair}; }}
#strip {{ border-top: 1px solid {hair}; }}
#tray {{ background: {side}; border-right: 1px solid {hair}; }}
#inspector {{ background: {side}; border-left: 1px solid {hair}; }}
#pageBar {{ background: {paper}; border-bottom: 1px solid {hair}; }}
#page {{ background: {paper}; }}

#views {{ background: {hover}; border-radius: 8px; }}
#views QToolButton {{ padding: 4px 10px; border-radius: 6px; color: {quiet}; }}
#views QToolButton:hover {{ color: {ink}; }}
#views QToolButton:checked {{ background: {field}; color: {ink}; font-weight: 600;
    border: 1px solid {hair}; border-bottom: 2px solid {copper}; }}
#views QToolButton:focus {{ border: 1px solid {copper}; }}

QMenuBar {{ background: transparent; border: 0; padding: 0; }}
QMenuBar::item {{ padding: 6px 10px; border-radius: 5px; background: transparent; }}
QMenuBar::item:selected {{ background: {hover}; }}
QMenu {{ background: {field}; border: 1px solid {hair}; padding: 6px; }}
QMenu::item {{ padding: 6px 24px 6px 26px; border-radius: 5px; }}
QMenu::item:selected {{ background: {chosen}; color: {ink}; }}
QMenu::item:disabled {{ color: {quiet}; }}
QMenu::separator {{ height: 1px; background: {hair}; margin: 6px 8px; }}

QToolButton, QPushButton {{ border: 1px solid transparent; border-radius: 6px; padding: 5px 8px; }}
QToolButton {{ background: transparent; }}
QToolButton::menu-indicator {{ image: none; }}
QToolButton[look="small"] {{ padding: 2px; }}
QToolButton:hover {{ background: {hover}; }}
QToolButton:pressed {{ background: {pressed}; }}
QToolButton:checked {{ background: {chosen}; border-bottom: 2px solid {copper}; padding-bottom: 4px; }}
QToolButton:focus, QPushButton:focus {{ border-color: {copper}; }}
QPushButton {{ background: {field}; border-color: {hair}; padding: 6px 14px; }}
QPushButton:hover {{ background: {hover}; }}
QPushButton:pressed {{ background: {pressed}; }}
QPushButton[look="main"] {{ background: {copper}; color: {on_copper}; border-color: {copper};
    font-weight: 600; }}
QPushButton[look="main"]:focus {{ border: 2px solid {ink}; padding: 5px 13px; }}
QPushButton[look="main"]:disabled {{ background: transparent; color: {edge}; border-color: {hair}; }}
QPushButton[look="plain"] {{ background: transparent; border-color: transparent; color: {copper};
    padding: 4px 6px; min-height: 17px; text-align: left; }}
QPushButton[look="plain"]:hover {{ background: {hover}; color: {ink}; }}
QPushButton[look="plain"]:focus {{ border-color: {copper}; }}

QPushButton#openExample {{ padding-right: 8px; }}
QPushButton::menu-indicator {{ image: url({arrow}); width: 10px; height: 10px;
    subcontrol-origin: padding; subcontrol-position: right center; right: 5px; }}

QPushButton[look="mend"] {{ padding: 0 10px; color: {ink}; border-color: {edge}; }}
QPushButton[look="mend"]:hover {{ background: {hover}; border-color: {copper}; }}
QPushButton[look="mend"]:pressed {{ background: {pressed}; }}
QPushButton[look="mend"]:focus {{ border-color: {copper}; }}

QPushButton[look="small"] {{ background: transparent; border-color: transparent; color: {quiet};
    font-size: 12px; padding: 2px 4px; min-height: 20px; text-align: left; }}
QPushButton[look="small"]:hover {{ background: {hover}; color: {ink}; }}
QPushButton[look="small"]:focus {{ border-color: {copper}; }}
QToolButton[look="month"] {{ font-size: 12px; padding: 3px 2px; min-width: 34px; color: {quiet};
    border: 1px solid {hair}; }}
QToolButton[look="month"]:checked {{ color: {ink}; }}
QToolButton[look="month"]:focus {{ border-color: {copper}; }}

QLineEdit, QComboBox, QPlainTextEdit, QDateEdit {{ background: {field}; border: 1px solid {hair};
    border-bottom: 1px solid {edge}; border-radius: 5px; padding: 4px 7px; min-height: 18px;
    selection-background-color: {copper}; selection-color: {on_copper}; }}
QListView::item:selected, QTableView::item:selected {{ border-left: 3px solid {copper}; border-radius: 0;
    background: {chosen}; color: {ink}; }}
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QDateEdit:focus {{ border: 1px solid {copper}; }}
QLineEdit[wrong="true"] {{ border: 1px solid {danger}; }}
QLineEdit#planTitle {{ background: transparent; border: 1px solid transparent; font-weight: 600; }}
QLineEdit#planTitle:hover {{ background: {hover}; }}
QLineEdit#planTitle:focus {{ background: {field}; border-color: {copper}; }}
QComboBox::drop-down, QDateEdit::drop-down {{ border: 0; width: 20px; }}
QComboBox::down-arrow, QDateEdit::down-arrow {{ image: url({arrow}); width: 11px; height: 11px; }}
QComboBox[look="slim"] {{ padding: 4px 3px; }}
QComboBox[look="slim"]::drop-down {{ width: 13px; }}
QComboBox[look="slim"]::down-arrow {{ width: 9px; height: 9px; }}
/* A list that drops down by itself lies in no window: behind it there is nothing to show through. */
QListView {{ background: {field}; border: 1px solid {hair}; }}
QMainWindow QListView, QMainWindow QTreeView, QMainWindow QTableView {{ background: transparent; border: 0; }}
QFileDialog QListView, QFileDialog QTreeView {{ background: {field}; border: 1px solid {hair}; }}
QFileDialog QListView::item:selected {{ background: {chosen}; color: {ink}; border: 0; border-radius: 3px; }}
QFileDialog #sidebar {{ min-width: 130px; }}
QComboBox QAbstractItemView {{ background: {field}; border: 1px solid {hair}; padding: 4px; outline: 0;
    selection-background-color: {chosen}; selection-color: {ink}; }}

QListView, QTreeView, QTableView {{ outline: 0;
    selection-background-color: {chosen}; selection-color: {ink}; }}
QListView::item {{ border-radius: 6px; }}
QTableView {{ gridline-color: {hair}; selection-background-color: {chosen}; selection-color: {ink}; }}
QTableView::item {{ padding: 5px 8px; }}
QHeaderView {{ background: transparent; }}
QHeaderView::section {{ background: transparent; color: {quiet}; border: 0; border-bottom: 1px solid {hair};
    padding: 5px 8px; font-weight: 600; }}
QTableView QTableCornerButton::section {{ background: transparent; border: 0; }}
QScrollArea, QScrollArea > QWidget > QWidget {{ background: transparent; border: 0; }}
QScrollBar:vertical {{ background: transparent; width: 10px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; height: 10px; margin: 0; }}
QScrollBar::handle {{ background: {hair}; border-radius: 4px; margin: 1px;
    min-width: 28px; min-height: 28px; }}
QScrollBar::handle:hover {{ background: {edge}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QSplitter::handle {{ background: {hair}; }}
QSplitter::handle:hover {{ background: {copper}; }}
QCheckBox {{ spacing: 8px; }}
QCheckBox:focus {{ color: {copper}; }}
QCheckBox::indicator {{ width: 15px; height: 15px; border: 1px solid {edge}; border-radius: 3px;
    background: {field}; }}
QCheckBox::indicator:checked {{ image: url({tick}); border-color: {copper}; }}
QCheckBox::indicator:disabled {{ border-color: {hair}; background: transparent; }}
#notice {{ background: {notice}; border: 1px solid {edge}; border-radius: 8px; }}
#inlineInput {{ background: {header}; border: 1px solid {copper}; border-radius: 6px; }}
#choices {{ background: {header}; border-top: 1px solid {hair}; }}
#choices QToolButton {{ border: 1px solid {hair}; padding: 4px 12px; }}
#choices QToolButton:checked {{ border-color: {copper}; font-weight: 600; }}
QFrame[look="rule"] {{ background: {hair}; border: 0; max-height: 1px; min-height: 1px; }}
QFrame[look="upright"] {{ background: {hair}; border: 0; max-width: 1px; min-width: 1px; }}
"""

# What grows with the words: their size, and the least room of what holds them.
LARGE_PX = 21.0  # a size read from afar already
_SIZE = re.compile(r"\b(font-size|min-height|min-width): (\d\d)px")


def stylesheet(theme: Theme, arrow_path: str) -> str:
    """Return the application's stylesheet for a theme; `arrow_path` is the picture of a list's arrow."""
    s = surfaces(theme)
    tick = arrow_path.replace("arrow-", "tick-")  # it lies beside the arrow, in the same ink
    rules = _SIZE.sub(lambda size: f"{size[1]}: {_grown(float(size[2]))}px", _RULES)
    return rules.format(**s._asdict(), arrow=arrow_path, tick=tick, notice=s.chosen)


def _grown(px: float) -> int:
    return scaled(px) if px < LARGE_PX else softly(px)
