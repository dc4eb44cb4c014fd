"""Tables with analytes as columns: a sample a row, with remark, limit and unit columns beside the analytes'."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.grid import GridColumn
from wellchem.reading.rows import Coded, Table, column, constant
from wellchem.reading.tables.between import between
from wellchem.reading.tables.cells import Cells, Kind, Lexicon
from wellchem.reading.tables.headers import Header, header_at
from wellchem.reading.tables.limits import limit_role
from wellchem.reading.tables.reader import Reader
from wellchem.reading.tables.row_labels import unit_row
from wellchem.reading.tables.shape import LAYOUT, SMALL
from wellchem.reading.tables.visits import visits
from wellchem.reading.tables.wide_columns import Wide, united, wide_columns
from wellchem.reading.tables.wide_rows import rows_beneath
from wellchem.vocabulary import ColumnRole

_MISSING = {"na", "n/a", "nan", "null", "none", "#n/a", "."}  # what programs write for a cell that has nothing
_FIGURES = set("0123456789<>.,-+")  # with which no unit begins
_ROWS_OF = {
    ColumnRole.REPORTING_LIMIT: "reporting_limit",
    ColumnRole.DETECTION_LIMIT: "detection_limit",
    ColumnRole.UNIT: "unit",
    ColumnRole.METHOD: "method",
}


def take(reader: Reader, grid: int, cells: Cells, header: Header) -> int:
    """Read the table under a header of analytes; the first row after it."""
    parts = [wide_columns(cells, part) for part in visits(cells.lexicon, header)]
    wide = parts[0] if len(parts) == 1 else united(parts)
    reader.header_rows(grid, cells, range(header.first, header.last + 1))
    start = header.last + 1
    fits = _fits(cells, wide, header, start)
    limits: dict[str, list[int]] = {}
    odd_rows = [int(row) for row in np.flatnonzero(~fits[start:]) + start]
    beneath = rows_beneath(cells, wide, start)
    under = sorted({int(row) for rows in beneath.values() for row in rows[rows >= 0]})
    fits[under] = False
    for part in parts:
        part.beneath = beneath
    for row in _labelled(cells, wide, start, fits):
        role = _row_role(cells, row, wide)
        if role in _ROWS_OF:
            limits.setdefault(_ROWS_OF[role], []).append(row)
        kind = LayoutKind.HEADER if role in _ROWS_OF else LAYOUT.get(role, LayoutKind.ADMINISTRATIVE)
        fits[row] = False
        reader.layout_row(grid, row, kind)
    end = cells.height
    blocks: list[tuple[int, int]] = []
    segment = start
    for row in odd_rows:
        if row < segment:
            continue
        if segment < row:
            blocks.append((segment, row))
        same = all(cell.text == cells.text(header.first, cell.column) for cell in cells.line(row))
        if same and header.last >= header.first:
            segment = row + header.last - header.first + 1
            for again in range(row, min(segment, cells.height)):
                reader.layout_row(grid, again, LayoutKind.HEADER)
            continue
        if header_at(cells, row) is not None:
            end = row
            segment = row
            break
        _emit(reader, grid, cells, parts, blocks, fits, limits)
        blocks = []
        if _sample_without_results(cells, wide, row):
            reader.loose_row(grid, row, [cell.column for cell in cells.line(row)], UnreadReason.NO_VALUE)
        between(reader, grid, cells, row, [analyte.column for analyte in wide.analytes])
        segment = row + 1
    if segment < end:
        blocks.append((segment, end))
    _emit(reader, grid, cells, parts, blocks, fits, limits)
    for row in under:
        reader.layout_row(grid, row, LayoutKind.SAMPLE_HEAD)
    reader.heard.clear()
    reader.tables.append(Table(grid, header.first, end - 1, "a row per sample", tuple(wide.taken.values())))
    return end


def _fits(cells: Cells, wide: Wide, header: Header, start: int) -> NDArray[np.bool_]:
    """Rows that are samples: something in an analyte's column that is no word of a header."""
    made = np.zeros(cells.height, bool)
    for analyte in wide.analytes:
        made |= cells.grid.columns[analyte.column].codes >= 0
    balance = np.zeros(cells.height, np.int32)  # cells that are words of a header, less those that are values
    for analyte in wide.analytes[:8]:
        source = cells.grid.columns[analyte.column]
        if len(source.texts) > 20_000:
            continue
        kinds = cells.kinds(analyte.column)
        value = (kinds & Kind.VALUE) > 0
        answers = np.array(
            [cells.lexicon.is_answer(str(text)) for text in source.texts], bool
        )  # "No" heads numbers too
        word = ((kinds & (Kind.NAME | Kind.HEADER)) > 0) & ~value & ~answers
        balance += np.append(word.astype(np.int32) - value.astype(np.int32), 0)[source.codes]
    made &= balance <= 0
    made[:start] = False
    return made


