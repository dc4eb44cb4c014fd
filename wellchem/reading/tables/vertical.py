"""Tables with analyte names down a column: a result a row, or a sample a column."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.grid import GridColumn
from wellchem.reading.rows import Coded, Table, column, constant, of
from wellchem.reading.tables.above import samples_above, titled
from wellchem.reading.tables.beside import apart, are_units, behind, in_unit_of, inverted, not_reportable
from wellchem.reading.tables.between import between
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.comments import bounds_said
from wellchem.reading.tables.headers import Header, header_at
from wellchem.reading.tables.limits import limit_texts
from wellchem.reading.tables.reader import Reader
from wellchem.reading.tables.roles import groups, shape_of
from wellchem.reading.tables.sample_rows import sample_rows
from wellchem.reading.tables.samples import OTHER_TYPE
from wellchem.reading.tables.shape import BESIDE, IN_UNITS, OWN, SMALL, Shape, ValueColumn
from wellchem.reading.tables.stacked import stacked_at
from wellchem.reading.tables.table_rows import fractions_in, prefixed, repeats, rows_of, units_beneath, wrapped_in
from wellchem.reading.tables.ticks import BOX, ticked_columns, ticked_words


def take(reader: Reader, grid: int, cells: Cells, header: Header) -> int:
    """Read the table under a header; the first row after it."""
    header, above = samples_above(cells, header)
    shapes = [shape_of(cells, header, first, last) for first, last in groups(cells, header)]
    reader.header_rows(grid, cells, range(header.first, header.last + 1))
    for shape in shapes:
        if shape.every_row and not reader.section.role and not _other_tables(reader):
            _recoveries_of_the_method(shape)
    if len(shapes) > 1:
        for shape in shapes:
            shape.said = reader.heard_in(grid, shape.first, shape.last)
        titled(cells, header, shapes)
    for shape in shapes:
        for value in shape.values:
            value.said.update(above.get(value.column, {}))
    return body(reader, grid, cells, header, shapes)


def _other_tables(reader: Reader) -> bool:
    """Whether a table before this one has results and no recoveries beside them."""
    roles = [{column.role for column in table.columns} for table in reader.tables]
    return any("value" in held and "percent_recovery" not in held for held in roles)


def _recoveries_of_the_method(shape: Shape) -> None:
    """Recoveries beside every result leave these the household's; that they are is supposed of their column."""
    for index in shape.quality:
        shape.layout[index] = LayoutKind.ADMINISTRATIVE
    shape.quality = []
    for value in shape.values:
        value.note = value.note or shape.taken[value.column].header


def body(reader: Reader, grid: int, cells: Cells, header: Header, shapes: list[Shape]) -> int:
    """Read the rows of a table whose columns are known; the first row after it."""
    start = header.last + 1
    start = sample_rows(reader, grid, cells, shapes, start)
    fits = rows_of(cells, shapes, header, start)
    end = cells.height
    segment = start
    values = [value.column for shape in shapes for value in shape.values]
    table = Table(grid, header.first, end - 1, _layout_name(shapes), tuple(t for s in shapes for t in s.taken.values()))
    continued: set[int] = set()
    if cells.height <= SMALL:
        continued = fractions_in(cells, shapes, fits, start)
        continued |= units_beneath(cells, shapes, fits, start)
        continued |= wrapped_in(cells, shapes, fits, start)
    for odd in np.flatnonzero(~fits[start:]) + start:
        row = int(odd)
        if row < segment or row in continued:
            continue
        _emit_all(reader, grid, cells, shapes, segment, row, fits)
        if repeats(cells, header, row):
            for again in range(row, row + header.last - header.first + 1):
                reader.layout_row(grid, again, LayoutKind.HEADER)
            segment = row + header.last - header.first + 1
            continue
        beneath = stacked_at(cells, header, row)
        if beneath is not None or header_at(cells, row) is not None:
            end = row
            break
        segment = row + 1
        _units_from_here(reader, grid, cells, row, shapes)
        between(reader, grid, cells, row, values)
    else:
        beneath = None
        _emit_all(reader, grid, cells, shapes, segment, end, fits)
    reader.heard.clear()
    table.last_row = end - 1
    reader.tables.append(table)
    if beneath is not None:
        further, shape, reader.section.unit = beneath
        reader.layout_row(grid, end, LayoutKind.HEADER)
        return body(reader, grid, cells, further, [shape])
    return end


