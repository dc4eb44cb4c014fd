"""Which columns hold the results: by header words, else by content; and the samples that headings of columns name."""

from __future__ import annotations

import re
from dataclasses import replace
from math import isclose
from statistics import fmean

from wellchem.models.codes import LayoutKind
from wellchem.reading.dates import visit_in
from wellchem.reading.rows import TakenColumn
from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.headers import Head
from wellchem.reading.tables.shape import LAYOUT, SMALL, R, Shape, ValueColumn, numeric
from wellchem.vocabulary import ColumnRole

_ALIKE = 3  # groups from which a heading under them is taken for the same thing of each
# A laboratory's number behind the point of sampling, no count of taps and no year: "Raw water 7781-A".
_NUMBERED = re.compile(r"^(?P<point>.*\D)\s+(?!(?:19|20)\d\d$)(?P<number>(?=(?:\D*\d){3})[\w/.-]{4,})$")
_BOUND = re.compile(r"[<>≤≥=]")
_DIGITS = re.compile(r"\d*\.?\d+(?:[eE]-?\d+)?")
_ROUNDED = 0.005  # how far the mean of printed numbers may lie from its own printed number
_YEAR = re.compile(r"(?:19|20)\d\d(?:\s?[-–/]\s?(?:19|20)?\d\d)?")
_LETTER = re.compile(r"^[A-Z]$")
# A word of these in a heading tells that the column is no sample's.
_NOT_SAMPLES = {*LAYOUT, R.REPORTING_LIMIT, R.DETECTION_LIMIT, R.UNCERTAINTY, R.QUALIFIER, R.PERCENT_RECOVERY}


def take_values(
    cells: Cells, shape: Shape, heads: dict[int, Head], by_role: dict[ColumnRole, list[int]], body: int
) -> None:
    said = [
        column for column in by_role.get(R.VALUE, []) or by_role.get(R.VALUE_NUMBER, []) if column not in shape.taken
    ]
    if len(said) > 1:
        said = _distinct_values(cells, shape, heads, said, body)
    if not said and _take_places_of_measuring(cells, shape, heads, body):
        return
    points = _columns_of_points(cells, shape, heads, said, body)
    for column in points:
        shape.values.append(_sample_column(cells, heads[column]))
        shape.took(heads[column], "value", f"results at {_sample_label(heads[column])}")
    for column in said:
        if column in points:
            continue
        head = heads[column]
        meaning = head.meaning
        value = ValueColumn(
            column,
            unit=_unit_of(cells, head),
            fraction=_text(meaning.fraction) if meaning else "",
            note=head.text if shape.ambiguous else "",
            brackets=meaning.brackets if meaning else None,
        )
        if len(said) > 1 and (over := _over(cells, head)):
            value.said.update(_sample_said(cells, over))
        shape.values.append(value)
        shape.took(head, "value", "header words")
    free = [
        column
        for column in shape.columns()
        if column not in shape.taken
        and column not in shape.layout
        and (heads.get(column) is None or heads[column].role is None)
    ]
    free = [column for column in free if numeric(cells, column, body) and not _years(cells, column, body)]
    if said:
        for column in by_role.get(R.VALUE_NUMBER, []):
            if column not in shape.taken:
                shape.layout[column] = LayoutKind.REPEATED
                shape.took(heads[column], "value_number", "repeats the results as numbers")
        return
    free = _without_statistics(cells, shape, heads, free)
    if _take_units_as_heads(cells, shape, heads, free):
        return
    lone = heads.get(free[0]) if len(free) == 1 else None
    if len(free) == 1 and (not by_role.get(R.STATISTIC) or (lone is not None and _names_sample(cells, lone))):
        head = heads.get(free[0]) or Head(free[0], "", (), "", None)
        if _names_sample(cells, head):
            shape.values.append(_sample_column(cells, head))
            shape.took(head, "value", f"values of sample {_sample_label(head)}")
        else:
            shape.values.append(ValueColumn(free[0], note=head.text or f"{free[0] + 1}"))
            shape.took(head, "value", "the only column of values that no other role explains")
        return
    free = _with_days(cells, shape, heads, free)
    labels = [_sample_label(heads[column]) if column in heads else "" for column in free]
    replicates = _replicates(cells, shape, body)
    named = [heads[c] for c in free if c in heads]
    if free and all(labels) and _told_apart(labels, heads, free) and _are_samples(cells, named, replicates):
        for column, text in zip(free, labels, strict=True):
            shape.values.append(_sample_column(cells, heads[column]))
            shape.took(heads[column], "value", f"values of sample {text}")
        return
    for column in free:
        shape.ambiguous.append(column)
        shape.took(
            heads.get(column) or Head(column, "", (), "", None),
            "ambiguous",
            "several columns could be the result",
        )


