"""Rows between the tables: heads of samples, titles of sections, legends, notes, results in running lines."""

from __future__ import annotations

import re
from collections.abc import Iterable

from wellchem.models.codes import LayoutKind, Role, UnreadReason
from wellchem.reading.tables.bare import bare_results, named_in_words, of_others, undecided
from wellchem.reading.tables.cells import Cell, Cells, Kind
from wellchem.reading.tables.labelled import emit_labelled, heads_result, labelled
from wellchem.reading.tables.notes import (
    legend_in,
    running_result,
    tells_amount,
    tells_finding,
    title_and_unit,
    unit_note,
)
from wellchem.reading.tables.paragraphs import paragraph
from wellchem.reading.tables.reader import Reader
from wellchem.vocabulary import PhraseKind, PhraseMeaning, Vocabulary

_CODE = re.compile(r"^[A-Z]{1,4}[- ]?\d{2,4}[A-Z]{0,2}\s*[:–-]\s*")  # a laboratory's code of a method before a title
_UNITS = re.compile(r"\s*(?:units?|einheit(?:en)?|unit[ée]s?|unidad(?:es)?)\s*:", re.IGNORECASE)
_RANGE = re.compile(r"(?:\bND|(?<![\d.,-])\d[\d.,]*)\s?[-–]\s?\d[\d.,]*(?![\d-])")
_KINDS = {
    PhraseKind.LEGEND: LayoutKind.LEGEND,
    PhraseKind.FOOTER: LayoutKind.FOOTER,
    PhraseKind.TITLE: LayoutKind.TITLE,
    PhraseKind.NOTE: LayoutKind.NOTE,
}
_BULLET = re.compile(r"[-–—•·▪‣◦●■►➢](?:\s+(?=[^\W\d])|$)")  # before a line of a list


