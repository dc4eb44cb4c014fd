"""Sheets of a workbook that hold a water each and are named after it."""

from __future__ import annotations

import re

from wellchem.reading.dates import visit_in
from wellchem.reading.grid import Source
from wellchem.reading.tables.cells import Kind, Lexicon
from wellchem.reading.tables.shape import SMALL

_OTHER = Kind.NAME | Kind.HEADER | Kind.PHRASE | Kind.UNIT | Kind.VALUE | Kind.DATE
# Titles that every workbook may have.
_PLAIN = re.compile(
    r"(?:sheet|tabelle|feuille?|feuil|hoja|data|raw|results?|export|report|summary|compare|lab|log|page|table|list)?"
    r"[\s_-]*\(?\d*\)?",
    re.IGNORECASE,
)


def named_sheets(source: Source, lexicon: Lexicon) -> frozenset[int]:
    """Grids whose sheet's title names their water: another sheet of such a title lists most of the same analytes."""
    if len({grid.sheet for grid in source.grids}) < 2:
        return frozenset()
    names: dict[int, set[str]] = {}
    for at, grid in enumerate(source.grids):
        if grid.sheet and grid.height <= SMALL and _may_name(lexicon, grid.sheet):
            texts = (str(text) for column in grid.columns for text in column.texts)
            names[at] = {text.casefold() for text in texts if lexicon.is_name(text)}
    return frozenset(
        at
        for at, mine in names.items()
        for other, theirs in names.items()
        if source.grids[at].sheet != source.grids[other].sheet and len(mine & theirs) * 2 > len(mine | theirs) > 1
    )


def _may_name(lexicon: Lexicon, title: str) -> bool:
    """Whether a sheet's title can be the name of a water: no kind of thing that a workbook or a report has."""
    if _PLAIN.fullmatch(title) or visit_in(title) or not any(map(str.isalpha, title)):
        return False
    return not lexicon.kind(title) & _OTHER and lexicon.vocabulary.label_role(title) is None
