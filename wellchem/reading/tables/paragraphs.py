"""Findings in paragraphs: sentences that run over lines, of which each may tell a result."""

from __future__ import annotations

import re

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.rows import Loose
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.labelled import emit_labelled
from wellchem.reading.tables.notes import RunningResult, running_result, tells_finding
from wellchem.reading.tables.reader import Reader

_SENTENCE = re.compile(r"(?<=[\w)%°][.!?])\s+(?=[^\W\d_a-zà-ÿ])")
_CLAUSE = re.compile(r",?\s+(?:and|while|but)\s+(?:the\s+)?|;\s*(?:the\s+)?")
_CLOSED = (".", "!", "?", ":")
_LINES = 12
_WORDS = 6  # of a line of prose


def paragraph(reader: Reader, grid: int, cells: Cells, row: int) -> bool:
    """Take a paragraph that begins at this row and in which a sentence tells a result; whether it was one.

    A sentence that names an analyte and an amount otherwise is unread with its words.
    """
    rows = _rows(cells, row)
    if not rows:
        return False
    text, starts = "", []
    for at in rows:
        starts.append(len(text))
        text += " ".join(cell.text for cell in cells.line(at)) + " "
    sentences: list[tuple[int, str]] = []
    last = 0
    for end in [*(found.end() for found in _SENTENCE.finditer(text)), len(text)]:
        sentences.append((max(place for place, start in enumerate(starts) if start <= last), text[last:end].strip()))
        last = end
    told = [(place, sentence, _results(reader, sentence)) for place, sentence in sentences]
    if len(sentences) < 2 or not any(found for _, _, found in told):
        return False
    for at in rows:  # dates in words, before the paragraph's results
        reader.hear_dates(grid, at, " ".join(cell.text for cell in cells.line(at)))
    for place, sentence, found in told:
        columns = [cell.column for cell in cells.line(rows[place])]
        for one in found:
            reader.quoted.append(reader.printed)
            said = {"name": one.name, "value": one.value, "unit": one.unit, **one.beside}
            emit_labelled(reader, grid, rows[place], columns, said, (-1, -1))
        if not found and tells_finding(reader.lexicon, sentence):
            reader.loose.append(Loose(UnreadReason.NOT_A_TABLE, sentence, grid, rows[place], columns[0], ""))
            reader.ledger.unread(grid, slice(rows[place], rows[place] + 1), columns)
    for at in rows:
        reader.layout_row(grid, at, LayoutKind.NOTE)
    return True


def _rows(cells: Cells, row: int) -> list[int]:
    """Rows of a paragraph: lines of prose until one closes a sentence and the next is no prose, or a row is empty."""
    rows: list[int] = []
    for at in range(row, min(row + _LINES, cells.height)):
        line = cells.line(at)
        text = " ".join(cell.text for cell in line)
        broken = rows and cells.grid.page is None and cells.grid.rows[at] - cells.grid.rows[at - 1] > 1
        prose = _is_prose(text) and not (len(line) > 1 and line[0].kind & Kind.NAME)
        tail = rows and not _closed(cells, rows[-1]) and len(line) == 1 and text.endswith(_CLOSED)
        if broken or not (prose or tail):
            break
        rows.append(at)
        if len(text.split()) < _WORDS:
            break
    return rows


def _closed(cells: Cells, row: int) -> bool:
    """Whether a row's text ends a sentence."""
    return cells.line(row)[-1].text.endswith(_CLOSED)


def _is_prose(text: str) -> bool:
    words = text.split()
    return len(words) >= _WORDS and sum(word.strip(",.;:()").islower() for word in words) * 2 >= len(words)


def _results(reader: Reader, sentence: str) -> list[RunningResult]:
    """The results that a sentence tells: one, or one in each of its clauses."""
    whole = running_result(reader.lexicon, sentence)
    if whole is not None:
        return [whole]
    clauses = [clause.strip(" ,") for clause in _CLAUSE.split(sentence)]
    found = [running_result(reader.lexicon, clause) for clause in clauses]
    return [one for one in found if one] if len(clauses) > 1 and all(found) else []
