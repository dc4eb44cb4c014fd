"""Text whose columns are aligned by blanks, as a printer's report is: laid out like a page, a letter a step."""

from __future__ import annotations

import re
from itertools import pairwise

import numpy as np

from wellchem.reading.grid import Grid, Mark, encode
from wellchem.reading.pdf.blocks import blocks, text_lines
from wellchem.reading.pdf.rows import Row, rows_of
from wellchem.reading.pdf.scripts import Word
from wellchem.reading.pdf.words import LEADER

STEP, SIZE, PITCH = 6.0, 10.0, 12.0  # a typewriter's letter, type and line, in points
INNER_GAP = re.compile(r"\S {2,}\S")
LONGEST = 200  # lines laid out together; longer texts part at a form feed or a blank line


def is_aligned(text: str) -> bool:
    """Whether a good part of the lines has gaps of several blanks inside."""
    lines = [line.expandtabs() for line in text.split("\n") if line.strip()]
    gapped = sum(INNER_GAP.search(line.strip()) is not None for line in lines)
    return gapped >= 2 and gapped > 0.25 * len(lines)


def aligned_grids(text: str) -> list[Grid]:
    """Grids of a text, from top to bottom; `rows` are its lines."""
    lines = text.split("\n")
    cuts = [0]
    for at, line in enumerate(lines):
        if line.startswith("\f") or (at - cuts[-1] >= LONGEST and not line.strip()):
            cuts.append(at)
    grids: list[Grid] = []
    for begin, end in pairwise([*cuts, len(lines)]):
        words = [word for at in range(begin, end) for word in _words(lines[at], at)]
        text_rows: list[Row] = []
        for block in blocks(text_lines(words), set()):
            if not block.gutters:
                text_rows += [Row({0: list(line.words)}) for line in block.lines]
                continue
            if text_rows:
                grids.append(_grid(text_rows))
                text_rows = []
            grids.append(_grid(rows_of(block.lines, block.gutters, [])))
        if text_rows:
            grids.append(_grid(text_rows))
    return grids


def _words(line: str, at: int) -> list[Word]:
    """Words of a line as if typed; leaders left out."""
    words: list[Word] = []
    led = False
    baseline = (at + 1) * PITCH
    for match in re.finditer(r"\S+", line.replace("\f", "").expandtabs()):
        for piece in re.finditer(r"[._·=-]{4,}|(?:(?![._·=-]{4,}).)+", match[0]):
            if LEADER.fullmatch(piece[0]) or re.fullmatch(r"[-=_]{4,}", piece[0]):
                led = bool(words)
                continue
            x0 = (match.start() + piece.start()) * STEP
            x1 = x0 + len(piece[0]) * STEP
            words.append(Word(x0, baseline - SIZE, x1, baseline, baseline, SIZE, piece[0], led=led, blank=STEP))
            led = False
    return words


def _grid(rows: list[Row]) -> Grid:
    """The grid of rows, without columns that hold nothing."""
    used = sorted({column for row in rows for column in row.cells})
    texts = [[" ".join(word.text for word in row.cells.get(column, ())) for row in rows] for column in used]
    marks = [
        Mark(at, used.index(column), "merged", f"1x{span}")
        for at, row in enumerate(rows)
        for column, span in row.spans.items()
    ]
    return Grid(
        columns=tuple(encode(column) for column in texts),
        height=len(rows),
        rows=np.array([round(min(word.baseline for word in row.words) / PITCH) for row in rows], dtype=np.int32),
        columns_at=np.array(used, dtype=np.int32) + 1,
        marks=tuple(marks),
    )
