"""The account of every non-empty cell (or word of a page): each is claimed once, by what it became part of."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind
from wellchem.reading.grid import Grid


class Ledger:
    """Claims on the cells of a source's grids. A cell that was claimed stays with its first claim."""

    def __init__(self, grids: tuple[Grid, ...]) -> None:
        self._grids = grids
        self._open = [[column.codes >= 0 for column in grid.columns] for grid in grids]
        self._layout: dict[LayoutKind, int] = {}
        self._loose = 0
        self._links: list[tuple[NDArray[np.int32], NDArray[np.uint16]]] = []
        self.total = sum(grid.count() for grid in grids)

    def _take(self, grid: int, columns: Iterable[int], rows: Any) -> NDArray[np.uint16]:
        """Cells (words) of rows that were still open in these columns, one number a row; they are closed now."""
        words = self._grids[grid].words
        taken = np.zeros(len(self._open[grid][0][rows]) if self._open[grid] else 0, np.uint16)
        for column in columns:
            still = self._open[grid][column]
            mine = still[rows] if words is None else (still[rows] * words[rows, column]).astype(np.uint16)
            np.add(taken, mine, out=taken)
            still[rows] = False
        return taken

    def layout(self, grid: int, rows: Any, columns: Iterable[int], kind: LayoutKind) -> None:
        """Claim cells as layout of a kind."""
        count = int(self._take(grid, columns, rows).sum(dtype=np.int64))
        if count:
            self._layout[kind] = self._layout.get(kind, 0) + count

    def unread(self, grid: int, rows: Any, columns: Iterable[int]) -> None:
        """Claim cells as unread, outside any printed row."""
        self._loose += int(self._take(grid, columns, rows).sum(dtype=np.int64))

    def link(self, grid: int, rows: Any, columns: Iterable[int], printed: NDArray[np.int32]) -> None:
        """Claim cells for printed rows: `printed[i]` is the printed row that the cells of rows[i] belong to."""
        taken = self._take(grid, columns, rows)
        if taken.any():
            self._links.append((printed, taken))

    def is_open(self, grid: int, row: int, column: int) -> bool:
        """Whether nothing has claimed this cell."""
        return bool(self._open[grid][column][row])

    def layouts(self) -> dict[LayoutKind, int]:
        """Cells claimed as layout, by kind."""
        return dict(self._layout)

    def settled(self, outcome: NDArray[np.int8], kinds: int) -> NDArray[np.int64]:
        """How many cells went to printed rows of each outcome (0 … kinds - 1)."""
        made = np.zeros(kinds, np.int64)
        for printed, taken in self._links:
            mine = outcome[printed]
            made += [int(taken[mine == kind].sum(dtype=np.int64)) for kind in range(kinds)]
        return made

    @property
    def unclaimed(self) -> int:
        """Cells that nothing has claimed."""
        return sum(int(np.count_nonzero(still)) for grid in self._open for still in grid)

    @property
    def loose(self) -> int:
        """Cells claimed as unread outside any printed row."""
        return self._loose
