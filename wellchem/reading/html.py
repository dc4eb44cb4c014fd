"""An HTML page turned into grids: one for each table, and one for the text between them.

Instruments and web services save such pages under a spreadsheet's name.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

import numpy as np

from wellchem.errors import EmptyFile
from wellchem.reading.encoding import to_utf8
from wellchem.reading.grid import Grid, Mark, Source, encode
from wellchem.reading.raised import superscript

BLOCKS = {"p", "div", "h1", "h2", "h3", "h4", "h5", "h6", "li", "br", "title", "pre", "section", "header", "footer"}
UNSEEN = {"script", "style", "head"}


def read_html(data: bytes, name: str) -> Source:
    """Grids of an HTML page. Raises `EmptyFile` where it holds no text."""
    text, encoding, notes = to_utf8(data, name)
    page = _Page()
    page.feed(text.decode("utf-8"))
    page.close()
    page.end_text()
    grids = tuple(grid for grid in map(_grid, page.tables) if grid is not None)
    if not grids:
        raise EmptyFile(name)
    return Source(name, "spreadsheet", grids, encoding, notes=("read as an HTML page", *notes))


@dataclass
class _Table:
    """Cells as they are met: text, and how many rows and columns they span."""

    rows: list[list[tuple[str, int, int]]] = field(default_factory=list)


class _Page(HTMLParser):
    """Tables and lines of text of a page, in its order; a table within a cell is a table of its own."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.tables: list[_Table] = []
        self._open: list[_Table] = []
        self._cells: list[tuple[list[str], int, int] | None] = []
        self._line: list[str] = []
        self._lines: list[str] = []
        self._unseen = 0
        self._raised = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in UNSEEN:
            self._unseen += 1
        elif tag == "table":
            self.end_text()
            self._open.append(_Table())
            self.tables.append(self._open[-1])
            self._cells.append(None)
        elif tag == "tr" and self._open:
            self._end_cell()
            self._open[-1].rows.append([])
        elif tag in ("td", "th") and self._open:
            self._end_cell()
            if not self._open[-1].rows:
                self._open[-1].rows.append([])
            spans = dict(attrs)
            self._cells[-1] = ([], _span(spans.get("rowspan")), _span(spans.get("colspan")))
        elif tag == "sup":
            self._raised = True
        elif tag in BLOCKS:
            self._break()

    def handle_endtag(self, tag: str) -> None:
        if tag in UNSEEN:
            self._unseen = max(0, self._unseen - 1)
        elif tag == "table" and self._open:
            self._end_cell()
            self._open.pop()
            self._cells.pop()
        elif tag in ("td", "th", "tr"):
            self._end_cell()
        elif tag == "sup":
            self._raised = False
        elif tag in BLOCKS:
            self._break()

    def handle_data(self, data: str) -> None:
        if self._unseen:
            return
        if self._raised:
            data = superscript(data)
        cell = self._cells[-1] if self._cells else None
        (self._line if cell is None else cell[0]).append(data)

    def end_text(self) -> None:
        """Lines of text so far become a table of one column."""
        self._break()
        if self._lines:
            self.tables.append(_Table([[(line, 1, 1)] for line in self._lines]))
            self._lines = []

    def _break(self) -> None:
        cell = self._cells[-1] if self._cells else None
        if cell is not None:
            cell[0].append(" ")
            return
        line = " ".join("".join(self._line).split())
        if line:
            self._lines.append(line)
        self._line = []

    def _end_cell(self) -> None:
        cell = self._cells[-1] if self._cells else None
        if cell is not None and self._open:
            self._open[-1].rows[-1].append((" ".join("".join(cell[0]).split()), cell[1], cell[2]))
            self._cells[-1] = None


def _span(text: str | None) -> int:
    return min(max(int(text), 1), 1000) if text and text.strip().isdigit() else 1


def _grid(table: _Table) -> Grid | None:
    """The grid of a table, spanned places left empty."""
    placed: dict[tuple[int, int], str] = {}
    taken: set[tuple[int, int]] = set()
    spans: list[tuple[int, int, int, int]] = []
    for row, cells in enumerate(table.rows):
        column = 0
        for text, height, width in cells:
            while (row, column) in taken:
                column += 1
            taken.update((row + down, column + right) for down in range(height) for right in range(width))
            if text:
                placed[row, column] = text
                if height > 1 or width > 1:
                    spans.append((row, column, height, width))
            column += width
    if not placed:
        return None
    rows = sorted({row for row, _ in placed})
    columns = sorted({column for _, column in placed})
    marks = []
    for row, column, height, width in spans:
        down = sum(row <= other < row + height for other in rows)
        right = sum(column <= other < column + width for other in columns)
        marks.append(Mark(rows.index(row), columns.index(column), "merged", f"{down}x{right}"))
    return Grid(
        columns=tuple(encode(placed.get((row, column), "") for row in rows) for column in columns),
        height=len(rows),
        rows=np.array(rows, dtype=np.int32) + 1,
        columns_at=np.array(columns, dtype=np.int32) + 1,
        marks=tuple(marks),
    )
