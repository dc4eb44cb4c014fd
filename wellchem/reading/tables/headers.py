"""Finding a table's header wherever it stands: one to three rows of known header words or analyte names."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from itertools import pairwise

from wellchem.reading.tables.cells import Cell, Cells, Kind, Lexicon
from wellchem.reading.tables.heads import said_in
from wellchem.reading.tables.row_labels import day_row, method_row, unit_row
from wellchem.vocabulary import BESIDE_STATISTIC, ColumnMeaning, ColumnRole

NAMING = (
    ColumnRole.NAME,
    ColumnRole.NAME_SUPPLIED,
    ColumnRole.CODE_NWIS,
    ColumnRole.CODE_CAS,
    ColumnRole.CODE_STORET,
    ColumnRole.CODE_LOCAL,
)
_PREFIX = re.compile(r"^([A-Za-z]{1,6}[_. -]?\d{1,2})[_. -]?(?=[^\W\d])(.{2,})$")
# Columns of the US Geological Survey's wide tables: p or r (remark) before a five-digit parameter code.
_CODED = re.compile(r"^([pPrR])(\d{5})$")
_TICKED = (None, ColumnRole.DETECT_FLAG)
_TYPES = re.compile(r"^\d{1,3}[sdn]$")
_LETTER = re.compile(r"^[A-Z]$")
SYMBOL = re.compile(r"^[A-Z][a-z]?$")
_RESULTS = (ColumnRole.VALUE, ColumnRole.VALUE_NUMBER)
_PRESENCE = ("A", "P")  # absent, present
_DEPTH = 3
_LOOK = 12


@dataclass(frozen=True)
class Head:
    """The header of one column: its own text (all its rows), the group heading above it, and what the words mean."""

    column: int
    text: str
    own: tuple[str, ...]
    group: str
    meaning: ColumnMeaning | None

    @property
    def role(self) -> ColumnRole | None:
        """The role that the words give, if they are known."""
        return self.meaning.role if self.meaning else None


@dataclass(frozen=True)
class Header:
    """The header of a table: rows first … last, the columns' headings, and `vertical`, `wide` or `register`."""

    first: int
    last: int
    heads: dict[int, Head]
    layout: str

    def columns(self, *roles: ColumnRole) -> list[int]:
        """Columns of any of these roles, from left to right."""
        return [column for column, head in sorted(self.heads.items()) if head.role in roles]


def header_at(cells: Cells, row: int) -> Header | None:
    """The header that begins at this row, or None."""
    line = cells.line(row)
    if len(line) < 2 and not _group_heading(cells, row):
        return None
    if len(line) - len(said_columns(cells, row)) < 2 and not _group_heading(cells, row):
        return None
    if all(_labelled(cells, cell) for cell in line):
        return None
    best: Header | None = None
    best_score = 0
    for depth in range(1, min(_DEPTH, cells.height - row) + 1):
        if depth > 1 and not _continues(cells, row, row + depth - 1):
            break
        heads = _without_letters(cells, row + depth - 1, _heads(cells, row, row + depth - 1))
        layout, score = _layout(cells, row + depth - 1, heads)
        if layout and score > best_score:
            best, best_score = Header(row, row + depth - 1, heads, layout), score
    if best is not None and best.last > row and not _adds(cells, row, best):
        return None
    if best is not None and _type_line(cells, best.last + 1):
        best = replace(best, last=best.last + 1)
    return best


def _labelled(cells: Cells, cell: Cell) -> bool:
    """Whether a cell is a label with its text behind it ("Limit: 0.3 mg/L"), which heads nothing."""
    head, colon, text = cell.text.partition(":")
    return bool(colon and text.strip() and any(map(str.isdigit, text)) and cells.lexicon.column(head.strip()))


def _type_line(cells: Cells, row: int) -> bool:
    """Whether a row states the columns' widths and types (`5s 15s 10d`), as an RDB file does under its header."""
    return row < cells.height and all(_TYPES.match(cell.text) for cell in cells.line(row))


def _adds(cells: Cells, row: int, header: Header) -> bool:
    """Whether the first of several rows belongs to the header: it carries meaning or heads a group of its columns."""
    line = cells.line(row)
    below = {cell.column for cell in cells.line(row + 1)}
    if any(cell.kind & (Kind.HEADER | Kind.NAME | Kind.UNIT) for cell in line):
        return True
    heads_group = [cell for cell in line if cell.column > min(header.heads) and len(cell.text) < 60]
    over = [
        cell
        for cell in heads_group
        if cell.column in below or any(head.group == cell.text for head in header.heads.values())
    ]
    return len(heads_group) == len(line) and len(over) * 2 >= len(line)


