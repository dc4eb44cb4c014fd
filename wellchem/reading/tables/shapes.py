"""The shape of a table with analyte names down a column: which column took which role, and why."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass, field

from wellchem.models.codes import LayoutKind
from wellchem.reading.rows import HEAD_FIELDS, TakenColumn
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import NAMING, Head, Header
from wellchem.vocabulary import ColumnRole

R = ColumnRole
# Columns whose cells never belong to a result.
LAYOUT = {
    R.LIMIT: LayoutKind.LIMIT,
    R.PREVIOUS: LayoutKind.PREVIOUS,
    R.STATISTIC: LayoutKind.ADMINISTRATIVE,
    R.ADMINISTRATIVE: LayoutKind.ADMINISTRATIVE,
    R.RPD: LayoutKind.ADMINISTRATIVE,
    R.SPIKE_AMOUNT: LayoutKind.ADMINISTRATIVE,
    R.DILUTION: LayoutKind.ADMINISTRATIVE,
    R.RESULT_STATUS: LayoutKind.ADMINISTRATIVE,
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
    R.REPORTING_LIMIT: "reporting_limit",
    R.DETECTION_LIMIT: "detection_limit",
    R.UNCERTAINTY: "uncertainty",
    R.METHOD: "method",
    R.MEASURED: "measured",
}
_FEW, _MOST = 0.1, 0.5  # shares of known names below and above which a column is not, or is, taken for the names
OWN = (
    "qualifier",
    "remark",
    "presence",
    "flag",
    "condition",
    "uncertainty",
)  # never shared by several columns of values
_SIGNS = {"<", ">", "≤", "≥", "<=", ">=", "=", "~"}
_PLUS_MINUS = {"±", "+/-", "+-", "+ / -"}
# A word of these in a heading tells that the column is no sample's.
_NOT_SAMPLES = {*LAYOUT, R.REPORTING_LIMIT, R.DETECTION_LIMIT, R.UNCERTAINTY, R.QUALIFIER, R.PERCENT_RECOVERY}
_CODE_LISTS = {R.CODE_NWIS: "nwis", R.CODE_CAS: "cas", R.CODE_STORET: "storet", R.CODE_LOCAL: "local"}


@dataclass
class ValueColumn:
    """A column of values, the columns that stand beside it, and what its heading says of all of it."""

    column: int
    beside: dict[str, list[int]] = field(default_factory=dict)
    said: dict[str, str] = field(default_factory=dict)
    fraction: str = ""
    unit: str = ""
    note: str = ""


@dataclass
class Shape:
    """Columns of a table by what they hold.

    `wrapped` gives, for a row whose name goes on in another row, that row and the whole name.
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
    statistic: int | None = None
    ambiguous: list[int] = field(default_factory=list)
    wrapped: dict[int, tuple[int, str]] = field(default_factory=dict)
    said: dict[str, str] = field(default_factory=dict)
    taken: dict[int, TakenColumn] = field(default_factory=dict)

    def columns(self) -> range:
        """The columns of the table."""
        return range(self.first, self.last + 1)


def groups(header: Header, width: int) -> list[tuple[int, int]]:
    """Column ranges of tables that stand side by side under one header row: each begins with a name column of its own."""
    starts = header.columns(R.NAME)
    values = header.columns(R.VALUE)
    first = min(header.heads)
    if len(starts) < 2 or len(values) < len(starts):
        return [(0, width - 1)]
    bounds = [
        start for place, start in enumerate(starts) if place == 0 or any(starts[place - 1] < v < start for v in values)
    ]
    if len(bounds) < 2:
        return [(0, width - 1)]
    texts = Counter(header.heads[start].text.casefold() for start in bounds)
    if max(texts.values()) < 2:
        return [(0, width - 1)]
    bounds[0] = min(first, bounds[0])
    return [
        (0 if place == 0 else start, bounds[place + 1] - 1 if place + 1 < len(bounds) else width - 1)
        for place, start in enumerate(bounds)
    ]


