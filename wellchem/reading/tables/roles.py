"""Roles of the columns of a table with analyte names down a column: by header words, else by what the columns hold."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

from wellchem.models.codes import Censoring, LayoutKind, Role
from wellchem.reading.rows import TakenColumn
from wellchem.reading.tables.beside import limits_behind
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import Head, Header, names_beneath, tick_columns
from wellchem.reading.tables.identity import take_identity
from wellchem.reading.tables.shape import (
    BESIDE,
    LAYOUT,
    OWN,
    SMALL,
    R,
    Shape,
    ValueColumn,
    are_marks,
    is_mark,
    numeric,
    stand_beside,
    units_among,
)
from wellchem.reading.tables.value_columns import layout_by_word, take_values
from wellchem.vocabulary import ColumnRole

_FEW, _MOST = 0.1, 0.5  # shares of known names below and above which a column is not, or is, taken for the names
_SIGNS = {"<", ">", "≤", "≥", "<=", ">=", "=", "~"}
_COMPARED = {"<", ">", "≤", "≥", "<=", ">="}
_PLUS_MINUS = {"±", "+/-", "+-", "+ / -"}
_BOUNDS = re.compile(r"^(\d{2,3}(?:\.\d)?)\s*%?\s*(?:-|–|to)\s*(\d{3}(?:\.\d)?)\s*%?$")
_HIGH_LOW = {"H", "L", "HH", "LL", "N", "A"}
_ANSWERS = {"y", "n", "yes", "no", "t", "f", "true", "false"}
_COUNT = re.compile(r"count|number|anzahl|nombre|recuento|numération", re.IGNORECASE)
_CODE_LISTS = {R.CODE_NWIS: "nwis", R.CODE_CAS: "cas", R.CODE_STORET: "storet", R.CODE_LOCAL: "local"}


def groups(cells: Cells, header: Header) -> list[tuple[int, int]]:
    """Column ranges of tables side by side under one header row: each begins with a name column of its own.

    Where no word heads names, columns that hold them do, under one heading or none.
    """
    width = cells.width
    starts = header.columns(R.NAME) or _columns_of_names(cells, header)
    values = header.columns(R.VALUE)
    first = min(header.heads)
    if len(starts) < 2 or len(values) < len(starts):
        return [(0, width - 1)]
    bounds = [
        start for place, start in enumerate(starts) if place == 0 or any(starts[place - 1] < v < start for v in values)
    ]
    if len(bounds) < 2:
        return [(0, width - 1)]
    texts = Counter(header.heads[start].own[-1].casefold() if start in header.heads else "" for start in bounds)
    if max(texts.values()) < 2:
        return [(0, width - 1)]
    bounds[0] = min(first, bounds[0])
    return [
        (0 if place == 0 else start, bounds[place + 1] - 1 if place + 1 < len(bounds) else width - 1)
        for place, start in enumerate(bounds)
    ]


def _columns_of_names(cells: Cells, header: Header) -> list[int]:
    """Columns without a role whose next texts are analytes' names."""
    found = []
    for column in range(cells.width):
        if column not in header.heads or header.heads[column].role is None:
            names, filled = names_beneath(cells, header.last + 1, column)
            if names and names * 2 >= filled:
                found.append(column)
    return found


