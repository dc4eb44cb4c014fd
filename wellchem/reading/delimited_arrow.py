"""Large delimited files turned into dictionary-coded columns by pyarrow, without an object per cell."""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from typing import TYPE_CHECKING, Any, cast

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.arrow_texts import ArrowTexts
from wellchem.reading.dialect import DIRECTIVE, Dialect
from wellchem.reading.grid import Codes, GridColumn

if TYPE_CHECKING:
    import pyarrow as pa

EDGE = 1 << 16  # bytes at both ends read apart: preamble, header, footer
LEAF = 1 << 18  # bytes of an irregular stretch that are no longer halved
SLICE = 1 << 26  # bytes looked through at a time for line ends
LONG = 1000  # texts of a column from which they are left to pyarrow
BLOCK = 1 << 20  # bytes that pyarrow parses at a time: they stay in the processor's cache


class _Untrustworthy(Exception):
    """pyarrow and the csv module cut the text into different records."""


def read_columns(text: bytes, dialect: Dialect) -> tuple[tuple[GridColumn, ...], Codes] | None:
    """Columns and record numbers of a UTF-8 text; None where pyarrow is absent or the quotes cannot be trusted."""
    try:
        import pyarrow as pa
    except ImportError:
        return None
    if dialect.blank_before_quote or DIRECTIVE.match(text[:16].decode("utf-8", errors="ignore")):
        return None
    # Most files are regular: as many records as lines, all of one width. That is seen by counting alone.
    view = np.frombuffer(text, dtype=np.uint8)
    breaks = sum(int(np.count_nonzero(view[at : at + BLOCK] == 10)) for at in range(0, len(view), BLOCK))
    count = breaks + (not text.endswith(b"\n"))
    blank_lines = b"\n\n" in text[:EDGE] or b"\n\n" in text[-EDGE:]  # in between they are seen by the count alone
    if not text.startswith((b"#", b"\n")) and not blank_lines:
        table = _by_arrow(memoryview(text), dialect, dialect.width, False)
        if table is not None and table.num_rows == count:
            return _columns(table.columns), np.arange(1, count + 1, dtype=np.int32)
    comments = dialect.comments(text)  # whole lines, whatever quotes stand in them
    text = text[sum(len(line.encode()) + 1 for line in comments) :]
    ends, inside = _record_ends(text, dialect.quoted)
    if ends is None:
        return None
    starts = np.concatenate((np.zeros(1, dtype=np.int64), ends[:-1] + 1))
    lines = np.flatnonzero(ends > starts)  # pyarrow leaves blank lines out
    starts, ends = starts[lines], ends[lines]
    head = int(np.searchsorted(starts, EDGE))
    tail = max(head, int(np.searchsorted(starts, len(text) - EDGE)))
    width = _usual_width(text, starts, dialect)

    def stretch(first: int, last: int) -> list[pa.Table]:
        """Records first .. last - 1 as tables; a stretch of unequal widths is halved until it is small."""
        if first >= last:
            return []
        begin, end = int(starts[first]), int(ends[last - 1])
        table = _by_arrow(memoryview(text)[begin:end], dialect, width, inside)
        if table is not None and table.num_rows == last - first:
            return [table]
        if end - begin > LEAF and last - first > 1:
            middle = (first + last) // 2
            return stretch(first, middle) + stretch(middle, last)
        records = [record for record in dialect.cells(text[begin:end].decode("utf-8")) if record]
        if len(records) != last - first:
            raise _Untrustworthy
        return [_by_hand(records)]

    try:
        parts = [_by_hand([[line.strip()] for line in comments])] if comments else []
        for first, last in ((0, head), (head, tail), (tail, len(lines))):
            parts += stretch(first, last)
    except (_Untrustworthy, csv.Error):
        return None
    widest = max((part.num_columns for part in parts), default=0)
    found = []
    for at in range(widest):
        chunks: list[pa.Array] = []
        for part in parts:
            chunks += part.column(at).chunks if at < part.num_columns else [pa.nulls(part.num_rows, pa.string())]
        found.append(pa.chunked_array(chunks))
    numbers = np.concatenate((np.arange(len(comments)), lines + len(comments))) + 1
    return _columns(found), numbers.astype(np.int32)


