"""Tables with analytes as columns: a sample a row, with remark, limit and unit columns beside the analytes'."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind
from wellchem.reading.rows import HEAD_FIELDS, Table, TakenColumn, column, constant
from wellchem.reading.tables.cells import Cells, Kind, Lexicon
from wellchem.reading.tables.headers import Head, Header, coded_heading, header_at
from wellchem.reading.tables.limits import limit_role
from wellchem.reading.tables.shapes import BESIDE, LAYOUT
from wellchem.reading.tables.visits import visits
from wellchem.vocabulary import ColumnRole, Companion, NameMeaning

if TYPE_CHECKING:
    from wellchem.reading.tables.reader import Reader

_SPLIT = re.compile(r"[\s._\-–(/:]+|(?<=[a-z])(?=[A-Z])")
_MISSING = {"na", "n/a", "nan", "null", "none", "#n/a", "."}  # what programs write for a cell that has nothing
_COMPANIONS = {
    Companion.UNCERTAINTY: ColumnRole.UNCERTAINTY,
    Companion.DETECTION_LIMIT: ColumnRole.DETECTION_LIMIT,
    Companion.REPORTING_LIMIT: ColumnRole.REPORTING_LIMIT,
    Companion.QUALIFIER: ColumnRole.REMARK,
    Companion.UNIT: ColumnRole.UNIT,
    Companion.METHOD: ColumnRole.METHOD,
}
_ROWS_OF = {ColumnRole.REPORTING_LIMIT: "reporting_limit", ColumnRole.DETECTION_LIMIT: "detection_limit"}
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


def take(reader: Reader, grid: int, cells: Cells, header: Header) -> int:
    """Read the table under a header of analytes; the first row after it."""
    parts = [_columns(cells, part) for part in visits(cells.lexicon, header)]
    wide = parts[0] if len(parts) == 1 else _united(parts)
    reader.header_rows(grid, cells, range(header.first, header.last + 1))
    start = header.last + 1
    fits = _fits(cells, wide, header, start)
    limits: dict[str, int] = {}
    odd_rows = [int(row) for row in np.flatnonzero(~fits[start:]) + start]
    for row in _labelled(cells, wide, start, fits):
        role = _row_role(cells, row, wide)
        if role in _ROWS_OF:
            limits.setdefault(_ROWS_OF[role], row)
        kind = LayoutKind.HEADER if role in _ROWS_OF else LAYOUT.get(role, LayoutKind.ADMINISTRATIVE)
        fits[row] = False
        reader.layout_row(grid, row, kind)
    end = cells.height
    blocks: list[tuple[int, int]] = []
    segment = start
    for row in odd_rows:
        if row < segment:
            continue
        if segment < row:
            blocks.append((segment, row))
        if all(cell.text == cells.text(header.first, cell.column) for cell in cells.line(row)):
            segment = row + header.last - header.first + 1
            for again in range(row, min(segment, cells.height)):
                reader.layout_row(grid, again, LayoutKind.HEADER)
            continue
        if header_at(cells, row) is not None:
            end = row
            segment = row
            break
        _emit(reader, grid, cells, parts, blocks, fits, limits)
        blocks = []
        reader.between(grid, cells, row, [analyte.column for analyte in wide.analytes])
        segment = row + 1
    if segment < end:
        blocks.append((segment, end))
    _emit(reader, grid, cells, parts, blocks, fits, limits)
    reader.heard.clear()
    reader.tables.append(Table(grid, header.first, end - 1, "a row per sample", tuple(wide.taken.values())))
    return end


def _columns(cells: Cells, header: Header) -> Wide:
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
        if name in wide.identity:
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
    return next((part for part in head.own[1:] if lexicon.kind(part) & Kind.UNIT), "")


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


def _fits(cells: Cells, wide: Wide, header: Header, start: int) -> NDArray[np.bool_]:
    """Rows that are samples: something in an analyte's column that is no word of a header."""
    made = np.zeros(cells.height, bool)
    for analyte in wide.analytes:
        made |= cells.grid.columns[analyte.column].codes >= 0
    for analyte in wide.analytes[:3]:
        source = cells.grid.columns[analyte.column]
        if len(source.texts) > 20_000:
            continue
        kinds = cells.kinds(analyte.column)
        words = ((kinds & (Kind.NAME | Kind.HEADER)) > 0) & ((kinds & Kind.VALUE) == 0)
        made &= ~np.append(words, False)[source.codes]
    made[:start] = False
    return made


