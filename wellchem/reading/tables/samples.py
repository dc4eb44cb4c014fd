"""The book of samples: what the report says of each, as columns; equal identities are one sample."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.reading.combinations import grouped
from wellchem.reading.rows import HEAD_FIELDS, Coded, SampleHeads, concatenated, constant, of

# What tells one sample from another; the rest is said of a sample.
# A second column that says a kind of sample ("Activity type" beside "Sample type"): either may say quality control.
OTHER_TYPE = "other_sample_type"
# A second column of sample numbers: what is built of a code of quality control there ("W-3 DUP") is no routine sample.
OTHER_ID = "other_sample_id"
IDENTITY = ("sample_id", "site", "point", "date_collected", "time_collected", "matrix", "sample_type")
Fields = dict[str, str]
_NAMES = ("sample_id", "site")


class SampleBook:
    """Collects samples in order of appearance. Numbers are provisional until `heads` says which are the same."""

    def __init__(self) -> None:
        self._columns: list[dict[str, Coded]] = []
        self._sections: list[NDArray[np.int32]] = []
        self._visits: list[NDArray[np.int64]] = []
        self._count = 0
        self._titles: dict[str, int] = {"": 0}
        self.visit = ""  # the day that the title of a sheet names: the same well on two of them is two samples

    def one(self, said: Mapping[str, str], section: int) -> int:
        """Number of the sample of which this is said; `section` tells blocks apart that say nothing of themselves."""
        return int(self._add({}, said, np.array([section], np.int32))[0])

    def apart(
        self, columns: Mapping[str, Coded], said: Mapping[str, str], sections: NDArray[np.int32]
    ) -> NDArray[np.int32]:
        """Numbers of samples that are one each, whatever is said of them."""
        return self._add(columns, said, sections)

    def many(self, columns: Mapping[str, Coded], said: Mapping[str, str], section: int) -> NDArray[np.int32]:
        """Numbers of the samples of rows whose heads stand in columns; `said` holds where these are empty."""
        length = len(next(iter(columns.values())))
        identity = _carried({field: column for field, column in columns.items() if field in IDENTITY})
        group, first = grouped(*identity.values(), within=np.zeros(length, np.int64))
        leads: dict[str, Coded] = {}
        for field, column in columns.items():
            coded = identity.get(field, column)
            lead = coded.codes[first] if field in identity else _agreed(coded.codes, group, len(first))
            leads[field] = Coded(lead.astype(np.int32), coded.texts, coded.distinct)
        return self._add(leads, said, np.full(len(first), section, np.int32))[group]

    def _add(
        self, columns: Mapping[str, Coded], said: Mapping[str, str], sections: NDArray[np.int32]
    ) -> NDArray[np.int32]:
        count = len(sections)
        block = {}
        for field in HEAD_FIELDS:
            column = columns.get(field)
            whole = constant(said.get(field, ""), count)
            block[field] = whole if column is None else column.or_else(whole)
        self._columns.append(block)
        self._sections.append(sections)
        self._visits.append(np.full(count, self._titles.setdefault(self.visit, len(self._titles)), np.int64))
        self._count += count
        return np.arange(self._count - count, self._count, dtype=np.int32)

    def heads(self, entries: list[Fields], said: Mapping[str, str]) -> tuple[SampleHeads, NDArray[np.int32]]:
        """The samples, and the final number of each provisional one.

        `entries` are lists of samples that say more of those they name; `said` holds for a report's only sample.
        """
        if not self._columns:
            return SampleHeads(**{field: of([]) for field in HEAD_FIELDS}, section=np.empty(0, np.int32)), np.empty(
                0, np.int32
            )
        columns = {field: _distinct(concatenated([block[field] for block in self._columns])) for field in HEAD_FIELDS}
        sections = np.concatenate(self._sections)
        group, first = _same(columns, sections, np.concatenate(self._visits))
        merged = {field: _told(column, group, first) for field, column in columns.items()}
        if entries:
            merged = _registered(merged, entries)
        if len(first) == 1:
            merged = {field: column.or_else(constant(said.get(field, ""), 1)) for field, column in merged.items()}
        return SampleHeads(**merged, section=sections[first]), group.astype(np.int32)


def _distinct(column: Coded) -> Coded:
    """The same rows over the texts that they have, each once in the dictionary, in its order."""
    used = np.flatnonzero(np.bincount(column.codes[column.codes >= 0], minlength=len(column.texts)))
    to = np.full(len(column.texts) + 1, -1, np.int32)
    if column.distinct:
        to[used], texts = np.arange(len(used)), column.texts[used]
    else:
        to[used], texts = pd.factorize(column.texts[used])
    return Coded(to.take(column.codes), texts, distinct=True)


def _same(
    columns: Mapping[str, Coded], sections: NDArray[np.int32], visits: NDArray[np.int64]
) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Group of each sample by identity (by section where it says nothing of itself), and the first of each group."""
    said, _ = grouped(*(columns[field] for field in IDENTITY), within=visits)
    nothing = np.logical_and.reduce([columns[field].codes < 0 for field in IDENTITY])
    return grouped(within=np.where(nothing, len(sections) + sections.astype(np.int64), said))


def _told(column: Coded, group: NDArray[np.int64], first: NDArray[np.int64]) -> Coded:
    """The first text that any of a group says."""
    codes = column.codes[first].copy()
    said = np.flatnonzero(column.codes >= 0)[::-1]
    late = np.full(len(first), -1, np.int32)
    late[group[said]] = column.codes[said]
    return Coded(np.where(codes >= 0, codes, late).astype(np.int32), column.texts, column.distinct)


def _registered(columns: Mapping[str, Coded], entries: list[Fields]) -> dict[str, Coded]:
    """What lists of samples say of those that are named by one of their texts."""
    by_name: dict[str, Fields] = {}
    for entry in entries:
        for field in _NAMES:
            if text := entry.get(field):
                by_name.setdefault(text.casefold(), entry)
    found = [
        next((by_name[t] for field in _NAMES if (t := columns[field][row].casefold()) in by_name), {})
        for row in range(len(columns["sample_id"]))
    ]
    return {field: column.or_else(of([entry.get(field, "") for entry in found])) for field, column in columns.items()}


def _carried(identity: dict[str, Coded]) -> dict[str, Coded]:
    """Rows that say nothing of their sample belong to the sample of the row above."""
    if not identity:
        return identity
    blank = np.logical_and.reduce([column.codes < 0 for column in identity.values()])
    if not blank.any() or blank.all():
        return identity
    source = np.maximum.accumulate(np.where(blank, 0, np.arange(len(blank))))
    return {field: column.take(source) for field, column in identity.items()}


def _agreed(codes: NDArray[np.int32], group: NDArray[np.int64], count: int) -> NDArray[np.int64]:
    """The one text that a group's rows agree on; -1 where they differ or none has a text."""
    if (codes == codes[:1]).all():
        return np.full(count, codes[0] if len(codes) else -1, np.int64)
    told = np.full(count, -1, np.int64)
    said = np.flatnonzero(codes >= 0)
    told[group[said]] = codes[said]  # the last one
    differs = said[codes[said] != told[group[said]]]
    told[group[differs]] = -1
    return told
