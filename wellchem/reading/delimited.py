"""Delimited text turned into one grid."""

from __future__ import annotations

import csv
import dataclasses
from collections.abc import Sequence
from itertools import zip_longest

import numpy as np
from numpy.typing import NDArray

from wellchem.errors import CorruptFile, EmptyFile
from wellchem.reading.dialect import DIRECTIVE, Dialect, find_dialect
from wellchem.reading.encoding import LARGE, to_utf8
from wellchem.reading.grid import Codes, Grid, GridColumn, Source, encode

SURE = 0.5  # share of the lines that a delimiter cuts evenly; under that, blanks may be what aligns the columns


def read_delimited(data: bytes, name: str, *, arrow: bool | None = None) -> Source:
    """One grid of a delimited file. `arrow` False reads by the csv module alone, True by pyarrow whatever the size.

    Raises `EmptyFile` and `CorruptFile`.
    """
    text, encoding, notes = to_utf8(data, name)
    if not text[:LARGE].strip() and not text.strip():
        raise EmptyFile(name)
    dialect, fit = find_dialect(text)
    if fit < SURE and dialect.delimiter != "\t" and len(text) < LARGE:
        from wellchem.reading.aligned import aligned_grids, is_aligned

        if is_aligned(text.decode("utf-8")):
            grids = tuple(aligned_grids(text.decode("utf-8")))
            return Source(name, "delimited", grids, encoding, None, (*notes, "columns aligned by blanks"))
    columns = None
    if dialect.delimiter and (arrow or (arrow is None and len(text) >= LARGE)):
        from wellchem.reading.delimited_arrow import read_columns

        columns = read_columns(text, dialect)
    if columns is None:
        columns, dialect = _read_by_csv(text, dialect, name)
    grid = _without_empty(*columns)
    if dialect.blank_before_quote:
        notes = (*notes, "blanks between delimiter and quote left out")
    return Source(name, "delimited", (grid,), encoding, dialect.delimiter or None, notes)


def columns_of(records: Sequence[Sequence[str]]) -> tuple[GridColumn, ...]:
    """Columns of records that may be of unequal widths."""
    return tuple(encode(cells) for cells in zip_longest(*records, fillvalue=""))


def _read_by_csv(text: bytes, dialect: Dialect, name: str) -> tuple[tuple[tuple[GridColumn, ...], Codes], Dialect]:
    """Columns and record numbers by the csv module; quotes that cannot be closed lose their meaning."""
    comments = dialect.comments(text)
    body = text.decode("utf-8")
    body = body[sum(len(line) + 1 for line in comments) :]
    skipped = 0
    if DIRECTIVE.match(body):
        body, skipped = body.partition("\n")[2], 1
    if dialect.quoted and _unclosed(body, dialect):
        dialect = dataclasses.replace(dialect, quoted=False, blank_before_quote=False)
    try:
        records = dialect.cells(body)
    except csv.Error:
        try:
            dialect = dataclasses.replace(dialect, quoted=False, blank_before_quote=False)
            records = dialect.cells(body)
        except csv.Error as error:
            raise CorruptFile(name, str(error)) from None
    records = [[line.strip()] for line in comments] + records
    numbers = np.arange(skipped + 1, skipped + 1 + len(records), dtype=np.int32)
    return (columns_of(records), numbers), dialect


def _unclosed(body: str, dialect: Dialect) -> bool:
    """Whether a quote is opened and never closed."""
    if not dialect.delimiter:
        return False
    try:
        for _ in csv.reader(
            body.splitlines(keepends=True),
            delimiter=dialect.delimiter,
            skipinitialspace=dialect.blank_before_quote,
            strict=True,
        ):
            pass
    except csv.Error as error:
        return "unexpected end" in str(error) or "field larger" in str(error)
    return False


def _without_empty(columns: tuple[GridColumn, ...], numbers: NDArray[np.int32]) -> Grid:
    """The grid without rows and columns that hold nothing."""
    alive = np.zeros(len(numbers), dtype=bool)
    for column in columns:
        alive |= column.codes >= 0
        if alive.all():
            break
    if not alive.all():
        columns = tuple(dataclasses.replace(column, codes=column.codes[alive]) for column in columns)
        numbers = numbers[alive]
    kept = [index for index, column in enumerate(columns) if len(column.texts)]
    return Grid(
        columns=tuple(columns[index] for index in kept),
        height=len(numbers),
        rows=numbers,
        columns_at=np.array(kept, dtype=np.int32) + 1,
    )
