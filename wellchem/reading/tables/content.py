"""Tables without a header: roles follow from what the columns hold; and samples as columns under rows of labels."""

from __future__ import annotations

from wellchem.models.codes import LayoutKind
from wellchem.reading.rows import TakenColumn
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import Header, names_beneath
from wellchem.reading.tables.heads import label
from wellchem.reading.tables.shapes import BESIDE, Shape, ValueColumn
from wellchem.vocabulary import ColumnRole

_LOOK = 10


def columns_of_samples_at(cells: Cells, row: int) -> tuple[Header, Shape] | None:
    """Rows of labels ("Sample ID", "Collected") with a text for each column, above rows of analytes: samples as columns.

    A row of header words for the columns beside them ("Analyte", "Units") may stand among the labels or under them.
    """
    line = cells.line(row)
    if len(line) < 3 or not _labels(cells, row, line[0].column):
        return None
    label_column = line[0].column
    samples = {cell.column for cell in line[1:]}
    last = row
    while last + 1 < cells.height and last - row < _LOOK and (
        _labels(cells, last + 1, label_column)
        or _words_beside(cells, last + 1, samples)
        or _unknown_label(cells, last + 1, label_column, samples)
    ):
        last += 1
    named = _named_column(cells, last + 1, label_column)
    if named is None:
        return None
    used: set[int] = set()
    for data in range(last + 1, min(last + 1 + _LOOK, cells.height)):
        used.update(c.column for c in cells.line(data) if c.kind & Kind.VALUE and not c.kind & Kind.UNIT)
    values = [cell.column for cell in line[1:] if cell.column in used]
    if not values:
        return None
    shape = Shape(0, cells.width - 1, named, {}, [])
    shape.taken[named] = TakenColumn(
        named, cells.text(row, named), "name", "holds analyte names under labels of samples"
    )
    beside: dict[str, list[int]] = {}
    for column in range(cells.width):
        if column in values or column == named:
            continue
        role = _role_by_words(cells, column, row, last)
        if role in BESIDE:
            beside.setdefault(BESIDE[role], []).append(column)
            shape.taken[column] = TakenColumn(column, "", BESIDE[role], "header words or content")
        else:
            shape.layout[column] = LayoutKind.LIMIT if role is ColumnRole.LIMIT else LayoutKind.ADMINISTRATIVE
            shape.taken[column] = TakenColumn(column, "", str(role or "unassigned"), "header words or content")
    for column in values:
        said = {}
        for above in range(row, last + 1):
            field = label(cells.lexicon, cells.text(above, label_column))
            if field and (text := cells.text(above, column)):
                said[field] = text
        shape.values.append(ValueColumn(column, {name: list(of) for name, of in beside.items()}, said))
        shape.taken[column] = TakenColumn(column, cells.text(row, column), "value", "values of one sample")
    return Header(row, last, {}, "vertical"), shape


def _labels(cells: Cells, row: int, first: int) -> bool:
    """Whether a row begins with a label of a sample's head in this column and goes on with texts."""
    line = cells.line(row)
    if len(line) < 2 or line[0].column != first or line[0].kind & Kind.NAME:
        return False
    if not label(cells.lexicon, line[0].text):
        return False
    return not any(label(cells.lexicon, cell.text) or cell.kind & (Kind.NAME | Kind.HEADER) for cell in line[1:])


def _words_beside(cells: Cells, row: int, samples: set[int]) -> bool:
    """Whether a row holds header words of the columns beside the samples and nothing of the samples."""
    line = cells.line(row)
    return bool(line) and all(cell.column not in samples and cell.kind & Kind.HEADER for cell in line)


def _unknown_label(cells: Cells, row: int, first: int, samples: set[int]) -> bool:
    """Whether a row says something of the samples under a label that is not known."""
    line = cells.line(row)
    if len(line) < 2 or line[0].column != first or {cell.column for cell in line[1:]} != samples:
        return False
    return not line[0].kind & (Kind.NAME | Kind.VALUE)


def _named_column(cells: Cells, row: int, last: int) -> int | None:
    """The column at or left of the labels that holds analyte names in the next rows."""
    for column in range(last + 1):
        names, filled = names_beneath(cells, row, column)
        if names and names * 2 >= filled and cells.text(row, column):
            return column
    return None


def _role_by_words(cells: Cells, column: int, first: int, last: int) -> ColumnRole | None:
    for row in range(first, last + 1):
        found = cells.lexicon.column(cells.text(row, column)) if cells.text(row, column) else None
        if found is not None:
            return found.role
    units = filled = 0
    for row in range(last + 1, min(last + 30, cells.height)):
        if text := cells.text(row, column):
            filled += 1
            units += bool(cells.lexicon.kind(text) & Kind.UNIT)
    return ColumnRole.UNIT if units * 2 > filled else None


def list_at(cells: Cells, row: int) -> tuple[Header, Shape] | None:
    """A list without a header that begins at this row: a name, a value and perhaps a unit in columns of their own.

    The rows must show it themselves: where two columns could be the value, they are told to be ambiguous.
    """
    line = cells.line(row)
    if len(line) < 2 or not line[0].kind & Kind.NAME or line[0].kind & Kind.VALUE:
        return None
    first = line[0].column
    last = row
    while last + 1 < cells.height and last - row < 200:
        below = cells.line(last + 1)
        if below[0].column != first or (
            below[0].kind & (Kind.VALUE | Kind.PHRASE | Kind.HEADER) and not below[0].kind & Kind.NAME
        ):
            break
        last += 1
    counts: dict[int, list[int]] = {}
    for data in range(row, last + 1):
        for cell in cells.line(data)[1:]:
            seen = counts.setdefault(cell.column, [0, 0, 0])
            seen[0] += 1
            seen[1] += bool(cell.kind & Kind.VALUE and not cell.kind & Kind.UNIT)
            seen[2] += bool(cell.kind & Kind.UNIT)
    values = [column for column, (filled, value, _) in sorted(counts.items()) if value * 2 > filled]
    if not values or not any(cell.column in values and cell.kind & Kind.VALUE for cell in line):
        return None
    shape = Shape(first, cells.width - 1, first, {}, [])
    shape.taken[first] = TakenColumn(first, "", "name", "holds analyte names")
    units = [
        column for column, (filled, _, unit) in sorted(counts.items()) if unit * 2 > filled and column not in values
    ]
    if len(values) == 1:
        shape.values.append(ValueColumn(values[0], {"unit": units[:1]} if units else {}, note=str(values[0] + 1)))
        shape.taken[values[0]] = TakenColumn(values[0], "", "value", "the only column that holds values")
        if units:
            shape.taken[units[0]] = TakenColumn(units[0], "", "unit", "holds units")
    else:
        shape.ambiguous = values
        for column in values:
            shape.taken[column] = TakenColumn(column, "", "ambiguous", "several columns could be the result")
    for column in shape.columns():
        if column not in shape.taken:
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            shape.taken[column] = TakenColumn(column, "", "unassigned", "no header")
    return Header(row, row - 1, {}, "vertical"), shape
