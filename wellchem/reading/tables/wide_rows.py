"""Rows beneath each sample of a wide table that say something of its results: qualifiers, limits, units."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.tables.cells import Cells
from wellchem.reading.tables.shape import BESIDE, SMALL
from wellchem.reading.tables.wide_columns import Wide
from wellchem.vocabulary import ColumnRole

_RESULTS = (ColumnRole.VALUE, ColumnRole.VALUE_NUMBER)

Beneath = dict[str, NDArray[np.int32]]


def rows_beneath(cells: Cells, wide: Wide, start: int) -> Beneath:
    """For each field the row that says it of the results in every row, -1 where none does; nothing without such rows.

    A column left of the results says what each row holds ("Result", "Qualifier", "RL"); the first of a sample's rows
    are its results.
    """
    first = min((analyte.column for analyte in wide.analytes), default=0)
    if cells.height > SMALL:
        return {}
    for index in range(first):
        words = {
            text: cells.lexicon.column(text) for row in range(start, cells.height) if (text := cells.text(row, index))
        }
        roles = {text: word.role if word else None for text, word in words.items()}
        fields = {BESIDE[role] for role in roles.values() if role in BESIDE}
        if fields and any(role in _RESULTS for role in roles.values()) and None not in roles.values():
            return _beneath(cells, index, start, roles)
    return {}


def _beneath(cells: Cells, index: int, start: int, roles: dict[str, ColumnRole | None]) -> Beneath:
    made: Beneath = {}
    results: int | None = None
    for row in range(start, cells.height):
        role = roles.get(cells.text(row, index))
        if role in _RESULTS:
            results = row
        elif role in BESIDE and results is not None:
            made.setdefault(BESIDE[role], np.full(cells.height, -1, np.int32))[results] = row
    return made
