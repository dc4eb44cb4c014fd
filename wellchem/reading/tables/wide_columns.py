"""Columns of a wide table: which is which analyte's, which stand beside them, and which speak of the sample."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Censoring, LayoutKind
from wellchem.reading.rows import HEAD_FIELDS, TakenColumn
from wellchem.reading.tables.cells import Cells, Kind, Lexicon
from wellchem.reading.tables.headers import Head, Header, coded_heading
from wellchem.reading.tables.samples import OTHER_ID, OTHER_TYPE
from wellchem.reading.tables.shape import BESIDE, LAYOUT
from wellchem.vocabulary import ColumnRole, Companion, NameMeaning

_SPLIT = re.compile(r"[\s._\-–(/:]+|(?<=[a-z])(?=[A-Z])")
_COMPANIONS = {
    Companion.UNCERTAINTY: ColumnRole.UNCERTAINTY,
    Companion.DETECTION_LIMIT: ColumnRole.DETECTION_LIMIT,
    Companion.REPORTING_LIMIT: ColumnRole.REPORTING_LIMIT,
    Companion.QUALIFIER: ColumnRole.REMARK,
    Companion.UNIT: ColumnRole.UNIT,
    Companion.METHOD: ColumnRole.METHOD,
}
_IDENTITY = {ColumnRole(name): name for name in HEAD_FIELDS if name in ColumnRole._value2member_map_} | {
    ColumnRole.ACTIVITY_TYPE: "sample_type"
}


@dataclass
class Analyte:
    """One analyte's column, the columns beside it, and what its heading prints."""

    column: int
    name: str
    unit: str = ""
    fraction: str = ""
    code_list: str = ""
    beside: dict[str, int] = field(default_factory=dict)


@dataclass
class Wide:
    """Columns of a wide table by what they hold."""

    analytes: list[Analyte] = field(default_factory=list)
    identity: dict[str, int] = field(default_factory=dict)
    shared: dict[str, int] = field(default_factory=dict)
    layout: dict[int, LayoutKind] = field(default_factory=dict)
    pending: list[tuple[int, str, str]] = field(default_factory=list)
    taken: dict[int, TakenColumn] = field(default_factory=dict)
    beneath: dict[str, NDArray[np.int32]] = field(default_factory=dict)  # rows under each that speak of its results


def wide_columns(cells: Cells, header: Header) -> Wide:
    """Which column is which analyte's, which stand beside them, and which speak of the sample."""
    wide = Wide()
    lexicon = cells.lexicon
    body = header.last + 1
    latest: Analyte | None = None
    for index in range(cells.width):
        head = header.heads.get(index) or Head(index, "", (), "", None)
        analyte = _analyte(lexicon, head)
        if analyte is not None:
            if head.role in BESIDE and head.group:
                wide.pending.append((index, analyte.name, BESIDE[head.role]))
                wide.taken[index] = TakenColumn(index, head.text, BESIDE[head.role], f"beside {analyte.name}")
                continue
            latest = analyte
            wide.analytes.append(analyte)
            wide.taken[index] = TakenColumn(index, head.text, "value", f"results of {analyte.name}")
            continue
        partner = _companion(lexicon, head)
        if partner is not None and partner[1] in BESIDE:
            owner, role = partner
            wide.taken[index] = TakenColumn(index, head.text, BESIDE[role], f"beside {owner}")
            wide.pending.append((index, owner, BESIDE[role]))
            continue
        if partner is not None:
            wide.layout[index] = LAYOUT.get(partner[1], LayoutKind.ADMINISTRATIVE)
            wide.taken[index] = TakenColumn(index, head.text, "other_value", f"other words on {partner[0]}")
            continue
        latest = _other(cells, wide, head, latest, body)
    _settle(lexicon, wide)
    _one_of_two(cells, wide, header, body)
    again = [
        index for index, head in header.heads.items() if head.role is ColumnRole.SAMPLE_ID and index in wide.layout
    ]
    if again:  # the number of the laboratory and the name of the field
        name = OTHER_ID if "site" in wide.identity else "site"
        wide.identity[name] = again[0]
        del wide.layout[again[0]]
        wide.taken[again[0]] = TakenColumn(again[0], header.heads[again[0]].text, name, "a second name of each sample")
    if not any(name in wide.identity for name in ("sample_id", "site")):
        _first_text_is_sample(cells, wide, body)
    return wide