def shape_of(cells: Cells, header: Header, first: int, last: int) -> Shape:
    """The shape of the columns first … last under a header."""
    heads = {column: head for column, head in header.heads.items() if first <= column <= last}
    body = header.last + 1
    shape = Shape(first, last, None, {}, [])
    by_role: dict[ColumnRole, list[int]] = {}
    for column, head in sorted(heads.items()):
        if head.role is not None:
            by_role.setdefault(head.role, []).append(column)
    _mend(cells, by_role, body)
    _take_signs(cells, shape, by_role, body)
    _take_names(cells, shape, heads, by_role, body)
    _take_identity(cells, shape, heads, by_role, body)
    _take_limits(shape, heads, by_role)
    for role, kind in LAYOUT.items():
        for column in by_role.get(role, []):
            shape.layout[column] = kind
            _took(shape, heads.get(column) or Head(column, "", (), "", None), str(role), "header words or content")
    for column in by_role.get(R.PERCENT_RECOVERY, []):
        shape.quality.append(column)
        _took(shape, heads[column], "percent_recovery", "header words")
    if statistics := by_role.get(R.STATISTIC, []):
        shape.statistic = statistics[0] if not _numeric(cells, statistics[0], body) else None
    _take_values(cells, shape, heads, by_role, body)
    for role, name in BESIDE.items():
        columns = by_role.get(role, [])
        for column in columns:
            _took(shape, heads.get(column) or Head(column, "", (), "", None), name, "header words or content")
            _beside(shape, name, column, len(columns) > 1 or name in OWN)
    for column in shape.columns():
        if column not in shape.taken:
            head = heads.get(column) or Head(column, "", (), "", None)
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            _took(shape, head, "unassigned", "no known header word")
    return shape


def _mend(cells: Cells, by_role: dict[ColumnRole, list[int]], body: int) -> None:
    """A header word that may mean two things is decided by what stands beneath it: "Expressed as" over units."""
    for column in list(by_role.get(R.BASIS, [])):
        texts = {text for row in range(body, min(body + 60, cells.height)) if (text := cells.text(row, column))}
        units = sum(bool(cells.lexicon.kind(text) & Kind.UNIT) for text in texts)
        if R.UNIT not in by_role and units * 2 > len(texts):
            by_role[R.BASIS].remove(column)
            by_role[R.UNIT] = [column]


def _take_signs(cells: Cells, shape: Shape, by_role: dict[ColumnRole, list[int]], body: int) -> None:
    """Columns without a known heading that hold nothing but comparison signs, or nothing but qualifiers."""
    known = {column for columns in by_role.values() for column in columns}
    for column in shape.columns():
        if column in known:
            continue
        texts = {text for row in range(body, min(body + 200, cells.height)) if (text := cells.text(row, column))}
        if texts and texts <= _SIGNS:
            by_role.setdefault(R.REMARK, []).append(column)
        elif texts and texts <= _PLUS_MINUS:
            by_role.setdefault(R.ADMINISTRATIVE, []).append(column)


def _took(shape: Shape, head: Head, role: str, why: str) -> None:
    shape.taken.setdefault(head.column, TakenColumn(head.column, head.text, role, why))


def _numeric(cells: Cells, column: int, body: int, look: int = 60) -> bool:
    """Whether most of the next texts of a column are values."""
    values, filled = _count(cells, column, body, look)
    return values > 0 and values * 2 > filled


def _count(cells: Cells, column: int, body: int, look: int = 60) -> tuple[int, int]:
    values = filled = 0
    for row in range(body, min(body + look, cells.height)):
        if text := cells.text(row, column):
            filled += 1
            kind = cells.lexicon.kind(text)
            values += bool(kind & Kind.VALUE and not kind & Kind.UNIT)
    return values, filled


