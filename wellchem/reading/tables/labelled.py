"""Results in blocks of labels: a name as a heading or behind its label, with "Result: 1.2 mg/L" under it."""

from __future__ import annotations

import numpy as np

from wellchem.models.codes import LayoutKind, UnreadReason
from wellchem.reading.rows import constant
from wellchem.reading.tables.bare import is_sure, of_others
from wellchem.reading.tables.cells import Cell, Kind
from wellchem.reading.tables.notes import value_and_unit
from wellchem.reading.tables.reader import Labelled, Reader
from wellchem.vocabulary import ColumnRole

_TAKEN = {
    ColumnRole.NAME: "name",
    ColumnRole.VALUE: "value",
    ColumnRole.UNIT: "unit",
    ColumnRole.REPORTING_LIMIT: "reporting_limit",
    ColumnRole.DETECTION_LIMIT: "detection_limit",
    ColumnRole.METHOD: "method",
}
_BENEATH = 5  # lines under a result that may say something of it

Pair = tuple[str, str, list[Cell]]  # role, text and cells of a label
Beneath = list[tuple[int, list[int]]]  # a row and its columns


def labelled(reader: Reader, grid: int, row: int, left: list[Cell]) -> bool:
    """Take a row whose every cell is a label with its text; whether it was one.

    A block ends where a row is none of it, and with its result and the labels under it. A result of which no name was
    said is unread. One name and one result in a row are a block by themselves.
    """
    known = reader.labelled = _gone_on(reader, grid, row, left)
    known.grid, known.row = grid, row
    if all(cell.kind & Kind.NAME and not cell.kind & Kind.VALUE for cell in left):
        known.said = {cell.column: {"name": cell.text} for cell in left}
        return False
    pairs = _pairs(reader, left)
    roles = [role for role, _, _ in pairs]
    named = any("name" in said for said in known.said.values())
    if not pairs and len(known.said) == 1 and named and _under_name(reader, grid, row, left):
        ((column, said),) = known.said.items()
        columns = [cell.column for cell in left]
        _result(reader, grid, row, columns, " ".join(cell.text for cell in left), said, (column, columns[-1]))
        return True
    if not pairs or not (named or "name" in roles or "value" in roles):
        known.said = {}
        return False
    if roles.count("name") == roles.count("value") == 1:
        known.said = {}
        texts = {role: text for role, text, _ in pairs}
        _result(reader, grid, row, [cell.column for cell in left], texts.pop("value"), texts, (0, left[-1].column))
        return True
    for role, text, cells in pairs:
        said = known.said.setdefault(cells[0].column, {})
        columns = [cell.column for cell in cells]
        if role == "name":
            said.clear()
        if role != "value":
            said[role] = text
            reader.ledger.layout(grid, slice(row, row + 1), columns, LayoutKind.SECTION)
            continue
        _result(reader, grid, row, columns, text, said, (columns[0], columns[0]))
    return True


def _gone_on(reader: Reader, grid: int, row: int, left: list[Cell]) -> Labelled:
    """What labels said in the row above, at the end of the grid above too where that has as many columns of them."""
    known = reader.labelled
    if (known.grid, known.row) == (grid, row - 1):
        return known
    here, above = reader.source.grids[grid], reader.source.grids[grid - 1]
    if row or (known.grid, known.row) != (grid - 1, above.height - 1) or here.page is None or here.page != above.page:
        return Labelled()
    if len(known.said) != len(left):
        return Labelled()
    columns = [cell.column for cell in left]
    return Labelled(said=dict(zip(columns, (known.said[at] for at in sorted(known.said)), strict=True)))


def _under_name(reader: Reader, grid: int, row: int, left: list[Cell]) -> bool:
    """Whether a line under a name alone is its result: an amount, and none on the line after it or under limits."""
    cells = reader.cells(grid)
    ((said),) = reader.labelled.said.values()

    def amount(text: str) -> bool:
        parts = value_and_unit(reader.lexicon, text)
        return parts is not None and is_sure(reader.vocabulary, said["name"], *parts)

    after = " ".join(cell.text for cell in cells.line(row + 1)) if row + 1 < cells.height else ""
    if not amount(" ".join(cell.text for cell in left)) or (after and amount(after)):
        return False
    return not of_others(cells, row - 1 if row else row)


