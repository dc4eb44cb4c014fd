"""Lines of a block put into columns, and lines that are one row put together."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np

from wellchem.reading.pdf.blocks import Line, parted
from wellchem.reading.pdf.scripts import Word

FIGURE = re.compile(r"[<>≤≥~±]?[-+−]?[\d.,]*\d(?:[eE][-+]?\d+)?[A-Za-z*¹²³]{0,2}|n\.?d\.?|bdl", re.IGNORECASE)
Edges = set[tuple[bool, int]]
NUMBER = re.compile(r"[<>≤≥~±]?\s*[-+−]?[\d.,]*\d|n\.?d\.?\b|bdl\b", re.IGNORECASE)
LINE_HEIGHT = 0.85  # parts of the type size: lines closer than this cannot stand in one column
CLOSE = 0.82  # parts of the usual distance of rows: a line closer than this belongs to the row


@dataclass
class Row:
    """Words in the cells of one row, how many columns a phrase across gutters spans, how many rows a tall cell does."""

    cells: dict[int, list[Word]]
    spans: dict[int, int] = field(default_factory=dict)
    rule_above: bool = False
    tall: dict[int, int] = field(default_factory=dict)

    @property
    def words(self) -> list[Word]:
        return [word for cell in self.cells.values() for word in cell]


@dataclass(frozen=True)
class _Placed:
    """A line's words in columns."""

    baseline: float
    size: float
    row: Row


def rows_of(lines: tuple[Line, ...], gutters: tuple[tuple[float, float], ...], ruled: list[float]) -> list[Row]:
    """Rows of lines, from top to bottom; `ruled` are the heights of the rules that part them.

    A line is part of a row where no rule lies between and it stands closer than rows do, or closer than lines of one
    column can, or where its text plainly goes on (an open bracket, a hanging indent).
    """
    edges = _edges(lines, gutters)
    placed = [_Placed(line.baseline, line.size, _placed(line, gutters, edges)) for line in lines]
    parted = [any(a.baseline < y < b.baseline for y in ruled) for a, b in pairwise(placed)]
    anchors = [len(one.row.cells) > 1 for one in placed]
    steps = [
        b.baseline - a.baseline
        for a, b in pairwise([one for one, anchor in zip(placed, anchors, strict=True) if anchor])
    ]
    usual = float(np.median(steps)) if len(steps) > 1 else float("inf")
    # Rows that follow each other directly tell how close rows stand, also where headings part most of them.
    direct = [
        b.baseline - a.baseline for (a, b), ends in zip(pairwise(placed), pairwise(anchors), strict=True) if all(ends)
    ]
    if direct:
        usual = min(usual, float(np.median(direct)))
    every = sorted(step for a, b in pairwise(placed) if (step := b.baseline - a.baseline) < 3 * b.size)
    if every:  # lines as far from each other as nearly all are not close, whatever stands in them
        usual = min(usual, every[-1] if len(every) < 5 else every[int(0.9 * (len(every) - 1))])
    # Where rules part nearly all rows, all that stands between two of them is one row.
    banded = sum(parted) >= 2 and sum(parted) >= 0.6 * (sum(anchors) - 1)
    joined = [_one_row(placed, anchors, at, usual, banded) and not parted[at] for at in range(len(parted))]
    joined = _settled(placed, anchors, joined)
    rows: list[Row] = []
    for at, one in enumerate(placed):
        if at and joined[at - 1]:
            for column, words in one.row.cells.items():
                rows[-1].cells.setdefault(column, []).extend(words)
            rows[-1].spans.update(one.row.spans)
        else:
            one.row.rule_above = bool(at and parted[at - 1]) or (not at and any(y < one.baseline for y in ruled))
            rows.append(one.row)
    return rows


def _one_row(placed: list[_Placed], anchors: list[bool], at: int, usual: float, banded: bool) -> bool:
    """Whether lines `at` and the next are parts of one row, as far as they alone tell."""
    above, below = placed[at], placed[at + 1]
    step = below.baseline - above.baseline
    size = min(above.size, below.size)
    if step < LINE_HEIGHT * size:
        return True
    if above.row.spans or below.row.spans:
        return False
    if anchors[at] and anchors[at + 1]:
        # Two full lines are one row only as a header of several lines, without a figure in either.
        return banded and step < 1.45 * size and not (_figures(above.row) and _figures(below.row))
    if banded and step < 1.6 * size:
        return True
    if step < CLOSE * usual and step < 1.45 * size and (anchors[at] or anchors[at + 1]):
        return True
    return step < 1.6 * size and _goes_on(placed, anchors, at)


def _goes_on(placed: list[_Placed], anchors: list[bool], at: int) -> bool:
    """Whether a text plainly goes on from one line to the next in the first column."""
    above, below = placed[at], placed[at + 1]
    first, second = above.row.cells.get(0), below.row.cells.get(0)
    if not first or not second or (anchors[at] == anchors[at + 1]):
        return False
    text, on = " ".join(word.text for word in first), second[0].text
    if (
        text.count("(") > text.count(")")
        or text.endswith((",", "-", "/", "&"))
        or text.split()[-1] in ("and", "of", "as")
    ):
        return True
    if anchors[at + 1]:
        return False
    if on[0].islower() or (on.startswith("(") and below.row.cells.keys() == {0}):
        return True
    indent = second[0].x0 - first[0].x0
    after = placed[at + 2].row.cells.get(0) if at + 2 < len(placed) else None
    return indent > 0.6 * below.size and (after is None or abs(after[0].x0 - first[0].x0) < 0.3 * below.size)