def _group_heading(cells: Cells, row: int) -> bool:
    """Whether a row of one cell can be a heading over several columns of a header beneath."""
    line = cells.line(row)
    return len(line) == 1 and line[0].column > 0 and row + 1 < cells.height and len(cells.line(row + 1)) > 2


def _worded(cell: Cell) -> bool:
    """Whether a cell can stand in a header: not a plain value."""
    return not cell.kind & Kind.VALUE or bool(cell.kind & (Kind.HEADER | Kind.NAME | Kind.UNIT))


def _is_dash(cell: Cell) -> bool:
    """Whether a cell says that there is nothing to say, as among units over pH."""
    return not any(map(str.isalnum, cell.text))


def _continues(cells: Cells, first: int, row: int) -> bool:
    """Whether a row can be a further row of the header that begins at `first`."""
    line = cells.line(row)
    units = any(cell.kind & Kind.UNIT and not cell.kind & Kind.VALUE for cell in line)
    if not line or not all(_worded(cell) or (units and _is_dash(cell)) for cell in line):
        return False
    if said_columns(cells, row):
        return False
    if method_row(cells, row) or day_row(cells, row):
        return False
    if cells.grid.page is None and cells.grid.rows[row] - cells.grid.rows[row - 1] > 1:
        return False  # an empty row between; lines of a page count those of its other columns too
    above = {cell.column for start in range(first, row) for cell in cells.line(start)}
    if len(line) == 1 and line[0].column == 0 and len(above) > 1 and 0 in above:
        return False  # a section's title
    naming = {
        cell.column
        for start in range(first, row)
        for cell in cells.line(start)
        if (found := cells.lexicon.column(cell.text)) is not None and found.role in NAMING
    }
    if any(cell.column in naming and cell.kind & Kind.NAME for cell in line):
        return False  # a row of results
    names = len({cell.text for cell in line if cell.kind & Kind.NAME and not cell.kind & Kind.HEADER})
    return names <= 1 or names > len(line) / 3


def said_columns(cells: Cells, row: int) -> set[int]:
    """Columns whose cells in this row say something of a sample."""
    return {column for said in said_in(cells, row) if said.text for column in said.columns}


def _words_of(cells: Cells, row: int) -> list[Cell]:
    """The cells of a header's row that are header words."""
    said = said_columns(cells, row)
    return [cell for cell in cells.line(row) if cell.column not in said]


def _heads(cells: Cells, first: int, last: int) -> dict[int, Head]:
    """Headings of the columns over the rows first … last."""
    group: dict[int, str] = {}
    begun: set[int] = set()
    for row in range(first, last):
        line = _words_of(cells, row)
        begun |= {cell.column for cell in line}
        if any(a.text == b.text and a.column + 1 == b.column and a.kind & Kind.UNIT for a, b in pairwise(line)):
            continue  # a unit over each column, none over several
        for cell in line:
            wide = cells.merged_width.get((row, cell.column))
            column = cell.column + 1  # over the columns to its right, until the next heading of this or a higher row
            while column < cells.width and column not in begun and (wide is None or column < cell.column + wide):
                group[column] = cell.text
                column += 1
            if column > cell.column + 1:
                group[cell.column] = cell.text
    own: dict[int, list[str]] = {}
    for row in range(first, last + 1):
        for cell in _words_of(cells, row):
            own.setdefault(cell.column, []).append(cell.text)
    texts = [" ".join(parts) for parts in own.values()]
    prefix = cells.lexicon.vocabulary.shared_prefix(texts)
    standard = cells.lexicon.vocabulary.standard([text.removeprefix(prefix) for text in texts])
    made: dict[int, Head] = {}
    labelled = {next(iter(cells.line(row))).column for row in range(first + 1, last + 1) if unit_row(cells, row)}
    for column, parts in sorted(own.items()):
        over = group.get(column, "")
        above = "" if over in parts and len(parts) == 1 else over
        said = parts[:1] if column in labelled else parts  # "Sample" over "Units": the label of the row of units
        said = [part.removeprefix(prefix) for part in said]
        meaning = _meaning(cells, said, above, standard)
        left = made.get(column - 1)
        if left is not None and left.role is ColumnRole.STATISTIC:
            meaning = column_meaning(cells.lexicon, parts[-1], beside_statistic=True) or meaning
        made[column] = Head(column, " ".join(parts), tuple(parts), above, meaning)
    return made


