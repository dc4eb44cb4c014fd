"""Results in blocks of labels: a name as a heading or behind its label, with "Result: 1.2 mg/L" under it."""

from __future__ import annotations

import numpy as np

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.rows import constant
from wellchem.reading.tables.cells import Cell, Kind
from wellchem.reading.tables.notes import value_and_unit
from wellchem.reading.tables.reader import Labelled, Reader
from wellchem.vocabulary import ColumnRole

_TAKEN = {
    ColumnRole.NAME: "name",
    ColumnRole.VALUE: "value",
    ColumnRole.REPORTING_LIMIT: "reporting_limit",
    ColumnRole.DETECTION_LIMIT: "detection_limit",
    ColumnRole.METHOD: "method",
}


def labelled(reader: Reader, grid: int, row: int, left: list[Cell]) -> bool:
    """Take a row whose every cell is a label with its text; whether it was one.

    A block ends where a row is none of it, and with its result. A result of which no name was said is unread.
    """
    known = reader.labelled
    if (known.grid, known.row) != (grid, row - 1):
        known = reader.labelled = Labelled()
    known.grid, known.row = grid, row
    if len(left) == 1 and left[0].kind & Kind.NAME:
        known.said = {left[0].column: {"name": left[0].text}}
        return False
    pairs = _pairs(reader, left)
    named = any("name" in said for said in known.said.values())
    if not pairs or not (named or any(role in ("name", "value") for role, _, _ in pairs)):
        known.said = {}
        return False
    for role, text, cells in pairs:
        said = known.said.setdefault(cells[0].column, {})
        columns = [cell.column for cell in cells]
        if role == "name":
            said.clear()
        if role != "value":
            said[role] = text
            reader.ledger.layout(grid, slice(row, row + 1), columns, LayoutKind.SECTION)
            continue
        _result(reader, grid, row, columns, text, said)
    return True


def _pairs(reader: Reader, left: list[Cell]) -> list[tuple[str, str, list[Cell]]]:
    """Role, text and cells of the labels that a row is made of; none where something else stands in it."""
    made: list[tuple[str, str, list[Cell]]] = []
    place = 0
    while place < len(left):
        head, colon, text = left[place].text.partition(":")
        meaning = reader.lexicon.column(head.strip()) if colon else None
        cells = left[place : place + (1 if text.strip() else 2)]
        text = text.strip() or " ".join(cell.text for cell in cells[1:])
        if meaning is None or meaning.role not in _TAKEN or not text or ":" in text:
            return []
        role = _TAKEN[meaning.role]
        if role == "name" and not reader.lexicon.is_name(text):
            return []
        made.append((role, text, cells))
        place += len(cells)
    return made


def _result(reader: Reader, grid: int, row: int, columns: list[int], text: str, said: dict[str, str]) -> None:
    """A labelled result: a printed row of its own, or unread where it has no name or is no value."""
    found = value_and_unit(reader.lexicon, text)
    if not found or "name" not in said:
        reader.loose_row(
            grid, row, columns, UnreadReason.UNREADABLE_VALUE if said.get("name") else UnreadReason.NO_NAME
        )
        return
    texts = {**said, "value": found[0]} | ({"unit": found[1]} if found[1] else {})
    sample = reader.samples_of({}, {}, 1)
    numbers = reader.emit(
        grid, np.array([row], np.int32), columns[-1], {key: constant(one, 1) for key, one in texts.items()}, sample
    )
    reader.ledger.link(grid, slice(row, row + 1), columns, numbers)
    said.clear()
