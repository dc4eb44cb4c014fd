"""A page's words, and the raised and lowered pieces that belong to them."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.raised import superscript

APART = 0.7  # parts of the type size: a raised mark further from a word is not its own


@dataclass(slots=True)
class Word:
    """One word in the upright frame of its page: edges and baseline in points, its text, what of it stands raised.

    `count` is how many words it is (a phrase written sideways is one piece of several words). `led` tells that dots
    led to it, which are left out; `spacing` is how far its letters are spaced out beyond their own widths, in points;
    `blank` is the width of a blank in its font.
    """

    x0: float
    top: float
    x1: float
    bottom: float
    baseline: float
    size: float
    text: str
    raised: str = ""
    count: int = 1
    led: bool = False
    spacing: float = 0.0
    blank: float = 0.0
    sideways: bool = False


def attached(words: list[Word]) -> list[Word]:
    """Raised and lowered pieces put to the word that they touch."""
    if len(words) < 2:
        return words
    x0, x1 = np.array([word.x0 for word in words]), np.array([word.x1 for word in words])
    baseline, size = np.array([word.baseline for word in words]), np.array([word.size for word in words])
    small = np.flatnonzero(size < 0.9 * size.max())
    if not len(small):
        small = np.arange(0)
    shift = (baseline[None, :] - baseline[small, None]) / size[None, :]  # of the larger one's size, upwards
    smaller = (size[small, None] <= 0.88 * size[None, :]) & (size[small, None] >= 0.3 * size[None, :])
    raised = smaller & (shift > 0.12) & (shift < 0.85)
    lowered = smaller & (shift < -0.04) & (shift > -0.62)
    spacing = np.array([word.spacing for word in words])
    behind = (x0[small, None] - x1[None, :] - spacing[None, :]) / size[None, :]
    before = (x0[None, :] - x1[small, None] - spacing[None, :]) / size[None, :]
    touching_left = (behind > -0.5) & (behind < 0.24) & (x0[small, None] > x0[None, :])
    touching_right = (before > -0.2) & (before < 0.12)
    level = np.zeros(len(words), dtype=np.int8)
    parent = list(range(len(words)))

    def root(at: int) -> int:
        while parent[at] != at:
            at = parent[at]
        return at

    for row, at in enumerate(small.tolist()):
        for shifted, sign in ((raised, 1), (lowered, -1)):
            left = np.flatnonzero(shifted[row] & touching_left[row])
            right = np.flatnonzero(shifted[row] & touching_right[row])
            if len(left) or len(right):
                level[at] = sign
                for other in (*left[:1].tolist(), *right[:1].tolist()):
                    parent[root(at)] = root(other)
                break
    # A short raised piece a blank away is a note's mark too: it stands on its neighbour's line, a word of its own.
    aside = raised & ((behind > 0) & (behind < APART) | (before > 0) & (before < APART))
    for row in np.flatnonzero(aside.any(axis=1)).tolist():
        word = words[int(small[row])]
        if not level[small[row]] and len(word.text) <= 3:
            word.baseline = words[int(aside[row].argmax())].baseline
            word.text, word.raised = superscript(word.text).strip(), word.text
    if not level.any():
        return words
    groups: dict[int, list[int]] = {}
    for at in range(len(words)):
        groups.setdefault(root(at), []).append(at)
    return [words[members[0]] if len(members) == 1 else _joined(words, members, level) for members in groups.values()]


def _joined(words: list[Word], members: list[int], level: NDArray[np.int8]) -> Word:
    """One word of pieces, from left to right; raised ones in raised characters."""
    members.sort(key=lambda at: words[at].x0)
    main = max((at for at in members if level[at] == 0), key=lambda at: words[at].size, default=members[0])
    text = "".join(superscript(words[at].text) if level[at] > 0 else words[at].text for at in members).strip()
    return replace(
        words[main],
        x0=min(words[at].x0 for at in members),
        top=min(words[at].top for at in members),
        x1=max(words[at].x1 for at in members),
        bottom=max(words[at].bottom for at in members),
        text=text,
        raised=" ".join(words[at].text for at in members if level[at] > 0),
    )
