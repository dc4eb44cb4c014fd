"""The shape of a table with analyte names down a column: which columns hold what."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from wellchem.models.codes import LayoutKind
from wellchem.reading.rows import TakenColumn
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import Head
from wellchem.reading.tables.row_labels import of_columns
from wellchem.vocabulary import ColumnRole

R = ColumnRole
# Columns whose cells never belong to a result.
LAYOUT = {
    R.LIMIT: LayoutKind.LIMIT,
    R.PREVIOUS: LayoutKind.PREVIOUS,
    R.STATISTIC: LayoutKind.STATISTIC,
    R.ADMINISTRATIVE: LayoutKind.ADMINISTRATIVE,
    R.RPD: LayoutKind.ADMINISTRATIVE,
    R.SPIKE_AMOUNT: LayoutKind.ADMINISTRATIVE,
    R.DILUTION: LayoutKind.ADMINISTRATIVE,
    R.RESULT_TYPE: LayoutKind.ADMINISTRATIVE,
    R.RATING: LayoutKind.ADMINISTRATIVE,
    R.COMMENT: LayoutKind.NOTE,
    R.NOTE: LayoutKind.NOTE,
}
# Columns that stand beside a value: the field of the printed row that they fill.
BESIDE = {
    R.UNIT: "unit",
    R.FRACTION: "fraction",
    R.BASIS: "basis",
    R.QUALIFIER: "qualifier",
    R.REMARK: "remark",
    R.PRESENCE: "presence",
    R.DETECT_FLAG: "flag",
    R.DETECTION_CONDITION: "condition",
    R.RESULT_STATUS: "status",
    R.REPORTING_LIMIT: "reporting_limit",
    R.DETECTION_LIMIT: "detection_limit",
    R.UNCERTAINTY: "uncertainty",
    R.METHOD: "method",
    R.MEASURED: "measured",
}
IN_UNITS = ("reporting_limit", "detection_limit", "uncertainty")  # numbers beside the result, in units of their own
OWN = (
    "qualifier",
    "remark",
    "presence",
    "flag",
    "condition",
    "uncertainty",
)  # never shared by several columns of values


_MARKS = {"U", "J", "UJ", "ND", "<", "BDL"}  # of which a column of qualifiers without a heading holds one at least
_ERROR = re.compile(r"#[A-Z0/]+[!?]")  # of a spreadsheet's formula: #VALUE!, #DIV/0!, #NAME? tell nothing of the column
SMALL = 4000  # rows up to which every line of a table is looked at by itself


@dataclass
class ValueColumn:
    """A column of values, the columns that stand beside it, and what its heading says of all of it."""

    column: int
    beside: dict[str, list[int]] = field(default_factory=dict)
    said: dict[str, str] = field(default_factory=dict)
    fraction: str = ""
    unit: str = ""
    note: str = ""
    measured: str = ""
    brackets: ColumnRole | None = None


@dataclass
class Shape:
    """Columns of a table by what they hold.

    `quality` are columns of recoveries, `every_row` whether every result has one.
    `ticks` are columns in which a mark chooses the word of the heading.
    `inverted` are flag columns whose yes means not detected.
    `comments` are columns of comments on results, of a data standard.
    `unassigned` are columns under unknown headings, whose few numbers are left unread.
    `some_units` are columns of limits, or without a heading, that hold units in some rows.
    `wrapped` gives, for a row whose name goes on in another row, that row and the whole name; `wrapped_units` the whole
    unit of a row.
    """

    first: int
    last: int
    name: int | None
    codes: dict[int, str]
    values: list[ValueColumn]
    identity: dict[str, int] = field(default_factory=dict)
    limits: list[tuple[int, int | None, int | None]] = field(default_factory=list)
    layout: dict[int, LayoutKind] = field(default_factory=dict)
    quality: list[int] = field(default_factory=list)
    every_row: bool = False
    statistic: int | None = None
    ambiguous: list[int] = field(default_factory=list)
    ticks: dict[int, str] = field(default_factory=dict)
    inverted: set[int] = field(default_factory=set)
    reportable: set[int] = field(default_factory=set)
    comments: list[int] = field(default_factory=list)
    unassigned: list[int] = field(default_factory=list)
    some_units: set[int] = field(default_factory=set)
    wrapped: dict[int, tuple[int, str]] = field(default_factory=dict)
    wrapped_units: dict[int, str] = field(default_factory=dict)
    said: dict[str, str] = field(default_factory=dict)
    standard: str = ""
    taken: dict[int, TakenColumn] = field(default_factory=dict)

    def took(self, head: Head, role: str, why: str) -> None:
        """Note the role of a column; the first one stands."""
        self.taken.setdefault(head.column, TakenColumn(head.column, head.text, role, why))

    def columns(self) -> range:
        """The columns of the table."""
        return range(self.first, self.last + 1)


def numeric(cells: Cells, column: int, body: int, look: int = 60) -> bool:
    """Whether most of the next texts of a column are values."""
    values = filled = 0
    for row in range(body, min(body + look, cells.height)):
        if (text := cells.text(row, column)) and not _ERROR.fullmatch(text):
            kind = cells.lexicon.kind(text)
            if kind & (Kind.DATE | Kind.UNIT) and not kind & Kind.VALUE and of_columns(cells, row):
                continue
            filled += 1
            values += bool(kind & Kind.VALUE and not kind & Kind.UNIT)
    return values > 0 and values * 2 > filled


def units_among(cells: Cells, columns: Iterable[int], name: int, body: int, look: int = 60) -> list[int]:
    """Columns that hold units in some rows, and limits or words in the others."""
    found = []
    for column in columns:
        texts = {cells.text(row, column) for row in range(body, min(body + look, cells.height))}
        kinds = [cells.lexicon.kind(text) for text in texts if column != name]
        if any(kind & Kind.UNIT and not kind & (Kind.VALUE | Kind.NAME) for kind in kinds):
            found.append(column)
    return found


def is_mark(cells: Cells, text: str) -> bool:
    """Whether a text is one of the usual qualifiers."""
    return len(text) <= 3 and text.isupper() and cells.lexicon.vocabulary.qualifier(text) is not None


def are_marks(cells: Cells, texts: set[str]) -> bool:
    """Whether texts of a column are the usual qualifiers and nothing else."""
    return bool(texts & _MARKS) and all(is_mark(cells, text) for text in texts)


def stand_beside(shape: Shape, name: str, column: int, own: bool) -> None:
    """Give a column to the value columns that it stands beside: to the nearest at its left where each has its own."""
    left = [value for value in shape.values if value.column < column]
    right = [value for value in shape.values if value.column > column]
    if name == "remark" and right and (not left or "remark" in left[-1].beside or right[0].column == column + 1):
        left = right[:1]  # a sign stands before its number
    for value in left[-1:] if own and left else shape.values:
        value.beside.setdefault(name, []).append(column)