def _analyte(lexicon: Lexicon, head: Head) -> Analyte | None:
    """The analyte that a heading names, with the unit and fraction that it prints."""
    if not head.text and not head.group:
        return None
    if (code := coded_heading(lexicon, head.text)) and code[0] != "r":
        return Analyte(head.column, code[1], code_list="nwis")
    if head.meaning is not None and not head.group and head.role is not ColumnRole.VALUE:
        return None
    whole = head.text if not head.group or head.role in (None, ColumnRole.VALUE) else head.group
    if (parts := _name_in_parts(lexicon, head)) is not None:
        return parts
    for name in dict.fromkeys((whole, *head.own, head.group, f"{head.group} {head.text}".strip())):
        if name and lexicon.is_name(name):
            made = Analyte(head.column, name)
            for part in (*head.own[1:], head.group) if name == head.text else (*head.own, head.group):
                if part and part != name:
                    if not made.unit and lexicon.kind(part) & Kind.UNIT:
                        made.unit = part
                    elif (phrase := lexicon.phrase(part)) is not None and phrase.fraction:
                        made.fraction = part
            if head.meaning is not None and head.meaning.unit_text and not made.unit:
                made.unit = head.meaning.unit_text
            return made
    return None


def _name_in_parts(lexicon: Lexicon, head: Head) -> Analyte | None:
    """An analyte whose heading gives name, fraction and unit in rows of their own."""
    parts = [part for part in (head.group, *head.own) if part]
    named = [part for part in dict.fromkeys(parts) if lexicon.is_name(part)]
    if len(named) != 1 or len(set(parts)) < 2:
        return None
    made = Analyte(head.column, named[0])
    for part in parts:
        phrase = lexicon.phrase(part)
        if part == named[0]:
            continue
        if lexicon.kind(part) & Kind.UNIT and not made.unit:
            made.unit = part
        elif phrase is not None and phrase.fraction and not made.fraction:
            made.fraction = part
        else:
            return None
    return made


def _companion(lexicon: Lexicon, head: Head) -> tuple[str, ColumnRole] | None:
    """An analyte's name and a header word in one heading ("Calcium.rmk", "Iron MDL"): the name and the word's role."""
    text = head.text
    if code := coded_heading(lexicon, text):
        return code[1], ColumnRole.REMARK
    whole = lexicon.vocabulary.name(text) if text else None
    if whole is not None and whole.companion is not None:
        return text, _COMPANIONS[whole.companion]
    for place in reversed(list(_SPLIT.finditer(text))):
        left, right = text[: place.start()].strip(), text[place.end() :].strip(" )")
        for name, word in ((left, right), (right, left)):
            if name and word and lexicon.is_name(name):
                found = lexicon.column(word)
                if found is not None:
                    return name, found.role
    return None


def _settle(lexicon: Lexicon, wide: Wide) -> None:
    """Give the columns beside an analyte to the nearest column of its results."""
    for index, owner, role in wide.pending:
        meaning = lexicon.vocabulary.name(owner)
        nearest = min(
            (
                analyte
                for analyte in wide.analytes
                if role not in analyte.beside and _same(lexicon, analyte, owner, meaning)
            ),
            key=lambda analyte: abs(analyte.column - index),
            default=None,
        )
        if nearest is not None:
            nearest.beside[role] = index
        else:
            wide.layout[index] = LayoutKind.ADMINISTRATIVE


def _one_of_two(cells: Cells, wide: Wide, header: Header, body: int) -> None:
    """Of two columns that repeat each other ("lead", "leadRaw") one is read: that which prints what is not detected.

    A number beside "<LOD" in the other column is put in its place (a half of it, say) and was never measured.
    """
    named = {analyte.name.casefold(): analyte for analyte in wide.analytes if cells.lexicon.is_name(analyte.name)}
    for other in [one for one in wide.analytes if not cells.lexicon.is_name(one.name)]:
        words = _SPLIT.split(header.heads[other.column].text)
        own = next((named[word.casefold()] for word in words if word.casefold() in named and len(words) == 2), None)
        if own is None or not _repeat(cells, own.column, other.column, body):
            continue
        kept, left = (other, own) if _censored(cells, other, body) > _censored(cells, own, body) else (own, other)
        wide.analytes.remove(other)
        wide.taken[kept.column] = replace(wide.taken[kept.column], role="value", why=f"results of {own.name}")
        wide.taken[left.column] = replace(
            wide.taken[left.column], role="other_value", why="repeats the results of another column"
        )
        wide.layout[left.column] = LayoutKind.REPEATED
        own.column = kept.column


def _repeat(cells: Cells, one: int, other: int, body: int) -> bool:
    """Whether two columns hold the same in most rows that have something in both."""
    texts = [(cells.text(row, one), cells.text(row, other)) for row in range(body, min(body + 500, cells.height))]
    both = [pair for pair in texts if all(pair)]
    return len(both) > 1 and sum(first == second for first, second in both) * 2 > len(both)