def _units_from_here(reader: Reader, grid: int, cells: Cells, row: int, shapes: list[Shape]) -> None:
    """Take units that stand where the results do, beside a title or a label: they hold from here on."""
    for value in (value for shape in shapes for value in shape.values):
        text = cells.text(row, value.column)
        if cells.lexicon.is_only_unit(text):
            value.unit = text
            reader.ledger.layout(grid, slice(row, row + 1), [value.column], LayoutKind.HEADER)


def _layout_name(shapes: list[Shape]) -> str:
    if any(len(shape.values) > 1 for shape in shapes):
        return "samples as columns"
    return "side by side" if len(shapes) > 1 else "a row per result"


def _emit_all(
    reader: Reader, grid: int, cells: Cells, shapes: list[Shape], start: int, end: int, fits: NDArray[np.bool_]
) -> None:
    if end <= start:
        return
    rows = np.flatnonzero(fits[start:end]).astype(np.int32) + start
    if len(rows):
        for shape in shapes:
            _emit(reader, grid, cells, shape, rows)


def _emit(reader: Reader, grid: int, cells: Cells, shape: Shape, rows: NDArray[np.int32]) -> None:
    """Printed rows of some rows of the grid, a value column after the other; the cells beside them are shared."""
    at: object = slice(int(rows[0]), int(rows[-1]) + 1) if len(rows) == rows[-1] - rows[0] + 1 else rows
    columns = cells.grid.columns
    if len(reader.source.grids[grid].columns) and shape.first:  # a side table may be shorter than its neighbour
        filled = np.zeros(len(rows), bool)
        for index in shape.columns():
            filled |= columns[index].codes[rows] >= 0
        rows = rows[filled]
        at = rows
    if not len(rows):
        return
    name, code_list = _names(cells, shape, rows)
    quality, name = _quality_names(cells, name)
    identity = {field: column(columns[index], at) for field, index in shape.identity.items()}
    summed_up = [index for index, head in shape.taken.items() if head.role == "statistic" and not shape.values]
    for index in shape.unassigned:
        for row in rows:
            if cells.lexicon.kind(cells.text(int(row), index)) & Kind.NUMBER:
                reader.loose_row(grid, int(row), [index], UnreadReason.AMBIGUOUS_COLUMN, shape.taken[index].header)
    for index, kind in shape.layout.items():
        if index not in summed_up:  # ranges and averages without a result beside them are what the row has to say
            reader.ledger.layout(grid, at, [index], kind)
    if not shape.values:
        further = [shape.wrapped[int(row)][0] for row in rows if int(row) in shape.wrapped]
        _ambiguous(reader, grid, cells, shape, np.array([*rows, *further], np.int32), shape.columns())
        return
    if shape.ambiguous:
        _ambiguous(reader, grid, cells, shape, rows, shape.ambiguous)
    numbers = []
    several = len(shape.values) > 1
    for value in shape.values:
        texts, native = _texts(reader, cells, shape, value, rows, at)
        if value.unit:
            over = reader.unit_where_possible(value.unit, name)
            texts["unit"] = texts["unit"].or_else(over) if "unit" in texts else over
        keep: slice | NDArray[np.int64] = slice(None)  # every row; of several columns, the rows that have a value in it
        if several:
            keep = np.flatnonzero(columns[value.column].codes[rows] >= 0)
        sample = reader.samples_of(
            {field: text.take(keep) for field, text in identity.items()}, {**shape.said, **value.said}, len(rows[keep])
        )
        named = {"name": name, "code_list": code_list}
        if (quality.codes >= 0).any():
            named["quality_control"] = quality.or_else(texts.get("quality_control", quality))
        kept = {key: text.take(keep) for key, text in {**texts, **named}.items()}
        mine = reader.emit(grid, rows[keep], value.column, kept, sample, native=native[keep])
        if several:
            own = [value.column, *(index for role in OWN for index in value.beside.get(role, []))]
            reader.ledger.link(grid, rows[keep], own, mine)
        whole = np.full(len(rows), -1, np.int32)
        whole[keep] = mine
        numbers.append(whole)
    shared = numbers[0]
    for other in numbers[1:]:
        shared = np.where(shared >= 0, shared, other)
    lonely = shared < 0
    if lonely.any():
        for row in rows[lonely]:
            left = [c for c in shape.columns() if cells.text(int(row), c) and reader.ledger.is_open(grid, int(row), c)]
            if left:
                reader.loose_row(grid, int(row), left, UnreadReason.NO_VALUE)
        rows, shared = rows[~lonely], shared[~lonely]
        at = rows
    reader.ledger.link(grid, at, shape.columns(), shared.astype(np.int32))
    for row, number in zip(rows, shared, strict=True) if shape.wrapped else ():
        if int(row) in shape.wrapped:
            reader.ledger.link(
                grid, np.array([shape.wrapped[int(row)][0]]), shape.columns(), np.array([number], np.int32)
            )


