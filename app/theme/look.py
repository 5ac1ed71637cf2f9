"""Which look the editor wears, light or dark, and the one signal that says it changed."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication, QStyleFactory

from app.data_files import data_folder
from app.theme.desktop_words import factor_of_desktop
from app.theme.fonts import load_fonts, screen_font
from app.theme.sizes import wear_sizes
from app.theme.stylesheet import stylesheet
from app.theme.surfaces import THEMES, Surfaces, is_dark, palette, surfaces
from app.theme.words import factor, next_step, wear_factor
from wiring.pictures.theme import Theme


class Look(QObject):
    """Wears one theme and dresses the whole application in it."""

    changed = Signal(object)  # Theme
    enlarged = Signal(float)  # the factor chosen for the words; 0 for that of the desktop

    def __init__(self, name: str = "light", words: float = 0.0, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.name = name if name in THEMES else "light"
        self._words = words

    @property
    def theme(self) -> Theme:
        """Colours by role, as pictures use them."""
        return THEMES[self.name]

    @property
    def surfaces(self) -> Surfaces:
        """Colours of the window itself."""
        return surfaces(self.theme)

    @property
    def dark(self) -> bool:
        """Whether the dark look is worn."""
        return is_dark(self.theme)

    def dress(self, application: QApplication) -> None:
        """Give the application its style, type and palette; the rules come with `finish`."""
        load_fonts()
        application.setStyleSheet("")
        wear_factor(self._words or factor_of_desktop())
        application.setStyle(QStyleFactory.create("Fusion"))
        application.setFont(screen_font())
        application.setPalette(palette(self.theme))

    def finish(self, application: QApplication) -> None:
        """Give it its stylesheet too: after the window is built, as every widget that moves reads it anew."""
        self._colour(application)

    def wear(self, name: str) -> None:
        """Change to the look of that name, "light" or "dark"."""
        if name == self.name or name not in THEMES:
            return
        self.name = name
        application = QApplication.instance()
        if isinstance(application, QApplication):
            self._colour(application)
        self.changed.emit(self.theme)

    def toggle(self) -> None:
        """Change from light to dark or back."""
        self.wear("light" if self.dark else "dark")

    def enlarge(self, *, up: bool) -> None:
        """Write larger or smaller, one step."""
        self.write_at(next_step(factor(), factor_of_desktop(), up=up))

    def write_at(self, step: float) -> None:
        """Write at that factor; that of the desktop is followed from then on."""
        if step == factor():
            return
        self._words = 0.0 if step == factor_of_desktop() else step
        wear_factor(step)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.setStyleSheet("")
            application.setFont(screen_font())
            self._colour(application)
            wear_sizes()
        self.enlarged.emit(self._words)
        self.changed.emit(self.theme)

    def _colour(self, application: QApplication) -> None:
        arrow = data_folder("icons") / f"arrow-{self.name}.svg"
        # Rules put in place of others are worked out for every widget, unseen ones too: five times slower.
        application.setStyleSheet("")
        application.setPalette(palette(self.theme))
        application.setStyleSheet(stylesheet(self.theme, arrow.as_posix()))
