"""Comments of data standards beside results, that say of the very number that it is a bound."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, partial

import numpy as np

from wellchem.models.codes import Censoring
from wellchem.reading.rows import Coded, few
from wellchem.reading.tables.cells import Lexicon

_NUMBER = re.compile(r"(?<![\w.,])\d+(?:[.,]\d+)*(?![\w.,]*\w)")
_BEFORE, _WORDS = 60, 6  # letters and words before a number that may compare something with it


def bounds_said(lexicon: Lexicon, comment: Coded, value: Coded) -> Coded:
    """What comments say of the number beside them ("greater than 840" beside 840), empty for all others."""
    compares = cache(partial(_compares, lexicon))
    values = set(map(str, value.texts))
    said = [_comparisons(compares, values, str(text)) for text in comment.texts]
    rows = np.flatnonzero(np.array([*map(bool, said), False])[comment.codes]).tolist()
    found = {row: bound for row in rows if (bound := said[comment.codes[row]].get(value[row]))}
    return few(len(comment), found)


def _comparisons(compares: Callable[[str], bool], values: set[str], text: str) -> dict[str, str]:
    """Those of these values that a comment has, with the words that compare something with them."""
    found: dict[str, str] = {}
    for match in _NUMBER.finditer(text):
        if match[0] not in values:
            continue
        words = text[max(0, match.start() - _BEFORE) : match.start()].split()[-_WORDS:]
        spans = [" ".join(words[at:]) for at in range(len(words))]
        for span in filter(compares, spans):
            found.setdefault(match[0], f"{span} {match[0]}")
    return found


def _compares(lexicon: Lexicon, words: str) -> bool:
    """Whether words before a number make it a bound."""
    meaning = lexicon.vocabulary.value(f"{words} 1")
    return meaning is not None and meaning.censoring in (Censoring.LEFT, Censoring.RIGHT) and meaning.number is not None