def _years(cells: Cells, column: int, body: int) -> bool:
    """Whether a column holds nothing but years, two at least: when samples were taken."""
    texts = [text for row in range(body, min(body + 60, cells.height)) if (text := cells.text(row, column))]
    return len(texts) > 1 and all(_YEAR.fullmatch(text) for text in texts)


def _with_days(cells: Cells, shape: Shape, heads: dict[int, Head], free: list[int]) -> list[int]:
    """Where several columns are headed by days, those alone: a bare word among them is no day's results."""
    labels = {column: _sample_label(heads[column]) for column in free if column in heads}
    dated = [column for column, text in labels.items() if cells.lexicon.kind(text) & Kind.DATE or visit_in(text)]
    worded = [c for c, text in labels.items() if c not in dated and not any(map(str.isdigit, text))]
    odd = [column for column in worded if cells.lexicon.vocabulary.point(labels[column]) is None]
    if len(dated) < 2 or not odd:
        return free
    for column in odd:
        shape.ambiguous.append(column)
        shape.took(heads[column], "ambiguous", "numbers beside columns of days, under a heading that is not known")
    return [column for column in free if column not in odd]


def _told_apart(labels: list[str], heads: dict[int, Head], free: list[int]) -> bool:
    """Whether headings differ; a few preparations of one sample may repeat theirs under headings of samples."""
    different = len(set(labels))
    if different == len(labels):
        return True
    return different * 2 > len(labels) and all(heads[column].group or heads[column].own[1:] for column in free)


def _replicates(cells: Cells, shape: Shape, body: int) -> set[int]:
    """Columns whose mean stands at their right in a column of averages: results, whatever their heading says."""
    found: set[int] = set()
    means = [column for column, taken in shape.taken.items() if taken.role == R.STATISTIC]
    for column in means if cells.height <= SMALL else ():
        for count in range(2, min(3, column - shape.first) + 1):
            lines = [
                [cells.text(row, c) for c in range(column - count, column + 1)] for row in range(body, cells.height)
            ]
            numbers = [list(map(float, line)) for line in lines if all(map(_DIGITS.fullmatch, line))]
            told = [line for line in numbers if len(set(line)) > 1]
            if len(told) >= _ALIKE and all(isclose(fmean(line[:-1]), line[-1], rel_tol=_ROUNDED) for line in told):
                found.update(range(column - count, column))
    return found


def _columns_of_points(cells: Cells, shape: Shape, heads: dict[int, Head], said: list[int], body: int) -> list[int]:
    """Columns headed by points of sampling ("Raw water", "Treated water") beside each other or beside the results.

    A header word may be known for one of them alone; the others are no less results.
    """
    found = [
        column
        for column, head in sorted(heads.items())
        if (column in said or (column not in shape.taken and head.role is None))
        and cells.lexicon.vocabulary.point(_sample_label(head)) is not None
        and numeric(cells, column, body)
    ]
    return found if said and (len(found) > 1 or not set(found) & set(said)) else []


def _take_places_of_measuring(cells: Cells, shape: Shape, heads: dict[int, Head], body: int) -> bool:
    """Columns headed "Field" and "Laboratory" over numbers: results measured there."""
    measured = cells.lexicon.vocabulary.measured
    found = {
        column: place
        for column, head in heads.items()
        if (place := measured(head.text)) is not None and numeric(cells, column, body)
    }
    if len(set(found.values())) < 2 or len(found) != 2:
        return False
    for column, place in sorted(found.items()):
        shape.identity = {name: index for name, index in shape.identity.items() if index != column}
        shape.values.append(ValueColumn(column, measured=str(place)))
        shape.taken[column] = TakenColumn(column, heads[column].text, "value", f"results of the {place}")
    return True


def _text(value: object) -> str:
    return str(value) if value else ""