def _labelled(cells: Cells, wide: Wide, start: int, fits: NDArray[np.bool_]) -> list[int]:
    """Rows that a label says are no sample's: limits, averages, guideline values."""
    found: set[int] = set()
    places = sorted(
        {*wide.identity.values(), *wide.layout, *([0] if cells.width else [])} - {a.column for a in wide.analytes}
    )
    for index in places:
        source = cells.grid.columns[index]
        if len(source.texts) > 20_000:
            continue
        for code, text in enumerate(source.texts):
            if not str(text)[:1].isalpha():
                continue
            if _label_role(cells.lexicon, str(text)) is not None:
                rows = np.flatnonzero(source.codes[start:] == code) + start
                if len(rows) <= max(2, cells.height // 20):
                    found.update(int(row) for row in rows)
    for row in range(start, min(start + 3, cells.height)):
        others = fits[row + 1 :].any()  # the only row with values is a sample's
        if row not in found and fits[row] and others and _limits_by_content(cells, wide, row):
            found.add(row)
    return sorted(row for row in found if fits[row])


def _label_role(lexicon: Lexicon, text: str) -> ColumnRole | None:
    role = limit_role(lexicon, text)
    if role is not None:
        return role
    found = lexicon.column(text)
    if found is not None and found.role in (ColumnRole.LIMIT, ColumnRole.STATISTIC, ColumnRole.PREVIOUS):
        return found.role
    return None


def _limits_by_content(cells: Cells, wide: Wide, row: int) -> bool:
    """A row without a sample whose values all carry their unit: limits of detection."""
    if any(
        cells.text(row, index)
        for name, index in wide.identity.items()
        if name in ("sample_id", "site", "date_collected")
    ):
        return False
    texts = [text for analyte in wide.analytes if (text := cells.text(row, analyte.column))]
    with_unit = sum(1 for text in texts if _with_unit(cells.lexicon, text))
    return len(texts) > 1 and with_unit * 2 > len(texts)


def _with_unit(lexicon: Lexicon, text: str) -> bool:
    found = lexicon.vocabulary.value(text)
    return found is not None and bool(found.unit_text) and found.number is not None


def _row_role(cells: Cells, row: int, wide: Wide) -> ColumnRole:
    for cell in cells.line(row):
        if cell.column not in {analyte.column for analyte in wide.analytes}:
            role = _label_role(cells.lexicon, cell.text)
            if role is not None:
                return role
    return ColumnRole.DETECTION_LIMIT


def _united(parts: list[Wide]) -> Wide:
    """All columns of the visits of a table, for what concerns whole rows."""
    made = Wide()
    for part in parts:
        made.analytes += part.analytes
        made.identity.update({name: index for name, index in part.identity.items() if name not in made.identity})
        made.layout.update(part.layout)
        made.taken.update(part.taken)
    return made


def _emit(
    reader: Reader,
    grid: int,
    cells: Cells,
    parts: list[Wide],
    blocks: list[tuple[int, int]],
    fits: NDArray[np.bool_],
    limits: dict[str, int],
) -> None:
    """Printed rows of blocks of rows, an analyte after the other."""
    found = [np.flatnonzero(fits[first:last]) + first for first, last in blocks]
    rows = np.concatenate(found).astype(np.int32) if found else np.empty(0, np.int32)
    if len(rows):
        for part in parts:
            _emit_part(reader, grid, cells, part, rows, limits)


def _emit_part(
    reader: Reader, grid: int, cells: Cells, wide: Wide, rows: NDArray[np.int32], limits: dict[str, int]
) -> None:
    columns = cells.grid.columns
    identity = {name: column(columns[index], rows) for name, index in wide.identity.items()}
    sample = reader.samples_apart(identity, len(rows))
    shared = {name: column(columns[index], rows) for name, index in wide.shared.items()}
    fallback = np.full(len(rows), -1, np.int32)
    for analyte in wide.analytes:
        source = columns[analyte.column]
        keep = (source.codes >= 0)[rows]
        absent = np.append(
            np.fromiter((str(t).casefold() in _MISSING for t in source.texts), bool, len(source.texts)), False
        )
        gone = absent[source.codes[rows]]
        reader.ledger.layout(grid, rows[gone], [analyte.column], LayoutKind.ADMINISTRATIVE)
        keep &= ~gone
        for name in ("flag", "condition", "presence"):
            if name in analyte.beside:
                keep |= columns[analyte.beside[name]].codes[rows] >= 0
        if not keep.any():
            continue
        mine = rows[keep]
        texts = {"value": column(source, mine), "name": constant(analyte.name, len(mine))}
        for name, index in analyte.beside.items():
            texts[name] = column(columns[index], mine)
        for name, coded in shared.items():
            texts.setdefault(name, coded.take(keep))
        for name, text in (("unit", analyte.unit), ("fraction", analyte.fraction), ("code_list", analyte.code_list)):
            if text:
                texts[name] = (
                    texts[name].or_else(constant(text, len(mine))) if name in texts else constant(text, len(mine))
                )
        for name, row in limits.items():
            text = cells.text(row, analyte.column)
            if text and name not in texts:
                texts[name] = constant(text, len(mine))
        native = (
            np.zeros(len(mine), bool) if source.native is None else np.append(source.native, False)[source.codes[mine]]
        )
        numbers = reader.emit(grid, mine, analyte.column, texts, sample[keep], native=native)
        reader.ledger.link(grid, mine, [analyte.column, *analyte.beside.values()], numbers)
        fallback[keep] = np.where(fallback[keep] < 0, numbers, fallback[keep])
    reader.ledger.link(grid, rows[fallback >= 0], wide.shared.values(), fallback[fallback >= 0])
    for analyte in wide.analytes:  # remarks beside an empty value
        reader.ledger.layout(grid, rows, analyte.beside.values(), LayoutKind.ADMINISTRATIVE)
    reader.ledger.layout(grid, rows, wide.identity.values(), LayoutKind.SAMPLE_HEAD)
    for index, kind in wide.layout.items():
        reader.ledger.layout(grid, rows, [index], kind)
