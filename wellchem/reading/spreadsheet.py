"""A workbook turned into one grid for each sheet that holds something."""

from __future__ import annotations

import datetime
import re
import warnings
import zipfile
from collections.abc import Iterator
from io import BytesIO
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from wellchem.errors import CorruptFile, EmptyFile
from wellchem.reading.formulas import is_statistic
from wellchem.reading.grid import Grid, GridColumn, Mark, Source, text_array
from wellchem.reading.number_format import shown
from wellchem.reading.raised import raised_text
from wellchem.reading.workbook_repair import repaired

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

SHEET = re.compile(rb"<(?:\w+:)?sheet\s")
_MIDNIGHT = datetime.time()
Known = tuple[str, bool, str, str]  # text, native, kind of mark, text of mark


def read_spreadsheet(data: bytes, name: str) -> Source:
    """Grids of every sheet of an .xlsx or .xlsm workbook, hidden ones too.

    Numbers are written in full whatever their format rounds to; a format that shows something else (`"<"0.0`, a unit,
    a percent sign) gives what it shows. Dates are ISO text. A formula gives the value that was saved with it.
    Raises `EmptyFile` and `CorruptFile`.
    """
    notes: tuple[str, ...] = ()
    book, why = _opened(data, name)
    if book is None:
        try:
            data = repaired(data)
        except Exception as error:  # zip and XML raise their own kinds
            raise CorruptFile(name, why or _first_line(error)) from None
        book, why = _opened(data, name)
        if book is None:
            raise CorruptFile(name, why)
        notes = ("parts of the workbook are missing or broken; its cells were read without them",)
    saved = _Saved(data, name)
    grids = []
    for sheet in book.worksheets:
        grid = _grid(sheet, saved)
        if grid is None:
            notes = (*notes, f"sheet {sheet.title!r} is empty")
        else:
            grids.append(grid)
    if not grids:
        raise EmptyFile(name, "no sheet holds anything")
    return Source(name, "spreadsheet", tuple(grids), notes=notes)


def _opened(data: bytes, name: str) -> tuple[Workbook | None, str]:
    """The workbook, or why it cannot be opened whole: the library leaves out sheets whose part it does not find."""
    try:
        book = _load(data, name, values=False)
        with zipfile.ZipFile(BytesIO(data)) as archive:
            parts = [part for part in archive.namelist() if part.lower().endswith("workbook.xml")]
            named = sum(len(SHEET.findall(archive.read(part))) for part in parts)
    except CorruptFile:
        raise
    except Exception as error:  # the library raises whatever its parsers meet
        return None, _first_line(error)
    if len(book.sheetnames) < named:
        return None, f"{named - len(book.sheetnames)} of its {named} sheets are missing"
    return book, ""


def _load(data: bytes, name: str, *, values: bool) -> Workbook:
    """The workbook, with formulas or with the values saved for them."""
    import openpyxl

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return openpyxl.load_workbook(BytesIO(data), data_only=values, rich_text=True, keep_links=False)
    except (zipfile.BadZipFile, EOFError, UnicodeDecodeError) as error:
        raise CorruptFile(name, _first_line(error)) from None


def _first_line(error: Exception) -> str:
    return (str(error).splitlines() or [type(error).__name__])[0]


class _Saved:
    """The values saved for formulas: a second load, made when the first formula is met."""

    def __init__(self, data: bytes, name: str) -> None:
        self._data, self._name = data, name
        self._book: Workbook | None = None

    def cell(self, sheet: str, place: tuple[int, int]) -> Any:
        if self._book is None:
            self._book = _load(self._data, self._name, values=True)
        return self._book[sheet]._cells.get(place)


class _Column:
    """A grid's column while it is filled."""

    __slots__ = ("codes", "known", "marks", "native", "rows", "texts")

    def __init__(self) -> None:
        self.rows: list[int] = []
        self.codes: list[int] = []
        self.texts: list[str] = []
        self.native: list[bool] = []
        self.known: dict[Any, int] = {}
        self.marks: dict[int, tuple[str, str]] = {}

    def code(self, key: Any, known: Known) -> int:
        """The code of a key new to the column; -1 where its text is empty."""
        text, native, kind, about = known
        code = self.known.get(known, -1) if text else -1
        if text and code < 0:
            code = self.known[known] = len(self.texts)
            self.texts.append(text)
            self.native.append(native)
            if kind:
                self.marks[code] = (kind, about)
        self.known[key] = code
        return code


def _known(kind: str, value: Any, cell: Any) -> Known:
    """The text of a cell's value, whether it is a number, and what is to be said of it."""
    if value is None:
        return "", False, "", ""
    if kind == "n":
        plain = number_text(value)
        code = cell.number_format
        special = shown(code, value, plain)
        if special is None:
            return plain, True, "", ""
        return (special, True, "number_format", code) if special else (plain, True, "hidden", code)
    if kind == "b":
        return ("TRUE" if value else "FALSE"), False, "", ""
    if kind == "e":
        return str(value), False, "error", ""
    if isinstance(value, str):
        if "_x" in value:
            from openpyxl.utils.escape import unescape

            value = unescape(value)
        return value.strip(), False, "", ""
    return date_text(value), False, "", ""


def number_text(value: float) -> str:
    """A number in full, to the fifteen figures that a spreadsheet keeps."""
    return str(value) if isinstance(value, int) else repr(float(format(value, ".15g")))


