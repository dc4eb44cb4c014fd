"""Grids to printed rows: one understanding of tables for every format.

Headers are found wherever they stand, columns take their roles from header words (data of the vocabulary) or from what
they hold, and every non-empty cell is claimed once.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from wellchem.reading.grid import Source
from wellchem.reading.ledger import Ledger
from wellchem.reading.rows import Loose, PrintedRows, SampleHeads, Table, joined
from wellchem.reading.tables.dated import day_first_printed, with_dates
from wellchem.reading.tables.reader import Reader
from wellchem.reading.tables.walk import walk
from wellchem.vocabulary import Vocabulary


@dataclass(frozen=True, eq=False)
class Reading:
    """A source's printed rows, what it says of its samples, its legend, the account of its cells.

    `day_first` tells whether it prints that the day leads in its dates, None where it does not. `quoted` are the
    printed rows of sentences in paragraphs, which may say again what a table says.
    """

    source: Source
    rows: PrintedRows
    heads: SampleHeads
    legend: dict[str, str]
    loose: tuple[Loose, ...]
    tables: tuple[Table, ...]
    ledger: Ledger
    day_first: bool | None = None
    quoted: tuple[int, ...] = ()


def printed(source: Source, vocabulary: Vocabulary) -> Reading:
    """Everything that a source prints in its tables and running lines."""
    reader = Reader(source, vocabulary)
    for grid in range(len(source.grids)):
        walk(reader, grid)
    heads, number = reader.samples.heads(reader.entries, with_dates(reader.lexicon, reader.said))
    rows = joined(reader.parts)
    return Reading(
        source,
        replace(rows, sample=number[rows.sample]),
        heads,
        reader.legend,
        tuple(reader.loose),
        tuple(reader.tables),
        reader.ledger,
        day_first_printed(source),
        tuple(reader.quoted),
    )


__all__ = ["Reading", "printed"]
