"""Rows that give, behind a label, something of each column: its unit, its method, the day of its sample."""

from __future__ import annotations

from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.heads import label
from wellchem.vocabulary import ColumnRole


def unit_row(cells: Cells, row: int) -> bool:
    """Whether a row says in its first cell that the others are units, and they are."""
    line = cells.line(row)
    if len(line) < 2 or _role(cells, row) is not ColumnRole.UNIT:
        return False
    printed = cells.lexicon.vocabulary.is_unit
    return all(cell.kind & Kind.UNIT or not any(map(str.isalnum, cell.text)) or printed(cell.text) for cell in line[1:])


def method_row(cells: Cells, row: int) -> bool:
    """Whether a row gives the method of each column."""
    others = cells.line(row)[1:]
    words = Kind.HEADER | Kind.UNIT | Kind.NAME
    return bool(others) and _role(cells, row) is ColumnRole.METHOD and not any(cell.kind & words for cell in others)


def day_row(cells: Cells, row: int) -> bool:
    """Whether a row gives the day of each column's sample."""
    line = cells.line(row)
    return len(line) > 1 and bool(label(cells.lexicon, line[0].text)) and all(c.kind & Kind.DATE for c in line[1:])


def of_columns(cells: Cells, row: int) -> bool:
    """Whether a row gives the unit or the day of each column, and no number of the table."""
    return unit_row(cells, row) or day_row(cells, row)


def _role(cells: Cells, row: int) -> ColumnRole | None:
    """The role of the header word that a row begins with."""
    found = cells.lexicon.column(cells.line(row)[0].text.rstrip(": "))
    return found.role if found is not None else None
