"""An OpenDocument spreadsheet (.ods) turned into grids: its file says of each cell both the value and what is shown.

Elements and attributes are those of OpenDocument 1.3 (OASIS), part 3, chapters 9 and 19.
"""

from __future__ import annotations

import re
import zipfile
import zlib
from io import BytesIO
from xml.etree import ElementTree

import numpy as np

from wellchem.errors import CorruptFile, EmptyFile, EncryptedFile
from wellchem.reading.formulas import is_statistic
from wellchem.reading.grid import Grid, GridColumn, Mark, Source, text_array
from wellchem.reading.spreadsheet import number_text

OFFICE, TABLE, TEXT = (f"{{urn:oasis:names:tc:opendocument:xmlns:{name}:1.0}}" for name in ("office", "table", "text"))
# What is shown is the number alone: figures, separators, signs, a power of ten.
PLAIN = re.compile(r"[\d\s.,'’+\-−()]*(?:[eE][+-]?\d+)?")
NUMBERS = ("float", "percentage", "currency")
Cell = tuple[str, bool, str]  # text, whether a number, what to mark it with


def read_open_document(data: bytes, name: str) -> Source:
    """Grids of every sheet. Raises `EncryptedFile`, `CorruptFile` and `EmptyFile`."""
    try:
        with zipfile.ZipFile(BytesIO(data)) as archive:
            if "META-INF/manifest.xml" in archive.namelist() and b"encryption-data" in archive.read(
                "META-INF/manifest.xml"
            ):
                raise EncryptedFile(name)
            root = ElementTree.fromstring(archive.read("content.xml"))
        grids = [grid for grid in map(_grid, root.iter(f"{TABLE}table")) if grid is not None]
    except (zipfile.BadZipFile, zlib.error, KeyError, ValueError, ElementTree.ParseError, OSError) as error:
        raise CorruptFile(name, str(error)) from None
    if not grids:
        raise EmptyFile(name, "no sheet holds anything")
    return Source(name, "spreadsheet", tuple(grids))


def _grid(table: ElementTree.Element) -> Grid | None:
    """The grid of a sheet; None where it holds nothing."""
    cells: dict[tuple[int, int], Cell] = {}
    spans: list[tuple[int, int, int, int]] = []
    comments: list[tuple[int, int, str]] = []
    hidden: list[int] = []
    row = 0
    for element in table.iter(f"{TABLE}table-row"):
        repeated = int(element.get(f"{TABLE}number-rows-repeated", "1"))
        column, found = 0, False
        for cell in element:
            if cell.tag not in (f"{TABLE}table-cell", f"{TABLE}covered-table-cell"):
                continue
            times = int(cell.get(f"{TABLE}number-columns-repeated", "1"))
            known = _cell(cell)
            if known[0] and cell.tag.endswith("}table-cell"):
                found = True
                for down in range(repeated):
                    for right in range(times):
                        cells[row + down, column + right] = known
                height = int(cell.get(f"{TABLE}number-rows-spanned", "1"))
                width = int(cell.get(f"{TABLE}number-columns-spanned", "1"))
                if height > 1 or width > 1:
                    spans.append((row, column, height, width))
            comments += [(row, column, _lines(note)) for note in cell.iter(f"{OFFICE}annotation")]
            column += times
        if found and element.get(f"{TABLE}visibility") in ("collapse", "filter"):
            hidden += range(row, row + repeated)
        row += repeated
    if not cells:
        return None
    rows, columns = sorted({row for row, _ in cells}), sorted({column for _, column in cells})
    row_of = {row: at for at, row in enumerate(rows)}
    column_of = {column: at for at, column in enumerate(columns)}
    marks = [Mark(row_of[row], -1, "hidden") for row in hidden]
    for row, column, height, width in spans:
        down = sum(row <= other < row + height for other in rows)
        right = sum(column <= other < column + width for other in columns)
        marks.append(Mark(row_of[row], column_of[column], "merged", f"{down}x{right}"))
    marks += [Mark(row_of[r], column_of[c], kind) for (r, c), (_, _, kind) in cells.items() if kind]
    notes = [f"comment at row {r + 1}, column {c + 1}: {text}" for r, c, text in comments if (r, c) not in cells]
    marks += [Mark(row_of[r], column_of[c], "comment", text) for r, c, text in comments if (r, c) in cells]
    return Grid(
        columns=tuple(_column([cells.get((row, column), ("", False, "")) for row in rows]) for column in columns),
        height=len(rows),
        rows=np.array(rows, dtype=np.int32) + 1,
        columns_at=np.array(columns, dtype=np.int32) + 1,
        sheet=table.get(f"{TABLE}name"),
        marks=tuple(marks),
        notes=(*notes, f"{len(hidden)} hidden rows were read") if hidden else tuple(notes),
    )


def _column(cells: list[Cell]) -> GridColumn:
    known: dict[tuple[str, bool], int] = {("", False): -1}
    codes = [known.setdefault((text, native), len(known) - 1) for text, native, _ in cells]
    del known["", False]
    native = np.array([number for _, number in known], dtype=bool)
    return GridColumn(np.array(codes, dtype=np.int32), text_array([text for text, _ in known]), native)


def _cell(cell: ElementTree.Element) -> Cell:
    """A cell's text: the number in full, or what is shown where that is more than the number."""
    kind = cell.get(f"{OFFICE}value-type", "")
    shown = _lines(cell)
    value = cell.get(f"{OFFICE}value")
    if kind in NUMBERS and value is not None:
        if shown and not PLAIN.fullmatch(shown):
            return shown, False, "number_format"
        of_others = is_statistic(cell.get(f"{TABLE}formula", ""))
        number = float(value)
        whole = int(number) if number.is_integer() and abs(number) < 1e15 else number
        return number_text(whole), True, "statistic" if of_others else ""
    if kind == "date":
        date = cell.get(f"{OFFICE}date-value", shown)
        return date.removesuffix("T00:00:00"), False, ""
    if kind == "boolean":
        return cell.get(f"{OFFICE}boolean-value", shown).upper(), False, ""
    if shown.startswith(("#", "Err:")) and cell.get(f"{TABLE}formula"):
        return shown, False, "error"
    return shown, False, ""


def _lines(element: ElementTree.Element) -> str:
    """Text of the paragraphs that stand directly in an element."""
    return "\n".join("".join(paragraph.itertext()) for paragraph in element.findall(f"{TEXT}p")).strip()
