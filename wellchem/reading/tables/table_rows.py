"""Which rows of a grid are a table's: those with a name and something beside it, wrapped names, the header again."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Fraction
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import Header
from wellchem.reading.tables.heads import label
from wellchem.reading.tables.notes import title_and_unit
from wellchem.reading.tables.shape import SMALL, Shape
from wellchem.vocabulary import PhraseKind

# What a name does not end with: the rest of it stands on the next line.
_OPEN = (",", "-", "/", "&", "+", "(")
_JOINING = {"and", "plus", "of", "as", "und", "et", "y", "de", "by", "with"}


def rows_of(cells: Cells, shapes: list[Shape], header: Header, start: int) -> NDArray[np.bool_]:
    """Rows of the grid that are rows of the table: a name (or code) and something beside it."""
    made = np.zeros(cells.height, bool)
    small = cells.height <= SMALL
    for shape in shapes:
        naming = [*([shape.name] if shape.name is not None else []), *shape.codes]
        named = np.zeros(cells.height, bool)
        for index in naming:
            named |= cells.merged_down.get(index, cells.grid.columns[index]).codes >= 0
        beside = np.zeros(cells.height, bool)
        for index in shape.columns():
            if index not in naming and index not in shape.layout:
                beside |= cells.grid.columns[index].codes >= 0
        if shape.ticks and shape.name is not None:  # none of the words marked: a result that is missing
            beside |= np.append((cells.kinds(shape.name) & Kind.NAME) > 0, False)[cells.grid.columns[shape.name].codes]
        fits = named & beside
        for index in naming[:1]:  # words other than names stand where the names do
            codes = cells.grid.columns[index].codes
            titles, labels = _titles(cells, index)
            fits &= ~labels[codes]
            if titles.any():
                titled = np.flatnonzero(fits & titles[codes])
                fits[titled] = _numbers_beside(cells, shape, titled)
        if small:
            fits &= _has_value(cells, shape, fits)
        made |= fits
    made[:start] = False
    if header.last >= header.first:  # rows that hold the header's own words again
        again = np.zeros(cells.height, np.int32)
        own = [index for index in header.heads if cells.grid.columns[index].codes[header.last] >= 0]
        for index in own:
            codes = cells.grid.columns[index].codes
            same = codes == codes[header.last]
            if np.count_nonzero(same) > 1:
                again += same
        made &= again < max(2, len(own) / 2)
    return made


def _titles(cells: Cells, index: int) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
    """For each text of the column of names, whether it is a title, and whether it is a label or a header word."""
    titles, labels = [], []
    for text in cells.grid.columns[index].texts:
        kind = cells.lexicon.kind(str(text))
        odd = bool(kind & (Kind.HEADER | Kind.PHRASE)) and not kind & Kind.NAME and prefixed(cells, str(text)) is None
        labelled = odd and (bool(kind & Kind.HEADER) or bool(label(cells.lexicon, str(text))))
        labels.append(labelled)
        titles.append(odd and not labelled)
    return np.array([*titles, False]), np.array([*labels, False])


def _numbers_beside(cells: Cells, shape: Shape, rows: NDArray[np.int64]) -> list[bool]:
    """Of these rows, those with a number in a column of results."""
    values = [value.column for value in shape.values]
    return [any(cells.lexicon.kind(cells.text(row, at)) & Kind.NUMBER for at in values) for row in rows.tolist()]


def _has_value(cells: Cells, shape: Shape, fits: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Of the rows, those where the name is known, or a value, a flag or a limit beside it looks like one."""
    made = np.zeros(cells.height, bool)
    if shape.name is not None:
        known = np.append((cells.kinds(shape.name) & Kind.NAME) > 0, False)
        made |= known[cells.grid.columns[shape.name].codes]
    wanted = [value.column for value in shape.values] + shape.ambiguous + [limit for limit, _, _ in shape.limits]
    wanted += [
        index
        for value in shape.values
        for role in ("condition", "flag", "reporting_limit", "detection_limit")
        for index in value.beside.get(role, [])
    ]
    for index in dict.fromkeys(wanted):
        looks = np.append((cells.kinds(index) & (Kind.VALUE | Kind.NUMBER)) > 0, False)
        made |= looks[cells.grid.columns[index].codes]
    if shape.codes and shape.name is None:
        for index in shape.codes:
            made |= cells.grid.columns[index].codes >= 0
    return made


def wrapped_in(cells: Cells, shapes: list[Shape], fits: NDArray[np.bool_], start: int) -> set[int]:
    """Rows that hold the rest (or the beginning) of the name of the row above (or below) them, and no result.

    Such a row may hold the rest of a method or of a unit too.
    """
    found: set[int] = set()
    for shape in shapes:
        if shape.name is None:
            continue
        values = {value.column for value in shape.values}
        for row in range(start, cells.height):
            line = [cell for cell in cells.line(row) if cell.column in shape.columns()] if not fits[row] else []
            if not line or any(cell.column in values for cell in line):
                continue
            text = cells.text(row, shape.name)
            above = row - 1 if row > start and fits[row - 1] and row - 1 not in shape.wrapped else None
            if not text:
                if above is not None and _rest_of_unit(cells, shape, above, row):
                    shape.wrapped[above] = (row, cells.text(above, shape.name))
                    found.add(row)
                continue
            if line[0].column != shape.name or title_and_unit(cells.lexicon, text):
                continue
            below = cells.text(row + 1, shape.name) if row + 1 < cells.height and fits[row + 1] else ""
            if above is not None and _ends_name(cells, cells.text(above, shape.name), text, len(line) > 1):
                shape.wrapped[above] = (row, f"{cells.text(above, shape.name)} {text}")
                _rest_of_unit(cells, shape, above, row)
                found.add(row)
            elif below and _begins_name(cells, text, below):
                shape.wrapped[row + 1] = (row, f"{text} {below}")
                found.add(row)
    return found