def _sample_without_results(cells: Cells, wide: Wide, row: int) -> bool:
    """Whether a row says who its sample is, in three columns or more, and has nothing under any analyte."""
    line = cells.line(row)
    heads = {*wide.identity.values(), *wide.layout}
    named = any(cell.column in wide.identity.values() for cell in line)
    said = any(":" in cell.text for cell in line) or bool(line and line[0].kind & Kind.PHRASE)
    return named and len(line) > 2 and not said and all(cell.column in heads for cell in line)


def _labelled(cells: Cells, wide: Wide, start: int, fits: NDArray[np.bool_]) -> list[int]:
    """Rows that a label says are no sample's: limits, averages, guideline values."""
    found: set[int] = set()
    values = {column for column, taken in wide.taken.items() if taken.role in ("value", "other_value")}
    first = min((analyte.column for analyte in wide.analytes), default=0)
    before = {column for column in wide.layout if column < first}  # behind the results stand remarks on a sample
    places = sorted({*wide.identity.values(), *before, *([0] if cells.width else [])} - values)
    kinds = {wide.identity[name] for name in ("matrix", "sample_type") if name in wide.identity}
    for index in places:
        source = cells.grid.columns[index]
        if len(source.texts) > 20_000:
            continue
        for code, text in enumerate(source.texts):
            if not any(letter.isalpha() for letter in str(text)):
                continue
            if index in kinds and cells.lexicon.vocabulary.is_water(str(text)) is not None:
                continue  # "GW" is groundwater there, and the limit of a German report elsewhere
            if (role := _label_role(cells.lexicon, str(text))) is not None:
                rows = np.flatnonzero(source.codes[start:] == code) + start
                if len(rows) <= max(2, cells.height // 20):
                    found.update(int(row) for row in rows if role is not ColumnRole.UNIT or unit_row(cells, int(row)))
    found.update(row for row in np.flatnonzero(_units_alone(cells, wide)).tolist() if row >= start)
    for row in range(start, min(start + 3, cells.height)):
        others = row + 1 < cells.height and fits[row + 1] and _plain_values(cells, wide, row + 1)
        if row not in found and fits[row] and others and _limits_by_content(cells, wide, row):
            found.add(row)
    return sorted(row for row in found if fits[row])


def _units_alone(cells: Cells, wide: Wide) -> NDArray[np.bool_]:
    """Rows in which every cell of an analyte is a unit."""
    units, filled = np.zeros(cells.height, np.int32), np.zeros(cells.height, np.int32)
    for analyte in wide.analytes:
        source = cells.grid.columns[analyte.column]
        filled += source.codes >= 0
        if len(source.texts) <= 20_000:
            mine = [text[:1] not in _FIGURES and cells.lexicon.is_only_unit(text) for text in source.texts]
            units += np.array([*mine, False])[source.codes]
    made: NDArray[np.bool_] = (units > 0) & (units == filled)
    return made


def _label_role(lexicon: Lexicon, text: str) -> ColumnRole | None:
    """What a label says of its row that makes it no sample's: limits, averages, units, methods."""
    word = lexicon.column(text.rstrip(": "))
    if word is not None and word.role in (ColumnRole.UNIT, ColumnRole.METHOD, ColumnRole.RPD):
        return word.role
    if text.startswith("%") or text.endswith("%"):  # recoveries and differences; "50% blend" may be a sample
        return ColumnRole.PERCENT_RECOVERY
    return limit_role(lexicon, text) or lexicon.vocabulary.label_role(text)


def _limits_by_content(cells: Cells, wide: Wide, row: int) -> bool:
    """A row without a sample whose values all carry their unit: limits of detection."""
    if any(
        cells.text(row, index)
        for name, index in wide.identity.items()
        if name in ("sample_id", "site", "date_collected")
    ):
        return False
    texts = [text for analyte in wide.analytes if (text := cells.text(row, analyte.column))]
    with_unit = sum(1 for text in texts if _with_unit(cells.lexicon, text))
    return len(texts) > 1 and with_unit * 2 > len(texts)


def _plain_values(cells: Cells, wide: Wide, row: int) -> bool:
    """Whether a row has values without units: then it is a sample's, and one with units above it may be none."""
    texts = [text for analyte in wide.analytes if (text := cells.text(row, analyte.column))]
    plain = sum(bool(cells.lexicon.kind(text) & Kind.VALUE) and not _with_unit(cells.lexicon, text) for text in texts)
    return plain * 2 > len(texts)


def _with_unit(lexicon: Lexicon, text: str) -> bool:
    found = lexicon.vocabulary.value(text)
    return found is not None and bool(found.unit_text) and found.number is not None


def _row_role(cells: Cells, row: int, wide: Wide) -> ColumnRole:
    texts = [text for analyte in wide.analytes if (text := cells.text(row, analyte.column))]
    if texts and all(map(cells.lexicon.is_only_unit, texts)):
        return ColumnRole.UNIT
    for cell in cells.line(row):
        if cell.column not in {analyte.column for analyte in wide.analytes}:
            role = _label_role(cells.lexicon, cell.text)
            if role is not None:
                return role
    return ColumnRole.DETECTION_LIMIT


def _emit(
    reader: Reader,
    grid: int,
    cells: Cells,
    parts: list[Wide],
    blocks: list[tuple[int, int]],
    fits: NDArray[np.bool_],
    limits: dict[str, list[int]],
) -> None:
    """Printed rows of blocks of rows, an analyte after the other."""
    found = [np.flatnonzero(fits[first:last]) + first for first, last in blocks]
    rows = np.concatenate(found).astype(np.int32) if found else np.empty(0, np.int32)
    if len(rows):
        for part in parts:
            _emit_part(reader, grid, cells, part, rows, limits)
            reader.ledger.layout(grid, rows, part.identity.values(), LayoutKind.SAMPLE_HEAD)
        for part in parts:  # when every visit has its own columns
            _claim_rest(reader, grid, cells, part, rows)


def _nearest_above(source: GridColumn, said: list[int], rows: NDArray[np.int32]) -> Coded:
    """What the nearest of some labelled rows above each row says in a column; above the first, what that says."""
    return column(source, np.array(said)[np.maximum(np.searchsorted(said, rows) - 1, 0)])


def _emit_part(
    reader: Reader, grid: int, cells: Cells, wide: Wide, rows: NDArray[np.int32], limits: dict[str, list[int]]
) -> None:
    columns = cells.grid.columns
    identity = {name: column(columns[index], rows) for name, index in wide.identity.items()}
    sample = reader.samples_apart(identity, len(rows))
    shared = {name: column(columns[index], rows) for name, index in wide.shared.items()}
    fallback = np.full(len(rows), -1, np.int32)
    for analyte in wide.analytes:
        source = columns[analyte.column]
        keep = (source.codes >= 0)[rows]
        absent = np.append(
            np.fromiter((str(t).casefold() in _MISSING for t in source.texts), bool, len(source.texts)), False
        )
        gone = absent[source.codes[rows]]
        reader.ledger.layout(grid, rows[gone], [analyte.column], LayoutKind.ADMINISTRATIVE)
        keep &= ~gone
        for name in ("flag", "condition", "presence"):
            if name in analyte.beside:
                keep |= columns[analyte.beside[name]].codes[rows] >= 0
        if not keep.any():
            continue
        mine = rows[keep]
        texts = {"value": column(source, mine), "name": constant(analyte.name, len(mine))}
        for name, index in analyte.beside.items():
            texts[name] = column(columns[index], mine)
        for name, coded in shared.items():
            texts.setdefault(name, coded.take(keep))
        said = {"unit": analyte.unit, "fraction": analyte.fraction, "code_list": analyte.code_list}
        for name, text in {**said, "standard": analyte.code_list}.items():
            if text:
                texts[name] = (
                    texts[name].or_else(constant(text, len(mine))) if name in texts else constant(text, len(mine))
                )
        for name, said_rows in limits.items():
            over = _nearest_above(source, said_rows, mine)
            if name == "unit" and name not in analyte.beside:  # a later row of units holds from there on
                texts[name] = over.kept(mine > said_rows[0]).or_else(texts[name]) if name in texts else over
            else:
                texts.setdefault(name, over)
        for name, at in wide.beneath.items():
            told = at[mine] >= 0
            under = column(source, np.maximum(at[mine], 0)).kept(told)
            texts[name] = under.or_else(texts[name]) if name in texts else under
        native = (
            np.zeros(len(mine), bool) if source.native is None else np.append(source.native, False)[source.codes[mine]]
        )
        numbers = reader.emit(grid, mine, analyte.column, texts, sample[keep], native=native)
        reader.ledger.link(grid, mine, [analyte.column, *analyte.beside.values()], numbers)
        for at in wide.beneath.values():
            told = at[mine] >= 0
            reader.ledger.link(grid, at[mine][told], [analyte.column], numbers[told])
        fallback[keep] = np.where(fallback[keep] < 0, numbers, fallback[keep])
    reader.ledger.link(grid, rows[fallback >= 0], wide.shared.values(), fallback[fallback >= 0])


def _claim_rest(reader: Reader, grid: int, cells: Cells, wide: Wide, rows: NDArray[np.int32]) -> None:
    """Claim what is no result of rows that are read; a number under a heading that is not known is unread."""
    for index, taken in wide.taken.items():
        if taken.role == "unassigned" and taken.header and cells.height <= SMALL:
            for row in rows.tolist():
                if cells.lexicon.kind(cells.text(row, index)) & Kind.NUMBER and reader.ledger.is_open(grid, row, index):
                    reader.loose_row(grid, row, [index], UnreadReason.AMBIGUOUS_COLUMN, taken.header)
    reader.ledger.layout(grid, rows, wide.shared.values(), LayoutKind.ADMINISTRATIVE)
    for analyte in wide.analytes:  # remarks beside an empty value
        reader.ledger.layout(grid, rows, analyte.beside.values(), LayoutKind.ADMINISTRATIVE)
    for index, kind in wide.layout.items():
        reader.ledger.layout(grid, rows, [index], kind)
