"""A further table beneath samples as columns, whose own header leaves the samples' headings to the table above it."""

from __future__ import annotations

import re
from collections import Counter

from wellchem.models.codes import Fraction, LayoutKind
from wellchem.reading.rows import TakenColumn
from wellchem.reading.tables.cells import Cell, Cells, Kind
from wellchem.reading.tables.headers import NAMING, Head, Header, column_meaning, names_beneath
from wellchem.reading.tables.shape import R, Shape, ValueColumn, units_among

_REPLICATE = re.compile(r"[\s_.#-]*\d{1,2}$")
_BRACKETED = re.compile(r"[(\[]([^()\[\]]+)[)\]]$")


def stacked_at(cells: Cells, above: Header, row: int) -> tuple[Header, Shape, str] | None:
    """The header that this row is, its table's shape and unit: the same headings under several samples of `above`."""
    samples = {column: head.group or head.own[0] for column, head in above.heads.items() if head.group or head.own[1:]}
    naming = above.columns(*NAMING)
    line = cells.line(row)
    if not naming or len(set(samples.values())) < 2:
        return None
    name = naming[0]
    beside = [cell for cell in line if cell.column != name]
    if len(beside) < 2 or not all(cell.column in samples and _heading(cell) for cell in beside):
        return None
    under: dict[str, list[str]] = {}
    for cell in beside:
        under.setdefault(samples[cell.column], []).append(cell.text)
    if Counter(map(tuple, under.values())).most_common(1)[0][1] < 2:
        return None
    title = cells.text(row, name)
    unit = found[1] if (found := _BRACKETED.search(title)) and cells.lexicon.kind(found[1]) & Kind.UNIT else ""
    if title and not unit and not cells.lexicon.kind(title) & Kind.HEADER:
        return None
    names, filled = names_beneath(cells, row + 1, name)
    if not names or names * 2 < filled:
        return None
    heads = {cell.column: Head(cell.column, cell.text, (cell.text,), samples[cell.column], None) for cell in beside}
    header = Header(row, row, {**above.heads, **heads}, "vertical")
    shape = _shape(cells, row, name, beside, samples)
    _unheaded(cells, row, shape, above, samples)
    return header, shape, unit


def _heading(cell: Cell) -> bool:
    return not cell.kind & (Kind.VALUE | Kind.DATE) or bool(cell.kind & (Kind.HEADER | Kind.NAME))


def _shape(cells: Cells, row: int, name: int, beside: list[Cell], samples: dict[int, str]) -> Shape:
    shape = Shape(0, cells.width - 1, name, {}, [])
    shape.taken[name] = TakenColumn(name, cells.text(row, name), "name", "holds analyte names, as in the table above")
    statistic = False
    for cell in beside:
        statistic = _is_statistic(cells, cell.text, statistic)
        if statistic:
            shape.layout[cell.column] = LayoutKind.STATISTIC
            shape.taken[cell.column] = TakenColumn(cell.column, cell.text, str(R.STATISTIC), "header words")
            continue
        fraction = _fraction(cells, row, name, cell.text)
        if fraction is None:
            shape.ambiguous.append(cell.column)
            shape.taken[cell.column] = TakenColumn(cell.column, cell.text, "ambiguous", "headed by another analyte")
            continue
        label = samples[cell.column] if cell.kind & Kind.NAME else f"{samples[cell.column]} {cell.text}"
        shape.values.append(ValueColumn(cell.column, said={"sample_id": label}, fraction=fraction))
        shape.taken[cell.column] = TakenColumn(cell.column, cell.text, "value", f"values of sample {label}")
    units = units_among(cells, [column for column in shape.columns() if column < beside[0].column], name, row + 1)
    shape.some_units.update(units)
    for value in shape.values if units else ():
        value.beside["unit"] = list(units)
    for column in units:
        shape.layout[column] = LayoutKind.ADMINISTRATIVE
        shape.taken[column] = TakenColumn(column, "", "unit", "no heading")
    return shape


def _unheaded(cells: Cells, row: int, shape: Shape, above: Header, samples: dict[int, str]) -> None:
    """Give columns that the table leaves without a heading to the sample that they stand under in the table above."""
    statistic = False
    for column in shape.columns():
        if column in shape.taken:
            statistic = shape.taken[column].role == R.STATISTIC
            continue
        heading = above.heads[column].own[-1] if column in samples else ""
        statistic = bool(heading) and _is_statistic(cells, heading, statistic)
        if statistic or not (cells.grid.columns[column].codes[row + 1 :] >= 0).any():
            shape.layout[column] = LayoutKind.STATISTIC if statistic else LayoutKind.ADMINISTRATIVE
            role, why = str(R.STATISTIC) if statistic else "unassigned", "no heading"
        elif column in samples:
            beside = {"unit": sorted(shape.some_units)} if shape.some_units else {}
            shape.values.append(ValueColumn(column, beside, {"sample_id": samples[column]}))
            role, why = "value", f"stands under {samples[column]} in the table above"
        else:
            shape.ambiguous.append(column)
            role, why = "ambiguous", "no heading in this table or above it"
        shape.taken[column] = TakenColumn(column, heading, role, why)


def _is_statistic(cells: Cells, text: str, beside_statistic: bool) -> bool:
    found = column_meaning(cells.lexicon, text, beside_statistic)
    return found is not None and found.role is R.STATISTIC


def _fraction(cells: Cells, row: int, name: int, text: str) -> str | None:
    """The fraction that a heading says by naming an analyte ("DOC1" over organic carbon), None for another analyte."""
    vocabulary = cells.lexicon.vocabulary
    words = _REPLICATE.sub("", text)
    headed = (vocabulary.name(words) or vocabulary.name(words.split()[0])) if len(words) > 1 else None
    if headed is None:
        return ""
    named = cells.text(row + 1, name)
    for fraction in (None, *Fraction):
        meant = vocabulary.name(named, fraction=fraction)
        if meant is not None and meant.analyte == headed.analyte:
            return str(fraction or headed.fraction or "")
    return None
