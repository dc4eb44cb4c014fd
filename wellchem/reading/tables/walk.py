"""One grid from its first row to its last: what begins at each row decides who reads on from there."""

from __future__ import annotations

import numpy as np

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.rows import HEAD_FIELDS, Table, TakenColumn, constant
from wellchem.reading.rows import column as coded
from wellchem.reading.tables import vertical, wide
from wellchem.reading.tables.between import between
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.content import columns_of_samples_at, list_at
from wellchem.reading.tables.dated import with_dates
from wellchem.reading.tables.headers import Header, header_at
from wellchem.reading.tables.heads import said_of
from wellchem.reading.tables.reader import Reader
from wellchem.reading.tables.shape import BESIDE
from wellchem.vocabulary import ColumnRole

_LONG = 2000  # rows of a grid from which on it is given up where no table shows …
_BARREN = 400  # … over this many rows


def walk(reader: Reader, grid: int) -> None:
    """Read one grid."""
    cells = reader.cells(grid)
    if cells.grid.aside is not None:
        for row in range(cells.height):
            reader.loose_row(grid, row, [cell.column for cell in cells.line(row)], cells.grid.aside)
        return
    reader.open_grid(grid)
    row, barren = 0, 0
    while row < cells.height:
        tables = len(reader.tables)
        row = _at(reader, grid, cells, row)
        barren = barren + 1 if len(reader.tables) == tables else 0
        if barren > _BARREN and cells.height > _LONG:
            for left in range(row, cells.height):
                columns = [index for index in range(cells.width) if cells.text(left, index)]
                reader.loose_row(grid, left, columns, UnreadReason.NOT_A_TABLE)
            return


def _at(reader: Reader, grid: int, cells: Cells, row: int) -> int:
    """Read what begins at this row; the first row after it."""
    samples = columns_of_samples_at(cells, row)
    if samples is not None:
        for above in range(row, samples[0].last + 1):
            before = [cell for cell in cells.line(above) if cell.column < samples[1].values[0].column]
            for said in said_of(reader.lexicon, before[:-1]):  # left of the label: of all the samples
                reader.say(said.field, said.text)
            reader.layout_row(grid, above, LayoutKind.SAMPLE_HEAD)
        return vertical.body(reader, grid, cells, samples[0], [samples[1]])
    header = header_at(cells, row)
    if header is not None:
        if header.layout == "register" and (values := header.columns(ColumnRole.VALUE)):
            return _one_analyte(reader, grid, cells, header, values[0])
        if header.layout == "register":
            return _register(reader, grid, cells, header)
        return _take(reader, grid, cells, header)
    carried = reader.carried_to(grid, cells, row)
    if carried is not None:
        return _take(reader, grid, cells, carried)
    bare = list_at(cells, row)
    if bare is not None:
        return vertical.body(reader, grid, cells, bare[0], bare[1])
    between(reader, grid, cells, row)
    return row + 1


def _take(reader: Reader, grid: int, cells: Cells, header: Header) -> int:
    """Read the table under a header, which may go on in the next grid."""
    after = (wide.take if header.layout == "wide" else vertical.take)(reader, grid, cells, header)
    reader.carry(grid, header, after == cells.height)
    return after


def _one_analyte(reader: Reader, grid: int, cells: Cells, header: Header, value: int) -> int:
    """A row a sample, and one column of results: of the analyte that the title names, else nobody knows of what."""
    reader.header_rows(grid, cells, range(header.first, header.last + 1))
    identity = {
        str(head.role): column for column, head in reversed(header.heads.items()) if str(head.role) in HEAD_FIELDS
    }
    beside = {BESIDE[head.role]: column for column, head in header.heads.items() if head.role in BESIDE}
    row, rows = header.last + 1, []
    while row < cells.height and (text := cells.text(row, value)):
        if not cells.lexicon.kind(text) & Kind.VALUE and header_at(cells, row) is not None:
            break
        if any(reader.vocabulary.label_role(cell.text) for cell in cells.line(row)):
            reader.layout_row(grid, row, LayoutKind.LIMIT)  # of averages and limits
        else:
            rows.append(row)
        row += 1
    name = reader.section.name
    if not name or not rows:
        for at in rows:
            reader.loose_row(grid, at, [cell.column for cell in cells.line(at)], UnreadReason.NO_NAME)
        return row
    found = np.array(rows, dtype=np.int32)
    grids = cells.grid.columns
    texts = {field: coded(grids[column], found) for field, column in {**beside, "value": value}.items()}
    native = grids[value].native
    numbers = reader.emit(
        grid, found, value, {**texts, "name": constant(name, len(found))},
        reader.samples_of({field: coded(grids[column], found) for field, column in identity.items()}, {}, len(found)),
        native=None if native is None else np.append(native, False)[grids[value].codes[found]],
    )  # fmt: skip
    reader.ledger.link(grid, found, [value, *beside.values()], numbers)
    reader.ledger.layout(grid, found, identity.values(), LayoutKind.SAMPLE_HEAD)
    for at in rows:
        _numbers_of_nothing(reader, grid, cells, header, at)
    reader.ledger.layout(grid, found, range(cells.width), LayoutKind.ADMINISTRATIVE)
    taken = tuple(
        TakenColumn(column, head.text, str(head.role or "unassigned"), "header words")
        for column, head in sorted(header.heads.items())
    )
    reader.tables.append(Table(grid, header.first, row - 1, "a row per sample", taken))
    return row


def _numbers_of_nothing(reader: Reader, grid: int, cells: Cells, header: Header, row: int) -> None:
    """Leave numbers of a sample's row unread that stand under a heading which is not known."""
    for cell in cells.line(row):
        head = header.heads.get(cell.column)
        if head is not None and head.role is None and cell.kind & Kind.NUMBER:
            reader.loose_row(grid, row, [cell.column], UnreadReason.UNKNOWN_NAME, head.text)


def _register(reader: Reader, grid: int, cells: Cells, header: Header) -> int:
    """A list of samples: each row says something of one sample."""
    fields = {
        column: str(head.role)
        for column, head in header.heads.items()
        if head.role is not None and head.role is not ColumnRole.ADMINISTRATIVE
    }
    for row in range(header.first, header.last + 1):
        reader.layout_row(grid, row, LayoutKind.HEADER)
    row = header.last + 1
    start = row
    while row < cells.height:
        line = cells.line(row)
        filled = [cell for cell in line if cell.column in fields]
        if len(filled) < min(2, len(fields)) or header_at(cells, row) is not None:
            break
        if row > start and any(cell.kind & Kind.NAME for cell in filled[:1]):
            break
        entry = {fields[cell.column]: cell.text for cell in reversed(filled)}
        reader.entries.append(with_dates(reader.lexicon, entry))
        _numbers_of_nothing(reader, grid, cells, header, row)
        reader.layout_row(grid, row, LayoutKind.SAMPLE_HEAD)
        row += 1
    if row == start + 1 and reader.entries:
        for name, text in reader.entries[-1].items():
            reader.say(name, text)
    return row if row > start else start
