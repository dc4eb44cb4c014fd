"""A grid: what every format is turned into. Columns of dictionary-coded text whose place follows from their indices.

The formats make grids and know nothing of tables; the tables room reads grids and knows nothing of formats.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import UnreadReason

Codes = NDArray[np.int32]


@dataclass(frozen=True, eq=False)
class GridColumn:
    """One column: `texts[codes[i]]` is the text of row i; code -1 is an empty cell.

    Texts are stripped of blanks at their ends and differ from each other, but for a text that stands in the file both
    as a number and as text. `native[k]` tells that text k was a number of the file's own (a spreadsheet's), written
    with a decimal point whatever the decimal convention of the text around it.
    """

    codes: Codes
    texts: NDArray[Any]
    native: NDArray[np.bool_] | None = None

    def text(self, row: int) -> str:
        """Text of one cell, empty where the cell is."""
        code = int(self.codes[row])
        return "" if code < 0 else str(self.texts[code])


@dataclass(frozen=True, eq=False)
class Mark:
    """What a format knows of one cell of the grid, or of a whole row (`column` -1) or column (`row` -1).

    Kinds: `hidden` (cell, row or column), `superscript` (`text`: what stood raised), `formula_without_value` (`text`:
    the formula), `merged` (`text`: rows x columns of the span, as in `1x3`), `comment` (`text`: its words), `error` (a
    spreadsheet's error value), `number_format` (`text`: the format that showed something else than the number),
    `statistic` (`text`: the formula, which takes an average or the like over other cells).
    """

    row: int
    column: int
    kind: str
    text: str = ""


@dataclass(frozen=True, eq=False)
class Grid:
    """A rectangle of text cells from one page, sheet or file.

    Rows and columns that hold nothing are left out: `rows` and `columns_at` give the source's own number (from 1) of
    each row and column, so a gap in them is an empty row or column. A delimited file's row is its record, counted as a
    spreadsheet program would (blank lines count, a line break inside quotes does not); a page's row is its text line.
    `boxes`, for pages, is (height, width, 4): x0, top, x1, bottom in points, NaN where the cell is empty. `words`, for
    pages, is (height, width): how many words of the page each cell holds; elsewhere every non-empty cell counts once.
    `aside` tells why what it holds is no part of the page's text (not shown, struck out), and must not be read.
    `ruled` tells that drawn lines separate the cells. `rule_above[i]` tells that a drawn line lies above row i.
    """

    columns: tuple[GridColumn, ...]
    height: int
    rows: NDArray[np.int32]
    columns_at: NDArray[np.int32]
    page: int | None = None
    sheet: str | None = None
    hidden: bool = False
    boxes: NDArray[np.float32] | None = None
    words: NDArray[np.int32] | None = None
    aside: UnreadReason | None = None
    ruled: bool = False
    rule_above: NDArray[np.bool_] | None = None
    marks: tuple[Mark, ...] = ()
    notes: tuple[str, ...] = ()

    @cached_property
    def statistics(self) -> dict[int, dict[int, str]]:
        """Columns, and the rows of each, whose cells sum up other cells, with what tells so.

        A column that has no other number is left out: its results are averages, and its heading says what they are.
        """
        made: dict[int, dict[int, str]] = {}
        for mark in self.marks:
            if mark.kind == "statistic":
                made.setdefault(mark.column, {})[mark.row] = mark.text or "a formula over other cells"
        return {at: rows for at, rows in made.items() if len(rows) < self._numbers(at)}

    def _numbers(self, at: int) -> int:
        column = self.columns[at]
        return 0 if column.native is None else int(np.append(column.native, False)[column.codes].sum())

    @property
    def width(self) -> int:
        """Number of columns."""
        return len(self.columns)

    def row(self, index: int) -> tuple[str, ...]:
        """Texts of one row."""
        return tuple(column.text(index) for column in self.columns)

    def count(self) -> int:
        """Non-empty cells, or words where the grid is of a page."""
        if self.words is not None:
            return int(self.words.sum())
        return sum(int(np.count_nonzero(column.codes >= 0)) for column in self.columns)


@dataclass(frozen=True, eq=False)
class Source:
    """A file turned into grids: its name, format and what had to be supposed about it."""

    name: str
    format: str
    grids: tuple[Grid, ...]
    encoding: str | None = None
    delimiter: str | None = None
    notes: tuple[str, ...] = field(default=())


def text_array(texts: Sequence[str]) -> NDArray[Any]:
    """Texts as an array of objects."""
    array = np.empty(len(texts), dtype=object)
    array[:] = texts
    return array


def encode(texts: Iterable[str]) -> GridColumn:
    """A column of stripped texts, coded in order of first appearance; an empty text is an empty cell."""
    known: dict[str, int] = {"": -1}
    codes = [known.setdefault(text, len(known) - 1) for text in texts]
    del known[""]
    return GridColumn(np.array(codes, dtype=np.int32), text_array(list(known)))
