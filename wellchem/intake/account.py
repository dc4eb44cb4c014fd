"""How a file was understood, as data: every table, every column's role, and the account of every cell or word."""

from __future__ import annotations

from wellchem.models.sample import ColumnRole, Explanation, Layout, TableExplanation
from wellchem.normalise.results import QUALITY_CONTROL, RESULT, UNREAD, Normalised
from wellchem.vocabulary import Vocabulary


def explained(made: Normalised) -> Explanation:
    """The explanation of a reading."""
    reading, source = made.reading, made.reading.source
    cells = reading.ledger.settled(made.outcome, 3)
    tables = []
    for number, table in enumerate(reading.tables):
        mine = reading.rows.table == number
        grid = source.grids[table.grid]
        tables.append(
            TableExplanation(
                page=grid.page,
                sheet=grid.sheet,
                first_row=int(grid.rows[table.first_row]),
                last_row=int(grid.rows[max(table.last_row, table.first_row)]),
                layout=table.layout,
                columns=tuple(
                    ColumnRole(column=int(grid.columns_at[one.column]), header=one.header, role=one.role, why=one.why)
                    for one in sorted(table.columns, key=lambda one: one.column)
                ),
                results=int((made.outcome[mine] != UNREAD).sum()),
                unread=int((made.outcome[mine] == UNREAD).sum()),
                notes=tuple(table.notes),
            )
        )
    signs = {sign for sign in made.decimals.values() if sign}
    notes = [*source.notes, *(note for grid in source.grids for note in grid.notes)]
    return Explanation(
        format=source.format,
        encoding=source.encoding,
        delimiter=source.delimiter,
        decimal=signs.pop() if len(signs) == 1 else None,
        tables=tuple(tables),
        layout=tuple(Layout(kind=kind, cells=count) for kind, count in sorted(reading.ledger.layouts().items())),
        cells=reading.ledger.total,
        cells_in_results=int(cells[RESULT]),
        cells_in_quality_control=int(cells[QUALITY_CONTROL]),
        cells_unread=int(cells[UNREAD]) + reading.ledger.loose,
        notes=tuple(dict.fromkeys(notes)),
    )


def suggestions(made: Normalised, vocabulary: Vocabulary, most: int = 200) -> dict[str, tuple[str, ...]]:
    """Nearest known names of the names that were not understood (of the first `most` of them)."""
    unknown = dict.fromkeys(one.printed for one in made.meanings.each if not one.analyte and one.printed)
    return {name: vocabulary.suggest(name) for name in list(unknown)[:most]}