def _without_letters(cells: Cells, last: int, heads: dict[int, Head]) -> dict[int, Head]:
    """The headings, of which letters that call samples mean nothing else: N is no count beside K and P.

    They are several letters over numbers, with names of analytes down another column and no column headed as a result.
    """
    letters = [column for column, head in heads.items() if _LETTER.match(head.text)]
    if len(letters) < 2 or any(head.role in _RESULTS for head in heads.values()):
        return heads
    named = names_down(cells, last + 1)
    if named is None or named in letters or last + 1 >= cells.height:
        return heads
    texts = [text for column in letters if (text := cells.text(last + 1, column))]
    if not texts or not all(cells.lexicon.kind(text) & Kind.VALUE for text in texts):
        return heads
    return {column: replace(head, meaning=None) if column in letters else head for column, head in heads.items()}


def names_down(cells: Cells, row: int) -> int | None:
    """The column beneath that is made of names of analytes, two at least."""
    for column in range(cells.width):
        names, filled = names_beneath(cells, row, column)
        if names >= 2 and names * 3 >= filled * 2:
            return column
    return None


def column_meaning(lexicon: Lexicon, text: str, beside_statistic: bool = False) -> ColumnMeaning | None:
    """What a header word says; right of an average, `STD` is its deviation."""
    return lexicon.vocabulary.column(text, BESIDE_STATISTIC if beside_statistic else "")


def _meaning(cells: Cells, parts: list[str], above: str, standard: str) -> ColumnMeaning | None:
    """What the words of a column's heading mean: taken together, else its last row, else its first.

    `standard` is the data standard that the headings as a whole belong to.
    """
    column = cells.lexicon.vocabulary.column
    tries = [" ".join(parts), parts[-1], f"{above} {parts[-1]}".strip(), parts[0]]
    found = next((found for text in tries if (found := column(text, standard)) is not None), None)
    if found is None and above and cells.lexicon.kind(parts[-1]) & Kind.DATE:  # days under "Previous results"
        over = column(above, standard)
        return over if over is not None and over.role is ColumnRole.PREVIOUS else None
    return found


def _layout(cells: Cells, last: int, heads: dict[int, Head]) -> tuple[str, int]:
    """Which layout these headings make, and how many of them are understood; an empty layout where they make none."""
    hits = [head for head in heads.values() if head.meaning]
    names = [head for head in heads.values() if names_analyte(cells, head)]
    if names and all(SYMBOL.match(head.text) for head in names):
        down = names_down(cells, last + 1)
        if down is not None and down not in {head.column for head in names}:
            names = []  # samples called A, B, C
    roles = [head.role for head in hits]
    words = [head for head in heads.values() if all(not _worded_text(cells, part) for part in head.own)]
    if len(names) >= 3:  # among symbols of elements, NA and U are symbols too
        words = [head for head in words if cells.lexicon.vocabulary.name(head.own[0]) is None]
    values = len(words)
    units = sum(1 for head in heads.values() if any(cells.lexicon.kind(part) & Kind.UNIT for part in head.own[1:]))
    parts = sum(
        1 for head in heads.values() for part in head.own[1:] if (said := cells.lexicon.phrase(part)) and said.fraction
    )
    score = 2 * len({id(head) for head in [*hits, *names]}) + units + parts
    naming = [head.column for head in hits if head.role in NAMING]
    rowed = any(not head.meaning for head in names)  # "E. coli | Present | Absent": a row whose boxes are not seen
    if not rowed and (ticks := tick_columns(cells, heads)) and _content_names(cells, last + 1) is not None:
        return "vertical", score + 2 * len(ticks)
    if naming and not names_dominate(names, hits):
        if values > len(hits) and len(heads) > 3 and ColumnRole.NAME not in roles:
            return "", 0
        other = len(hits) - len(naming)
        if other or any(names_beneath(cells, last + 1, column)[0] for column in naming):
            return "vertical", score
        return "", 0
    if values > len(heads) / 3:
        return "", 0
    if (
        names
        and values == 0
        and (len(names) >= 2 or hits)
        and values_beneath(cells, last + 1, [n.column for n in names])
    ):
        return "wide", score
    if ColumnRole.VALUE in roles and len(hits) >= 2 and _content_names(cells, last + 1) is not None:
        return "vertical", score
    if ColumnRole.UNIT in roles and len(heads) > 2:  # units are headed, the names beside them are not
        named = _content_names(cells, last + 1)
        if named is not None and named not in heads:
            return "vertical", score
    point = cells.lexicon.vocabulary.point
    if not hits and len(heads) > 1 and sum(point(head.text) is not None for head in heads.values()) * 2 > len(heads):
        down = names_down(cells, last + 1)  # "Barn", "Kitchen" over numbers beside names
        if down is not None and down not in heads:
            return "vertical", score + len(heads)
    places = (ColumnRole.SAMPLE_ID, ColumnRole.SITE)
    if (
        len(hits) >= 2
        and len(hits) * 2 >= len(heads)
        and any(role in places for role in roles)
        and last + 1 < cells.height
    ):
        below = cells.line(last + 1)
        if below and not any(cell.kind & Kind.HEADER and not cell.kind & Kind.VALUE for cell in below):
            return "register", score
    return "", 0


