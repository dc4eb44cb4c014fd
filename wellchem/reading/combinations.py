"""Distinct combinations of printed texts, so that each is understood once."""

from __future__ import annotations

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.reading.rows import Coded

_MOST = 2**62  # combinations that a number still tells apart


def grouped(*columns: Coded, within: NDArray[np.int64] | None = None) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """A number for each distinct combination of texts, in the order of first appearance, and the row where that is.

    `within` are numbers, from 0, of which equal combinations are told apart.
    """
    key = np.zeros(len(columns[0]), np.int64) if within is None else within.copy()
    size = int(key.max(initial=0)) + 1
    for column in columns:
        span = len(column.texts) + 1
        if not (column.codes >= 0).any():
            continue
        if size > _MOST // span:
            key, uniques = pd.factorize(key)
            size = len(uniques)
        key *= span
        key += column.codes
        key += 1
        size *= span
    if size <= len(key):  # few enough to be told by a table of all, which is quicker than hashing every row
        first = np.full(size, -1, np.int64)
        first[key[::-1]] = np.arange(len(key) - 1, -1, -1)
        used = np.flatnonzero(first >= 0)
        order = used[np.argsort(first[used])]
        number = np.empty(size, np.int64)
        number[order] = np.arange(len(order))
        return number[key], first[order]
    group, _ = pd.factorize(key)
    # They are numbered as they appear, so a new one is a number greater than all before it.
    return group, np.flatnonzero(np.diff(np.maximum.accumulate(group), prepend=-1))