def fractions_in(cells: Cells, shapes: list[Shape], fits: NDArray[np.bool_], start: int) -> set[int]:
    """Rows of a name alone over rows of a fraction each ("Iron", "Total", "Dissolved"); these fit from now on."""
    found: set[int] = set()
    fraction = cells.lexicon.vocabulary.fraction
    for shape in shapes:
        if shape.name is None:
            continue
        over: int | None = None
        said: set[Fraction] = set()
        for row in range(start, cells.height):
            text = cells.text(row, shape.name)
            if not any(cells.lexicon.kind(cells.text(row, value.column)) & Kind.VALUE for value in shape.values):
                over, said = row if cells.lexicon.is_name(text) else None, set()
            elif over is not None and (part := fraction(text.strip("()- "))) and part not in said:
                shape.wrapped[row] = (over, f"{cells.text(over, shape.name)}, {text.strip('()- ')}")
                said.add(part)
                fits[row], fits[over] = True, False
                found.add(over)
            else:
                over = None
    return found


def units_beneath(cells: Cells, shapes: list[Shape], fits: NDArray[np.bool_], start: int) -> set[int]:
    """Rows that hold the unit of the number over it, and perhaps the symbol of the name over that; they fit no more.

    Only where most of the numbers have one.
    """
    found: set[int] = set()
    for shape in shapes:
        if shape.name is None or len(shape.values) != 1:
            continue
        at, name = shape.values[0].column, shape.name
        numbered = [row for row in range(start, cells.height) if cells.lexicon.kind(cells.text(row, at)) & Kind.VALUE]
        beneath = []
        for row in numbered:
            unit = cells.text(row + 1, at) if row + 1 < cells.height else ""
            over, under = cells.text(row, name), cells.text(row + 1, name) if unit else ""
            if cells.lexicon.is_only_unit(unit) and (not under or _one_name(cells, over, f"{over} {under}")):
                beneath.append(row)
        if len(beneath) * 2 <= len(numbered):
            continue
        for row in beneath:
            shape.wrapped_units[row] = cells.text(row + 1, at)
            shape.wrapped[row] = (row + 1, f"{cells.text(row, name)} {cells.text(row + 1, name)}".strip())
            fits[row + 1] = False
            found.add(row + 1)
    return found


def _rest_of_unit(cells: Cells, shape: Shape, above: int, row: int) -> bool:
    """Take what a row holds of the unit of the row above: "per" over "100 mL"; whether it was one."""
    columns = {index for value in shape.values for index in value.beside.get("unit", [])}
    is_unit = cells.lexicon.vocabulary.is_unit
    for column in columns:
        first, rest = cells.text(above, column), cells.text(row, column)
        if rest and not is_unit(first) and is_unit(f"{first} {rest}"):
            shape.wrapped_units[above] = f"{first} {rest}"
            return True
    return False


def _ends_name(cells: Cells, above: str, text: str, more: bool) -> bool:
    """Whether a text is the rest of the name above it; a title of a section stands alone and begins a line."""
    phrase = cells.lexicon.phrase(text)
    titled = phrase is not None and phrase.kind is PhraseKind.SECTION and text[0].isupper() and not more
    return (not titled or above.endswith((",", "-"))) and _one_name(cells, above, f"{above} {text}")


def _begins_name(cells: Cells, text: str, below: str) -> bool:
    """Whether a text is the beginning of the name below it: one that cannot end there, or is none without the rest."""
    if text.endswith(_OPEN) or text.split()[-1].casefold() in _JOINING or text.count("(") > text.count(")"):
        return True
    if cells.lexicon.is_name(below):
        return False
    return _one_name(cells, below, f"{text} {below}")


def _one_name(cells: Cells, part: str, whole: str) -> bool:
    """Whether the whole is a known name, of the same analyte as the part where the part is known too."""
    name = cells.lexicon.vocabulary.name
    both, alone = name(whole), name(part)
    return both is not None and both.companion is None and (alone is None or alone.analyte == both.analyte)


def repeats(cells: Cells, header: Header, row: int) -> bool:
    """Whether a row is the header again (on the next page, say)."""
    if header.last < header.first or row + header.last - header.first >= cells.height:
        return False
    words = [
        [cell.text for cell in cells.line(header.first + place)] for place in range(header.last - header.first + 1)
    ]
    again = [[cell.text for cell in cells.line(row + place)] for place in range(header.last - header.first + 1)]
    return words == again and bool(words[0])


def prefixed(cells: Cells, text: str) -> tuple[str, str] | None:
    """Role and name of a row whose name begins with a title of quality control ("Method blank: Iron")."""
    for sign in (":", " - ", " – ", "; "):
        title, found, name = text.partition(sign)
        if found and cells.lexicon.is_name(name.strip()):
            phrase = cells.lexicon.phrase(title.strip())
            if phrase is not None and phrase.role is not None:
                return str(phrase.role), name.strip()
    return None
