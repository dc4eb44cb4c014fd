"""Tables with analyte names down a column: a result a row, or a sample a column."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.rows import Coded, Table, column, constant, of
from wellchem.reading.tables.beside import apart, are_units, inverted
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import Header, header_at
from wellchem.reading.tables.heads import label
from wellchem.reading.tables.limits import limit_texts
from wellchem.reading.tables.notes import title_and_unit
from wellchem.reading.tables.roles import groups, shape_of
from wellchem.reading.tables.shape import OWN, SMALL, Shape, ValueColumn
from wellchem.reading.tables.stacked import stacked_at
from wellchem.reading.tables.ticks import BOX, ticked_columns, ticked_words

if TYPE_CHECKING:
    from wellchem.reading.tables.reader import Reader


def take(reader: Reader, grid: int, cells: Cells, header: Header) -> int:
    """Read the table under a header; the first row after it."""
    shapes = [shape_of(cells, header, first, last) for first, last in groups(header, cells.width)]
    reader.header_rows(grid, cells, range(header.first, header.last + 1))
    if len(shapes) > 1:
        for shape in shapes:
            shape.said = reader.heard_in(grid, shape.first, shape.last)
    return body(reader, grid, cells, header, shapes)


def body(reader: Reader, grid: int, cells: Cells, header: Header, shapes: list[Shape]) -> int:
    """Read the rows of a table whose columns are known; the first row after it."""
    start = header.last + 1
    start = _sample_rows(reader, grid, cells, shapes, start)
    fits = _fits(cells, shapes, header, start)
    end = cells.height
    segment = start
    values = [value.column for shape in shapes for value in shape.values]
    table = Table(grid, header.first, end - 1, _layout_name(shapes), tuple(t for s in shapes for t in s.taken.values()))
    continued = _wrapped(cells, shapes, fits, start) if cells.height <= SMALL else set()
    for odd in np.flatnonzero(~fits[start:]) + start:
        row = int(odd)
        if row < segment or row in continued:
            continue
        _emit_all(reader, grid, cells, shapes, segment, row, fits)
        if _repeats(cells, header, row):
            for again in range(row, row + header.last - header.first + 1):
                reader.layout_row(grid, again, LayoutKind.HEADER)
            segment = row + header.last - header.first + 1
            continue
        beneath = stacked_at(cells, header, row)
        if beneath is not None or header_at(cells, row) is not None:
            end = row
            break
        segment = row + 1
        reader.between(grid, cells, row, values)
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


def _sample_rows(reader: Reader, grid: int, cells: Cells, shapes: list[Shape], row: int) -> int:
    """Rows under the header of samples as columns that say something of each sample; the first row after them."""
    while len(shapes) == 1 and (names := shapes[0].name) is not None and row < cells.height:
        shape = shapes[0]
        own = {value.column for value in shape.values if value.said}
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


def _layout_name(shapes: list[Shape]) -> str:
    if any(len(shape.values) > 1 for shape in shapes):
        return "samples as columns"
    return "side by side" if len(shapes) > 1 else "a row per result"


def _wrapped(cells: Cells, shapes: list[Shape], fits: NDArray[np.bool_], start: int) -> set[int]:
    """Rows that hold nothing but the rest (or the beginning) of the name of the row above (or below) them."""
    found: set[int] = set()
    for shape in shapes:
        if shape.name is None:
            continue
        for row in range(start, cells.height):
            line = [cell for cell in cells.line(row) if cell.column in shape.columns()] if not fits[row] else []
            if len(line) != 1 or line[0].column != shape.name:
                continue
            text = line[0].text
            if title_and_unit(cells.lexicon, text):
                continue
            above = cells.text(row - 1, shape.name) if row > start and fits[row - 1] else ""
            below = cells.text(row + 1, shape.name) if row + 1 < cells.height and fits[row + 1] else ""
            if above and row - 1 not in shape.wrapped and _one_name(cells, above, f"{above} {text}"):
                shape.wrapped[row - 1] = (row, f"{above} {text}")
                found.add(row)
            elif below and _one_name(cells, below, f"{text} {below}") and not cells.lexicon.is_name(below):
                shape.wrapped[row + 1] = (row, f"{text} {below}")
                found.add(row)
    return found


def _one_name(cells: Cells, part: str, whole: str) -> bool:
    """Whether the whole is a known name, of the same analyte as the part where the part is known too."""
    name = cells.lexicon.vocabulary.name
    both, alone = name(whole), name(part)
    return both is not None and both.companion is None and (alone is None or alone.analyte == both.analyte)


def _repeats(cells: Cells, header: Header, row: int) -> bool:
    """Whether a row is the header again (on the next page, say)."""
    if header.last < header.first or row + header.last - header.first >= cells.height:
        return False
    words = [
        [cell.text for cell in cells.line(header.first + place)] for place in range(header.last - header.first + 1)
    ]
    again = [[cell.text for cell in cells.line(row + place)] for place in range(header.last - header.first + 1)]
    return words == again and bool(words[0])


def _fits(cells: Cells, shapes: list[Shape], header: Header, start: int) -> NDArray[np.bool_]:
    """Rows of the grid that are rows of the table: a name (or code) and something beside it."""
    made = np.zeros(cells.height, bool)
    small = cells.height <= SMALL
    for shape in shapes:
        naming = [*([shape.name] if shape.name is not None else []), *shape.codes]
        named = np.zeros(cells.height, bool)
        for index in naming:
            named |= cells.grid.columns[index].codes >= 0
        beside = np.zeros(cells.height, bool)
        for index in shape.columns():
            if index not in naming and index not in shape.layout:
                beside |= cells.grid.columns[index].codes >= 0
        if shape.ticks and shape.name is not None:  # none of the words marked: a result that is missing
            beside |= np.append((cells.kinds(shape.name) & Kind.NAME) > 0, False)[cells.grid.columns[shape.name].codes]
        fits = named & beside
        for index in naming[:1]:  # words other than names stand where the names do
            codes = cells.grid.columns[index].codes
            titles, labels = _titles(cells, index)
            fits &= ~labels[codes]
            if titles.any():
                titled = np.flatnonzero(fits & titles[codes])
                fits[titled] = _numbers_beside(cells, shape, titled)
        if small:
            fits &= _has_value(cells, shape, fits)
        made |= fits
    made[:start] = False
    if header.last >= header.first:  # rows that hold the header's own words again
        again = np.zeros(cells.height, np.int32)
        own = [index for index in header.heads if cells.grid.columns[index].codes[header.last] >= 0]
        for index in own:
            codes = cells.grid.columns[index].codes
            again += codes == codes[header.last]
        made &= again < max(2, len(own) / 2)
    return made


def _titles(cells: Cells, index: int) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """For each text of the column of names, whether it is a title, and whether it is a label or a header word."""
    titles, labels = [], []
    for text in cells.grid.columns[index].texts:
        kind = cells.lexicon.kind(str(text))
        odd = bool(kind & (Kind.HEADER | Kind.PHRASE)) and not kind & Kind.NAME and _prefixed(cells, str(text)) is None
        labelled = odd and (bool(kind & Kind.HEADER) or bool(label(cells.lexicon, str(text))))
        labels.append(labelled)
        titles.append(odd and not labelled)
    return np.array([*titles, False]), np.array([*labels, False])


def _numbers_beside(cells: Cells, shape: Shape, rows: NDArray[np.int64]) -> list[bool]:
    """Of these rows, those with a number in a column of results."""
    values = [value.column for value in shape.values]
    return [any(cells.lexicon.kind(cells.text(row, at)) & Kind.NUMBER for at in values) for row in rows.tolist()]


def _prefixed(cells: Cells, text: str) -> tuple[str, str] | None:
    """Role and name of a row whose name begins with a title of quality control ("Method blank: Iron")."""
    for sign in (":", " - ", " – ", "; "):
        title, found, name = text.partition(sign)
        if found and cells.lexicon.is_name(name.strip()):
            phrase = cells.lexicon.phrase(title.strip())
            if phrase is not None and phrase.role is not None:
                return str(phrase.role), name.strip()
    return None


def _has_value(cells: Cells, shape: Shape, fits: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Of the rows, those where the name is known, or a value, a flag or a limit beside it looks like one."""
    made = np.zeros(cells.height, bool)
    if shape.name is not None:
        known = np.append((cells.kinds(shape.name) & Kind.NAME) > 0, False)
        made |= known[cells.grid.columns[shape.name].codes]
    wanted = [value.column for value in shape.values] + shape.ambiguous + [limit for limit, _, _ in shape.limits]
    wanted += [
        index
        for value in shape.values
        for role in ("condition", "flag", "reporting_limit", "detection_limit")
        for index in value.beside.get(role, [])
    ]
    for index in dict.fromkeys(wanted):
        looks = np.append((cells.kinds(index) & (Kind.VALUE | Kind.NUMBER)) > 0, False)
        made |= looks[cells.grid.columns[index].codes]
    if shape.codes and shape.name is None:
        for index in shape.codes:
            made |= cells.grid.columns[index].codes >= 0
    return made


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
    for index, kind in shape.layout.items():
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
        mine = column(columns[index], rows)
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
    found = [_prefixed(cells, str(text)) for text in name.texts]
    if not any(found):
        return constant("", len(name)), name
    roles = of([pair[0] if pair else "" for pair in found])
    plain = of([pair[1] if pair else str(text) for pair, text in zip(found, name.texts, strict=True)])
    return (
        Coded(np.append(roles.codes, -1)[name.codes].astype(np.int32), roles.texts),
        Coded(np.append(plain.codes, -1)[name.codes].astype(np.int32), plain.texts),
    )


