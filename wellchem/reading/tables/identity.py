"""Which columns of a table tell its samples apart: their numbers, names, places, days and kinds."""

from __future__ import annotations

from wellchem.models.codes import LayoutKind
from wellchem.reading.rows import HEAD_FIELDS
from wellchem.reading.tables.cells import Cells
from wellchem.reading.tables.headers import Head
from wellchem.reading.tables.samples import OTHER_ID, OTHER_TYPE
from wellchem.reading.tables.shape import R, Shape
from wellchem.vocabulary import ColumnRole


def take_identity(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int
) -> None:
    """Give the columns of a table that say something of its samples to the fields of their heads."""
    fields = {R(name): name for name in HEAD_FIELDS if name in R._value2member_map_}
    fields[R.ACTIVITY_TYPE] = "sample_type"
    known = {column for columns in by_role.values() for column in columns}
    heads = {
        column: heads.get(column, Head(column, "", (), "", None)) for column in known
    }  # some are known by what they hold
    for role, name in fields.items():
        columns = [column for column in by_role.get(role, []) if column != shape.name]
        if name == "sample_id":
            columns = _sample_columns(cells, shape, heads, columns, body)
        for column in columns:
            if name == "sample_type" and name in shape.identity and OTHER_TYPE not in shape.identity:
                shape.identity[OTHER_TYPE] = column
                shape.took(heads[column], name, "a second kind of sample")
            elif name == "sample_id" and _calls_again(cells, shape, by_role, column, body):
                shape.identity["site"] = column  # the number of the laboratory and the name of the field
                shape.took(heads[column], "site", "a second name of each sample")
            elif name == "sample_id" and name in shape.identity and OTHER_ID not in shape.identity:
                shape.identity[OTHER_ID] = column
                shape.took(heads[column], name, "a second column of sample_id")
            elif name in shape.identity:
                shape.layout.setdefault(column, LayoutKind.ADMINISTRATIVE)
                shape.took(heads[column], "administrative", f"a second column of {name}")
            else:
                shape.identity[name] = column
                shape.took(heads[column], name, "header words")


def _sample_columns(
    cells: Cells, shape: Shape, heads: dict[int, Head], columns: list[int], body: int, look: int = 400
) -> list[int]:
    """Columns of sample numbers, the one that tells samples apart first; a number of each row is no sample's."""
    rows = range(body, min(body + look, cells.height))
    told = {column: [cells.text(row, column) for row in rows] for column in columns}
    names = {cells.text(row, shape.name) for row in rows} if shape.name is not None else set()
    good = []
    for column in columns:
        distinct = len(set(told[column]))
        once = len(rows) > 3 and distinct == len(rows)
        counted = len(rows) > 1 and told[column] == [str(place + 1) for place in range(len(rows))]
        of_rows = len(names) * 2 > len(rows) or (len(names) > 1 and _places_repeat(cells, heads, rows))
        if (counted and len(names) == len(rows)) or (once and of_rows):
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            shape.took(heads[column], "administrative", "differs in every row: a number of the result")
        else:
            good.append((-distinct, column))
    return [column for _, column in sorted(good)]


def _calls_again(
    cells: Cells, shape: Shape, by_role: dict[ColumnRole, list[int]], column: int, body: int, look: int = 400
) -> bool:
    """Whether a further column of samples' names has one name for each name of the first, and no column has sites."""
    if by_role.get(R.SITE) or "sample_id" not in shape.identity or "site" in shape.identity:
        return False
    rows = range(body, min(body + look, cells.height))
    pairs = {(cells.text(row, shape.identity["sample_id"]), cells.text(row, column)) for row in rows}
    names = {first for first, _ in pairs}
    return len(pairs) == len(names) and all(second for first, second in pairs if first)


def _places_repeat(cells: Cells, heads: dict[int, Head], rows: range) -> bool:
    """Whether rows share site and date of collection: several results of one sample."""
    columns = [c for c, head in heads.items() if head.role in (R.SITE, R.DATE_COLLECTED, R.TIME_COLLECTED)]
    if not columns:
        return False
    return len({tuple(cells.text(row, column) for column in columns) for row in rows}) < len(rows)