def _over(cells: Cells, head: Head) -> str:
    """What stands over a header word for results and is none itself: the sample, where several stand across."""
    if head.group and not cells.lexicon.column(head.group):
        return head.group
    return next((part for part in head.own[:-1] if not cells.lexicon.column(part) and len(part) < 60), "")


def _unit_of(cells: Cells, head: Head) -> str:
    """The unit that a heading prints, or the heading over it: "Concentration (µg/L)" over "Total" and "Dissolved"."""
    over = cells.lexicon.column(head.group) if head.group else None
    for meaning in (head.meaning, over):
        if meaning is not None and meaning.unit_text:
            return meaning.unit_text
    return head.group if head.group and cells.lexicon.kind(head.group) & Kind.UNIT else ""


def _sample_label(head: Head) -> str:
    text = head.text.removeprefix(f"{head.group} ")
    return text if not head.group or text.startswith(head.group) else f"{head.group} {text}"


def _take_units_as_heads(cells: Cells, shape: Shape, heads: dict[int, Head], free: list[int]) -> bool:
    """Columns headed by nothing but a unit: results; where several units stand beside each other, the first is read."""
    units = [column for column in free if column in heads and cells.lexicon.kind(heads[column].text) & Kind.UNIT]
    others = [heads[column] for column in free if column in heads and column not in units]
    if not units or any(_names_sample(cells, head) or _LETTER.match(head.text) for head in others):
        return False
    for column in units:  # several units: each column is a number of its own, and all are kept
        shape.values.append(ValueColumn(column, unit=heads[column].text))
        shape.took(heads[column], "value", "results in the unit of the heading")
    for column in free:
        if column not in units:
            shape.ambiguous.append(column)
            head = heads.get(column) or Head(column, "", (), "", None)
            shape.took(head, "ambiguous", "other figures beside the results")
    return True


def _sample_column(cells: Cells, head: Head) -> ValueColumn:
    """A column of results of one sample: its heading is a date, a point of sampling or a number of the sample."""
    parts = [part for part in head.own[1:] if cells.lexicon.kind(part) & Kind.UNIT]  # a unit over each sample
    days = [part for part in head.own if cells.lexicon.kind(part) & Kind.DATE] if head.own[1:] or head.group else []
    own = " ".join(part for part in head.own if part not in (*parts, *days))
    text, unit = _sample_label(replace(head, text=own) if parts or days else head).strip(), "".join(parts[:1])
    found = re.match(r"^(.*?)\s*[(\[]([^()\[\]]+)[)\]]$", text)
    if found and found[1] and cells.lexicon.kind(found[2]) & Kind.UNIT:
        text, unit = found[1], found[2]
    said = _sample_said(cells, text) | ({"date_collected": days[0]} if days and text else {})
    return ValueColumn(head.column, said=said, unit=unit or _unit_of(cells, head))


def _sample_said(cells: Cells, text: str) -> dict[str, str]:
    """What a heading says of the sample in its column: its day, its point of sampling, or its number."""
    if cells.lexicon.kind(text) & Kind.DATE:
        return {"date_collected": text}
    if cells.lexicon.vocabulary.point(text) is not None and cells.lexicon.vocabulary.id_role(text) is None:
        numbered = _NUMBERED.match(text)
        if numbered and cells.lexicon.vocabulary.point(numbered["point"]) is not None:
            return {"point": numbered["point"], "sample_id": numbered["number"]}
        return {"point": text}
    words, day = re.split(r"(?=\d)|$", text, maxsplit=1)
    over = cells.lexicon.column(words.strip())
    if over is not None and over.role is R.VALUE and cells.lexicon.kind(day) & Kind.DATE:
        return {"date_collected": day}  # "This sample 20 May 2026"
    return {"sample_id": text}


def layout_by_word(cells: Cells, head: Head) -> ColumnRole | None:
    """The role of a column of limits, averages … that a single word of its heading tells ("Local guideline")."""
    return min((role for role in _word_roles(cells, head) if role in LAYOUT), default=None)


def _word_roles(cells: Cells, head: Head) -> set[ColumnRole]:
    """Roles of the single words of a heading."""
    words: set[str] = set()
    for text in (*head.own, head.group):
        parts = [part for part in re.split(r"[\s/,()_.:-]+", text) if part]
        words |= {" ".join(parts[i : i + size]) for size in (1, 2, 3) for i in range(len(parts) - size + 1)} | {text}
    return {found.role for word in words if word and (found := cells.lexicon.column(word)) is not None}