def shape_of(cells: Cells, header: Header, first: int, last: int) -> Shape:
    """The shape of the columns first … last under a header."""
    heads = {column: head for column, head in header.heads.items() if first <= column <= last}
    body = header.last + 1
    shape = Shape(first, last, None, {}, [])
    by_role: dict[ColumnRole, list[int]] = {}
    for column, head in sorted(heads.items()):
        if head.role is not None:
            by_role.setdefault(head.role, []).append(column)
    _mend(cells, heads, by_role, body)
    _take_signs(cells, shape, by_role, body)
    _take_names(cells, shape, heads, by_role, body)
    take_identity(cells, shape, heads, by_role, body)
    _take_limits(shape, heads, by_role)
    for role, kind in LAYOUT.items():
        for column in by_role.get(role, []):
            shape.layout[column] = kind
            shape.took(heads.get(column) or Head(column, "", (), "", None), str(role), "header words or content")
    comments = {column: heads[column].meaning for column in by_role.get(R.COMMENT, []) if column in heads}
    shape.comments = [column for column, meaning in comments.items() if meaning is not None and meaning.standard]
    for column in by_role.get(R.PERCENT_RECOVERY, []):
        if _of_samples(cells, shape, heads, by_role, column, body):
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            shape.took(heads[column], "percent_recovery", "of the method, beside every result of named samples")
            continue
        shape.quality.append(column)
        shape.every_row = _beside_every_result(cells, shape, heads, by_role, column, body)
        shape.took(heads[column], "percent_recovery", "header words")
    if statistics := by_role.get(R.STATISTIC, []):
        words = not numeric(cells, statistics[0], body) and not _ranges(cells, statistics[0], body)
        shape.statistic = statistics[0] if words else None
    shape.ticks = tick_columns(cells, heads)
    for column in shape.ticks:
        by_role[R.DETECT_FLAG] = [other for other in by_role.get(R.DETECT_FLAG, []) if other != column]
        shape.took(heads[column], "presence", "a mark chooses one of several words")
    take_values(cells, shape, heads, by_role, body)
    for value in shape.values if cells.height <= SMALL else ():
        if value.brackets is None and limits_behind(cells, value.column, body):
            value.brackets, value.note = R.LIMIT, value.note or heads[value.column].text
    if shape.ticks and not shape.values:
        shape.values.append(ValueColumn(min(shape.ticks)))
    shape.inverted = {
        column
        for column in by_role.get(R.DETECT_FLAG, [])
        if (meaning := heads[column].meaning) is not None and meaning.note == "inverted"
    }
    shape.reportable = {
        column
        for column in by_role.get(R.RESULT_STATUS, [])
        if (meaning := heads[column].meaning) is not None and meaning.note == "reportable"
    }
    marks = [
        heads[column].meaning for role in (R.REMARK, R.QUALIFIER) for column in by_role.get(role, []) if column in heads
    ]
    shape.standard = next((meaning.standard for meaning in marks if meaning is not None), "")
    for role, name in BESIDE.items():
        columns = by_role.get(role, [])
        for column in columns:
            shape.took(heads.get(column) or Head(column, "", (), "", None), name, "header words or content")
            stand_beside(shape, name, column, len(columns) > 1 or name in OWN)
    if R.UNIT not in by_role and shape.name is not None and cells.height <= SMALL:
        limits = [*by_role.get(R.DETECTION_LIMIT, []), *by_role.get(R.REPORTING_LIMIT, [])]
        shape.some_units.update(units_among(cells, limits, shape.name, body))
        for value in shape.values if shape.some_units else ():
            value.beside.setdefault("unit", []).extend(sorted(shape.some_units))
    for column in shape.columns():
        if column not in shape.taken:
            head = heads.get(column) or Head(column, "", (), "", None)
            if (told := layout_by_word(cells, head)) is not None:
                shape.layout[column] = LAYOUT[told]
                shape.took(head, str(told), "a word of its heading")
            elif shape.values and head.text and numeric(cells, column, body) and cells.height <= SMALL:
                shape.ambiguous.append(column)
                shape.took(head, "ambiguous", "numbers beside the results, under a heading that is not known")
            else:
                shape.layout[column] = LayoutKind.ADMINISTRATIVE
                shape.took(head, "unassigned", "no known header word")
                if shape.values and head.text and cells.height <= SMALL:
                    shape.unassigned.append(column)
    return shape


def _of_samples(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], column: int, body: int
) -> bool:
    """Whether recoveries are the method's, printed beside every result of named samples, none of them a control."""
    named = [shape.identity[name] for name in ("sample_id", "site") if name in shape.identity]
    if not named or not _beside_every_result(cells, shape, heads, by_role, column, body):
        return False
    rows = _named_rows(cells, shape, body)
    coded = {text for row in rows for at in named if (text := cells.text(row, at))}
    known = all(any(cells.text(row, at) for at in named) for row in rows)
    return known and not any(cells.lexicon.vocabulary.id_role(text) for text in coded)