def _names(cells: Cells, shape: Shape, rows: NDArray[np.int32]) -> tuple[Coded, Coded]:
    """Printed names of rows; where there is none, the code, with the list it belongs to."""
    columns = cells.grid.columns
    name = constant("", len(rows))
    code_list = constant("", len(rows))
    order = [(shape.name, "")] if shape.name is not None else []
    for index, code in [*order, *shape.codes.items()]:
        mine = column(cells.merged_down.get(index, columns[index]), rows)
        empty = name.codes < 0
        fills = empty & (mine.codes >= 0)
        code_list = code_list.or_else(constant(code, len(rows)).kept(fills))
        name = name.or_else(mine)
    if shape.wrapped:
        whole = of([shape.wrapped[int(row)][1] if int(row) in shape.wrapped else "" for row in rows])
        name = whole.or_else(name)
    return name, code_list


def _quality_names(cells: Cells, name: Coded) -> tuple[Coded, Coded]:
    """Roles that names carry before them, and the names without them."""
    found = [prefixed(cells, str(text)) for text in name.texts]
    if not any(found):
        return constant("", len(name)), name
    roles = of([pair[0] if pair else "" for pair in found])
    plain = of([pair[1] if pair else str(text) for pair, text in zip(found, name.texts, strict=True)])
    return (
        name.reworded(roles),
        name.reworded(plain),
    )