def _take_names(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int
) -> None:
    for role, code_list in _CODE_LISTS.items():
        for column in by_role.get(role, []):
            shape.codes[column] = code_list
            _took(shape, heads[column], f"code_{code_list}", "header words")
    named = by_role.get(R.NAME, []) + by_role.get(R.NAME_SUPPLIED, [])
    if len(named) > 1:  # the one whose texts are best known; the others say the same in other words
        best = max(named, key=lambda column: (_known_share(cells, column, body), -column))
        named = [best] + [column for column in named if column != best]
    if named:
        shape.name = named[0]
        _took(shape, heads[named[0]], "name", "header words")
        for column in named[1:]:
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            _took(shape, heads[column], "other_name", "a second column of names")
    if not named or _known_share(cells, named[0], body) < _FEW:
        column = _named_by_content(cells, shape, heads, body)
        if column is not None:
            if named:
                shape.layout[named[0]] = LayoutKind.ADMINISTRATIVE
                shape.taken[named[0]] = TakenColumn(
                    named[0],
                    heads[named[0]].text,
                    "other_name",
                    "names that are not known; another column has known ones",
                )
            shape.name = column
            shape.taken[column] = TakenColumn(
                column, heads[column].text if column in heads else "", "name", "holds analyte names"
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


def _take_identity(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int
) -> None:
    fields = {R(name): name for name in HEAD_FIELDS if name in R._value2member_map_}
    fields[R.ACTIVITY_TYPE] = "sample_type"
    for role, name in fields.items():
        columns = [column for column in by_role.get(role, []) if column != shape.name]
        if name == "sample_id":
            columns = _sample_columns(cells, shape, heads, columns, body)
        for column in columns:
            if name in shape.identity:
                shape.layout.setdefault(column, LayoutKind.ADMINISTRATIVE)
                _took(shape, heads[column], "administrative", f"a second column of {name}")
            else:
                shape.identity[name] = column
                _took(shape, heads[column], name, "header words")


def _sample_columns(
    cells: Cells, shape: Shape, heads: dict[int, Head], columns: list[int], body: int, look: int = 400
) -> list[int]:
    """Columns of sample numbers, the one that tells samples apart first; a number of each row is no sample's."""
    rows = range(body, min(body + look, cells.height))
    told = {column: [cells.text(row, column) for row in rows] for column in columns}
    names = {cells.text(row, shape.name) for row in rows} if shape.name is not None else set()
    good = []
    for column in columns:
        distinct = len(set(told[column]))
        once = len(rows) > 3 and distinct == len(rows)
        if once and (len(names) * 2 > len(rows) or (len(names) > 1 and _places_repeat(cells, heads, rows))):
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            _took(shape, heads[column], "administrative", "differs in every row: a number of the result")
        else:
            good.append((-distinct, column))
    return [column for _, column in sorted(good)]


def _places_repeat(cells: Cells, heads: dict[int, Head], rows: range) -> bool:
    """Whether rows share site and date of collection: several results of one sample."""
    columns = [c for c, head in heads.items() if head.role in (R.SITE, R.DATE_COLLECTED, R.TIME_COLLECTED)]
    if not columns:
        return False
    return len({tuple(cells.text(row, column) for column in columns) for row in rows}) < len(rows)


def _take_limits(shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]]) -> None:
    """Limit columns whose kind stands in a column of its own, or whose unit does."""
    kinds = by_role.get(R.LIMIT_TYPE, [])
    units = by_role.get(R.LIMIT_UNIT, [])
    numbers = sorted(
        by_role.get(R.LIMIT_VALUE, []) + by_role.get(R.REPORTING_LIMIT, []) + by_role.get(R.DETECTION_LIMIT, [])
    )
    for column in (*kinds, *units):
        _took(shape, heads[column], str(heads[column].role), "header words")
    if not kinds and not units:
        return
    for column in numbers:
        typed = kinds if heads[column].role is R.LIMIT_VALUE else []
        shape.limits.append((column, _partner(heads, column, typed), _partner(heads, column, units)))
        _took(shape, heads[column], str(heads[column].role), "header words")


def _partner(heads: dict[int, Head], column: int, others: list[int]) -> int | None:
    """The column that belongs to another: of the same group of a standard where the groups are known, else the nearest."""
    mine = heads[column].meaning
    if mine is not None and mine.group:
        same = [other for other in others if (found := heads[other].meaning) is not None and found.group == mine.group]
        if same:
            return same[0]
    return min(others, key=lambda other: abs(other - column), default=None)