def tick_columns(cells: Cells, heads: dict[int, Head]) -> dict[int, str]:
    """Columns headed by words of which a mark chooses one ("Present", "Absent"), and the word of each."""
    found: dict[int, str] = {}
    there = set()
    for column, head in heads.items():
        meaning = cells.lexicon.vocabulary.value(head.own[-1]) if head.role in _TICKED else None
        if meaning is not None and meaning.number is None and meaning.detected is not None:
            found[column] = head.own[-1]
            there.add(meaning.detected)
    return found if there == {True, False} else {}


def names_dominate(names: list[Head], hits: list[Head]) -> bool:
    """Whether a header row is made of analytes rather than of header words."""
    return len([head for head in names if not head.meaning]) >= max(3, len(hits))


def _worded_text(cells: Cells, text: str) -> bool:
    kind = cells.lexicon.kind(text)
    return not kind & (Kind.VALUE | Kind.DATE) or bool(kind & (Kind.HEADER | Kind.NAME | Kind.UNIT))


def coded_heading(lexicon: Lexicon, text: str) -> tuple[str, str] | None:
    """Kind and number of a heading made of a parameter code: `p00915` its values, `r00915` their remarks."""
    found = _CODED.match(text)
    if found is None or lexicon.vocabulary.name(found[2], code_list="nwis") is None:
        return None
    return found[1].lower(), found[2]


def prefix_of(text: str) -> tuple[str, str]:
    """The prefix of a visit and what stands behind it ("C1Nitrate"), both empty where there is none."""
    found = _PREFIX.match(text)
    return (found[1], found[2]) if found else ("", "")


def names_analyte(cells: Cells, head: Head) -> bool:
    """Whether a heading names an analyte."""
    lexicon = cells.lexicon
    if head.role is ColumnRole.STATISTIC:
        return False
    if (code := coded_heading(cells.lexicon, head.text)) is not None:
        return code[0] == "p"
    if (rest := prefix_of(head.text)[1]) and lexicon.is_name(rest) and not lexicon.is_name(head.text):
        return True
    return any(
        lexicon.is_name(text) and not (lexicon.column(text) and not head.group)
        for text in dict.fromkeys((head.text, *head.own, *([head.group] if head.group else [])))
        if len(text) < 120
    )


def names_beneath(cells: Cells, row: int, column: int, look: int = _LOOK) -> tuple[int, int]:
    """Known analyte names and non-empty cells among the next rows of a column."""
    names = filled = 0
    for below in range(row, min(row + look, cells.height)):
        text = cells.text(below, column)
        if text:
            filled += 1
            names += cells.lexicon.is_name(text)
    return names, filled


def values_beneath(cells: Cells, row: int, columns: list[int]) -> bool:
    """Whether a row soon beneath has values in most of these columns that are not empty, numbers among them.

    Words alone (`ND`, `Not Required`) are values only under names longer than symbols: a list of abbreviations is none.
    """
    symbols = any(len(cells.text(row - 1, column)) <= 3 for column in columns)
    germs = [column for column in columns if cells.lexicon.is_of_germs(cells.text(row - 1, column))]
    for below in range(row, min(row + 6, cells.height)):
        texts = [text for column in columns if (text := cells.text(below, column))]
        kinds = [cells.lexicon.kind(text) for text in texts]
        values = sum(1 for kind in kinds if kind & Kind.VALUE and not kind & Kind.UNIT)
        values += sum(cells.text(below, column).upper() in _PRESENCE for column in germs)
        numbers = any(letter.isdigit() for text in texts for letter in text)
        if values and values * 2 >= len(kinds) and (numbers or not symbols):
            return True
    return False


def _content_names(cells: Cells, row: int) -> int | None:
    """The column beneath that holds analyte names, where the header does not say."""
    for column in range(cells.width):
        names, filled = names_beneath(cells, row, column)
        if names and names * 2 >= filled:
            return column
    return None
