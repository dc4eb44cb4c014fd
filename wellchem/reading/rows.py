"""Printed rows: one for each number (or word) that a laboratory printed for an analyte, with all that stands beside it.

Arrays all along: every text is dictionary-coded, the place of each row is given by indices into the source's grids, and
what the report says of each sample stands in its own table of coded columns.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.arrow_texts import ArrowTexts
from wellchem.reading.grid import Codes, GridColumn


@dataclass(frozen=True, eq=False)
class Coded:
    """A column of text: `texts[codes[i]]` is the text of row i, code -1 means that there is none.

    `distinct` promises that no text stands in it twice and none is empty, so that nobody has to look again.
    """

    codes: Codes
    texts: NDArray[Any]
    distinct: bool = False

    def __len__(self) -> int:
        return len(self.codes)

    def __getitem__(self, row: int) -> str:
        code = int(self.codes[row])
        return "" if code < 0 else str(self.texts[code])

    def plain(self) -> list[str]:
        """The text of every row, empty where there is none."""
        texts: list[str] = self.lookup(self.texts, "").tolist()
        return texts

    def take(self, rows: Any) -> Coded:
        """The same texts, other rows (an index array, a mask or a slice)."""
        return Coded(taken(self.codes, rows), self.texts, self.distinct)

    def lookup(self, values: Any, missing: Any) -> NDArray[Any]:
        """For each row the value of its text: `values` holds one a text, `missing` stands where there is none."""
        values = np.asarray(values)
        return np.append(values, np.asarray(missing, values.dtype)).take(self.codes)

    def reworded(self, words: Coded) -> Coded:
        """The same rows with other words: `words` holds one, or none, for each of the texts."""
        return Coded(self.lookup(words.codes, -1), words.texts)

    def or_else(self, other: Coded) -> Coded:
        """This column where it has a text, the other where it has none."""
        if not (self.codes < 0).any() or not (other.codes >= 0).any():
            return self
        return Coded(
            np.where(self.codes >= 0, self.codes, np.where(other.codes >= 0, other.codes + len(self.texts), -1)).astype(
                np.int32
            ),
            np.concatenate([self.texts, other.texts]),
        )

    def kept(self, mask: NDArray[np.bool_]) -> Coded:
        """The same rows, empty where the mask is False."""
        return Coded(np.where(mask, self.codes, -1).astype(np.int32), self.texts, self.distinct)

    def compact(self) -> Coded:
        """The same rows over the texts that are used, each once, in the order of their first use."""
        used, first = np.unique(self.codes[self.codes >= 0], return_index=True)
        order = used[np.argsort(first, kind="stable")]
        if self.distinct:
            to = np.full(len(self.texts) + 1, -1, np.int32)
            to[order] = np.arange(len(order), dtype=np.int32)
            return Coded(to.take(self.codes), self.texts[order], distinct=True)
        place: dict[str, int] = {}
        to = np.full(len(self.texts) + 1, -1, np.int32)
        for code in order:
            to[code] = place.setdefault(str(self.texts[code]), len(place))
        return Coded(to.take(self.codes), texts_of(place), "" not in place)


def taken(array: NDArray[Any], rows: Any) -> NDArray[Any]:
    """Some entries of an array; by an index array `take` costs half of what brackets do."""
    by_index = isinstance(rows, np.ndarray) and rows.dtype != np.bool_
    made: NDArray[Any] = array.take(rows) if by_index else array[rows]
    return made


def texts_of(texts: Sequence[str] | dict[str, int]) -> NDArray[Any]:
    """An object array of texts."""
    array = np.empty(len(texts), object)
    array[:] = list(texts)
    return array


def constant(text: str, length: int) -> Coded:
    """The same text in every row; none where it is empty."""
    return Coded(np.full(length, 0 if text else -1, np.int32), texts_of([text]))


def of(texts: Sequence[str]) -> Coded:
    """A coded column from plain texts; an empty text is none."""
    place: dict[str, int] = {}
    codes = [place.setdefault(text, len(place)) if text else -1 for text in texts]
    return Coded(np.array(codes, np.int32), texts_of(place), distinct=True)


def few(count: int, texts: Mapping[int, str]) -> Coded:
    """A coded column of which only some rows have a text."""
    coded = of(list(texts.values()))
    codes = np.full(count, -1, np.int32)
    codes[list(texts)] = coded.codes
    return Coded(codes, coded.texts, coded.distinct)


def any_holds(texts: NDArray[Any], signs: str) -> bool:
    """Whether one of these signs stands in any of the texts."""
    if isinstance(texts, ArrowTexts):
        return texts.any_holds(signs)
    together = "\0".join(texts)
    return any(sign in together for sign in signs)


def column(source: GridColumn, rows: Any = slice(None)) -> Coded:
    """A grid's column, or some rows of it."""
    return Coded(source.codes[rows], source.texts, distinct=True)


