"""Lines of words cut into blocks whose columns agree, by the gutters that run through them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.pdf.scripts import Word

PHRASE = 0.32  # parts of the type size: a gap wider than a blank by more ends a phrase
ORDINARY = 1.4  # blanks: a gap of no more is one between words
CLOSE_WORTH = 0.34  # what a gap of more than a blank in a phrase tells for a gutter: three lines bear one out
WIDE = 0.8  # parts of the type size: a gap wider than a blank by more is no chance even if it is alone
MANY = 6  # lines among which one lesser gap alone is chance
BLOCK_COST = 2.0  # what a block must bring in filled columns to stand alone
CLOSE_COST = 3.0  # parting blocks where lines follow each other as closely as elsewhere
SPAN_COST = 0.5  # a phrase across gutters (a heading, a note) in a block of columns
FUSE_COST = 2.0  # phrases that no gutter parts, though they stand apart
LEVEL = 0.35  # parts of the type size: what stands no lower is on one line, as texts filled into a form are
SKIP_COST = 0.15  # a column left empty between two that are filled
MOST_BREAKS = 24  # places of a page at which blocks may part that are weighed against each other

BOXES = "☐☑☒□"  # boxes to tick


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
        if last is not None and word.baseline - last[0].baseline <= max(1.5, LEVEL * min(word.size, last[0].size)):
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
        if word.led or word.sideways or last.sideways or apart(last, word, reach):
            starts.append(at)
        reach = max(reach, word.x1)
    return Line(tuple(words), tuple(zip(starts, [*starts[1:], len(words)], strict=True)))


def apart(last: Word, word: Word, reach: float) -> bool:
    """Whether a word stands further from what is before it, which reaches so far, than words of a phrase do.

    A box to tick belongs to the word close behind it.
    """
    if last.text in BOXES:
        return word.x0 - reach > min(word.size, last.size)
    return word.x0 - reach > last.blank + PHRASE * min(word.size, last.size) + 2 * last.spacing


def parted(last: Word, word: Word, reach: float) -> bool:
    """Whether the gap is more than an ordinary blank, as it is between columns that stand close."""
    if last.text in BOXES and not apart(last, word, reach):
        return False
    return word.x0 - reach > ORDINARY * last.blank + 2 * last.spacing


class _Weighing:
    """A region's lines, so prepared that any run of them can be weighed as a block."""

    def __init__(self, lines: list[Line]) -> None:
        self.lines = lines
        words = [word for line in lines for word in line.words]
        self.left = math.floor(min(word.x0 for word in words)) - 1
        width = math.ceil(max(word.x1 for word in words)) - self.left + 2
        self.em = float(np.median([word.size for word in words]))
        cover = np.zeros((len(lines) + 1, width), dtype=np.int16)
        several = [any(parted(last, word, reach) for last, word, reach in _neighbours(line)) for line in lines]
        for at, line in enumerate(lines):
            if several[at]:
                for word in line.words:
                    cover[at + 1, int(word.x0 - self.left) : math.ceil(word.x1 - self.left)] = 1
        self.cover = np.cumsum(cover, axis=0, dtype=np.int16)
        self.several = np.concatenate(([0], np.cumsum(several)))
        # Gaps between neighbours on a line: where, in which line, and what they tell for a gutter.
        gaps = [
            (at, reach, word.x0, _worth(last, word, reach))
            for at, line in enumerate(lines)
            for last, word, reach in _neighbours(line)
        ]
        table = np.array(gaps, dtype=np.float64).reshape(-1, 4)
        self.gap_line, self.gap_x0, self.gap_x1, self.gap_worth = table.T
        phrases = [(at, a, b) for at, line in enumerate(lines) for a, b in line.phrases]
        self.phrase_line = np.array([at for at, _, _ in phrases])
        self.phrase_x0 = np.array([lines[at].words[a].x0 for at, a, _ in phrases])
        self.phrase_x1 = np.array([max(word.x1 for word in lines[at].words[a:b]) for at, a, b in phrases])

    def gutters(self, begin: int, end: int) -> NDArray[np.float64]:
        """Gutters (x0, x1) through nearly all of the lines that have several phrases, chance ones left out."""
        count = int(self.several[end] - self.several[begin])
        covered = self.cover[end] - self.cover[begin]
        spared = count // 8  # lines that may cross: a heading of several columns, a name that is too long
        used = np.flatnonzero(covered > spared)
        if not count or not len(used):
            return np.empty((0, 2))
        free = covered <= spared
        free[: used[0]] = False
        free[used[-1] :] = False
        change = np.diff(free.astype(np.int8), prepend=0, append=0)
        begins, ends = np.flatnonzero(change == 1), np.flatnonzero(change == -1)
        # One line's chance gaps are as wide as a column's; many lines' are not.
        least = self.em * max(0.3, 0.75 - 0.12 * (count - 1))
        wide = ends - begins >= max(2.0, least - 2)
        gutters = np.stack([begins[wide], ends[wide]], axis=1).astype(np.float64) + self.left
        # A chance gutter has no gaps wider than a blank that are its alone, or one among many lines.
        while len(gutters):
            first, last, gap_worth = self._gaps(gutters, begin, end)
            alone = first == last
            support = np.bincount(first[alone], weights=gap_worth[alone], minlength=len(gutters))
            if support.min() >= (1 if count < MANY else 2):
                break
            gutters = np.delete(gutters, int(support.argmin()), axis=0)
        return gutters

    def _gaps(
        self, gutters: NDArray[np.float64], begin: int, end: int
    ) -> tuple[NDArray[np.intp], NDArray[np.intp], NDArray[np.float64]]:
        """First and last gutter (the last before the first: none) that each gap of the lines lies over, and its worth.

        It need not hold the gutter whole: a text too long for its column leaves only some of the gutter free.
        """
        a, b = np.searchsorted(self.gap_line, (begin, end))
        first = np.searchsorted(gutters[:, 1] - 1.0, self.gap_x0[a:b])
        last = np.searchsorted(gutters[:, 0] + 1.0, self.gap_x1[a:b], "right") - 1
        return first, last, self.gap_worth[a:b]

    def worth(self, begin: int, end: int) -> float:
        """What lines begin .. end - 1 bring as a block: neighbours parted, less columns skipped and gutters crossed."""
        gutters = self.gutters(begin, end)
        if not len(gutters):
            a, b = np.searchsorted(self.gap_line, (begin, end))
            return float(-BLOCK_COST - FUSE_COST * np.minimum(self.gap_worth[a:b], 1.0).sum())
        first, last, worth = self._gaps(gutters, begin, end)
        parts = last >= first
        worth = np.minimum(worth, 1.0)
        filled = worth[parts].sum() - FUSE_COST * worth[~parts].sum()
        skipped = (last - first)[parts].sum()
        a, b = np.searchsorted(self.phrase_line, (begin, end))
        crossing = np.searchsorted(gutters[:, 1], self.phrase_x1[a:b]) > np.searchsorted(
            gutters[:, 0], self.phrase_x0[a:b], "right"
        )
        return float(filled - SKIP_COST * skipped - SPAN_COST * crossing.sum() - BLOCK_COST)