def date_text(value: Any) -> str:
    """A date, a time or a duration as ISO text."""
    if isinstance(value, datetime.datetime):
        value = (value + datetime.timedelta(microseconds=500_000)).replace(microsecond=0)
        return str(value.date() if value.time() == _MIDNIGHT else value.isoformat())
    if isinstance(value, datetime.timedelta):
        seconds = round(value.total_seconds())
        return f"{seconds // 3600}:{seconds // 60 % 60:02d}:{seconds % 60:02d}"
    return str(value.replace(microsecond=0) if isinstance(value, datetime.time) else value)


def _grid(sheet: Worksheet, saved: _Saved) -> Grid | None:
    """The grid of a sheet; None where it holds nothing."""
    columns: dict[int, _Column] = {}
    extra: list[tuple[int, int, str, str]] = []
    for place, cell in sheet._cells.items():  # the library's own walk over cells would make the missing ones
        value = cell._value
        comment = cell.comment
        if value is None and comment is None:
            continue
        row, at = place
        column = columns.get(at)
        if column is None:
            column = columns[at] = _Column()
        kind = cell.data_type
        if kind == "f":
            formula = value if isinstance(value, str) else str(getattr(value, "text", None) or "a data table")
            cell = saved.cell(sheet.title, place)
            value, kind = (None, "n") if cell is None else (cell._value, cell.data_type)
            if value is None and kind == "n":
                extra.append((row, at, "formula_without_value", formula))
                value, kind = formula, "s"
            elif is_statistic(formula):
                extra.append((row, at, "statistic", formula))
        if kind == "s" or kind == "str":
            key: Any = value if type(value) is str else str(value)
            if type(value) is not str and value is not None:
                value, above = raised_text(value)
                key = value
                if above:
                    extra.append((row, at, "superscript", above))
        elif kind == "n" and value is not None:
            key = (cell.number_format, value)
        else:
            key = (kind, value)
        code = column.known.get(key)
        if code is None:
            code = column.code(key, _known(kind, value, cell))
        if comment is not None:
            extra.append((row, at, "comment", comment.text.strip()))
            if code < 0:
                continue
        if code >= 0:
            column.rows.append(row)
            column.codes.append(code)
    return _assembled(sheet, {at: column for at, column in columns.items() if column.rows}, extra)


def _assembled(sheet: Worksheet, columns: dict[int, _Column], extra: list[tuple[int, int, str, str]]) -> Grid | None:
    """Columns put side by side, rows and columns that hold nothing left out, and the marks at their places."""
    if not columns:
        return None
    ats = np.array(sorted(columns), dtype=np.int32)
    rows = np.unique(np.concatenate([np.array(column.rows, dtype=np.int32) for column in columns.values()]))
    grid_columns = []
    marks: list[Mark] = []
    for index, at in enumerate(ats.tolist()):
        column = columns[at]
        codes = np.full(len(rows), -1, dtype=np.int32)
        codes[np.searchsorted(rows, column.rows)] = column.codes
        grid_columns.append(GridColumn(codes, text_array(column.texts), np.array(column.native, dtype=bool)))
        for code, (kind, about) in column.marks.items():
            marks += [Mark(int(row), index, kind, about) for row in np.flatnonzero(codes == code)]
    row_of = {row: index for index, row in enumerate(rows.tolist())}
    column_of = {at: index for index, at in enumerate(ats.tolist())}
    notes: list[str] = []
    for row, at, kind, about in extra:
        if row in row_of and at in column_of:
            marks.append(Mark(row_of[row], column_of[at], kind, about))
        elif kind != "statistic":
            notes.append(f"{kind} at row {row}, column {at}: {about}")
    marks += _merged(sheet, rows, ats, row_of, column_of)
    hidden = list(_hidden(sheet, row_of, column_of))
    if hidden:
        count = sum(mark.row >= 0 for mark in hidden)
        notes.append(f"{count} hidden rows and {len(hidden) - count} hidden columns were read")
    if sheet.sheet_state != "visible":
        notes.append("the sheet is hidden")
    return Grid(
        columns=tuple(grid_columns),
        height=len(rows),
        rows=rows,
        columns_at=ats,
        sheet=sheet.title,
        hidden=sheet.sheet_state != "visible",
        marks=tuple(marks + hidden),
        notes=tuple(notes),
    )


def _merged(
    sheet: Worksheet, rows: NDArray[np.int32], ats: NDArray[np.int32], row_of: dict[int, int], column_of: dict[int, int]
) -> Iterator[Mark]:
    """Merged cells at their first cell, with the rows and columns of the grid that they span."""
    for span in sheet.merged_cells.ranges:
        if span.min_row in row_of and span.min_col in column_of:
            height = int(np.searchsorted(rows, span.max_row, "right") - np.searchsorted(rows, span.min_row))
            width = int(np.searchsorted(ats, span.max_col, "right") - np.searchsorted(ats, span.min_col))
            yield Mark(row_of[span.min_row], column_of[span.min_col], "merged", f"{height}x{width}")


def _hidden(sheet: Worksheet, row_of: dict[int, int], column_of: dict[int, int]) -> Iterator[Mark]:
    """Hidden rows and columns of the grid."""
    for row, dimension in sheet.row_dimensions.items():
        if row in row_of and (dimension.hidden or dimension.height == 0):
            yield Mark(row_of[row], -1, "hidden")
    for dimension in sheet.column_dimensions.values():
        if dimension.hidden or dimension.width == 0:
            for at in range(dimension.min or 0, (dimension.max or 0) + 1):
                if at in column_of:
                    yield Mark(-1, column_of[at], "hidden")
