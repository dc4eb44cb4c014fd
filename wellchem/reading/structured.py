"""Cells that hold a record of their own, as JSON text: none of the table's cells, and not to be read as one."""

from __future__ import annotations

import dataclasses
import json

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import UnreadReason
from wellchem.reading.arrow_texts import ArrowTexts
from wellchem.reading.grid import Grid, GridColumn

_OPENING = {"{", "["}


def records_apart(grid: Grid) -> tuple[Grid, ...]:
    """The grid without cells that are JSON objects or lists, and a grid set aside of these; itself without any."""
    if grid.page is not None or grid.aside is not None:
        return (grid,)
    held = [_records(column) for column in grid.columns]
    if not any(mine.any() for mine in held):
        return (grid,)
    inside = [np.append(mine, False)[column.codes] for mine, column in zip(held, grid.columns, strict=True)]
    rows = np.flatnonzero(np.logical_or.reduce(inside))
    columns = [index for index, cells in enumerate(inside) if cells.any()]
    aside = dataclasses.replace(
        grid,
        columns=tuple(_kept(grid.columns[index], inside[index], rows) for index in columns),
        height=len(rows),
        rows=grid.rows[rows],
        columns_at=grid.columns_at[columns],
        aside=UnreadReason.NOT_A_TABLE,
        marks=(),
        notes=(),
    )
    every = np.arange(grid.height)
    rest = tuple(_kept(column, ~cells, every) for column, cells in zip(grid.columns, inside, strict=True))
    return dataclasses.replace(grid, columns=rest), aside


def _records(column: GridColumn) -> NDArray[np.bool_]:
    """Which texts of a column are JSON objects, or lists of more than plain words and numbers."""
    made = np.zeros(len(column.texts), bool)
    if isinstance(column.texts, ArrowTexts):
        opening = column.texts.beginning_with("".join(_OPENING))
    else:
        opening = [code for code, text in enumerate(column.texts.tolist()) if text[:1] in _OPENING]
    made[[code for code in opening if _is_record(column.texts[code])]] = True
    return made


def _is_record(text: str) -> bool:
    try:
        held = json.loads(text)
    except ValueError:
        return False
    return bool(held) and (isinstance(held, dict) or any(isinstance(one, dict | list) for one in held))


def _kept(column: GridColumn, cells: NDArray[np.bool_], rows: NDArray[np.intp]) -> GridColumn:
    """Some rows of a column, with those of its cells that are kept."""
    return dataclasses.replace(column, codes=np.where(cells, column.codes, -1)[rows].astype(np.int32))