def _worth(last: Word, word: Word, reach: float) -> float:
    """What the gap between two words tells for a gutter there."""
    if word.led or word.sideways or word.x0 - reach > last.blank + WIDE * word.size + 2 * last.spacing:
        return 2.0
    if apart(last, word, reach):
        return 1.0
    return CLOSE_WORTH if parted(last, word, reach) else 0.0


def _neighbours(line: Line) -> Iterator[tuple[Word, Word, float]]:
    """Words that follow each other on a line, and how far to the right the words before the second reach."""
    reach = line.words[0].x1
    for last, word in pairwise(line.words):
        yield last, word, reach
        reach = max(reach, word.x1)


def blocks(lines: list[Line], breaks: set[int]) -> list[Block]:
    """The lines of a region cut into blocks whose columns agree; always cut before the lines `breaks`."""
    if not lines:
        return []
    found: list[Block] = []
    bounds = sorted({0, len(lines)} | {at for at in breaks if 0 < at < len(lines)})
    for begin, end in pairwise(bounds):
        part = lines[begin:end]
        weighing = _Weighing(part)
        for a, b, gutters in _agreeing(weighing, _best(weighing)):
            ended = _end_of_columns(part, a, b, gutters)
            found.append(Block(tuple(part[a:ended]), tuple((x0, x1) for x0, x1 in gutters.tolist())))
            if ended < b:
                found.append(Block(tuple(part[ended:b]), ()))
    return found