def _beside_every_result(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], column: int, body: int
) -> bool:
    """Whether every row has a recovery, where spiked samples among others would have one alone.

    Nothing is said of an amount added, of a second recovery, of bounds of recoveries or of kinds of samples; a
    difference only of the duplicates that stand beside.
    """
    doubled = any(cells.lexicon.vocabulary.id_role(head.text) is Role.DUPLICATE for head in heads.values())
    if "sample_type" in shape.identity or by_role.get(R.SPIKE_AMOUNT) or (by_role.get(R.RPD) and not doubled):
        return False
    if len(by_role.get(R.PERCENT_RECOVERY, [])) > 1 or shape.name is None or cells.height > SMALL:
        return False
    rows = _named_rows(cells, shape, body)
    if not rows or not all(cells.text(row, column) for row in rows):
        return False
    return not any(
        all(_around_hundred(cells.text(row, other)) for row in rows) for other in shape.columns() if other != column
    )


def _named_rows(cells: Cells, shape: Shape, body: int) -> list[int]:
    """Rows beneath the header that begin with a known name."""
    assert shape.name is not None
    return [row for row in range(body, cells.height) if cells.lexicon.is_name(cells.text(row, shape.name))]


def _around_hundred(text: str) -> bool:
    """Whether a text is a pair of bounds for a recovery in percent ("85 - 115")."""
    found = _BOUNDS.match(text)
    return found is not None and 40 <= float(found[1]) < 100 < float(found[2]) <= 200


def _mend(cells: Cells, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int) -> None:
    """A header word that may mean two things is decided by what stands beneath it: "Expressed as" over units."""
    for column in list(by_role.get(R.BASIS, [])):
        texts = _texts(cells, column, body)
        units = sum(bool(cells.lexicon.kind(text) & Kind.UNIT) for text in texts)
        if R.UNIT not in by_role and units * 2 > len(texts):
            by_role[R.BASIS].remove(column)
            by_role[R.UNIT] = [column]
    told = any((meaning := heads[c].meaning) is not None and meaning.fraction for c in by_role.get(R.VALUE, []))
    for column in list(by_role.get(R.FRACTION, [])):  # "Filtered" over numbers: of the fraction beside "Unfiltered"
        if numeric(cells, column, body):
            by_role[R.FRACTION].remove(column)
            head, phrase = heads[column], cells.lexicon.phrase(heads[column].own[-1])
            meaning = None
            if told and head.meaning is not None and phrase is not None and phrase.fraction is not None:
                meaning = replace(head.meaning, role=R.VALUE, fraction=phrase.fraction)
                by_role[R.VALUE] = sorted([*by_role[R.VALUE], column])
            heads[column] = replace(head, meaning=meaning)
    for column in list(by_role.get(R.REMARK, [])):  # "Symbol" over the symbols of elements, no signs
        texts = _texts(cells, column, body)
        if len(texts) > 1 and all(map(cells.lexicon.vocabulary.name, texts)):
            by_role[R.REMARK].remove(column)
            by_role.setdefault(R.ADMINISTRATIVE if R.NAME in by_role else R.NAME, []).append(column)
    for column in list(by_role.get(R.REMARK, [])):  # "Less than" over Y and N, no signs
        meaning, texts = heads[column].meaning, _texts(cells, column, body)
        if meaning is not None and meaning.note == "inverted" and {text.casefold() for text in texts} <= _ANSWERS:
            by_role[R.REMARK].remove(column)
            by_role.setdefault(R.DETECT_FLAG, []).append(column)
    for column in list(by_role.get(R.QUALIFIER, [])):  # high and low against the range beside them, no qualifiers
        if R.LIMIT in by_role and {"L"} < _texts(cells, column, body) <= _HIGH_LOW:
            by_role[R.QUALIFIER].remove(column)
            by_role.setdefault(R.RATING, []).append(column)
    named = by_role.get(R.NAME, [])
    for column in named[1:] if not by_role.keys() & {R.VALUE} else ():  # "Measurement" beside "Characteristic name"
        if numeric(cells, column, body) and _known_share(cells, named[0], body) >= _MOST:
            by_role[R.NAME] = [other for other in named if other != column]
            by_role[R.VALUE] = [column]
            break
    counts = [column for column in by_role.get(R.STATISTIC, []) if _COUNT.search(heads[column].text)]
    if (
        len(counts) == len(by_role.get(R.STATISTIC, [])) == 1
        and not by_role.keys() & {R.VALUE, R.VALUE_NUMBER}
        and _counted(cells, counts[0], body)
    ):
        by_role[R.VALUE] = by_role.pop(R.STATISTIC)