def concatenated(parts: Sequence[Coded]) -> Coded:
    """Columns one after the other. A dictionary that several parts share is taken once."""
    if len(parts) == 1:
        return parts[0]
    offsets: dict[int, int] = {}
    texts, total, codes = [], 0, []
    for part in parts:
        if id(part.texts) not in offsets:
            offsets[id(part.texts)] = total
            texts.append(part.texts)
            total += len(part.texts)
        codes.append(np.where(part.codes >= 0, part.codes + offsets[id(part.texts)], -1).astype(np.int32))
    return Coded(np.concatenate(codes) if codes else np.empty(0, np.int32), np.concatenate(texts or [texts_of([])]))


@dataclass(frozen=True, eq=False)
class SampleHeads:
    """What the report says of each sample, as printed; one row a sample.

    `section` numbers the block of the source that the sample stands in, so that two blocks that print nothing of
    themselves are still two samples.
    """

    sample_id: Coded
    site: Coded
    point: Coded
    date_collected: Coded
    time_collected: Coded
    date_received: Coded
    date_analysed: Coded
    matrix: Coded
    sample_type: Coded
    laboratory: Coded
    latitude: Coded
    longitude: Coded
    well_depth: Coded
    aquifer: Coded
    preserved: Coded
    section: NDArray[np.int32]

    def __len__(self) -> int:
        return len(self.section)


HEAD_FIELDS = tuple(f.name for f in fields(SampleHeads) if f.name != "section")


@dataclass(frozen=True, eq=False)
class PrintedRows:
    """The rows. `code_list` names the list that a bare code in `name` belongs to, none where `name` is a printed name.

    `unit` is what the unit's column, the header or the section prints; a unit inside the value's or the name's cell
    is found by the rooms after this one. `native` tells that the value was a number of the file's own. `column_note`
    is the assumption made in choosing the value's column, if one was; `standard` the data standard whose columns the
    qualifier and remark are of: its codes have meanings of their own. `grid`, `row` and `column` are indices.
    """

    name: Coded
    code_list: Coded
    value: Coded
    unit: Coded
    fraction: Coded
    basis: Coded
    qualifier: Coded
    remark: Coded
    presence: Coded
    flag: Coded
    condition: Coded
    status: Coded
    reporting_limit: Coded
    reporting_unit: Coded
    detection_limit: Coded
    detection_unit: Coded
    uncertainty: Coded
    method: Coded
    measured: Coded
    quality_control: Coded
    statistic: Coded
    column_note: Coded
    standard: Coded
    native: NDArray[np.bool_]
    sample: NDArray[np.int32]
    table: NDArray[np.int32]
    grid: NDArray[np.int32]
    row: NDArray[np.int32]
    column: NDArray[np.int32]

    def __len__(self) -> int:
        return len(self.row)


TEXT_FIELDS = tuple(
    f.name for f in fields(PrintedRows) if f.name not in ("native", "sample", "table", "grid", "row", "column")
)


def joined(parts: Sequence[PrintedRows]) -> PrintedRows:
    """Printed rows of several tables, one after the other."""
    made: dict[str, Any] = {}
    for name in TEXT_FIELDS:
        made[name] = concatenated([getattr(part, name) for part in parts])
    for name in ("native", "sample", "table", "grid", "row", "column"):
        kind = np.bool_ if name == "native" else np.int32
        arrays = [getattr(part, name) for part in parts]
        made[name] = np.concatenate(arrays) if arrays else np.empty(0, kind)
    return PrintedRows(**made)


@dataclass(frozen=True)
class Loose:
    """Something printed outside any row that could be made of a table, and why it was left."""

    reason: UnreadReason
    text: str
    grid: int
    row: int
    column: int
    detail: str = ""


@dataclass(frozen=True)
class TakenColumn:
    """The role that a column took in a table, and why."""

    column: int
    header: str
    role: str
    why: str


@dataclass
class Table:
    """One table as it was understood: where it is, its layout, its columns, and the decimal sign of its numbers."""

    grid: int
    first_row: int
    last_row: int
    layout: str
    columns: tuple[TakenColumn, ...]
    decimal: str | None = None
    notes: list[str] = field(default_factory=list)


@dataclass(frozen=True, eq=False)
class Layout:
    """Cells or words claimed as layout, by kind."""

    kind: LayoutKind
    cells: int
