"""The room's tables: CSV beside this module, read once each, and rows that a caller adds."""

import csv
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

Row = Mapping[str, str]
Rows = str | Path | Iterable[Row]

_FOLDER = Path(__file__).parent


@cache
def bundled_rows(name: str) -> tuple[Row, ...]:
    """Rows of `<name>.csv` of this room, every cell as printed text."""
    return read_rows(_FOLDER / f"{name}.csv")


def read_rows(source: Rows) -> tuple[Row, ...]:
    """Rows of a CSV file, or of rows given as mappings; a missing cell is an empty text."""
    if isinstance(source, (str, Path)):
        with Path(source).open(encoding="utf-8-sig", newline="") as lines:
            return tuple({key: cell or "" for key, cell in row.items() if key} for row in csv.DictReader(lines))
    return tuple({key: "" if cell is None else str(cell) for key, cell in row.items()} for row in source)


def definitions_path() -> Path:
    """The registry's definitions, in pint's syntax."""
    return _FOLDER / "units.txt"
