"""The words of a page: characters put together by geometry, raised and lowered ones told apart, each counted once."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.pdf.chars import Characters, Floats, Frame, descents, gather
from wellchem.reading.pdf.scripts import Word, attached

LIGATURES = str.maketrans({"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl", "ﬅ": "st", "ﬆ": "st"})
LEADER = re.compile(r"[._·…‥]{4,}|…{2,}|={4,}|_{2,}")

# All in parts of the type size. A word space is a quarter of it in the usual faces, a fifth in narrow ones.
SPACE = 0.17  # wider gaps part words where no blank is drawn
CHANCE = 0.06  # mean gaps above this are letter-spacing
KERNED = 0.2  # of the gaps of letters that are spaced out, no more are closed up by kerning
OVERLAP = 0.2  # a text drawn over the end of another by more than this is another word
WIDE = 1.0  # wider gaps always part
LINE = 1.3  # lines of one text are no further apart


@dataclass(frozen=True)
class PageWords:
    """Words of a page in one frame; slanted ones apart; how many leaders were left out."""

    words: list[Word]
    slanted: list[Word]
    frame: Frame
    leaders: int
    unmapped: int


def page_words(
    characters: Iterable[Any], width: float, height: float, left: float = 0.0, top: float = 0.0
) -> PageWords:
    """Words of the characters (pdfminer's `LTChar`) of a page of that size, whose corner is at (left, top)."""
    chars = gather(characters, height, left, top)
    counts = Counter(chars.turn[chars.turn >= 0].tolist())
    main = counts.most_common(1)[0][0] if counts else 0
    frame = Frame(main, width, height)
    words: list[Word] = []
    leaders = 0
    for turn in sorted(counts):
        own = Frame(turn, width, height)
        found = _words(chars, np.flatnonzero(chars.turn == turn), own)
        found, led = _without_leaders(found)
        leaders += led
        words += found if turn == main else _sideways(found, own, frame)
    slanted = _slanted(chars, frame)
    unmapped = sum(text.startswith("(cid:") for text in chars.text)
    return PageWords(words, slanted, frame, leaders, unmapped)


def _words(chars: Characters, which: NDArray[np.intp], frame: Frame) -> list[Word]:
    """Words of the characters of one direction, upright in its frame."""
    if not len(which):
        return []
    x0, top, x1, bottom = frame.into(*chars.box[which].T)
    ox, oy = chars.origin[which].T
    origin = frame.into(ox, oy, ox, oy)[1]
    size = chars.size[which]
    texts = [chars.text[at] for at in which]
    baseline = bottom - descents(chars.font[which], (bottom - origin) / size) * size
    blank = np.array([not text.strip() for text in texts])
    order = np.argsort(baseline, kind="stable")
    step = np.diff(baseline[order], prepend=baseline[order[0]])
    group = np.empty(len(order), dtype=np.int64)
    group[order] = np.cumsum(step > np.maximum(0.7, 0.1 * size[order]))
    order = np.lexsort((x0, group))
    words: list[Word] = []
    bounds = np.flatnonzero(np.diff(group[order], prepend=-1, append=group.max() + 1))
    for begin, end in pairwise(bounds.tolist()):
        line = order[begin:end]
        for piece, spacing in _pieces(line, texts, x0, x1, size, blank):
            text = "".join(texts[at] for at in piece).translate(LIGATURES)
            words.append(
                Word(
                    float(x0[piece[0]]), float(top[piece].min()), float(x1[piece].max()), float(bottom[piece].max()),
                    float(baseline[piece[len(piece) // 2]]), float(size[piece[len(piece) // 2]]), text,
                    spacing=spacing, blank=float(chars.blank[which[piece[0]]]),
                )
            )  # fmt: skip
    return attached(_once(words))


def _pieces(
    line: NDArray[np.intp], texts: list[str], x0: Floats, x1: Floats, size: Floats, blank: NDArray[np.bool_]
) -> Iterator[tuple[NDArray[np.intp], float]]:
    """Characters of one line, sorted from left to right, cut into words; and how far they are spaced out."""
    drawn, fresh = _in_order(_undoubled(line[~blank[line]], texts, x0, x1, size), x0, x1, size)
    if not len(drawn):
        return
    gap = x0[drawn[1:]] - x1[drawn[:-1]]
    em = np.maximum(size[drawn[1:]], size[drawn[:-1]])
    spaces = line[blank[line]]
    spaces = spaces[(x1 - x0)[spaces] > 0.05 * size[spaces]]
    middles = np.sort((x0[spaces] + x1[spaces]) / 2)
    centre = (x0[drawn] + x1[drawn]) / 2
    spaced = np.diff(np.searchsorted(middles, centre)) > 0
    cut = gap > WIDE * em
    usual = _letter_spacing((gap / em)[~spaced & ~cut])
    spacing = np.zeros(len(drawn))
    begins = [0, *(np.flatnonzero(cut) + 1).tolist(), len(drawn)]
    for begin, end in pairwise(begins):
        if end - begin > 1:
            inner = slice(begin, end - 1)
            letters = "".join(texts[at] for at in drawn[begin:end])
            cut[inner], own = _parts(gap[inner] / em[inner], spaced[inner], letters, usual)
            spacing[begin:end] = own * em[begin]
    written = [texts[at] for at in drawn]
    cut |= fresh[1:] & (gap < -OVERLAP * em)
    cut |= _leader_edges(np.array([text in ".·…‥=" for text in written]), 4)
    cut |= _leader_edges(np.array([text == "_" for text in written]), 2)
    bounds = [0, *(np.flatnonzero(cut) + 1).tolist(), len(drawn)]
    for begin, end in pairwise(bounds):
        yield drawn[begin:end], float(spacing[begin])


def _letter_spacing(close: Floats) -> float:
    """By how much letters are spaced out, in parts of the size; nothing where too few gaps tell."""
    median = float(np.median(close)) if len(close) >= 3 else 0.0
    return median if median > CHANCE else 0.0


def _parts(gap: Floats, spaced: NDArray[np.bool_], letters: str, usual: float) -> tuple[NDArray[np.bool_], float]:
    """Which gaps (in parts of the size) part words in a stretch without wide ones, and its letter-spacing."""
    # Letters apart by drawn blanks, each alone: a spaced-out heading; its words stand further apart.
    if len(gap) >= 3 and spaced.mean() > 0.8 and letters.isalpha() and float(np.median(gap)) > 0.1:
        median = float(np.median(gap))
        return gap > 1.5 * median, median
    close = gap[~spaced]
    spacing = _letter_spacing(close) if len(close) >= 3 else usual
    if len(close) and spacing and float((close < 0.5 * spacing).mean()) > KERNED:
        spacing = 0.0
    return spaced | (gap - spacing > SPACE), spacing


def _leader_edges(dots: NDArray[np.bool_], least: int) -> NDArray[np.bool_]:
    """Edges of runs of at least so many leader dots, or strokes of a line to write on."""
    edges = np.zeros(max(len(dots) - 1, 0), dtype=bool)
    if dots.sum() < least:
        return edges
    change = np.flatnonzero(np.diff(dots.astype(np.int8))) + 1
    bounds = np.concatenate(([0], change, [len(dots)]))
    for begin, end in pairwise(bounds.tolist()):
        if dots[begin] and end - begin >= least:
            edges[begin : end - 1] = False
            if begin:
                edges[begin - 1] = True
            if end < len(dots):
                edges[end - 1] = True
    return edges


def _undoubled(drawn: NDArray[np.intp], texts: list[str], x0: Floats, x1: Floats, size: Floats) -> NDArray[np.intp]:
    """Characters without those drawn again at nearly the same place to look bold: then most of a text is."""
    if len(drawn) < 2:
        return drawn
    again = np.zeros(len(drawn), dtype=bool)
    text = np.array([texts[at] for at in drawn])
    for back in (1, 2, 3):
        if len(drawn) <= back:
            break
        near = np.abs(x0[drawn[back:]] - x0[drawn[:-back]]) < 0.3 * np.maximum(x1 - x0, 0.5)[drawn[back:]]
        again[back:] |= near & (text[back:] == text[:-back])
    if not again.any():
        return drawn
    apart = x0[drawn[1:]] - np.maximum.accumulate(x1[drawn])[:-1] > SPACE * size[drawn[1:]]
    stretch = np.concatenate(([0], np.cumsum(apart)))
    share = np.bincount(stretch, weights=again) / np.bincount(stretch)
    return drawn[~(again & (share[stretch] >= 0.4))]


def _in_order(
    drawn: NDArray[np.intp], x0: Floats, x1: Floats, size: Floats
) -> tuple[NDArray[np.intp], NDArray[np.bool_]]:
    """Characters of a line run by run, as they were drawn, and which begin a run: texts that overlap stay whole."""
    if len(drawn) < 2:
        return drawn, np.ones(len(drawn), dtype=bool)
    drawn = np.sort(drawn)
    back = x0[drawn[1:]] < x0[drawn[:-1]]
    gap = x0[drawn[1:]] - x1[drawn[:-1]]
    em = size[drawn[1:]]
    runs = np.split(drawn, np.flatnonzero(back | (gap > WIDE * em) | (gap < -1.5 * OVERLAP * em)) + 1)
    runs.sort(key=lambda run: float(x0[run[0]]))
    fresh = np.zeros(len(drawn), dtype=bool)
    fresh[np.cumsum([0, *(len(run) for run in runs[:-1])])] = True
    return np.concatenate(runs), fresh


def _once(words: list[Word]) -> list[Word]:
    """Words without those drawn again beside themselves, as a shadow is."""
    seen: dict[str, list[Word]] = {}
    kept = []
    for word in words:
        others = seen.setdefault(word.text, [])
        near = 0.2 * word.size
        if any(abs(word.x0 - other.x0) < near and abs(word.baseline - other.baseline) < near for other in others):
            continue
        others.append(word)
        kept.append(word)
    return kept


def _without_leaders(words: list[Word]) -> tuple[list[Word], int]:
    """Words without dots that only lead the eye; the word after them knows that it was led to."""
    words.sort(key=lambda word: (round(word.baseline), word.x0))
    kept: list[Word] = []
    leaders, dots = 0, 0
    for at, word in enumerate(words):
        single = word.text in (".", "·", "_", "…")
        if single:  # dots apart by blanks: three in a row are a leader
            neighbours = words[max(0, at - 2) : at + 3]
            row = sum(other.text == word.text and abs(other.baseline - word.baseline) < 1 for other in neighbours)
            single = row >= 3
        if single or LEADER.fullmatch(word.text):
            leaders, dots = leaders + 1, dots + 1
            continue
        word.led = dots > 0 and bool(kept) and abs(kept[-1].baseline - word.baseline) < 0.5 * word.size
        dots = 0
        kept.append(word)
    return kept, leaders


def _sideways(words: list[Word], own: Frame, frame: Frame) -> list[Word]:
    """Lines of words written in another direction than the page's, as pieces in the page's frame."""
    pieces: list[list[Word]] = []
    for word in words:
        last = pieces[-1][-1] if pieces else None
        if (
            last is not None
            and abs(last.baseline - word.baseline) < 0.3 * word.size
            and -0.2 * word.size < word.x0 - last.x1 < 0.8 * word.size + 2 * last.spacing
        ):
            pieces[-1].append(word)
        else:
            pieces.append([word])
    found = []
    for piece in _wrapped(pieces):
        box = own.back(
            min(word.x0 for word in piece), min(word.top for word in piece),
            max(word.x1 for word in piece), max(word.bottom for word in piece),
        )  # fmt: skip
        x0, top, x1, bottom = frame.into(*box)
        text = " ".join(word.text for word in piece)
        found.append(Word(x0, top, x1, bottom, bottom, piece[0].size, text, count=len(piece), sideways=True))
    return found


def _wrapped(pieces: list[list[Word]]) -> list[list[Word]]:
    """Pieces line under line that begin or have their middle at one place, put together: a heading in several lines."""
    made: list[list[Word]] = []
    for piece in sorted(pieces, key=lambda piece: (piece[0].baseline, piece[0].x0)):
        for above in made:
            last = above[-1]
            step = piece[0].baseline - last.baseline
            line = [word for word in above if word.baseline == last.baseline]
            begins = piece[0].x0 - line[0].x0
            aligned = min(abs(begins), abs(begins + piece[-1].x1 - line[-1].x1) / 2) < 0.3 * last.size
            if 0.5 * last.size < step < LINE * last.size and aligned:
                above += piece
                break
        else:
            made.append(list(piece))
    return made


def _slanted(chars: Characters, frame: Frame) -> list[Word]:
    """Slanted text, such as a stamp across the page, in the order in which it was drawn."""
    found: list[Word] = []
    fresh = True
    for at in np.flatnonzero(chars.turn < 0).tolist():
        if not chars.text[at].strip():
            fresh = True
            continue
        x0, top, x1, bottom = frame.into(*chars.box[at].tolist())
        if fresh or abs(x0 - found[-1].x1) > 2 * chars.size[at]:
            found.append(Word(x0, top, x1, bottom, bottom, float(chars.size[at]), chars.text[at]))
            fresh = False
        else:
            last = found[-1]
            last.text += chars.text[at]
            last.x0, last.top = min(last.x0, x0), min(last.top, top)
            last.x1, last.bottom = max(last.x1, x1), max(last.bottom, bottom)
    return found
