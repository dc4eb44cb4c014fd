"""Where the reference tables lie: inside an installed wheel, or at the repository's root."""

from functools import cache
from pathlib import Path


@cache
def folder() -> Path:
    """Folder of the reference tables.

    Raises FileNotFoundError where neither place has them, which means a broken installation.
    """
    package = Path(__file__).parent
    for candidate in (package / "reference_limits", package.parent / "reference_limits"):
        if candidate.is_dir():
            return candidate
    raise FileNotFoundError("wellchem's reference tables are missing: reinstall the package")
