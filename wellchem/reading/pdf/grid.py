"""The words and rules of a page laid out as grids: ruled tables, blocks with gutters, free text."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.grid import Grid, Mark, encode
from wellchem.reading.pdf.blocks import Block, Line, apart, blocks, text_lines
from wellchem.reading.pdf.rows import NUMBER, Row, rows_of
from wellchem.reading.pdf.rules import Lattice, Rules, lattices
from wellchem.reading.pdf.scripts import Word
from wellchem.reading.pdf.words import PageWords

GUTTER = 8.0  # points from which a gutter can part the columns of a page
COMMON = 0.2  # parts of the type size within which lines of two columns stand on a common baseline
DEEPEST = 4  # columns of pages within columns


@dataclass(frozen=True)
class _Table:
    """Rows of a page and what is known of them before they are a grid."""

    rows: list[Row]
    width: int
    ruled: bool
    notes: tuple[str, ...] = ()

    @property
    def place(self) -> tuple[float, float, float]:
        """Top of the first row, left and right edge of all."""
        words = [word for row in self.rows for word in row.words]
        top = min(word.top for word in self.rows[0].words)
        return top, min(word.x0 for word in words), max(word.x1 for word in words)


def page_grids(page: PageWords, rules: Rules, number: int) -> list[Grid]:
    """Grids of one page, from top to bottom; every word is in one cell of one of them."""
    tables = _tables(page.words, rules)
    tables += [_Table([Row({0: [word]})], 1, False, ("slanted text across the page",)) for word in page.slanted]
    baselines = np.array([line.baseline for line in text_lines(page.words + page.slanted)])
    return [_grid(table, page, number, baselines) for table in tables if table.rows]


def _tables(words: list[Word], rules: Rules) -> list[_Table]:
    """Tables of a page in reading order."""
    rest = list(words)
    found: list[_Table] = []
    frames: list[Lattice] = []
    for lattice in lattices(rules):
        inside = [word for word in rest if lattice.holds((word.x0 + word.x1) / 2, (word.top + word.bottom) / 2)]
        if len({lattice.field((word.x0 + word.x1) / 2, word.baseline)[1] for word in inside}) < 2:
            continue  # bars of a graph in a shaded row
        held = set(map(id, inside))
        rest = [word for word in rest if id(word) not in held]
        frames.append(lattice)
        found += _of_lattice(lattice, inside, rules)
    free = _free(rest, rules, frames)
    for table in found:
        free.insert(_position(free, table), table)
    return free


def _position(tables: list[_Table], new: _Table) -> int:
    """Where a ruled table comes among others in reading order: before the first that stands below it."""
    for at, table in enumerate(tables):
        (top, x0, x1), (new_top, new_x0, new_x1) = table.place, new.place
        if top > new_top and min(x1, new_x1) > max(x0, new_x0):
            return at
    return len(tables)


def _of_lattice(lattice: Lattice, words: list[Word], rules: Rules) -> list[_Table]:
    """A lattice as one table; or what stands in its cells, where these hold tables of their own."""
    cells: dict[int, list[Word]] = {}
    for word in words:
        row, column = lattice.field((word.x0 + word.x1) / 2, (word.top + word.bottom) / 2)
        cells.setdefault(int(lattice.cell[row, column]), []).append(word)
    frames = [cell for cell in cells.values() if _is_frame(cell)]
    if sum(map(len, frames)) > 0.5 * len(words):
        return [table for at in sorted(cells) for table in _free(cells[at], rules, [])]
    width = lattice.cell.shape[1]
    rows: list[Row] = []
    begun: list[int] = []  # at which row each band begins
    tall: list[tuple[int, int, int]] = []  # band, column and height of cells over several bands
    for band in range(lattice.cell.shape[0]):
        begun.append(len(rows))
        placed: dict[int, list[Word]] = {}
        spans: dict[int, int] = {}
        for at, inside in cells.items():
            first, column = divmod(at, width)
            if first == band:
                placed[column] = inside
                span = int((lattice.cell[band] == at).sum())
                if span > 1:
                    spans[column] = span
                high = int((lattice.cell[:, column] == at).sum())
                if high > 1:
                    tall.append((band, column, high))
        if not placed:
            continue
        rows += _band_rows(placed, spans, lattice.xs)
    begun.append(len(rows))
    for band, column, high in tall:
        if begun[band] < begun[band + high] and column in rows[begun[band]].cells:
            rows[begun[band]].tall[column] = begun[band + high] - begun[band]
    return [_Table(rows, width, True)]


def _is_frame(words: list[Word]) -> bool:
    """Whether a cell holds lines in columns of their own, so that it only frames a table."""
    lines = text_lines(words)
    if len(lines) < 3 or sum(len(line.phrases) > 1 for line in lines) < 3:
        return False
    return any(block.gutters and len(block.lines) >= 3 for block in blocks(lines, set()))


def _band_rows(cells: dict[int, list[Word]], spans: dict[int, int], xs: NDArray[np.float64]) -> list[Row]:
    """What stands between two rules of a lattice: one row with wrapped cells; or several, where nothing parts them."""
    lines = text_lines([word for words in cells.values() for word in words])
    column_of = {id(word): column for column, words in cells.items() for word in words}
    filled = [{column_of[id(word)] for word in line.words} for line in lines]
    lead = min(cells)
    # The rest of a wrapped row fills only some of its columns.
    most = max(map(len, filled))
    full = sum(lead in columns and len(columns) > max(1.0, 0.5 * most) for columns in filled)
    several = sum(len(columns) > 1 for columns in filled)
    figures = sum(any(NUMBER.match(word.text) for word in line.words if column_of[id(word)] != lead) for line in lines)
    if len(lines) < 2 or full < 2 or figures < 2 or min(full, figures) < 0.6 * several:
        return [Row(cells, spans, True)]
    rows = rows_of(tuple(lines), tuple((x - 0.5, x + 0.5) for x in xs[1:-1].tolist()), [])
    rows[0].rule_above = True
    return rows


def _free(words: list[Word], rules: Rules, frames: list[Lattice], depth: int = 0) -> list[_Table]:
    """Tables of words that no lattice holds."""
    if not words:
        return []
    lines = text_lines(words)
    sides = _sides(lines) if depth < DEEPEST else None
    if sides is not None:
        return [table for side in sides for table in _free(side, rules, frames, depth + 1)]
    breaks = {
        at
        for at in range(1, len(lines))
        for frame in frames
        if lines[at - 1].baseline <= frame.box[1] + 2 and frame.box[3] - 2 <= lines[at].bottom
    }
    found: list[_Table] = []
    text: list[Row] = []
    after_frames = [lines[at] for at in breaks]
    for block in blocks(lines, breaks):
        if text and (block.gutters or any(block.lines[0] is line for line in after_frames)):
            found.append(_Table(text, 1, False))
            text = []
        if not block.gutters:
            text += [Row({0: list(line.words)}) for line in block.lines]
            continue
        titles = _titles(block)
        sides = _sides(list(block.lines[titles:])) if depth < DEEPEST else None
        if sides is not None:
            if titles:
                found.append(_Table([Row({0: list(line.words)}) for line in block.lines[:titles]], 1, False))
            found += [table for side in sides for table in _free(side, rules, frames, depth + 1)]
        else:
            found.append(_of_block(block, rules))
    if text:
        found.append(_Table(text, 1, False))
    return found


def _titles(block: Block) -> int:
    """How many lines at a block's head are a phrase across gutters."""
    for at, line in enumerate(block.lines):
        x0, x1 = line.words[0].x0, max(word.x1 for word in line.words)
        if len(line.phrases) > 1 or not any(x0 < gutter[0] and x1 > gutter[1] for gutter in block.gutters):
            return at
    return 0