def _censored(cells: Cells, analyte: Analyte, body: int) -> int:
    """How many of a column's cells say that something was not detected."""
    column = cells.grid.columns[analyte.column]
    found = [cells.lexicon.vocabulary.value(str(text)) for text in column.texts]
    left = np.array([one is not None and one.censoring is Censoring.LEFT for one in found] + [False])
    return int(left[column.codes[body:]].sum())


def _same(lexicon: Lexicon, analyte: Analyte, owner: str, meaning: NameMeaning | None) -> bool:
    """Whether a heading speaks of the analyte of this column."""
    if analyte.name.casefold() == owner.casefold():
        return True
    mine = lexicon.vocabulary.name(analyte.name)
    return None not in (mine, meaning) and (mine.analyte, mine.fraction) == (meaning.analyte, meaning.fraction)  # type: ignore[union-attr]


def _other(cells: Cells, wide: Wide, head: Head, latest: Analyte | None, body: int) -> Analyte | None:
    """A column that is no analyte's: of the sample, of the analyte to its left, of all, or of layout."""
    index, role = head.column, head.role
    if role in _IDENTITY:
        name = _IDENTITY[role]
        if name == "sample_type" and name in wide.identity and OTHER_TYPE not in wide.identity:
            wide.identity[OTHER_TYPE] = index
            wide.taken[index] = TakenColumn(index, head.text, name, "a second kind of sample")
        elif name in wide.identity:
            wide.layout[index] = LayoutKind.ADMINISTRATIVE
            wide.taken[index] = TakenColumn(index, head.text, "administrative", f"a second column of {name}")
        else:
            wide.identity[name] = index
            wide.taken[index] = TakenColumn(index, head.text, name, "header words")
        return latest
    if role in BESIDE:
        name = BESIDE[role]
        if latest is not None and name not in latest.beside and index == latest.column + len(latest.beside) + 1:
            latest.beside[name] = index
            wide.taken[index] = TakenColumn(index, head.text, name, f"beside {latest.name}")
        elif name in ("unit", "fraction", "method", "measured", "basis") and name not in wide.shared:
            wide.shared[name] = index
            wide.taken[index] = TakenColumn(index, head.text, name, "holds for the whole row")
        else:
            wide.layout[index] = LayoutKind.ADMINISTRATIVE
            wide.taken[index] = TakenColumn(index, head.text, "unassigned", "beside no analyte")
        return latest
    if role is not None:
        wide.layout[index] = LAYOUT.get(role, LayoutKind.ADMINISTRATIVE)
        wide.taken[index] = TakenColumn(index, head.text, str(role), "header words")
        return latest
    if head.text and _numeric(cells, index, body):
        wide.analytes.append(Analyte(index, head.own[0], unit=_unit_part(cells.lexicon, head)))
        wide.taken[index] = TakenColumn(index, head.text, "value", "values under an unknown name")
        return wide.analytes[-1]
    wide.layout[index] = LayoutKind.ADMINISTRATIVE
    wide.taken[index] = TakenColumn(index, head.text, "unassigned", "no known header word")
    return latest


def _unit_part(lexicon: Lexicon, head: Head) -> str:
    return next((part for part in (*head.own[1:], head.group) if lexicon.kind(part) & Kind.UNIT), "")


def _numeric(cells: Cells, index: int, body: int) -> bool:
    values = filled = 0
    for row in range(body, min(body + 60, cells.height)):
        if text := cells.text(row, index):
            filled += 1
            values += bool(cells.lexicon.kind(text) & Kind.VALUE)
    return values * 2 > filled


def _first_text_is_sample(cells: Cells, wide: Wide, body: int) -> None:
    """Without a column that names the sample, the first column of differing words does."""
    first = min((analyte.column for analyte in wide.analytes), default=0)
    for index in range(first):
        if wide.layout.get(index) is not LayoutKind.ADMINISTRATIVE or wide.taken[index].role != "unassigned":
            continue
        texts = [text for row in range(body, min(body + 200, cells.height)) if (text := cells.text(row, index))]
        if texts and len(set(texts)) * 2 > len(texts):
            del wide.layout[index]
            wide.identity["sample_id"] = index
            wide.taken[index] = TakenColumn(
                index, wide.taken[index].header, "sample_id", "the first column of differing words"
            )
            return


def united(parts: list[Wide]) -> Wide:
    """All columns of the visits of a table, for what concerns whole rows."""
    made = Wide()
    for part in parts:
        made.analytes += part.analytes
        made.identity.update({name: index for name, index in part.identity.items() if name not in made.identity})
        made.layout.update(part.layout)
        made.taken.update(part.taken)
    return made
