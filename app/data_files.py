"""Where the icons and the example layouts lie: inside an installed package, or beside it in a checkout."""

from importlib.resources import files
from pathlib import Path


def data_folder(name: str) -> Path:
    """Return the folder of that name ("icons", "demo_layouts")."""
    installed = Path(str(files("app"))) / "_data" / name
    return installed if installed.is_dir() else Path(__file__).resolve().parent.parent / name