def emit_labelled(
    reader: Reader, grid: int, row: int, columns: list[int], said: dict[str, str], within: tuple[int, int]
) -> None:
    """One result of a line, with what the labels on the lines under it say of it."""
    beneath, places = _labels_beneath(reader, grid, row, within)
    if places:
        reader.beneath = (grid, places[-1][0])
    sample = reader.samples_of({}, {}, 1)
    texts = {key: constant(one, 1) for key, one in {**beneath, **said}.items() if one}
    numbers = reader.emit(grid, np.array([row], np.int32), columns[-1], texts, sample)
    reader.section.of_lines = True
    for place, of in [(row, columns), *places]:
        reader.ledger.link(grid, slice(place, place + 1), of, numbers)


def heads_result(reader: Reader, grid: int, row: int, last: int) -> bool:
    """Whether the line above a result is a label that no other result took: then labels may stand before results."""
    return row > 0 and reader.beneath != (grid, row - 1) and bool(_labels_beneath(reader, grid, row - 2, (0, last))[0])


def _labels_beneath(reader: Reader, grid: int, row: int, within: tuple[int, int]) -> tuple[dict[str, str], Beneath]:
    """What the labels on the lines under a result say of it, and their rows and columns.

    They stand within its columns, begin with no name and no result of their own, and say nothing twice.
    """
    cells = reader.cells(grid)
    said: dict[str, str] = {}
    places: Beneath = []
    for below in range(row + 1, min(row + 1 + _BENEATH, cells.height)):
        if below > 0 and cells.grid.page is None and cells.grid.rows[below] - cells.grid.rows[below - 1] > 1:
            break
        pairs = _pairs(reader, list(cells.line(below)))
        mine = [pair for pair in pairs if within[0] <= pair[2][0].column <= within[1]]
        if not mine or any(role in said or role in ("name", "value") for role, _, _ in mine):
            break
        said.update({role: text for role, text, _ in mine})
        places.append((below, [cell.column for _, _, of in mine for cell in of]))
    return said, places


def _pairs(reader: Reader, left: list[Cell]) -> list[Pair]:
    """Role, text and cells of the labels that a row is made of; none where something else stands in it.

    Before the labels of a row may stand a name.
    """
    made: list[Pair] = []
    place = 0
    if len(left) > 1 and left[0].kind & Kind.NAME and ":" not in left[0].text:
        made.append(("name", left[0].text, [left[0]]))
        place = 1
    while place < len(left):
        head, colon, text = left[place].text.partition(":")
        meaning = reader.lexicon.column(head.strip()) if colon else None
        cells = left[place : place + (1 if text.strip() else 2)]
        text = text.strip() or " ".join(cell.text for cell in cells[1:])
        if meaning is None or meaning.role not in _TAKEN or not text or ":" in text:
            return []
        role = _TAKEN[meaning.role]
        if not _holds(reader, role, text):
            if role in ("name", "unit") or reader.vocabulary.value(text) is None:
                return []
            text = ""  # "Reporting limit: n/a"
        made.append((role, text, cells))
        place += len(cells)
    return made


def _holds(reader: Reader, role: str, text: str) -> bool:
    """Whether a label's text is what the label says: a legend and a note have labels too."""
    if role == "name":
        return reader.lexicon.is_name(text)
    if role == "unit":
        return reader.vocabulary.is_unit(text)
    return role not in ("reporting_limit", "detection_limit") or any(map(str.isdigit, text))


def _result(
    reader: Reader,
    grid: int,
    row: int,
    columns: list[int],
    text: str,
    said: dict[str, str],
    within: tuple[int, int],
) -> None:
    """A labelled result: a printed row of its own, or unread where it has no name or is no value."""
    found = value_and_unit(reader.lexicon, text)
    if not found or "name" not in said:
        reader.loose_row(
            grid, row, columns, UnreadReason.UNREADABLE_VALUE if said.get("name") else UnreadReason.NO_NAME
        )
        return
    texts = {**said, "value": found[0]} | ({"unit": found[1]} if found[1] else {})
    emit_labelled(reader, grid, row, columns, texts, within)
    said.clear()