def _of_block(block: Block, rules: Rules) -> _Table:
    """The table of a block of lines with gutters."""
    x0 = min(word.x0 for line in block.lines for word in line.words)
    x1 = max(word.x1 for line in block.lines for word in line.words)
    long = [y for y, start, end in rules.horizontal.tolist() if min(end, x1) - max(start, x0) > 0.5 * (x1 - x0)]
    return _Table(rows_of(block.lines, block.gutters, long), len(block.gutters) + 1, False)


def _sides(lines: list[Line]) -> tuple[list[Word], list[Word]] | None:
    """Words left and right of a gutter that parts columns of the page; None where there is none.

    Columns of a page are told from those of a table: both are running text, or their lines do not stand on common
    baselines.
    """
    words = [word for line in lines for word in line.words]
    if len(lines) < 3:
        return None
    order = sorted(words, key=lambda word: word.x0)
    reach = order[0].x1
    gaps = []
    for word in order[1:]:
        if word.x0 - reach >= GUTTER:
            gaps.append((word.x0 - reach, (word.x0 + reach) / 2))
        reach = max(reach, word.x1)
    for _, middle in sorted(gaps, reverse=True)[:6]:
        left = [[word for word in line.words if word.x1 <= middle] for line in lines]
        right = [[word for word in line.words if word.x0 >= middle] for line in lines]
        fewer = min(sum(map(bool, left)), sum(map(bool, right)))
        if fewer < 3:
            continue
        pairs = [(a[0], b[0]) for a, b in zip(left, right, strict=True) if a and b]
        common = sum(abs(a.baseline - b.baseline) <= COMMON * min(a.size, b.size) for a, b in pairs) / fewer
        text = [_is_running_text(side) for side in (left, right)]
        if all(text) or (any(text) and common < 0.75) or common < 0.3:
            return [word for part in left for word in part], [word for part in right for word in part]
    return None


