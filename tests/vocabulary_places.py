"""Where the public data and tables lie, for tests that skip without them."""

import os
from pathlib import Path

ROOT = Path(__file__).parents[1]


def real() -> Path:
    return Path(os.environ.get("WELLCHEM_REAL_DATA", ROOT.parent / "shared" / "real"))


def facts() -> Path:
    return Path(os.environ.get("WELLCHEM_FACTS", ROOT.parent / "shared" / "facts"))