def _record_ends(text: bytes, quoted: bool) -> tuple[NDArray[np.int64] | None, bool]:
    """Positions of the line ends outside quotes, and whether there are line ends inside; None for unbalanced quotes."""
    view = np.frombuffer(text, dtype=np.uint8)
    pieces: list[NDArray[np.int64]] = []
    open_quote, inside = 0, False
    quoted = quoted and b'"' in text
    for begin in range(0, len(view), SLICE):
        piece = view[begin : begin + SLICE]
        newlines = np.flatnonzero(piece == 10)
        if quoted:
            quotes = np.flatnonzero(piece == 34)
            within = (np.searchsorted(quotes, newlines) + open_quote) % 2 == 1
            open_quote = (open_quote + len(quotes)) % 2
            if within.any():
                inside = True
                newlines = newlines[~within]
        pieces.append(newlines + begin)
    if open_quote:
        return None, inside
    if not text.endswith(b"\n"):
        pieces.append(np.array([len(text)], dtype=np.int64))
    return np.concatenate(pieces), inside


def _usual_width(text: bytes, starts: NDArray[np.int64], dialect: Dialect) -> int:
    """The most frequent number of cells in a record about the middle of the file."""
    middle = len(starts) // 2
    begin = int(starts[middle])
    end = int(starts[min(middle + 200, len(starts) - 1)])
    widths = Counter(len(record) for record in dialect.cells(text[begin:end].decode("utf-8")) if record)
    return widths.most_common(1)[0][0] if widths else dialect.width


def _by_arrow(piece: memoryview, dialect: Dialect, width: int, inside: bool) -> pa.Table | None:
    """A stretch of records of one width as columns of text; None where a record has another width."""
    import pyarrow as pa
    from pyarrow import csv as arrow_csv

    names = [str(at) for at in range(width)]
    try:
        return arrow_csv.read_csv(
            pa.BufferReader(piece),
            read_options=arrow_csv.ReadOptions(column_names=names, block_size=BLOCK),
            parse_options=arrow_csv.ParseOptions(
                delimiter=dialect.delimiter,
                quote_char='"' if dialect.quoted else False,
                newlines_in_values=inside,
            ),
            convert_options=arrow_csv.ConvertOptions(
                column_types=dict.fromkeys(names, pa.string()),
                null_values=[""],
                strings_can_be_null=True,
                quoted_strings_can_be_null=True,
                check_utf8=False,  # the text is UTF-8 by now
            ),
        )
    except pa.ArrowInvalid:
        return None


def _by_hand(records: list[list[str]]) -> pa.Table:
    """Records of unequal widths as the same kind of table."""
    import pyarrow as pa

    width = max(len(record) for record in records)
    columns = [
        pa.array([record[at] if at < len(record) and record[at] else None for record in records], pa.string())
        for at in range(width)
    ]
    return pa.table(columns, names=[str(at) for at in range(width)])


def _columns(columns: Sequence[pa.ChunkedArray]) -> tuple[GridColumn, ...]:
    """The grid's columns, several at a time: pyarrow encodes without Python's lock."""
    import pyarrow as pa

    with ThreadPoolExecutor(pa.cpu_count()) as workers:
        return tuple(workers.map(_column, columns))


def _column(chunked: pa.ChunkedArray) -> GridColumn:
    """A grid's column of pyarrow's: one dictionary, blanks at the ends of texts taken away."""
    import pyarrow as pa
    import pyarrow.compute as pc

    # Encoding whole columns costs half of what dictionaries of every block and their union do.
    chunks = chunked.dictionary_encode().chunks
    indices = pa.chunked_array([chunk.indices for chunk in chunks], pa.int32()).combine_chunks()
    codes = indices.fill_null(-1).to_numpy(zero_copy_only=False)
    dictionary = chunks[-1].dictionary
    trimmed = pc.utf8_trim_whitespace(dictionary)
    if len(trimmed) and not trimmed.equals(dictionary):
        again = pc.if_else(pc.equal(trimmed, ""), pa.scalar(None, pa.string()), trimmed).dictionary_encode()
        into = again.indices.fill_null(-1).to_numpy(zero_copy_only=False).astype(np.int32)
        codes = np.append(into, np.int32(-1))[codes]
        dictionary = again.dictionary
    texts = ArrowTexts(dictionary) if len(dictionary) > LONG else dictionary.to_numpy(zero_copy_only=False)
    return GridColumn(codes, cast(Any, texts))
