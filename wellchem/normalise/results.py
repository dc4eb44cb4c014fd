"""Printed rows to results: canonical analyte, number and bounds, unit and form, and what was supposed; or the reason why not."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.models.codes import Role, UnreadReason
from wellchem.normalise.bounds import SUPPOSED, Bounded, Evidence, bounded
from wellchem.normalise.effects import Effect, Effects, Marks
from wellchem.normalise.combinations import grouped
from wellchem.normalise.heads import ROLES, Heads, heads_of
from wellchem.normalise.meanings import SIGNED, Meanings, meanings_of
from wellchem.normalise.numbers import NONE, NOT_REPORTED, Floats, Numbers, ambiguous, decimal_of, numbers_of
from wellchem.reading.rows import Coded, PrintedRows, of
from wellchem.reading.tables import Reading
from wellchem.vocabulary import Companion, Vocabulary

RESULT, QUALITY_CONTROL, UNREAD = range(3)
REASONS = tuple(UnreadReason)
_OK = -1
BESIDE = len(REASONS)  # no reason: the row became part of another row's result


@dataclass(frozen=True, eq=False)
class Normalised:
    """What became of every printed row: `outcome` is RESULT, QUALITY_CONTROL or UNREAD, and `reason` says why unread (-1
    for a result, BESIDE where the row was taken into another row's result).

    The other arrays are those of the results frame, one entry a printed row; they mean nothing where it is unread.
    """

    reading: Reading
    heads: Heads
    meanings: Meanings
    outcome: NDArray[np.int8]
    reason: NDArray[np.int8]
    detail: Coded
    role: NDArray[np.int8]
    bounds: Bounded
    uncertainty: Floats
    reporting: Floats
    detection: Floats
    qualifiers: Coded
    assumptions: Coded
    printed_unit: Coded
    decimals: dict[int, str | None]


def normalised(reading: Reading, vocabulary: Vocabulary) -> Normalised:
    """Every printed row of a reading, understood."""
    rows = reading.rows
    decimals, supposed_decimal = _decimals(reading, vocabulary)
    numbers, which = _numbers(vocabulary, rows, decimals)
    unit = _units(rows, numbers, which)
    meanings = meanings_of(vocabulary, rows.name, rows.code_list, unit, rows.fraction, rows.basis, rows.measured)
    factor = meanings.floats(lambda one: one.unit.factor)
    offset = meanings.floats(lambda one: one.unit.offset)
    limits = _Limits(vocabulary, rows, meanings, decimals)
    reporting = limits.read(rows.reporting_limit, rows.reporting_unit)
    detection = limits.read(rows.detection_limit, rows.detection_unit)
    spread = limits.plain(rows.uncertainty) * factor
    marks = _marks(vocabulary, reading, numbers, which)
    uncertainty = np.where(np.isnan(numbers.uncertainty[which]), spread, numbers.uncertainty[which] * factor)
    number = numbers.number[which]
    stated = np.isnan(number) & ~np.isnan(marks.number)  # the bound stands in the condition's cell
    number = np.where(stated, marks.number, number)
    censoring = np.where(stated, NONE, numbers.censoring[which]).astype(np.int8)
    low, high = np.where(stated, number, numbers.low[which]), np.where(stated, number, numbers.high[which])
    zero = (number == 0) & (low == 0)
    evidence = Evidence(
        number * factor + offset,
        censoring,
        np.where(zero | (low != 0), low * factor + offset, 0.0),
        high * factor + offset,
        uncertainty,
        numbers.bound[which],
        marks.effect,
        reporting,
        detection,
        meanings.flags(lambda one: one.quantity == "count"),
        meanings.flags(lambda one: one.quantity == "activity"),
        meanings.flags(lambda one: one.quantity in SIGNED),
        meanings.flags(lambda one: one.unit.unit == "1/(100 mL)" and (one.unit.per_volume_ml or 100.0) >= 100.0),
    )
    bounds = bounded(evidence)
    heads = heads_of(vocabulary, reading.heads, any(sign == "," for sign in decimals.values()))
    role = _roles(rows, heads)
    reason, detail = _reasons(rows, heads, meanings, numbers, which, marks.effect, bounds, evidence)
    uncertainty, reporting, detection, reason, partner = _companions(
        meanings, rows, reason, evidence, uncertainty, reporting, detection
    )
    outcome = np.where(
        reason != _OK, UNREAD, np.where(role == ROLES.index(Role.ROUTINE), RESULT, QUALITY_CONTROL)
    ).astype(np.int8)
    beside = partner >= 0
    outcome[beside] = outcome[partner[beside]]
    assumptions = _assumptions(rows, heads, meanings, marks, bounds, numbers, which, supposed_decimal)
    return Normalised(
        reading, heads, meanings, outcome, reason.astype(np.int8), detail, role, bounds, uncertainty, reporting, detection,
        marks.codes, assumptions, unit, decimals,
    )  # fmt: skip


def _decimals(reading: Reading, vocabulary: Vocabulary) -> tuple[dict[int, str | None], NDArray[np.bool_]]:
    """The decimal sign of each table, and the rows for whose number it had to be supposed."""
    rows = reading.rows
    printed = ~rows.native & (rows.value.codes >= 0)
    tables = np.unique(rows.table)
    found: dict[int, str | None] = {}
    unsure: list[int] = []
    for table in tables:
        mine = rows.value.codes[printed & (rows.table == table)] if len(tables) > 1 else rows.value.codes[printed]
        used = np.unique(mine) if len(tables) > 1 else np.arange(len(rows.value.texts))
        sign, supposed = decimal_of(vocabulary, [str(rows.value.texts[code]) for code in used], None)
        found[int(table)] = sign
        if supposed:
            unsure.append(int(table))
    sure = {sign for table, sign in found.items() if table not in unsure and sign and _has_sign(reading, table)}
    usual = sure.pop() if len(sure) == 1 else "," if reading.source.delimiter == ";" else "."
    for table in unsure:
        found[table] = usual
    flagged = np.zeros(len(rows), bool)
    if unsure:
        odd = np.array([ambiguous(str(text)) for text in rows.value.texts] + [False])
        flagged = odd[rows.value.codes] & np.isin(rows.table, unsure) & printed
    return found, flagged


def _has_sign(reading: Reading, table: int) -> bool:
    rows = reading.rows
    used = np.unique(rows.value.codes[(rows.table == table) & (rows.value.codes >= 0)])
    return any("." in text or "," in text for text in (str(rows.value.texts[code]) for code in used[:500]))


def _numbers(
    vocabulary: Vocabulary, rows: PrintedRows, decimals: dict[int, str | None]
) -> tuple[Numbers, NDArray[np.int64]]:
    """Meanings of the distinct values and which of them each row has; an empty cell is the last one.

    One text means one thing for each decimal sign and, for the letters P and A, for each kind of row.
    """
    values = rows.value.or_else(rows.presence)
    texts = values.texts
    signs = sorted({sign or "" for sign in decimals.values()} | {"."})
    if len(signs) == 1:
        numbers = _with_empty(numbers_of(vocabulary, texts, ".", presence=False))
        which = np.where(values.codes >= 0, values.codes, len(texts)).astype(np.int64)
    else:
        parts = [numbers_of(vocabulary, texts, sign or None, presence=False) for sign in signs]
        numbers = _with_empty(_stacked(parts))
        sign_of = {table: signs.index(sign or "") for table, sign in decimals.items()}
        block = np.array([sign_of.get(table, 0) for table in range(max(sign_of, default=0) + 1)] or [0])[rows.table]
        block = np.where(rows.native, signs.index("."), block)
        which = np.where(values.codes >= 0, values.codes + block * len(texts), len(texts) * len(signs)).astype(np.int64)
    letters = {
        code for code, text in enumerate(texts) if str(text).strip().upper() in ("P", "A", "+", "-", "POS", "NEG")
    }
    if letters:
        special = numbers_of(vocabulary, texts[sorted(letters)], ".", presence=True)
        base = len(numbers.number)
        numbers = _stacked([numbers, special])
        places = {code: base + place for place, code in enumerate(sorted(letters))}
        counted = _presence_rows(vocabulary, rows)
        for code, place in places.items():
            which[(values.codes == code) & counted] = place
    return numbers, which


def _presence_rows(vocabulary: Vocabulary, rows: PrintedRows) -> NDArray[np.bool_]:
    """Rows of organisms, where a letter can mean present or absent."""
    counted = np.zeros(len(rows.name.texts) + 1, bool)
    for code, text in enumerate(rows.name.texts):
        found = vocabulary.name(str(text))
        counted[code] = found is not None and vocabulary.analytes[found.analyte].quantity == "count"
    return counted[rows.name.codes]


def _stacked(parts: list[Numbers]) -> Numbers:
    return Numbers(*(np.concatenate([getattr(part, name) for part in parts]) for name in Numbers.__dataclass_fields__))


def _with_empty(numbers: Numbers) -> Numbers:
    """The same, with a last entry for an empty cell."""
    nothing = np.array([np.nan])
    empty = Numbers(
        np.array([False]), nothing, np.array([NOT_REPORTED], np.int8), nothing, nothing, nothing, np.zeros(1, np.int8),
        *(np.array([""], object) for _ in range(3)),
    )  # fmt: skip
    return _stacked([numbers, empty])


def _units(rows: PrintedRows, numbers: Numbers, which: NDArray[np.int64]) -> Coded:
    """The printed unit of each row: the one in the value's own cell before that of the column, header or note."""
    if not any(numbers.unit):
        return rows.unit
    inside = of([str(text) for text in numbers.unit])
    return inside.take(which).or_else(rows.unit)


@dataclass(frozen=True, eq=False)
class _Limits:
    """Reads limits of detection and reporting into canonical units."""

    vocabulary: Vocabulary
    rows: PrintedRows
    meanings: Meanings
    decimals: dict[int, str | None]

    def read(self, texts: Coded, units: Coded) -> Floats:
        """Numbers of the limits, NaN where none is printed or its unit is not understood."""
        count = len(texts)
        if not (texts.codes >= 0).any():
            return np.full(count, np.nan)
        numbers = self._numbers(texts)
        unit = _inside(numbers, texts).or_else(units)
        own = self._limit_factor(unit)
        number = np.append(numbers.number, np.nan)[texts.codes]
        return number * own[0] + own[1]

    def plain(self, texts: Coded) -> Floats:
        """Numbers without a unit of their own."""
        if not (texts.codes >= 0).any():
            return np.full(len(texts), np.nan)
        return np.abs(np.append(self._numbers(texts).number, np.nan)[texts.codes])

    def _numbers(self, texts: Coded) -> Numbers:
        signs = {sign for sign in self.decimals.values()}
        decimal = signs.pop() if len(signs) == 1 else None
        if decimal == ".":
            decimal = decimal_of(self.vocabulary, [str(text) for text in texts.texts], ".")[0]
        return numbers_of(self.vocabulary, texts.texts, decimal, presence=False)

    def _limit_factor(self, unit: Coded) -> tuple[Floats, Floats]:
        factor = self.meanings.floats(lambda one: one.unit.factor)
        offset = self.meanings.floats(lambda one: one.unit.offset)
        has = unit.codes >= 0
        if not has.any():
            return factor, offset
        pair = self.meanings.group * (len(unit.texts) + 1) + unit.codes + 1
        group, uniques = pd.factorize(pair)
        factors, offsets = np.empty(len(uniques)), np.empty(len(uniques))
        for place, key in enumerate(uniques):
            meaning = self.meanings.each[int(key) // (len(unit.texts) + 1)]
            code = int(key) % (len(unit.texts) + 1) - 1
            found = meaning.unit
            if code >= 0 and meaning.name is not None:
                found = self.vocabulary.unit(str(unit.texts[code]), meaning.analyte, meaning.name)
            broken = found.problem is not None
            factors[place], offsets[place] = (np.nan, np.nan) if broken else (found.factor, found.offset)
        return factors[group], offsets[group]


def _inside(numbers: Numbers, texts: Coded) -> Coded:
    inside = of([str(text) for text in numbers.unit])
    return Coded(np.append(inside.codes, -1)[texts.codes].astype(np.int32), inside.texts)


@dataclass(frozen=True, eq=False)
class _RowMarks:
    effect: NDArray[np.int32]
    codes: Coded
    assumptions: Coded
    number: Floats


def _marks(vocabulary: Vocabulary, reading: Reading, numbers: Numbers, which: NDArray[np.int64]) -> _RowMarks:
    """Effects of everything that stands beside the values, each distinct combination once."""
    rows = reading.rows
    marks = Marks(vocabulary, reading.legend)
    inside = of([str(text) for text in numbers.qualifiers]).take(which)
    note = of([str(text) if text in ("confluent", "invalid") else "" for text in numbers.note]).take(which)
    group, firsts = grouped(inside, note, rows.qualifier, rows.remark, rows.flag, rows.condition)
    found: list[Effects] = []
    for row in firsts:
        parts = [marks.qualifier(code) for code in inside[row].split(";") if code]
        parts += [marks.qualifier(text) for text in (rows.qualifier[row], rows.remark[row]) if text]
        parts += [marks.flag(rows.flag[row])] if rows.flag[row] else []
        parts += [marks.condition(rows.condition[row])] if rows.condition[row] else []
        parts += [Effects(codes=("CG",))] if note[row] else []
        effect = Effect.NOTHING
        for part in parts:
            effect |= part.effect
        number = next((part.number for part in parts if part.number is not None), None)
        codes = tuple(sorted({code for part in parts for code in part.codes}))
        found.append(Effects(effect, codes, tuple(a for part in parts for a in part.assumptions), number))
    return _RowMarks(
        np.array([int(one.effect) for one in found], np.int32)[group] if found else np.zeros(len(rows), np.int32),
        of([";".join(one.codes) for one in found]).take(group),
        of([";".join(dict.fromkeys(one.assumptions)) for one in found]).take(group),
        np.array([np.nan if one.number is None else one.number for one in found], np.float64)[group],
    )


def _roles(rows: PrintedRows, heads: Heads) -> NDArray[np.int8]:
    """Role of each row: of its section or table, else of its sample."""
    routine = ROLES.index(Role.ROUTINE)
    role = heads.role[rows.sample]
    if (rows.quality_control.codes >= 0).any():
        said = np.array(
            [ROLES.index(Role(str(text))) if str(text) else routine for text in rows.quality_control.texts] + [routine],
            np.int8,
        )
        role = np.where(role == routine, said[rows.quality_control.codes], role).astype(np.int8)
    return role


def _reasons(
    rows: PrintedRows,
    heads: Heads,
    meanings: Meanings,
    numbers: Numbers,
    which: NDArray[np.int64],
    effect: NDArray[np.int32],
    bounds: Bounded,
    evidence: Evidence,
) -> tuple[NDArray[np.int64], Coded]:
    """Why a row is no result, -1 where it is one; the first reason stands."""
    count = len(rows)
    reason = np.full(count, _OK, np.int64)

    def because(why: UnreadReason, mask: NDArray[np.bool_]) -> None:
        reason[mask & (reason == _OK)] = REASONS.index(why)

    because(UnreadReason.NOT_WATER, ~heads.water[rows.sample])
    named = np.array([REASONS.index(one.problem) if one.problem else _OK for one in meanings.each], np.int64)
    nameless = np.array(
        [one.problem in (UnreadReason.UNKNOWN_NAME, UnreadReason.NO_NAME) or not one.analyte for one in meanings.each],
        bool,
    )
    first = nameless[meanings.group] & (reason == _OK)
    reason[first] = named[meanings.group][first]
    because(UnreadReason.STATISTIC, _statistics(rows, numbers, which))
    stated = (
        effect
        & int(
            Effect.NOT_DETECTED
            | Effect.LESS_THAN
            | Effect.BETWEEN_LIMITS
            | Effect.PRESENT
            | Effect.ABSENT
            | Effect.TOO_NUMEROUS
        )
    ) != 0
    empty = (rows.value.codes < 0) & (rows.presence.codes < 0)
    note = numbers.note[which]
    blank = empty | ((note == "blank") & (evidence.censoring == NOT_REPORTED))
    told = (effect & int(Effect.NOT_REPORTED | Effect.REJECTED)) != 0
    because(UnreadReason.NO_VALUE, blank & ~stated & ~told)
    because(UnreadReason.UNREADABLE_VALUE, ~empty & ~numbers.readable[which])
    because(UnreadReason.UNREADABLE_VALUE, note == "ambiguous_decimal")
    again = (reason == _OK) & (named[meanings.group] != _OK)
    valued = again & (bounds.censoring != NOT_REPORTED)
    reason[valued] = named[meanings.group][valued]
    least = meanings.floats(lambda one: one.possible[0])
    most = meanings.floats(lambda one: one.possible[1])
    because(UnreadReason.IMPOSSIBLE_VALUE, (evidence.number < least - 1e-9) | (evidence.number > most + 1e-9))
    details = of([one.detail for one in meanings.each]).take(meanings.group)
    return reason, details


def _statistics(rows: PrintedRows, numbers: Numbers, which: NDArray[np.int64]) -> NDArray[np.bool_]:
    """Ranges, and rows whose statistic's cell says that the number is an average, a maximum …"""
    mask = np.asarray(numbers.note[which] == "range", bool)
    if (rows.statistic.codes >= 0).any():
        mask |= rows.statistic.codes >= 0
    return mask


def _companions(
    meanings: Meanings,
    rows: PrintedRows,
    reason: NDArray[np.int64],
    evidence: Evidence,
    uncertainty: Floats,
    reporting: Floats,
    detection: Floats,
) -> tuple[Floats, Floats, Floats, NDArray[np.int64], NDArray[np.int64]]:
    """Rows that are something printed beside a result (`Gross alpha counting error`) go to that result of the sample."""
    partner = np.full(len(rows), -1, np.int64)
    beside = np.array([one.name is not None and one.name.companion is not None for one in meanings.each], bool)
    if not beside.any():
        return uncertainty, reporting, detection, reason, partner
    uncertainty, reporting, detection = uncertainty.copy(), reporting.copy(), detection.copy()
    mains: dict[tuple[int, str, object], int] = {}
    companions = np.flatnonzero(beside[meanings.group])
    wanted = {meanings.each[meanings.group[row]].analyte for row in companions}
    main = np.array([one.analyte in wanted and not beside[place] for place, one in enumerate(meanings.each)], bool)
    for row in np.flatnonzero(main[meanings.group] & (reason == _OK)):
        one = meanings.each[meanings.group[row]]
        mains.setdefault((int(rows.sample[row]), one.analyte, one.fraction), int(row))
    for row in companions:
        one = meanings.each[meanings.group[row]]
        found = mains.get((int(rows.sample[row]), one.analyte, one.fraction))
        number = evidence.number[row]
        kind = one.name.companion if one.name else None
        target = (
            {
                Companion.UNCERTAINTY: uncertainty,
                Companion.DETECTION_LIMIT: detection,
                Companion.REPORTING_LIMIT: reporting,
            }.get(kind)
            if kind
            else None
        )
        if found is None or target is None or np.isnan(number) or reason[row] != _OK:
            reason[row] = REASONS.index(UnreadReason.STATISTIC)
            continue
        target[found] = number
        partner[row] = found
        reason[row] = BESIDE
    return uncertainty, reporting, detection, reason, partner


def _assumptions(
    rows: PrintedRows,
    heads: Heads,
    meanings: Meanings,
    marks: _RowMarks,
    bounds: Bounded,
    numbers: Numbers,
    which: NDArray[np.int64],
    supposed_decimal: NDArray[np.bool_],
) -> Coded:
    """Sorted codes of everything that was supposed, joined by semicolons."""
    own = meanings.texts(lambda one: ";".join((*(one.name.assumptions if one.name else ()), *one.unit.assumptions)))
    head = heads.assumptions.take(rows.sample)
    bound = of(SUPPOSED).take(bounds.supposed)
    decimal = Coded(np.where(supposed_decimal, 0, -1).astype(np.int32), of(["decimal=."]).texts)
    group, firsts = grouped(own, head, marks.assumptions, bound, rows.column_note, decimal)
    texts = []
    for row in firsts:
        parts = [
            *own[row].split(";"),
            *head[row].split(";"),
            *marks.assumptions[row].split(";"),
            bound[row],
            decimal[row],
        ]
        if rows.column_note[row]:
            parts.append(f"column={rows.column_note[row].replace(';', ',')}")
        texts.append(";".join(sorted({part for part in parts if part})))
    return of(texts).take(group)
