"""A workbook in the XML of 2003 ("XML Spreadsheet", saved as .xml or .xls) turned into grids.

Elements and attributes: Microsoft, XML Spreadsheet Reference (2001), from memory.
"""

from __future__ import annotations

from xml.etree import ElementTree

import numpy as np

from wellchem.errors import CorruptFile, EmptyFile
from wellchem.reading.grid import Grid, GridColumn, Mark, Source, text_array
from wellchem.reading.number_format import shown
from wellchem.reading.spreadsheet import number_text

NAMESPACE = "{urn:schemas-microsoft-com:office:spreadsheet}"
Cell = tuple[str, bool, str, str]  # text, whether a number, kind and text of its mark


def read_spreadsheet_xml(data: bytes, name: str) -> Source:
    """Grids of every sheet. Raises `CorruptFile` and `EmptyFile`."""
    try:
        root = ElementTree.fromstring(data)
        formats = _formats(root)
        grids = [grid for sheet in root.iter(f"{NAMESPACE}Worksheet") if (grid := _grid(sheet, formats)) is not None]
    except (ValueError, LookupError, ElementTree.ParseError) as error:
        raise CorruptFile(name, str(error)) from None
    if not grids:
        raise EmptyFile(name, "no sheet holds anything")
    return Source(name, "spreadsheet", tuple(grids))


def _formats(root: ElementTree.Element) -> dict[str, str]:
    """Number format of each style that has one."""
    made = {}
    for style in root.iter(f"{NAMESPACE}Style"):
        found = style.find(f"{NAMESPACE}NumberFormat")
        if found is not None:
            made[style.get(f"{NAMESPACE}ID", "")] = found.get(f"{NAMESPACE}Format", "")
    return made


def _grid(sheet: ElementTree.Element, formats: dict[str, str]) -> Grid | None:
    """The grid of a sheet; None where it holds nothing."""
    cells: dict[tuple[int, int], Cell] = {}
    spans: list[tuple[int, int, int, int]] = []
    hidden: set[int] = set()
    row = 0
    for line in sheet.iter(f"{NAMESPACE}Row"):
        row = int(line.get(f"{NAMESPACE}Index", row + 1))
        if line.get(f"{NAMESPACE}Hidden") == "1":
            hidden.add(row)
        column = 0
        for cell in line.findall(f"{NAMESPACE}Cell"):
            column = int(cell.get(f"{NAMESPACE}Index", column + 1))
            across = int(cell.get(f"{NAMESPACE}MergeAcross", "0"))
            down = int(cell.get(f"{NAMESPACE}MergeDown", "0"))
            known = _cell(cell, formats)
            if known[0]:
                cells[row, column] = known
                if across or down:
                    spans.append((row, column, down + 1, across + 1))
            column += across
    if not cells:
        return None
    rows, columns = sorted({row for row, _ in cells}), sorted({column for _, column in cells})
    row_of = {row: at for at, row in enumerate(rows)}
    column_of = {column: at for at, column in enumerate(columns)}
    marks = [
        Mark(row_of[row], column_of[column], kind, text) for (row, column), (_, _, kind, text) in cells.items() if kind
    ]
    marks += [Mark(row_of[row], -1, "hidden") for row in sorted(hidden.intersection(rows))]
    for row, column, height, width in spans:
        lower = sum(row <= other < row + height for other in rows)
        right = sum(column <= other < column + width for other in columns)
        marks.append(Mark(row_of[row], column_of[column], "merged", f"{lower}x{right}"))
    return Grid(
        columns=tuple(_column([cells.get((row, column), ("", False, "", "")) for row in rows]) for column in columns),
        height=len(rows),
        rows=np.array(rows, dtype=np.int32),
        columns_at=np.array(columns, dtype=np.int32),
        sheet=sheet.get(f"{NAMESPACE}Name"),
        marks=tuple(marks),
    )


def _column(cells: list[Cell]) -> GridColumn:
    known: dict[tuple[str, bool], int] = {("", False): -1}
    codes = [known.setdefault((text, native), len(known) - 1) for text, native, _, _ in cells]
    del known["", False]
    native = np.array([number for _, number in known], dtype=bool)
    return GridColumn(np.array(codes, dtype=np.int32), text_array([text for text, _ in known]), native)


def _cell(cell: ElementTree.Element, formats: dict[str, str]) -> Cell:
    """A cell's text, or what its number format shows where that is more than the number; its mark."""
    data = cell.find(f"{NAMESPACE}Data")
    text = "" if data is None else "".join(data.itertext()).strip()
    formula = cell.get(f"{NAMESPACE}Formula", "")
    if not text:
        return (formula, False, "formula_without_value", formula) if formula else ("", False, "", "")
    kind = "" if data is None else data.get(f"{NAMESPACE}Type", "")
    if kind == "Number":
        number = float(text)
        plain = number_text(int(number) if number.is_integer() and abs(number) < 1e15 else number)
        code = formats.get(cell.get(f"{NAMESPACE}StyleID", ""), "")
        special = shown(code, number, plain) if code else None
        return (special, True, "number_format", code) if special else (plain, True, "", "")
    if kind == "DateTime":
        return text.split(".")[0].removesuffix("T00:00:00"), False, "", ""
    return text, False, "error" if kind == "Error" else "", ""
