"""Rows between the header of samples as columns and their results: what they say of each sample."""

from __future__ import annotations

from wellchem.models.codes import LayoutKind
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.heads import label
from wellchem.reading.tables.reader import Reader
from wellchem.reading.tables.row_labels import unit_row
from wellchem.reading.tables.shape import Shape


def sample_rows(reader: Reader, grid: int, cells: Cells, shapes: list[Shape], row: int) -> int:
    """Rows under the header of samples as columns that say something of each sample; the first row after them."""
    while len(shapes) == 1 and (names := shapes[0].name) is not None and row < cells.height:
        shape = shapes[0]
        own = {value.column for value in shape.values if value.said}
        if own and "unit" not in shape.values[0].beside and unit_row(cells, row):  # a unit over each sample
            for value in shape.values:
                value.unit = cells.text(row, value.column)
            reader.layout_row(grid, row, LayoutKind.HEADER)
            row += 1
            continue
        field = label(cells.lexicon, cells.text(row, names))
        line = cells.line(row)
        if not field and line and all(cell.kind & Kind.DATE and cell.column in own for cell in line):
            field = "date_collected"  # dates alone, each under the name of a sample
        if not field or not any(cells.text(row, value.column) for value in shape.values):
            break
        for value in shape.values:
            if text := cells.text(row, value.column):
                value.said[field] = text
        reader.layout_row(grid, row, LayoutKind.SAMPLE_HEAD)
        row += 1
    return row
