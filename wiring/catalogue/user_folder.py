"""Where a user keeps catalogue files of their own: any ``*.toml`` written like those in ``kinds``.

Own battery types stand in its folder ``cells``, see :mod:`wiring.catalogue.cell_file`.
"""

from pathlib import Path


def user_folder() -> Path:
    """Return the folder; it need not exist."""
    from platformdirs import user_data_path

    return user_data_path("underboard", appauthor=False) / "kinds"
