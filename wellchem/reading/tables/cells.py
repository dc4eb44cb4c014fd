"""One grid seen with the vocabulary's eyes: what each distinct text can be, asked once."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from enum import IntFlag
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.dates import clock, parsed
from wellchem.reading.grid import Grid, GridColumn
from wellchem.vocabulary import ColumnMeaning, NameMeaning, PhraseMeaning, Vocabulary

_PLAIN = re.compile(r"^[-+−]?\s?(?:\d[\d ,.'’]*|[.,]\d+)(?:[eE][-+]?\d+)?$")


class Kind(IntFlag):
    """What a text can be; several at once."""

    TEXT = 0
    NUMBER = 1
    VALUE = 2
    NAME = 4
    UNIT = 8
    DATE = 16
    HEADER = 32
    PHRASE = 64


@dataclass
class Lexicon:
    """Meanings of distinct texts over one reading."""

    vocabulary: Vocabulary
    _kinds: dict[str, Kind] = field(default_factory=dict)

    def column(self, text: str) -> ColumnMeaning | None:
        """Role of a printed header word."""
        return self.vocabulary.column(text)

    def phrase(self, text: str) -> PhraseMeaning | None:
        """Meaning of a title, a label, or a phrase of a report."""
        return self.vocabulary.phrase(text)

    def is_name(self, text: str) -> bool:
        """Whether the text is a known analyte's name."""
        return bool(self.kind(text) & Kind.NAME)

    def is_only_unit(self, text: str) -> bool:
        """Whether the text is a unit, and neither a value nor a name."""
        kind = self.kind(text)
        return bool(kind & Kind.UNIT) and not kind & (Kind.VALUE | Kind.NAME)

    def kind(self, text: str) -> Kind:
        """What the text can be."""
        found = self._kinds.get(text)
        if found is None:
            found = self._kinds[text] = self._seen(text)
        return found

    def is_of_germs(self, text: str) -> bool:
        """Whether a text names organisms, of which a letter says whether they are present."""
        found = self.vocabulary.name(text) if text else None
        return found is not None and self.vocabulary.analytes[found.analyte].quantity == "count"

    def is_answer(self, text: str) -> bool:
        """Whether a short word says, of organisms, whether they are there: "Yes", "No", "A"."""
        return len(text) <= 5 and text.isalpha() and self.vocabulary.value(text, presence=True) is not None

    def _seen(self, text: str) -> Kind:
        if not text:
            return Kind.TEXT
        if parsed(text) or (":" in text and clock(text)):
            return Kind.DATE
        if _PLAIN.match(text):
            return Kind.NUMBER | Kind.VALUE
        made = Kind.TEXT
        if len(text) > 160:
            return made
        vocabulary = self.vocabulary
        if len(text) <= 40 and vocabulary.value(text) is not None:
            made |= Kind.VALUE
        first = text.split()[0]
        said = made & Kind.VALUE and not any(map(str.islower, first)) and vocabulary.value(first) is not None
        # NA, ND, U before sodium, neodymium …, with a unit behind them too
        if not said and any(letter.isalpha() for letter in text) and _names_result(vocabulary.name(text)):
            made |= Kind.NAME
        counted = made & Kind.VALUE and text[0] in "0123456789.,<>≤≥~+-−"
        if len(text) <= 40 and not counted and vocabulary.is_unit(text):
            made |= Kind.UNIT
        if vocabulary.column(text) is not None:
            made |= Kind.HEADER
        if vocabulary.phrase(text) is not None:
            made |= Kind.PHRASE
        return made


def _names_result(found: NameMeaning | None) -> bool:
    """Whether a name is of a result, not of something printed beside one ("Iron MDL")."""
    return found is not None and found.companion is None


@dataclass(frozen=True)
class Cell:
    """One non-empty cell of a line."""

    column: int
    text: str
    kind: Kind


class Cells:
    """A grid's lines on demand."""

    def __init__(self, grid: Grid, lexicon: Lexicon) -> None:
        self.grid = grid
        self.lexicon = lexicon
        self.height, self.width = grid.height, grid.width
        self._lines: dict[int, tuple[Cell, ...]] = {}

    def line(self, row: int) -> tuple[Cell, ...]:
        """Non-empty cells of one row, from left to right."""
        found = self._lines.get(row)
        if found is None:
            kind = self.lexicon.kind
            found = tuple(
                Cell(index, text, kind(text))
                for index, column in enumerate(self.grid.columns)
                if column.codes[row] >= 0 and (text := str(column.texts[column.codes[row]]))
            )
            self._lines[row] = found
        return found

    def text(self, row: int, column: int) -> str:
        """Text of a cell, empty where it is."""
        return self.grid.columns[column].text(row)

    def kinds(self, column: int) -> NDArray[np.int16]:
        """Kind of every distinct text of a column."""
        texts = self.grid.columns[column].texts
        return np.fromiter((int(self.lexicon.kind(str(text))) for text in texts), np.int16, len(texts))

    @cached_property
    def filled(self) -> NDArray[np.int32]:
        """How many cells of each row are not empty."""
        made = np.zeros(self.height, np.int32)
        for column in self.grid.columns:
            made += column.codes >= 0
        return made

    @cached_property
    def merged_down(self) -> dict[int, GridColumn]:
        """Columns with cells merged over several rows, in which every row of these has the cell's text."""
        made: dict[int, GridColumn] = {}
        for mark in self.grid.marks:
            height = int(mark.text.split("x")[0]) if mark.kind == "merged" and "x" in mark.text else 1
            if height > 1:
                own = made.get(mark.column) or self.grid.columns[mark.column]
                codes, rows, end = own.codes.copy(), self.grid.rows, mark.row + height
                if self.grid.page is None:  # counted with the empty rows that a grid leaves out
                    end = int(np.searchsorted(rows, rows[mark.row] + height))
                codes[mark.row : end] = codes[mark.row]
                made[mark.column] = replace(own, codes=codes)
        return made

    @cached_property
    def merged_width(self) -> dict[tuple[int, int], int]:
        """Columns that a merged cell spans, by its place."""
        made = {}
        for mark in self.grid.marks:
            if mark.kind == "merged" and "x" in mark.text:
                made[mark.row, mark.column] = int(mark.text.split("x")[1])
        return made