def _texts(cells: Cells, column: int, body: int) -> set[str]:
    return {text for row in range(body, min(body + 60, cells.height)) if (text := cells.text(row, column))}


def _ranges(cells: Cells, column: int, body: int) -> bool:
    """Whether most texts of a column have digits: a range to be in, no word for a statistic."""
    texts = _texts(cells, column, body)
    return sum(any(map(str.isdigit, text)) for text in texts) * 2 > len(texts)


def _counted(cells: Cells, column: int, body: int) -> bool:
    """Whether a column headed by a word such as "Count" holds results: among its numbers stand signs or words."""
    texts = _texts(cells, column, body)
    kinds = [cells.lexicon.kind(text) for text in texts]
    return any(kind & Kind.VALUE and not kind & Kind.NUMBER for kind in kinds) and all(
        kind & Kind.VALUE for kind in kinds
    )


def _take_signs(cells: Cells, shape: Shape, by_role: dict[ColumnRole, list[int]], body: int) -> None:
    """Columns without a known heading that hold nothing but comparison signs, nothing but qualifiers, or but units.

    Units right of a limit, where the results have theirs, are the limit's.
    """
    known = {column for columns in by_role.values() for column in columns}
    limits = {column for role in (R.REPORTING_LIMIT, R.DETECTION_LIMIT) for column in by_role.get(role, [])}
    for column in shape.columns():
        if column in known:
            continue
        texts = {text for row in range(body, min(body + 200, cells.height)) if (text := cells.text(row, column))}
        if texts and all(text in _SIGNS or _undetected(cells, text) for text in texts):
            by_role.setdefault(R.REMARK, []).append(column)
        elif texts & _COMPARED and all(text in _SIGNS or is_mark(cells, text) for text in texts):
            by_role.setdefault(R.REMARK, []).append(column)  # "<" in one row, "E" in another
        elif R.UNIT not in by_role and texts and all(_is_unit(cells, text) for text in texts):
            by_role[R.UNIT] = [column]
        elif column - 1 in limits and texts and all(_is_unit(cells, text) for text in texts):
            by_role.setdefault(R.LIMIT_UNIT, []).append(column)
        elif R.SAMPLE_TYPE not in by_role and _are_kinds_of_samples(cells, texts):
            by_role[R.SAMPLE_TYPE] = [column]
        elif are_marks(cells, texts):
            by_role.setdefault(R.QUALIFIER, []).append(column)
        elif texts and texts <= _PLUS_MINUS:
            by_role.setdefault(R.ADMINISTRATIVE, []).append(column)


def _are_kinds_of_samples(cells: Cells, texts: set[str]) -> bool:
    """Whether texts are codes of kinds of samples, quality control among them ("N", "FD", "EB")."""
    roles = {text: cells.lexicon.vocabulary.sample_role(text) for text in texts}
    return len(roles) > 1 and None not in roles.values() and any(role is not Role.ROUTINE for role in roles.values())


def _is_unit(cells: Cells, text: str) -> bool:
    """Whether a text is a unit and nothing else."""
    kind = cells.lexicon.kind(text)
    return bool(kind & Kind.UNIT) and not kind & (Kind.VALUE | Kind.NAME | Kind.HEADER)