def _settled(placed: list[_Placed], anchors: list[bool], joined: list[bool]) -> list[bool]:
    """Joins without those that would put two full rows into one through a line between them: the nearer keeps it."""
    joined = list(joined)
    last = None
    for at, anchor in enumerate(anchors):
        if not anchor:
            continue
        if last is not None and at - last > 1 and all(joined[last:at]):
            steps = [placed[to + 1].baseline - placed[to].baseline for to in range(last, at)]
            joined[last + int(np.argmax(steps))] = False
        last = at
    return joined


def _figures(row: Row) -> bool:
    return any(NUMBER.match(words[0].text) for column, words in row.cells.items() if column)


def _placed(line: Line, gutters: tuple[tuple[float, float], ...], edges: list[Edges]) -> Row:
    """A line's words in the columns between gutters; a phrase with a word across one stands where it begins."""
    row = Row({})
    for begin, end in line.phrases:
        for words in _cut(line.words[begin:end], gutters, len(line.phrases) > 1, edges):
            x0, x1 = words[0].x0, max(word.x1 for word in words)
            first, last = _columns(x0, x1, gutters)
            begins = (False, round(x0)) in edges[first]
            ends = (True, round(x1)) in edges[last] or (first in row.cells and last not in row.cells)
            if last > first and len(line.phrases) > 1 and ends and not begins:
                first = last  # one that is wider than its column and ends as the column's texts do
            row.cells.setdefault(first, []).extend(words)
            if last > first:
                row.spans[first] = last - first + 1
    return row


def _columns(x0: float, x1: float, gutters: tuple[tuple[float, float], ...]) -> tuple[int, int]:
    """First and last column of a text: one that begins within a gutter is right of it, one that ends there left."""
    first = sum(x0 >= gutter[0] - 0.75 for gutter in gutters)
    last = sum(x1 > gutter[1] + 0.75 for gutter in gutters)
    if last < first:  # all of it within a gutter: the side that it is nearer to
        left, right = gutters[last]
        return (first, first) if right - x1 <= x0 - left else (last, last)
    return first, last


def _cut(
    phrase: tuple[Word, ...], gutters: tuple[tuple[float, float], ...], several: bool, edges: list[Edges]
) -> list[tuple[Word, ...]]:
    """A phrase, cut where a text too long for its column has pushed into the next.

    That is told by a word that stands where the next column's texts begin, or a figure that ends where they end, in a
    line of several phrases. A phrase alone is a heading.
    """
    if not several:
        return [phrase]
    reach = max(word.x1 for word in phrase)
    first, _ = _columns(phrase[0].x0, phrase[0].x1, gutters)
    in_place = (False, round(phrase[0].x0)) in edges[first]
    cuts = set()
    for at, (x0, x1) in enumerate(gutters):
        if not any(word.x0 < x1 - 0.75 and word.x1 > x0 + 0.75 for word in phrase):
            # The words leave the gutter free. Where it lies in an ordinary blank, they are one text for all that.
            for to in range(1, len(phrase)):
                left, right = phrase[to - 1], phrase[to]
                if left.x1 <= x0 + 0.75 and right.x0 >= x1 - 0.75 and parted(left, right, left.x1):
                    cuts.add(to)
            continue
        over = [to for to in range(1, len(phrase)) if phrase[to].x1 > x1 and phrase[to - 1].x0 < x1]
        figures = [to for to in over if FIGURE.fullmatch(phrase[to].text) and not NUMBER.match(phrase[to - 1].text)]
        begun = [
            to
            for to in over
            if (False, round(phrase[to].x0)) in edges[at + 1]
            and (to in figures or in_place or _is_forced(phrase[to - 1], phrase[to]))
        ]
        if begun:
            cuts.add(begun[-1])
        elif figures and (True, round(reach)) in edges[at + 1]:
            cuts.add(figures[-1])
    return [phrase[a:b] for a, b in pairwise([0, *sorted(cuts), len(phrase)])]


def _is_forced(left: Word, right: Word) -> bool:
    """Whether the space between two words is another than that of an ordinary blank."""
    return parted(left, right, left.x1) or right.x0 - left.x1 < 0.6 * left.blank


def _edges(lines: tuple[Line, ...], gutters: tuple[tuple[float, float], ...]) -> list[Edges]:
    """Where the phrases of each column usually begin (False) or end (True), in whole points and their neighbours."""
    seen: list[Counter[tuple[bool, int]]] = [Counter() for _ in range(len(gutters) + 1)]
    for line in lines:
        for begin, end in line.phrases:
            x0, x1 = line.words[begin].x0, max(word.x1 for word in line.words[begin:end])
            first, last = _columns(x0, x1, gutters)
            if first == last:
                seen[first].update(((False, round(x0)), (True, round(x1))))
    return [
        {(end, edge + by) for (end, edge), count in counts.items() if count > 1 for by in (-1, 0, 1)} for counts in seen
    ]
