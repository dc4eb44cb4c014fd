"""Lines of words cut into blocks whose columns agree, by the gutters that run through them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.pdf_words import Word

PHRASE = 1.0  # parts of the type size: a wider gap ends a phrase
BLOCK_COST = 2.0  # what a block must bring in filled columns to stand alone
SPAN_COST = 0.5  # a phrase across gutters (a heading, a note) in a block of columns
MOST_BREAKS = 24  # places of a page at which blocks may part that are weighed against each other


@dataclass(frozen=True)
class Line:
    """Words on one baseline, from left to right, and the phrases that they form (index ranges into the words)."""

    words: tuple[Word, ...]
    phrases: tuple[tuple[int, int], ...]

    @property
    def baseline(self) -> float:
        return self.words[0].baseline

    @property
    def top(self) -> float:
        return min(word.top for word in self.words)

    @property
    def bottom(self) -> float:
        return max(word.bottom for word in self.words)

    @property
    def size(self) -> float:
        return max(word.size for word in self.words)


@dataclass(frozen=True)
class Block:
    """Lines, and the gutters (x0, x1 in points) that part their columns."""

    lines: tuple[Line, ...]
    gutters: tuple[tuple[float, float], ...]


def text_lines(words: list[Word]) -> list[Line]:
    """Lines from top to bottom."""
    found: list[list[Word]] = []
    for word in sorted(words, key=lambda word: word.baseline):
        last = found[-1] if found else None
        if last is not None and word.baseline - last[0].baseline <= max(1.5, 0.25 * min(word.size, last[0].size)):
            last.append(word)
        else:
            found.append([word])
    return [_line(line) for line in found]


def _line(words: list[Word]) -> Line:
    words = sorted(words, key=lambda word: word.x0)
    starts = [0]
    reach = words[0].x1
    for at in range(1, len(words)):
        word, last = words[at], words[at - 1]
        em = min(word.size, last.size)
        if word.led or word.x0 - reach > PHRASE * em or word.sideways or last.sideways:
            starts.append(at)
        reach = max(reach, word.x1)
    return Line(tuple(words), tuple(zip(starts, [*starts[1:], len(words)], strict=True)))


class _Weighing:
    """Coverage of a region by its lines, so that any run of lines can be weighed as a block."""

    def __init__(self, lines: list[Line]) -> None:
        self.lines = lines
        words = [word for line in lines for word in line.words]
        self.left = math.floor(min(word.x0 for word in words)) - 1
        width = math.ceil(max(word.x1 for word in words)) - self.left + 2
        self.em = float(np.median([word.size for word in words]))
        cover = np.zeros((len(lines) + 1, width), dtype=np.int16)
        self.multi = np.array([len(line.phrases) > 1 for line in lines])
        for at, line in enumerate(lines):
            if self.multi[at]:
                for word in line.words:
                    cover[at + 1, int(word.x0 - self.left) : math.ceil(word.x1 - self.left)] = 1
        self.cover = np.cumsum(cover, axis=0, dtype=np.int16)
        self.multis = np.concatenate(([0], np.cumsum(self.multi)))
        self.first_word = np.concatenate(([0], np.cumsum([len(line.words) for line in lines])))
        self.word_line = np.repeat(np.arange(len(lines)), [len(line.words) for line in lines])
        self.word_x0 = np.array([word.x0 for word in words])
        self.word_x1 = np.array([word.x1 for word in words])
        self.phrase_line = np.array([at for at, line in enumerate(lines) for _ in line.phrases])
        self.phrase_x0 = np.array([line.words[a].x0 for line in lines for a, _ in line.phrases])
        self.phrase_x1 = np.array([max(word.x1 for word in line.words[a:b]) for line in lines for a, b in line.phrases])

    def gutters(self, begin: int, end: int) -> NDArray[np.float64]:
        """Gutters (x0, x1) through nearly all of the lines that have several phrases."""
        count = int(self.multis[end] - self.multis[begin])
        if not count:
            return np.empty((0, 2))
        covered = self.cover[end] - self.cover[begin]
        spared = count // 12  # lines that may cross: a heading of several columns, a name that is too long
        free = covered <= spared
        used = np.flatnonzero(covered > spared)
        if not len(used):
            return np.empty((0, 2))
        free[: used[0]] = False
        free[used[-1] :] = False
        change = np.diff(free.astype(np.int8), prepend=0, append=0)
        begins, ends = np.flatnonzero(change == 1), np.flatnonzero(change == -1)
        # One line's chance gaps are as wide as a column's; many lines' are not.
        least = self.em * (PHRASE if count == 1 else max(0.3, 0.9 - 0.15 * (count - 1)))
        wide = ends - begins >= max(2.0, least - 1)
        return np.stack([begins[wide], ends[wide]], axis=1) + float(self.left)

    def worth(self, begin: int, end: int) -> float:
        """What lines begin .. end - 1 bring as a block: columns filled beyond the first, less what crosses gutters."""
        gutters = self.gutters(begin, end)
        if not len(gutters):
            return -BLOCK_COST
        middles = gutters.mean(axis=1)
        words = slice(self.first_word[begin], self.first_word[end])
        column = np.searchsorted(middles, (self.word_x0[words] + self.word_x1[words]) / 2)
        line = self.word_line[words]
        multi = self.multi[line]
        filled = len(np.unique(line[multi] * 64 + column[multi])) - int(self.multis[end] - self.multis[begin])
        inside = (self.phrase_line >= begin) & (self.phrase_line < end)
        crossing = (
            np.searchsorted(gutters[:, 1], self.phrase_x1[inside], "left")
            - np.searchsorted(gutters[:, 0], self.phrase_x0[inside], "right")
            > 0
        )
        return filled - SPAN_COST * int(crossing.sum()) - BLOCK_COST


def blocks(lines: list[Line], breaks: set[int]) -> list[Block]:
    """The lines of a region cut into blocks so that most columns are filled; always cut before the lines `breaks`."""
    if not lines:
        return []
    found: list[Block] = []
    bounds = sorted({0, len(lines)} | {at for at in breaks if 0 < at < len(lines)})
    for begin, end in pairwise(bounds):
        part = lines[begin:end]
        weighing = _Weighing(part)
        for a, b in _best(weighing):
            gutters = tuple((x0, x1) for x0, x1 in weighing.gutters(a, b).tolist())
            found.append(Block(tuple(part[a:b]), gutters))
    return found


def _best(weighing: _Weighing) -> list[tuple[int, int]]:
    """The cutting of lines into blocks that is worth most."""
    places = _places(weighing.lines)
    best = [0.0]
    since = [0]
    for to in range(1, len(places)):
        worths = [best[at] + weighing.worth(places[at], places[to]) for at in range(to)]
        choice = int(np.argmax(worths))
        best.append(worths[choice])
        since.append(choice)
    cuts, at = [], len(places) - 1
    while at > 0:
        cuts.append((places[since[at]], places[at]))
        at = since[at]
    return cuts[::-1]


def _places(lines: list[Line]) -> list[int]:
    """Where blocks may part: at a wider space between lines, or where lines of one and of several phrases meet."""
    steps = np.array([b.baseline - a.baseline for a, b in pairwise(lines)])
    if not len(steps):
        return [0, len(lines)]
    usual = float(np.median(steps)) or 1.0
    strength = {}
    for at in range(1, len(lines)):
        above, below = lines[at - 1], lines[at]
        change = abs(len(above.phrases) - len(below.phrases))
        step = float(steps[at - 1]) / usual
        if step > 1.25 or change or abs(above.size - below.size) > 0.8:
            strength[at] = step + change + (2.0 if (len(above.phrases) > 1) != (len(below.phrases) > 1) else 0.0)
    strongest = sorted(strength, key=lambda at: -strength[at])[:MOST_BREAKS]
    return [0, *sorted(strongest), len(lines)]