def between(reader: Reader, grid: int, cells: Cells, row: int, values: Iterable[int] = ()) -> None:
    """Take a row that is none of a table's results: every cell of it is claimed.

    `values` are the columns of results of the table that the row stands in: a number there is never layout.
    """
    reader.hear(grid, cells, row)
    reader.unit_note = _among_labels(reader, cells, row) or reader.unit_note
    left = [cell for cell in cells.line(row) if reader.ledger.is_open(grid, row, cell.column)]
    left = _without_bullet(reader, grid, row, left)
    if not left:
        return
    text = " ".join(cell.text for cell in left)
    if labelled(reader, grid, row, left):
        return
    dated = reader.hear_dates(grid, row, text)
    legend, unit = legend_in(reader.lexicon, text), unit_note(reader.lexicon, text)
    if legend or unit:
        reader.legend.update(legend)
        reader.unit_note = unit or reader.unit_note
        _claim(reader, grid, row, left, LayoutKind.LEGEND if legend else LayoutKind.NOTE)
        return
    if paragraph(reader, grid, cells, row):
        return
    if _running(reader, grid, row, left, text) or _bare(reader, grid, cells, row, left, text):
        return
    titled = title_and_unit(reader.lexicon, text) if len(left) == 1 else None
    if titled is not None:
        title = reader.lexicon.phrase(titled[0])
        if title is None or not _opens_section(reader, title):
            reader.close_section()
        reader.section.unit = titled[1]
        _claim(reader, grid, row, left, LayoutKind.SECTION)
        return
    if len(left) == 1 and not values and cells.grid.page is None and reader.vocabulary.label_role(text):
        reader.section.apart = text
        _claim(reader, grid, row, left, LayoutKind.SECTION)
        return
    heads = len(left) == 1 and left[0].kind & Kind.NAME and not tells_amount(reader.lexicon, text)
    if heads and not values and cells.grid.page is None:
        reader.section.name = text  # "Arsenic (µg/L)" over a table of wells and results
        _claim(reader, grid, row, left, LayoutKind.SECTION)
        return
    if any(cell.column in values and cell.kind & Kind.NUMBER for cell in left):
        reader.loose_row(grid, row, [cell.column for cell in left], UnreadReason.NO_NAME)
        return
    alone = len({cell.text for cell in left if cell.kind & Kind.PHRASE}) == 1  # "Total | Dissolved" heads columns
    phrase = reader.lexicon.phrase(text) or (reader.lexicon.phrase(left[0].text) if len(left) > 1 and alone else None)
    phrase = phrase or reader.lexicon.phrase(_CODE.sub("", text))
    if phrase is not None and _opens_section(reader, phrase):
        results = left[1:] if any(tells_amount(reader.lexicon, cell.text) for cell in left[1:]) else []
        _claim(reader, grid, row, left[:1] if results else left, LayoutKind.SECTION)
        if results and not _bare(reader, grid, cells, row, results, " ".join(cell.text for cell in results)):
            reader.loose_row(grid, row, [cell.column for cell in results], UnreadReason.NOT_A_TABLE)
        return
    if phrase is not None and phrase.kind in _KINDS:
        _claim(reader, grid, row, left, _KINDS[phrase.kind])
        return
    if not dated and _worded(reader.vocabulary, left, set(values)):
        reader.loose_row(grid, row, [cell.column for cell in left], UnreadReason.UNKNOWN_NAME)
        return
    if named_in_words(reader.lexicon, ": ".join(cell.text for cell in left) if len(left) == 2 else text):
        reader.loose_row(grid, row, [cell.column for cell in left], UnreadReason.UNREADABLE_VALUE)
        return
    if _looks_like_result(left) or tells_finding(reader.lexicon, text):
        reason = UnreadReason.STATISTIC if _has_range(reader, left) else UnreadReason.NOT_A_TABLE
        reader.loose_row(grid, row, [cell.column for cell in left], reason)
        return
    if not dated and any(cell.kind & Kind.NUMBER for cell in left) and _may_be_results(cells, row):
        reader.loose_row(grid, row, [cell.column for cell in left], UnreadReason.NOT_A_TABLE)
        return
    if (
        len(left) == 1
        and len(text) < 90
        and not left[0].kind & Kind.VALUE
        and (values or (reader.tables and reader.tables[-1].grid == grid))
    ):
        reader.close_section()
    other = LayoutKind.NOTE if reader.tables else LayoutKind.TITLE
    _claim(reader, grid, row, left, LayoutKind.SAMPLE_HEAD if dated else other)


def _may_be_results(cells: Cells, row: int) -> bool:
    """Whether numbers among words may be somebody's results: those of a page stand at its edges too, and in text."""
    near = [at for at in (row - 1, row + 1) if 0 <= at < cells.height]
    return cells.grid.page is None or any(cell.kind & Kind.NAME for at in near for cell in cells.line(at))


def _among_labels(reader: Reader, cells: Cells, row: int) -> str:
    """The unit of all results where it stands in a part of a line of labels: "Sample: W-1 | Units: ng/L"."""
    parts = [part for cell in cells.line(row) if ":" in cell.text for part in re.split(r"\s*\|\s*|\s{3,}", cell.text)]
    found = [unit_note(reader.lexicon, part) for part in parts if _UNITS.match(part)]
    return found[0] if len(found) == 1 else ""


def _claim(reader: Reader, grid: int, row: int, left: list[Cell], kind: LayoutKind) -> None:
    reader.ledger.layout(grid, slice(row, row + 1), [cell.column for cell in left], kind)


def _opens_section(reader: Reader, phrase: PhraseMeaning) -> bool:
    """Take what a title says of the rows beneath it. A group of quality control lasts until a sample is named again."""
    section = reader.section
    section.unit = section.name = section.apart = ""
    section.of_lines = False
    if phrase.kind in (PhraseKind.QUALITY_CONTROL, PhraseKind.SURROGATES):
        section.of_surrogates = phrase.kind is PhraseKind.SURROGATES and section.role in ("", str(Role.ROUTINE))
        section.role = str(phrase.role or Role.CONTROL)
        section.fraction = section.measured = ""
        return True
    if phrase.kind is PhraseKind.SECTION:
        section.fraction = str(phrase.fraction) if phrase.fraction else ""
        section.measured = str(phrase.measured) if phrase.measured else ""
        if section.of_surrogates:
            section.role, section.of_surrogates = "", False
        if phrase.role is Role.ROUTINE:
            section.role = ""
        elif phrase.role is not None:
            section.role = str(phrase.role)
        return True
    if phrase.kind is PhraseKind.POINT and phrase.point is not None:
        reader.say("point", str(phrase.point))
        return True
    return False


