"""Distinct combinations of printed texts, so that each is understood once."""

from __future__ import annotations

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.reading.rows import Coded


def grouped(*columns: Coded) -> tuple[NDArray[np.int64], list[int]]:
    """A number for each distinct combination of texts, and a row where each stands."""
    key = np.zeros(len(columns[0]), np.int64)
    for column in columns:
        if not (column.codes >= 0).any():
            continue
        span = len(column.texts) + 1
        if int(key.max(initial=0)) > 2**62 // span:
            key = pd.factorize(key)[0].astype(np.int64)
        key = key * span + column.codes + 1
    group, uniques = pd.factorize(key)
    first = np.zeros(len(uniques), np.int64)
    first[group[::-1]] = np.arange(len(group))[::-1]
    return group, [int(row) for row in first]
