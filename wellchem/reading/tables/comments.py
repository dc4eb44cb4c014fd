"""Comments of data standards beside results, that say of the very number that it is a bound."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, partial

import numpy as np

from wellchem.models.codes import Censoring
from wellchem.reading.rows import Coded, of
from wellchem.reading.tables.cells import Lexicon

_NUMBER = re.compile(r"((?:[^\W\d]+\s+){1,6}|[<>≤≥]=?\s*)(\d+(?:[.,]\d+)*)")


def bounds_said(lexicon: Lexicon, comment: Coded, value: Coded) -> Coded:
    """What comments say of the number beside them ("greater than 840" beside 840), empty for all others."""
    compares = cache(partial(_compares, lexicon))
    said = [_comparisons(compares, str(text)) for text in comment.texts]
    texts = np.full(len(comment), "", object)
    for row in np.flatnonzero(np.array([*map(bool, said), False])[comment.codes]).tolist():
        texts[row] = said[comment.codes[row]].get(value[row], "")
    return of(texts.tolist())


def _comparisons(compares: Callable[[str], bool], text: str) -> dict[str, str]:
    """Numbers of a comment with the words that compare something with them."""
    found: dict[str, str] = {}
    for match in _NUMBER.finditer(text):
        words = match[1].split()
        spans = [" ".join(words[at:]) for at in range(len(words))]
        for span in filter(compares, spans):
            found.setdefault(match[2], f"{span} {match[2]}")
    return found


def _compares(lexicon: Lexicon, words: str) -> bool:
    """Whether words before a number make it a bound."""
    meaning = lexicon.vocabulary.value(f"{words} 1")
    return meaning is not None and meaning.censoring in (Censoring.LEFT, Censoring.RIGHT) and meaning.number is not None