def _texts(
    reader: Reader, cells: Cells, shape: Shape, value: ValueColumn, rows: NDArray[np.int32], at: object
) -> tuple[dict[str, Coded], NDArray[np.bool_]]:
    """Texts beside a value column, by field of the printed rows."""
    columns = cells.grid.columns
    source = columns[value.column]
    mine = column(source, at)
    texts = {"value": mine}
    for role, indices in value.beside.items():
        coded = column(cells.merged_down.get(indices[0], columns[indices[0]]), at)
        for index in indices[1:]:
            coded = coded.or_else(column(cells.merged_down.get(index, columns[index]), at))
        texts[role] = inverted(coded) if shape.inverted.intersection(indices) else coded
        if role == "unit" and shape.some_units.intersection(indices):
            texts[role] = coded.kept(are_units(cells, coded)[coded.codes])
    texts["value"] = ticked_words(cells, rows, texts["value"])
    if shape.ticks:
        if value.column in shape.ticks:
            texts["value"] = constant("", len(rows))
        texts["presence"] = ticked_columns(cells, rows, shape.ticks)
    if "unit" in texts:
        boxed = np.array([bool(BOX.match(str(text))) for text in texts["unit"].texts] + [False])
        texts["unit"] = texts["unit"].kept(~boxed[texts["unit"].codes])  # the other box is no unit
        texts["value"], texts["unit"] = apart(cells, texts["value"], texts["unit"])
    if shape.limits:
        texts.update(limit_texts(reader.lexicon, cells, shape, rows))
    if value.unit:
        texts["unit"] = (
            texts["unit"].or_else(constant(value.unit, len(rows)))
            if "unit" in texts
            else constant(value.unit, len(rows))
        )
    if value.fraction and "fraction" not in texts:
        texts["fraction"] = constant(value.fraction, len(rows))
    if shape.standard:
        texts["standard"] = constant(shape.standard, len(rows))
    if value.measured:
        texts["measured"] = constant(value.measured, len(rows))
    if value.note:
        texts["column_note"] = constant(value.note, len(rows))
    if "measured" not in texts and "sample_type" in shape.identity:
        texts["measured"] = column(columns[shape.identity["sample_type"]], at)
    if shape.statistic is not None:
        texts["statistic"] = column(columns[shape.statistic], at)
    if shape.quality and not reader.section.role:
        filled = np.zeros(len(rows), bool)
        for index in shape.quality:
            filled |= columns[index].codes[rows] >= 0
        texts["quality_control"] = constant("spike", len(rows)).kept(filled)
    native = np.zeros(len(rows), bool)
    if source.native is not None:
        native = np.append(source.native, False)[mine.codes]
    return texts, native


def _ambiguous(
    reader: Reader, grid: int, cells: Cells, shape: Shape, rows: NDArray[np.int32], columns: Iterable[int]
) -> None:
    """Cells of rows that could be the result, or rows without a column that is: unread, each with those cells."""
    reason = UnreadReason.AMBIGUOUS_COLUMN if shape.ambiguous else UnreadReason.NO_VALUE
    for row in rows:
        mine = [
            index for index in columns if cells.text(int(row), index) and reader.ledger.is_open(grid, int(row), index)
        ]
        if mine:
            reader.loose_row(grid, int(row), mine, reason)
