"""Older and binary spreadsheet files (.xls, .xlsb) turned into grids through python-calamine, an extra."""

from __future__ import annotations

import datetime
from io import BytesIO
from typing import Any

import numpy as np

from wellchem.errors import CorruptFile, EmptyFile, EncryptedFile, MissingExtra
from wellchem.reading.grid import Grid, GridColumn, Mark, Source, text_array
from wellchem.reading.spreadsheet import date_text, number_text

NO_FORMATS = (
    "number formats of this kind of file cannot be seen: a format that prints a sign such as < before a number, "
    "or a unit behind it, does not show here; save it as .xlsx to have it read"
)


def read_legacy(data: bytes, name: str) -> Source:
    """Grids of every sheet.

    Raises `MissingExtra` without python-calamine, `EncryptedFile`, `CorruptFile`, `EmptyFile`.
    """
    try:
        import python_calamine
    except ImportError:
        raise MissingExtra(name, "python-calamine", "Install wellchem[legacy], or save it as .xlsx.") from None
    try:
        book = python_calamine.CalamineWorkbook.from_filelike(BytesIO(data))
        sheets = [(about, book.get_sheet_by_name(about.name)) for about in book.sheets_metadata]
    except python_calamine.PasswordError:
        raise EncryptedFile(name) from None
    except Exception as error:  # the library raises its own kinds for each format
        if "password" in str(error).lower() or "encrypt" in str(error).lower():
            raise EncryptedFile(name) from None
        raise CorruptFile(name, str(error).splitlines()[0]) from None
    grids = []
    for about, sheet in sheets:
        visible = about.visible == python_calamine.SheetVisibleEnum.Visible
        cells = sheet.to_python(skip_empty_area=False)
        grid = _grid(cells, about.name, not visible, sheet.merged_cell_ranges or ())
        if grid is not None:
            grids.append(grid)
    if not grids:
        raise EmptyFile(name, "no sheet holds anything")
    return Source(name, "spreadsheet", tuple(grids), notes=(NO_FORMATS,))


def _grid(cells: list[list[Any]], sheet: str, hidden: bool, merged: Any) -> Grid | None:
    """The grid of a sheet's values, from its first row and column on; None where there are none."""
    rows = [at for at, row in enumerate(cells) if any(_known(value)[0] for value in row)]
    columns, ats = [], []
    for at in range(max((len(row) for row in cells), default=0)):
        known: dict[tuple[str, bool], int] = {("", False): -1}
        codes = [known.setdefault(_known(cells[row][at]), len(known) - 1) for row in rows]
        del known[("", False)]
        if known:
            texts = text_array([text for text, _ in known])
            native = np.array([number for _, number in known], dtype=bool)
            columns.append(GridColumn(np.array(codes, dtype=np.int32), texts, native))
            ats.append(at)
    if not columns:
        return None
    marks = []
    for (top, left), (bottom, right) in merged:
        if top in rows and left in ats:
            height = sum(top <= row <= bottom for row in rows)
            width = sum(left <= at <= right for at in ats)
            marks.append(Mark(rows.index(top), ats.index(left), "merged", f"{height}x{width}"))
    return Grid(
        columns=tuple(columns),
        height=len(rows),
        rows=np.array(rows, dtype=np.int32) + 1,
        columns_at=np.array(ats, dtype=np.int32) + 1,
        sheet=sheet,
        hidden=hidden,
        marks=tuple(marks),
        notes=("the sheet is hidden",) if hidden else (),
    )


def _known(value: Any) -> tuple[str, bool]:
    """Text of a value, and whether it is a number."""
    if isinstance(value, bool):
        return ("TRUE" if value else "FALSE"), False
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        value = int(value)
    if isinstance(value, int | float):
        return number_text(value), True
    if isinstance(value, datetime.date | datetime.time | datetime.timedelta):
        return date_text(value), False
    return str(value).strip(), False