def _without_statistics(cells: Cells, shape: Shape, heads: dict[int, Head], free: list[int]) -> list[int]:
    """Columns that no word of their heading calls an average, a deviation, a limit …"""
    kept, alike = [], [heads[column] for column in free if column in heads]
    for column in free:
        roles = _word_roles(cells, heads[column]) if column in heads else set()
        vocabulary = cells.lexicon.vocabulary
        label = _sample_label(heads[column]) if column in heads else ""
        if label and R.PERCENT_RECOVERY not in roles and (vocabulary.point(label) or vocabulary.id_role(label)):
            roles = set()  # "Flushed 5 min": minutes, not a minimum
        odd = sorted(role for role in roles if role in LAYOUT or role is R.PERCENT_RECOVERY)
        if odd == [R.ADMINISTRATIVE] and _one_of_many(heads[column], alike):
            odd = []  # one of many alike: the word is part of the sample's name over it
        if odd:
            shape.layout[column] = LAYOUT.get(odd[0], LayoutKind.ADMINISTRATIVE)
            shape.took(heads[column], str(odd[0]), "a word of its heading")
        else:
            kept.append(column)
    return kept


def _one_of_many(head: Head, others: list[Head]) -> bool:
    """Whether a column's own heading stands under several groups, as FA and RA under the name of every sample."""
    groups = {other.group for other in others if other.own[-1:] == head.own[-1:]}
    return bool(head.own and head.group) and len(groups) >= _ALIKE


def _names_sample(cells: Cells, head: Head) -> bool:
    """Whether a heading that is no header word names a sample: it holds a number or a date, or a point of sampling."""
    text = _sample_label(head)
    vocabulary = cells.lexicon.vocabulary
    if text and (vocabulary.point(text) is not None or vocabulary.id_role(text) is not None):
        return True
    lettered = re.fullmatch(r"(\w{2,})[ _-][A-Z]", text)
    if lettered and (word := cells.lexicon.column(lettered[1])) is not None and word.role in (
        R.SAMPLE_ID, R.SITE, R.LABORATORY
    ):  # fmt: skip
        return True  # "Well A", "Lab B"
    return any(letter.isdigit() for letter in text) and not _word_roles(cells, head) & _NOT_SAMPLES


def _are_samples(cells: Cells, heads: list[Head], replicates: set[int]) -> bool:
    """Whether headings name samples: most do and none is known as anything else, or a group heading says so."""
    if any(_BOUND.search(head.text) for head in heads):
        return False  # "TT = 0.3 NTU" over a column of limits: no sample is called so
    grouped_heads = [head for head in heads if head.group]
    repeated = _repeated_under_groups(grouped_heads)
    if len(heads) > 1 and all(_LETTER.match(head.text) for head in heads):
        return True  # A, B, C
    named = [_names_sample(cells, head) or (repeated and bool(head.group)) for head in heads]
    if any(named) and sum(named) * 2 >= len(named):
        return not any(
            _word_roles(cells, head) & _NOT_SAMPLES
            for head, known in zip(heads, named, strict=True)
            if not known and head.column not in replicates and not _one_of_many(head, heads)
        )
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
    labels = {}
    for column in said:
        meaning = heads[column].meaning
        labels[column] = (
            heads[column].group or _over(cells, heads[column]),
            _text(meaning.fraction) if meaning else "",
        )
    if len(set(labels.values())) == len(said):
        return said  # columns of several samples, or of several fractions
    rows = range(body, min(body + 200, cells.height))
    full = {column: sum(1 for row in rows if cells.text(row, column)) for column in said}
    best = max(said, key=lambda column: (full[column], -column))
    for column in said:
        if column == best:
            continue
        same = sum(1 for row in rows if (text := cells.text(row, column)) and text == cells.text(row, best))
        if same * 2 < full[column] and cells.height <= SMALL:
            shape.ambiguous.append(column)
            shape.took(heads[column], "ambiguous", "a second column of results")
            continue
        shape.layout[column] = LayoutKind.REPEATED
        shape.took(heads[column], "other_value", "repeats the results of another column")
    return [best]