def _texts(
    reader: Reader, cells: Cells, shape: Shape, value: ValueColumn, rows: NDArray[np.int32], at: object
) -> tuple[dict[str, Coded], NDArray[np.bool_]]:
    """Texts beside a value column, by field of the printed rows."""
    columns = cells.grid.columns
    source = columns[value.column]
    mine = column(source, at)
    texts = {"value": mine}
    for role, held in value.beside.items():
        indices = sorted(held, key=lambda index: index not in shape.reportable)
        coded = _one_beside(cells, shape, role, indices[0], at)
        coded = not_reportable(coded) if indices[0] in shape.reportable else coded
        for index in indices[1:]:
            coded = coded.or_else(_one_beside(cells, shape, role, index, at))
        texts[role] = inverted(coded) if shape.inverted.intersection(indices) else coded
        if role == "unit" and shape.some_units.intersection(indices):
            texts[role] = coded.kept(are_units(cells, coded)[coded.codes])
    texts["value"] = ticked_words(cells, rows, texts["value"])
    if shape.ticks:
        if value.column in shape.ticks:
            texts["value"] = constant("", len(rows))
        texts["presence"] = ticked_columns(cells, rows, shape.ticks)
    if shape.wrapped_units:
        own = of([shape.wrapped_units.get(int(row), "") for row in rows])
        texts["unit"] = own.or_else(texts["unit"]) if "unit" in texts else own
    if "unit" in texts:
        boxed = np.array([bool(BOX.match(str(text))) for text in texts["unit"].texts] + [False])
        texts["unit"] = texts["unit"].kept(~boxed[texts["unit"].codes])  # the other box is no unit
        texts["value"], texts["unit"] = apart(cells, texts["value"], texts["unit"])
    if value.brackets is not None:
        texts["value"], inside = behind(texts["value"])
        if value.brackets in BESIDE:
            texts.setdefault(BESIDE[value.brackets], inside)
    if shape.limits:
        texts.update(limit_texts(reader.lexicon, cells, shape, rows))
    if value.fraction and "fraction" not in texts:
        texts["fraction"] = constant(value.fraction, len(rows))
    if shape.standard:
        texts["standard"] = constant(shape.standard, len(rows))
    if value.measured:
        texts["measured"] = constant(value.measured, len(rows))
    if value.note:
        texts["column_note"] = constant(value.note, len(rows))
    if "measured" not in texts and (told := _place_of_measuring(reader, shape, columns, at)) is not None:
        texts["measured"] = told
    for index in shape.comments:
        said = bounds_said(reader.lexicon, column(columns[index], at), mine)
        if (said.codes >= 0).any():
            texts["condition"] = texts["condition"].or_else(said) if "condition" in texts else said
    if shape.statistic is not None:
        texts["statistic"] = column(columns[shape.statistic], at)
    if shape.quality and not reader.section.role:
        filled = np.zeros(len(rows), bool)
        for index in shape.quality:
            filled |= columns[index].codes[rows] >= 0
        texts["quality_control"] = constant("spike", len(rows)).kept(filled)
    native = np.zeros(len(rows), bool)
    if source.native is not None:
        native = mine.lookup(source.native, False)
    return texts, native


def _one_beside(cells: Cells, shape: Shape, role: str, index: int, at: object) -> Coded:
    """The texts of one column beside the results."""
    coded = column(cells.merged_down.get(index, cells.grid.columns[index]), at)
    return in_unit_of(cells, shape.taken[index].header, coded) if role in IN_UNITS and index in shape.taken else coded


def _place_of_measuring(reader: Reader, shape: Shape, columns: tuple[GridColumn, ...], at: object) -> Coded | None:
    """Field or laboratory, from the columns that say a kind of sample ("Field measurement")."""
    found = None
    for kind in ("sample_type", OTHER_TYPE):
        if kind in shape.identity:
            told = column(columns[shape.identity[kind]], at)
            known = np.array([reader.vocabulary.measured(str(text)) is not None for text in told.texts] + [False])
            told = told.kept(known[told.codes])
            found = told if found is None else found.or_else(told)
    return found


def _ambiguous(
    reader: Reader, grid: int, cells: Cells, shape: Shape, rows: NDArray[np.int32], columns: Iterable[int]
) -> None:
    """Cells of rows that could be the result, or rows without a column that is: unread, each with those cells."""
    for row in rows:
        mine = [
            index for index in columns if cells.text(int(row), index) and reader.ledger.is_open(grid, int(row), index)
        ]
        summed_up = [shape.taken[index].header for index in mine if shape.taken[index].role == "statistic"]
        reason = UnreadReason.AMBIGUOUS_COLUMN if shape.ambiguous else UnreadReason.NO_VALUE
        reason = UnreadReason.STATISTIC if summed_up else reason
        if mine:
            reader.loose_row(grid, int(row), mine, reason, ", ".join(dict.fromkeys(summed_up)))