def _without_bullet(reader: Reader, grid: int, row: int, left: list[Cell]) -> list[Cell]:
    """The cells of a line without the point that puts it into a list."""
    if len(left) > 1 and _BULLET.fullmatch(left[0].text):
        reader.ledger.layout(grid, slice(row, row + 1), [left[0].column], LayoutKind.ADMINISTRATIVE)
        return left[1:]
    if left and (point := _BULLET.match(left[0].text)) and (rest := left[0].text[point.end() :]):
        return [Cell(left[0].column, rest, reader.lexicon.kind(rest)), *left[1:]]
    return left


def _running(reader: Reader, grid: int, row: int, left: list[Cell], text: str) -> bool:
    """A result in a running line becomes a printed row of its own."""
    found = running_result(reader.lexicon, text)
    if found is None:
        return False
    said = {"name": found.name, "value": found.value, "unit": found.unit, **found.beside}
    columns = [cell.column for cell in left]
    within = (-1, -1) if heads_result(reader, grid, row, columns[-1]) else (0, columns[-1])
    emit_labelled(reader, grid, row, columns, said, within)
    return True


def _bare(reader: Reader, grid: int, cells: Cells, row: int, left: list[Cell], text: str) -> bool:
    """Results of a bare line; unread where it has more numbers than it explains, or is of limits."""
    columns = [cell.column for cell in left]
    found = bare_results(reader.lexicon, left)
    if not found and not undecided(reader.lexicon, text):
        return False
    if not found or of_others(cells, row):
        reason = UnreadReason.NOT_A_TABLE if found else UnreadReason.AMBIGUOUS_COLUMN
        reader.loose_row(grid, row, columns, reason)
        return True
    for one in found:
        said = {"name": one.name, "value": one.value, "unit": one.unit, **one.beside}
        lines = (0, columns[-1]) if len(found) == 1 and not heads_result(reader, grid, row, columns[-1]) else (-1, -1)
        emit_labelled(reader, grid, row, columns, said, lines)
    return True


def _worded(vocabulary: Vocabulary, left: list[Cell], values: set[int]) -> bool:
    """Whether a row has an unknown name and, where the results stand, a word or two: "Hardness class", "hard"."""
    said = [cell for cell in left if cell.column in values]
    if len(said) != 1 or left[0] in said or not len(said[0].text) <= 30 >= len(left[0].text):
        return False
    answer = vocabulary.value(said[0].text, presence=True) is not None  # "No" heads a column of numbers too
    others = [cell for cell in left if cell not in said or not answer]
    return not any(cell.kind & (Kind.PHRASE | Kind.HEADER | Kind.DATE) or ":" in cell.text for cell in others)


def _has_range(reader: Reader, left: list[Cell]) -> bool:
    """Whether a cell is the range of several results: "ND - 4.1"."""
    found = [reader.vocabulary.value(text) for cell in left for text in _RANGE.findall(cell.text)]
    return any(one is not None and one.note == "range" for one in found)


def _looks_like_result(left: list[Cell]) -> bool:
    """Whether a row outside every table has a known name and a value, or a number and a unit."""
    names = [cell for cell in left if cell.kind & Kind.NAME]
    values = [cell for cell in left if cell.kind & Kind.VALUE and not cell.kind & (Kind.UNIT | Kind.NAME)]
    units = [cell for cell in left if cell.kind & Kind.UNIT and not cell.kind & Kind.VALUE]
    return bool(values and (names or units))
