"""The small language of the practice tables: groups at risk, thresholds, problems, signs, what is near and noticed.

`infants|children` is any of these, present or not ruled out; `sodium_restricted?`
is not ruled out, and weakens a finding where it is not known; `iron<0.3`, `iron>0.3` compare with the most that was
found; `problem:x`, `sign:x`, `nearby:x`, `observed:x`, `analyte:x` and `always` say what they say.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

import numpy as np

from wellchem.interpretation.table import Bools
from wellchem.interpretation.waters import Waters

_GROUPS = ("infants", "children", "pregnancy", "immunocompromised", "sodium_restricted")


def holds(text: str, waters: Waters, found: Mapping[str, Bools] | None = None) -> tuple[Bools, bool]:
    """Where a condition holds, by sample, and whether it is only not ruled out. Alternatives are parted by `|`.

    `found` gives the problems (`problem:x`) and signs (`sign:x`) of the samples. Raises ValueError for a word that
    the language does not have.
    """
    met = np.full(waters.size, text in ("", "always"), dtype=bool)
    if text in ("", "always"):
        return met, False
    weak = False
    for word, kind, name in _words(text):
        if kind in ("problem", "sign"):
            if found and word in found:
                met |= found[word]
        elif kind == "nearby":
            met |= waters.near(name)
        elif kind == "observed":
            met |= waters.observed(name)
        elif kind == "analyte":
            if waters.table.holds(name):
                met |= waters.table.standing(name).measured
        elif "<" in word or ">" in word:
            met |= _compared(word, waters)
        elif word.rstrip("?") in _GROUPS:
            member = waters.member(word.rstrip("?"))
            met |= member is not False
            weak = weak or (word.endswith("?") and member is None)
        else:
            raise ValueError(f"the practice tables know no condition {word!r}")
    return met, weak


@lru_cache(maxsize=1 << 10)
def _words(text: str) -> tuple[tuple[str, str, str], ...]:
    """Alternatives of a condition: each as it stands, its kind and what it names."""
    parts = ((word, *word.partition(":")) for word in filter(None, text.split("|")))
    return tuple((word, kind, name) for word, kind, _, name in parts)


def _compared(word: str, waters: Waters) -> Bools:
    name, sign, value = word.partition("<" if "<" in word else ">")
    return waters.below(name, float(value)) if sign == "<" else waters.above(name, float(value))