def _take_values(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int
) -> None:
    said = [
        column for column in by_role.get(R.VALUE, []) or by_role.get(R.VALUE_NUMBER, []) if column not in shape.taken
    ]
    if len(said) > 1:
        said = _distinct_values(cells, shape, heads, said, body)
    for column in said:
        head = heads[column]
        meaning = head.meaning
        value = ValueColumn(
            column,
            unit=(meaning.unit_text or "") if meaning else "",
            fraction=_text(meaning.fraction) if meaning else "",
        )
        if len(said) > 1:
            if head.group and not cells.lexicon.column(head.group):
                value.said["sample_id"] = head.group
        shape.values.append(value)
        _took(shape, head, "value", "header words")
    free = [
        column
        for column in shape.columns()
        if column not in shape.taken
        and column not in shape.layout
        and (heads.get(column) is None or heads[column].role is None)
    ]
    free = [column for column in free if _numeric(cells, column, body)]
    if said:
        for column in by_role.get(R.VALUE_NUMBER, []):
            if column not in shape.taken:
                shape.layout[column] = LayoutKind.ADMINISTRATIVE
                _took(shape, heads[column], "value_number", "repeats the results as numbers")
        return
    free = _without_statistics(cells, shape, heads, free)
    if _take_units_as_heads(cells, shape, heads, free):
        return
    if len(free) == 1:
        head = heads.get(free[0]) or Head(free[0], "", (), "", None)
        if _names_sample(cells, head):
            shape.values.append(_sample_column(cells, head))
            _took(shape, head, "value", f"values of sample {_sample_label(head)}")
        else:
            shape.values.append(ValueColumn(free[0], note=head.text or f"{free[0] + 1}"))
            _took(shape, head, "value", "the only column of values that no other role explains")
        return
    labels = [_sample_label(heads[column]) if column in heads else "" for column in free]
    if free and all(labels) and len(set(labels)) == len(labels) and _are_samples(cells, [heads[c] for c in free]):
        for column, text in zip(free, labels, strict=True):
            shape.values.append(_sample_column(cells, heads[column]))
            _took(shape, heads[column], "value", f"values of sample {text}")
        return
    for column in free:
        shape.ambiguous.append(column)
        _took(
            shape,
            heads.get(column) or Head(column, "", (), "", None),
            "ambiguous",
            "several columns could be the result",
        )


def _text(value: object) -> str:
    return str(value) if value else ""


def _sample_label(head: Head) -> str:
    return head.text if not head.group or head.text.startswith(head.group) else f"{head.group} {head.text}"


def _take_units_as_heads(cells: Cells, shape: Shape, heads: dict[int, Head], free: list[int]) -> bool:
    """Columns headed by nothing but a unit: results; where several units stand beside each other, the first is read."""
    units = [column for column in free if column in heads and cells.lexicon.kind(heads[column].text) & Kind.UNIT]
    others = [heads[column] for column in free if column in heads and column not in units]
    if not units or any(_names_sample(cells, head) for head in others):
        return False
    shape.values.append(ValueColumn(units[0], unit=heads[units[0]].text))
    _took(shape, heads[units[0]], "value", "results in the unit of the heading")
    for column in free:
        if column != units[0]:
            shape.layout[column] = LayoutKind.ADMINISTRATIVE
            head = heads.get(column) or Head(column, "", (), "", None)
            _took(shape, head, "other_value", "the same results in another unit, or other figures beside them")
    return True


def _sample_column(cells: Cells, head: Head) -> ValueColumn:
    """A column of results of one sample: its heading is a date, a point of sampling or a number of the sample."""
    text, unit = _sample_label(head), ""
    found = re.match(r"^(.*?)\s*[(\[]([^()\[\]]+)[)\]]$", text)
    if found and found[1] and cells.lexicon.kind(found[2]) & Kind.UNIT:
        text, unit = found[1], found[2]
    if cells.lexicon.kind(text) & Kind.DATE:
        said = {"date_collected": text}
    elif cells.lexicon.vocabulary.point(text) is not None and cells.lexicon.vocabulary.id_role(text) is None:
        said = {"point": text}
    else:
        said = {"sample_id": text}
    return ValueColumn(head.column, said=said, unit=unit)