def _end_of_columns(lines: list[Line], begin: int, end: int, gutters: NDArray[np.float64]) -> int:
    """Where text below a block's last row begins: with a phrase across gutters after which no line has columns."""
    last = max((at for at in range(begin, end) if len(lines[at].phrases) > 1), default=begin)
    for at in range(last + 1, end):
        x0, x1 = lines[at].words[0].x0, max(word.x1 for word in lines[at].words)
        if any(x0 < gutter[0] and x1 > gutter[1] for gutter in gutters.tolist()):
            return at
    return end


def _agreeing(weighing: _Weighing, runs: list[tuple[int, int]]) -> list[tuple[int, int, NDArray[np.float64]]]:
    """Runs of lines with their gutters; neighbours whose columns are the same, or some of them, put together."""
    found: list[tuple[int, int, NDArray[np.float64]]] = []
    for begin, end in runs:
        gutters = weighing.gutters(begin, end)
        if found and len(found[-1][2]) and len(gutters):
            together = weighing.gutters(found[-1][0], end)
            kept = all(_meet(own, together).all() for own in (found[-1][2], gutters))
            if kept and len(together) == max(len(found[-1][2]), len(gutters)):
                found[-1] = (found[-1][0], end, together)
                continue
        found.append((begin, end, gutters))
    return found


def _meet(some: NDArray[np.float64], others: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which of some gutters lie over one of others."""
    return np.asarray(((some[:, None, 0] < others[:, 1]) & (some[:, None, 1] > others[:, 0])).any(axis=1))


def _best(weighing: _Weighing) -> list[tuple[int, int]]:
    """The cutting of lines into blocks that is worth most."""
    places = _places(weighing.lines)
    best = [0.0]
    since = [0]
    for to in range(1, len(places)):
        worths = [best[at] + weighing.worth(places[at][0], places[to][0]) - places[at][1] for at in range(to)]
        choice = int(np.argmax(worths))
        best.append(worths[choice])
        since.append(choice)
    cuts, at = [], len(places) - 1
    while at > 0:
        cuts.append((places[since[at]][0], places[at][0]))
        at = since[at]
    return cuts[::-1]


def _places(lines: list[Line]) -> list[tuple[int, float]]:
    """Where blocks may part, and at what cost: at a wider space between lines or another size of type, for nothing;
    where lines of one and of several phrases meet, dearly, for that happens within tables too."""
    steps = np.array([b.baseline - a.baseline for a, b in pairwise(lines)])
    if not len(steps):
        return [(0, 0.0), (len(lines), 0.0)]
    usual = float(np.median(steps)) or 1.0
    found: list[tuple[float, int, float]] = []
    for at in range(1, len(lines)):
        above, below = lines[at - 1], lines[at]
        change = abs(len(above.phrases) - len(below.phrases))
        step = float(steps[at - 1]) / usual
        spaced = step > 1.25 or abs(above.size - below.size) > 0.8
        # A phrase alone between full lines is a wrapped name or a heading: it stays with them, but where the lines
        # above and below it cannot be of one table.
        below = next((line for line in lines[at:] if len(line.phrases) > 1), below)
        full = min(len(above.phrases), len(below.phrases)) > 1
        parts = full and ((below is lines[at] and change > 0) or _conflict(above, below))
        if spaced or parts:
            found.append((step + change + 2.0 * spaced, at, 0.0 if spaced else CLOSE_COST))
    found = sorted(found, reverse=True)[:MOST_BREAKS]
    return [(0, 0.0), *sorted((at, cost) for _, at, cost in found), (len(lines), 0.0)]


def _conflict(one: Line, other: Line) -> bool:
    """Whether several phrases lie below two of the other line, so that no columns can hold both lines.

    One alone may be a text that is too long for its column.
    """
    spans = [
        [(line.words[a].x0, max(word.x1 for word in line.words[a:b])) for a, b in line.phrases] for line in (one, other)
    ]
    over = [
        sum(x0 < other_x1 and other_x0 < x1 for other_x0, other_x1 in others) > 1
        for own, others in (spans, spans[::-1])
        for x0, x1 in own
    ]
    return sum(over) > 1