def _undetected(cells: Cells, text: str) -> bool:
    """Whether a text says "not detected" and nothing of a number."""
    found = cells.lexicon.vocabulary.value(text) if len(text) < 20 else None
    return found is not None and found.censoring is Censoring.LEFT and found.number is None


def _take_names(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int
) -> None:
    for role, code_list in _CODE_LISTS.items():
        for column in by_role.get(role, []):
            shape.codes[column] = code_list
            shape.took(heads[column], f"code_{code_list}", "header words")
    named = by_role.get(R.NAME, []) + by_role.get(R.NAME_SUPPLIED, [])
    if len(named) > 1:  # the one whose texts are best known; the others say the same in other words
        best = max(named, key=lambda column: (_known_share(cells, column, body), -column))
        named = [best] + [column for column in named if column != best]
    if named:
        shape.name = named[0]
        shape.took(heads[named[0]], "name", "header words")
        for column in named[1:]:
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            shape.took(heads[column], "other_name", "a second column of names")
    if not named or _known_share(cells, named[0], body) < _FEW:
        known = _named_by_content(cells, shape, heads, body)
        if known is not None:
            if named:
                shape.layout[named[0]] = LayoutKind.ADMINISTRATIVE
                shape.taken[named[0]] = TakenColumn(
                    named[0],
                    heads[named[0]].text,
                    "other_name",
                    "names that are not known; another column has known ones",
                )
            shape.name = known
            shape.taken[known] = TakenColumn(
                known, heads[known].text if known in heads else "", "name", "holds analyte names"
            )


def _known_share(cells: Cells, column: int, body: int, look: int = 120) -> float:
    """Share of the next differing texts of a column that are known names."""
    texts = {text for row in range(body, min(body + look, cells.height)) if (text := cells.text(row, column))}
    return sum(cells.lexicon.is_name(text) for text in texts) / len(texts) if texts else 0.0


def _known_names(cells: Cells, column: int, body: int, look: int = 120) -> int:
    texts = {text for row in range(body, min(body + look, cells.height)) if (text := cells.text(row, column))}
    return sum(len(text) > 2 and cells.lexicon.is_name(text) for text in texts)


def _named_by_content(cells: Cells, shape: Shape, heads: dict[int, Head], body: int) -> int | None:
    """The column whose texts are known names, where the header says nothing better of it."""
    open_roles = (None, R.COMMENT, R.NOTE)
    free = [c for c in shape.columns() if c not in heads or heads[c].role in open_roles]
    few = 3 if shape.codes else 1  # a column of codes is a name already: less will not do beside it
    free = [column for column in free if _known_names(cells, column, body) >= few]
    shares = [(_known_share(cells, column, body), -column) for column in free]
    best = max(shares, default=(0.0, 0))
    return -best[1] if best[0] >= _MOST else None


def _take_limits(shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]]) -> None:
    """Limit columns whose kind stands in a column of its own, or whose unit does."""
    kinds = by_role.get(R.LIMIT_TYPE, [])
    units = by_role.get(R.LIMIT_UNIT, [])
    numbers = sorted(
        by_role.get(R.LIMIT_VALUE, []) + by_role.get(R.REPORTING_LIMIT, []) + by_role.get(R.DETECTION_LIMIT, [])
    )
    for column in (*kinds, *units):
        shape.took(heads[column], str(heads[column].role), "header words")
    if not kinds and not units:
        return
    for column in numbers:
        typed = kinds if heads[column].role is R.LIMIT_VALUE else []
        shape.limits.append((column, _partner(heads, column, typed), _partner(heads, column, units)))
        shape.took(heads[column], str(heads[column].role), "header words")


def _partner(heads: dict[int, Head], column: int, others: list[int]) -> int | None:
    """The column that belongs to another: of the same group where a standard has groups, else the nearest."""
    mine = heads[column].meaning
    if mine is not None and mine.group:
        same = [other for other in others if (found := heads[other].meaning) is not None and found.group == mine.group]
        if same:
            return same[0]
    return min(others, key=lambda other: abs(other - column), default=None)