def _word_roles(cells: Cells, head: Head) -> set[ColumnRole]:
    """Roles of the single words of a heading."""
    words: set[str] = set()
    for text in (*head.own, head.group):
        parts = [part for part in re.split(r"[\s/,()_.:-]+", text) if part]
        words |= {" ".join(parts[i : i + size]) for size in (1, 2, 3) for i in range(len(parts) - size + 1)} | {text}
    return {found.role for word in words if word and (found := cells.lexicon.column(word)) is not None}


def _without_statistics(cells: Cells, shape: Shape, heads: dict[int, Head], free: list[int]) -> list[int]:
    """Columns that no word of their heading calls an average, a deviation, a limit …"""
    kept = []
    for column in free:
        roles = _word_roles(cells, heads[column]) if column in heads else set()
        odd = sorted(role for role in roles if role in LAYOUT or role is R.PERCENT_RECOVERY)
        if odd:
            shape.layout[column] = LAYOUT.get(odd[0], LayoutKind.ADMINISTRATIVE)
            _took(shape, heads[column], str(odd[0]), "a word of its heading")
        else:
            kept.append(column)
    return kept


def _names_sample(cells: Cells, head: Head) -> bool:
    """Whether a heading that is no header word names a sample: it holds a number or a date, or a point of sampling."""
    text = _sample_label(head)
    if not text or _word_roles(cells, head) & _NOT_SAMPLES:
        return False
    vocabulary = cells.lexicon.vocabulary
    if vocabulary.point(text) is not None or vocabulary.id_role(text) is not None:
        return True
    return any(letter.isdigit() for letter in text)


def _are_samples(cells: Cells, heads: list[Head]) -> bool:
    """Whether headings name samples: most do by themselves and none is known as anything else, or a group heading says so."""
    grouped_heads = [head for head in heads if head.group]
    repeated = _repeated_under_groups(grouped_heads)
    named = [_names_sample(cells, head) or (repeated and bool(head.group)) for head in heads]
    if any(named) and sum(named) * 2 >= len(named):
        return not any(_word_roles(cells, head) & _NOT_SAMPLES for head in heads)
    grouped = [cells.lexicon.column(head.group) for head in grouped_heads]
    return len(grouped) == len(heads) and all(
        found is not None and found.role in (R.SAMPLE_ID, R.SITE, R.POINT, R.VALUE) for found in grouped
    )


def _repeated_under_groups(heads: list[Head]) -> bool:
    """Whether the same headings stand under two or more group headings: preparations of several samples."""
    under: dict[str, list[str]] = {}
    for head in heads:
        under.setdefault(head.group, []).append(head.own[-1])
    return (
        len(under) > 1 and len({tuple(texts) for texts in under.values()}) == 1 and len(next(iter(under.values()))) > 1
    )


def _distinct_values(cells: Cells, shape: Shape, heads: dict[int, Head], said: list[int], body: int) -> list[int]:
    """The result columns that are to be read among several that the header calls results."""
    labels = {
        column: (heads[column].group, _text(heads[column].meaning.fraction if heads[column].meaning else ""))
        for column in said
    }
    if len(set(labels.values())) == len(said):
        return said  # columns of several samples, or of several fractions
    rows = range(body, min(body + 200, cells.height))
    full = {column: sum(1 for row in rows if cells.text(row, column)) for column in said}
    best = max(said, key=lambda column: (full[column], -column))
    for column in said:
        if column == best:
            continue
        same = sum(1 for row in rows if (text := cells.text(row, column)) and text == cells.text(row, best))
        shape.layout[column] = LayoutKind.ADMINISTRATIVE
        why = "repeats the results of another column" if same * 2 >= full[column] else "a second column of results"
        _took(shape, heads[column], "other_value", why)
    return [best]


def _beside(shape: Shape, name: str, column: int, own: bool) -> None:
    """Give a column to the value columns that it stands beside: to the nearest at its left where each has its own."""
    left = [value for value in shape.values if value.column < column]
    right = [value for value in shape.values if value.column > column]
    if name == "remark" and right and (not left or "remark" in left[-1].beside or right[0].column == column + 1):
        left = right[:1]  # a sign stands before its number
    for value in left[-1:] if own and left else shape.values:
        value.beside.setdefault(name, []).append(column)


__all__ = ["NAMING", "OWN", "Shape", "ValueColumn", "groups", "shape_of"]
