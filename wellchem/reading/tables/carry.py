"""A table that goes on in the next block or page without its header: columns are found again by where they stand."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.grid import Grid
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import NAMING, Head, Header
from wellchem.vocabulary import ColumnRole


@dataclass(frozen=True)
class Carried:
    """A header and the grid that it stands in."""

    source: Grid
    grid: int
    header: Header

    def at(self, cells: Cells, row: int) -> Header | None:
        """The header in the columns of another grid, where this row of it can be a row of the same table."""
        heads = self._moved(cells.grid)
        made = Header(row, row - 1, heads, self.header.layout)
        if made.layout == "vertical":
            named = [index for index in made.columns(*NAMING) if cells.text(row, index)]
            valued = [index for index in made.columns(ColumnRole.VALUE) if _value(cells, row, index)]
            known = any(cells.lexicon.kind(cells.text(row, index)) & Kind.NAME for index in named)
            beside = any(cells.text(row, index) for index in heads if index not in named)
            return made if named and (valued or (known and beside)) else None
        if made.layout == "wide":
            filled = [index for index in heads if cells.text(row, index)]
            valued = [index for index in filled if _value(cells, row, index)]
            return made if len(filled) > 2 and len(valued) * 2 > len(filled) else None
        return None

    def _moved(self, grid: Grid) -> dict[int, Head]:
        """Headings by column of another grid: each goes to the column that it overlaps most across the page."""
        old, new = _spans(self.source, max(self.header.first, 0)), _spans(grid)
        if old is None or new is None:
            return self.header.heads if grid.width == self.source.width else {}
        made: dict[int, tuple[float, Head]] = {}
        for index, head in self.header.heads.items():
            overlap = np.minimum(new[:, 1], old[index, 1]) - np.maximum(new[:, 0], old[index, 0])
            overlap = np.where(np.isnan(overlap), -np.inf, overlap)
            best = int(np.argmax(overlap))
            if overlap[best] > 0 and overlap[best] > made.get(best, (0.0, head))[0]:
                made[best] = (float(overlap[best]), head)
        return {index: replace(head, column=index) for index, (_, head) in made.items()}


def _value(cells: Cells, row: int, index: int) -> bool:
    return bool(cells.lexicon.kind(cells.text(row, index)) & Kind.VALUE)


def _spans(grid: Grid, first: int = 0) -> NDArray[np.float64] | None:
    """Left and right end of each column on the page as most of its cells stand, NaN where it is empty.

    Medians: a title or a note that runs over several columns stands in the first of them.
    """
    if grid.boxes is None:
        return None
    made = np.full((grid.width, 2), np.nan)
    for index in range(grid.width):
        filled = np.flatnonzero(grid.columns[index].codes[first:] >= 0) + first
        if len(filled):
            made[index] = np.median(grid.boxes[filled, index, 0]), np.median(grid.boxes[filled, index, 2])
    return made