def _is_running_text(lines: list[list[Word]]) -> bool:
    """Whether lines are of several words, without gaps and mostly as long as the longest of them."""
    filled = [line for line in lines if line]
    x0 = min(line[0].x0 for line in filled)
    x1 = max(line[-1].x1 for line in filled)
    long = sum(line[-1].x1 - line[0].x0 > 0.75 * (x1 - x0) for line in filled)
    gaps = sum(apart(last, word, last.x1) for line in filled for last, word in pairwise(line))
    words = sum(map(len, filled))
    return len(filled) >= 4 and words >= 4.5 * len(filled) and long >= 0.6 * len(filled) and gaps < 0.3 * len(filled)


def _grid(table: _Table, page: PageWords, number: int, baselines: NDArray[np.float64]) -> Grid:
    """The grid of a table, without columns that hold nothing."""
    used = sorted({column for row in table.rows for column in row.cells})
    place = {column: at for at, column in enumerate(used)}
    height, width = len(table.rows), len(used)
    texts: list[list[str]] = [[""] * height for _ in used]
    boxes = np.full((height, width, 4), np.nan, dtype=np.float32)
    counts = np.zeros((height, width), dtype=np.int32)
    marks: list[Mark] = []
    rows = np.empty(height, dtype=np.int32)
    for at, row in enumerate(table.rows):
        rows[at] = int(np.abs(baselines - min(word.baseline for word in row.words)).argmin()) + 1
        for column, words in row.cells.items():
            to = place[column]
            ordered = [word for line in text_lines(words) for word in line.words]
            texts[to][at] = _text(ordered)
            counts[at, to] = sum(word.count for word in words)
            boxes[at, to] = page.frame.back(
                min(word.x0 for word in words), min(word.top for word in words),
                max(word.x1 for word in words), max(word.bottom for word in words),
            )  # fmt: skip
            raised = " ".join(word.raised for word in ordered if word.raised)
            if raised:
                marks.append(Mark(at, to, "superscript", raised))
            span = sum(column <= other < column + row.spans.get(column, 1) for other in used)
            if span > 1 or column in row.tall:
                marks.append(Mark(at, to, "merged", f"{row.tall.get(column, 1)}x{span}"))
    return Grid(
        columns=tuple(encode(column) for column in texts),
        height=height,
        rows=rows,
        columns_at=np.array(used, dtype=np.int32) + 1,
        page=number,
        boxes=boxes,
        words=counts,
        ruled=table.ruled,
        rule_above=np.array([row.rule_above for row in table.rows], dtype=bool),
        marks=tuple(marks),
        notes=table.notes,
    )


def _text(words: list[Word]) -> str:
    """Words of a cell with blanks between, but after a hyphen that ends a line."""
    text = words[0].text
    for before, word in pairwise(words):
        wrapped = word.baseline - before.baseline > 0.5 * word.size
        hyphened = wrapped and len(before.text) > 1 and before.text.endswith("-") and word.text[:1].isalnum()
        text += word.text if hyphened else f" {word.text}"
    return text
