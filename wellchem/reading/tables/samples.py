"""The book of samples: what the report says of each, found once for each distinct combination of printed texts."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.reading.rows import HEAD_FIELDS, Coded, SampleHeads, of

# What tells one sample from another; the rest is said of a sample.
IDENTITY = ("sample_id", "site", "point", "date_collected", "time_collected", "matrix", "sample_type")
Fields = dict[str, str]


class SampleBook:
    """Collects samples; rows are given the sample's number in order of appearance."""

    def __init__(self) -> None:
        self._rows: list[Fields] = []
        self._sections: list[int] = []
        self._known: dict[tuple[object, ...], int] = {}

    def one(self, said: Mapping[str, str], section: int) -> int:
        """Number of the sample of which this is said; `section` tells blocks apart that say nothing of themselves."""
        identity = tuple(said.get(field, "") for field in IDENTITY)
        key: tuple[object, ...] = identity if any(identity) else (section,)
        number = self._known.get(key)
        if number is None:
            number = self._known[key] = len(self._rows)
            self._rows.append({})
            self._sections.append(section)
        mine = self._rows[number]
        for field, text in said.items():
            if text and field in HEAD_FIELDS:
                mine.setdefault(field, text)
        return number

    def apart(self, said: Mapping[str, str], section: int) -> int:
        """Number of a new sample, whatever is said of it."""
        self._rows.append({field: text for field, text in said.items() if text and field in HEAD_FIELDS})
        self._sections.append(section)
        return len(self._rows) - 1

    def many(self, columns: Mapping[str, Coded], said: Mapping[str, str], section: int) -> NDArray[np.int32]:
        """Numbers of the samples of rows whose heads stand in columns; `said` holds for all of them where they are empty."""
        length = len(next(iter(columns.values())))
        identity = _carried({field: column for field, column in columns.items() if field in IDENTITY})
        key = np.zeros(length, np.int64)
        for coded in identity.values():
            key = _combined(key, coded.codes.astype(np.int64) + 1)
        group, uniques = pd.factorize(key)
        first = np.full(len(uniques), length, np.int64)
        np.minimum.at(first, group, np.arange(length))
        texts: dict[str, list[str]] = {}
        for field, column in columns.items():
            coded = identity.get(field, column)
            lead = coded.codes[first]
            if field not in identity:
                lead = _agreed(coded.codes, group, len(uniques))
            texts[field] = ["" if code < 0 else str(coded.texts[code]) for code in lead]
        numbers = np.empty(len(uniques), np.int32)
        for place in range(len(uniques)):
            own = {field: words[place] for field, words in texts.items() if words[place]}
            numbers[place] = self.one({**said, **own}, section)
        return numbers[group]

    def register(self, entries: list[Fields]) -> None:
        """Fill what a list of samples says of those that are named by one of its texts."""
        for mine in self._rows:
            for entry in entries:
                if _same(mine, entry):
                    for field, text in entry.items():
                        mine.setdefault(field, text)
                    break

    def fill(self, said: Mapping[str, str]) -> None:
        """What holds for the whole report, where a sample does not say otherwise."""
        for mine in self._rows:
            for field, text in said.items():
                mine.setdefault(field, text)

    def __len__(self) -> int:
        return len(self._rows)

    def heads(self) -> SampleHeads:
        """The book as columns."""
        made = {field: of([row.get(field, "") for row in self._rows]) for field in HEAD_FIELDS}
        return SampleHeads(**made, section=np.array(self._sections, np.int32))


def _same(mine: Fields, entry: Fields) -> bool:
    """Whether an entry of a list of samples speaks of this sample."""
    names = {text.casefold() for field in ("sample_id", "site") if (text := entry.get(field))}
    return any(mine.get(field, "").casefold() in names for field in ("sample_id", "site") if mine.get(field))


def _carried(identity: dict[str, Coded]) -> dict[str, Coded]:
    """Rows that say nothing of their sample belong to the sample of the row above."""
    if not identity:
        return identity
    blank = np.logical_and.reduce([column.codes < 0 for column in identity.values()])
    if not blank.any() or blank.all():
        return identity
    source = np.maximum.accumulate(np.where(blank, 0, np.arange(len(blank))))
    return {field: column.take(source) for field, column in identity.items()}


def _combined(key: NDArray[np.int64], codes: NDArray[np.int64]) -> NDArray[np.int64]:
    """One number for each distinct pair."""
    span = int(codes.max(initial=0)) + 1
    if span == 1:
        return key
    if int(key.max(initial=0)) > 2**62 // span:
        key = pd.factorize(key)[0].astype(np.int64)
    return key * span + codes


def _agreed(codes: NDArray[np.int32], group: NDArray[np.int64], count: int) -> NDArray[np.int64]:
    """The one text that a group's rows agree on; -1 where they differ or none has a text."""
    high = np.full(count, -1, np.int64)
    np.maximum.at(high, group, codes)
    differs = (codes >= 0) & (codes != high[group])
    high[np.unique(group[differs])] = -1
    return high
