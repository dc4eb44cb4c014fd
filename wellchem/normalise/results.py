"""Printed rows to results: canonical analyte, number and bounds, unit and form, and what was supposed; or why not."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Role, UnreadReason
from wellchem.normalise.bounds import SUPPOSED, Bounded, Evidence, bounded
from wellchem.normalise.companions import joined_companions
from wellchem.normalise.forms import with_forms
from wellchem.normalise.heads import ROLES, Heads, heads_of
from wellchem.normalise.limits import Limits
from wellchem.normalise.marks import RowMarks, limit_of_report, marks_of
from wellchem.normalise.meanings import Meanings, meanings_of
from wellchem.normalise.numbers import NONE, Floats, Numbers
from wellchem.normalise.reasons import BESIDE, OK, REASONS, reasons_of
from wellchem.normalise.repeats import quoted, repeated
from wellchem.normalise.supposed_units import with_units
from wellchem.normalise.values import decimals_of, in_cell, values_of
from wellchem.reading.combinations import grouped
from wellchem.reading.rows import Coded, PrintedRows, of
from wellchem.reading.tables import Reading
from wellchem.vocabulary import Vocabulary

RESULT, QUALITY_CONTROL, UNREAD = range(3)
_ROUTINE = ROLES.index(Role.ROUTINE)


@dataclass(frozen=True, eq=False)
class Normalised:
    """What became of every printed row: `outcome` is RESULT, QUALITY_CONTROL or UNREAD, `reason` one of `reasons`.

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
    decimals, supposed_decimal = decimals_of(reading, vocabulary)
    numbers, which = values_of(vocabulary, rows, decimals, reading.legend)
    unit = in_cell(numbers.unit, rows.unit, which)
    basis, place = in_cell(numbers.basis, rows.basis, which), in_cell(numbers.measured, rows.measured, which)
    meanings = meanings_of(vocabulary, rows.name, rows.code_list, unit, rows.fraction, basis, place)
    meanings = with_units(vocabulary, meanings, rows, numbers, which)
    meanings = with_forms(vocabulary, meanings, rows, numbers, which)
    limits = Limits(vocabulary, meanings, decimals)
    quantified = limit_of_report(vocabulary, reading, numbers, which)
    quantified = quantified.or_else(meanings.texts(lambda one: one.name and one.name.reporting_limit))
    reporting = limits.read(quantified, rows.reporting_unit)
    reporting = limits.inside(reporting, numbers.reporting, which)
    detected = rows.detection_limit.or_else(meanings.texts(lambda one: one.name and one.name.detection_limit))
    detection = limits.read(detected, rows.detection_unit)
    detection = limits.inside(detection, numbers.detection, which)
    marks = marks_of(vocabulary, reading, numbers, which)
    stated, number = _numbers(meanings, numbers, which, marks)
    uncertainty = limits.spread(rows.uncertainty, numbers.uncertainty, which, number)
    joined = joined_companions(meanings, rows, number, uncertainty, reporting, detection)
    bounds = _bounds(meanings, numbers, which, marks, stated, number, uncertainty, reporting, detection)
    heads = heads_of(vocabulary, reading.heads, any(sign == "," for sign in decimals.values()), reading.day_first)
    role = _roles(rows, heads)
    reason = reasons_of(rows, heads, meanings, numbers, which, marks.effect, bounds.censoring, number, bounds.value)
    for row, main in joined.items():
        reason[row] = REASONS.index(UnreadReason.STATISTIC) if main is None or reason[main] != OK else BESIDE
    again = repeated(rows, reason == OK) | quoted(reading.quoted, reason == OK, meanings, bounds)
    for row, main in again.items():
        reason[row], joined[row] = BESIDE, main
    outcome = np.where(reason != OK, UNREAD, np.where(role == _ROUTINE, RESULT, QUALITY_CONTROL)).astype(np.int8)
    for row, main in joined.items():
        if main is not None:
            outcome[row] = outcome[main]
    return Normalised(
        reading,
        heads,
        meanings,
        outcome,
        reason,
        _details(rows, meanings, reason),
        role,
        bounds,
        uncertainty,
        reporting,
        detection,
        marks.codes,
        _assumptions(rows, heads, meanings, marks, bounds, supposed_decimal),
        unit,
        decimals,
    )


def _numbers(
    meanings: Meanings, numbers: Numbers, which: NDArray[np.int64], marks: RowMarks
) -> tuple[NDArray[np.bool_], Floats]:
    """Rows whose number stands in the condition's cell (`< 2` there, no value), and every row's in canonical units."""
    printed = numbers.number[which]
    stated = np.isnan(printed) & ~np.isnan(marks.number)
    if stated.any():
        printed = np.where(stated, marks.number, printed)
    return stated, meanings.canonical(printed)


def _bounds(
    meanings: Meanings,
    numbers: Numbers,
    which: NDArray[np.int64],
    marks: RowMarks,
    stated: NDArray[np.bool_],
    number: Floats,
    uncertainty: Floats,
    reporting: Floats,
    detection: Floats,
) -> Bounded:
    """Bounds of every row. A plain number without a mark bounds itself; only the others need the conventions."""
    made = Bounded(
        np.zeros(len(number), np.int8), number.copy(), number.copy(), number.copy(), np.zeros(len(number), np.int8)
    )
    plain = (numbers.censoring == NONE)[which] & (marks.effect == 0)
    plain &= meanings.flags(lambda one: one.quantity not in ("count", "activity"))
    plain &= number != 0  # a zero beside a limit is bounded by it
    rest = np.flatnonzero(~plain)
    at, group = which[rest], meanings.group[rest]
    mine = Meanings(group, meanings.each)
    found = bounded(
        Evidence(
            number[rest],
            np.where(stated[rest], NONE, numbers.censoring[at]).astype(np.int8),
            np.where(stated[rest], number[rest], mine.canonical(numbers.low[at])),
            np.where(stated[rest], number[rest], mine.canonical(numbers.high[at])),
            uncertainty[rest],
            numbers.bound[at],
            marks.effect[rest],
            reporting[rest],
            detection[rest],
            mine.flags(lambda one: one.quantity == "count"),
            mine.flags(lambda one: one.quantity == "activity"),
            mine.flags(lambda one: one.signed),
            mine.flags(lambda one: one.unit.unit == "1/(100 mL)" and (one.unit.per_volume_ml or 100.0) >= 100.0),
            mine.flags(lambda one: one.unit.counted_by == "MPN"),
        )
    )
    for whole, part in (
        (made.censoring, found.censoring),
        (made.value, found.value),
        (made.low, found.low),
        (made.high, found.high),
        (made.supposed, found.supposed),
    ):
        whole[rest] = part
    return made


def _roles(rows: PrintedRows, heads: Heads) -> NDArray[np.int8]:
    """Role of each row: of its sample, else of its section or table."""
    role = heads.role[rows.sample]
    if (rows.quality_control.codes >= 0).any():
        texts = [ROLES.index(Role(str(text))) if str(text) else _ROUTINE for text in rows.quality_control.texts]
        said = rows.quality_control.lookup(np.array(texts, np.int8), _ROUTINE)
        role = np.where(role == _ROUTINE, said, role).astype(np.int8)
    return role


def _assumptions(
    rows: PrintedRows,
    heads: Heads,
    meanings: Meanings,
    marks: RowMarks,
    bounds: Bounded,
    supposed_decimal: NDArray[np.bool_],
) -> Coded:
    """Sorted codes of everything that was supposed, joined by semicolons."""
    own = meanings.texts(lambda one: ";".join((*(one.name.assumptions if one.name else ()), *one.unit.assumptions)))
    head = heads.assumptions.take(rows.sample)
    bound = of(SUPPOSED).take(bounds.supposed)
    decimal = Coded(np.where(supposed_decimal, 0, -1).astype(np.int32), of(["decimal=."]).texts)
    group, firsts = grouped(own, head, marks.assumptions, bound, rows.column_note, decimal)
    texts = []
    for row in firsts.tolist():
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


def _details(rows: PrintedRows, meanings: Meanings, reason: NDArray[np.int8]) -> Coded:
    """What more there is to say of each row that is unread."""
    said = of([one.detail for one in meanings.each]).take(meanings.group)
    impossible = reason == REASONS.index(UnreadReason.IMPOSSIBLE_VALUE)
    if impossible.any():
        said = meanings.texts(lambda one: one.impossible).kept(impossible).or_else(said)
    statistic = reason == REASONS.index(UnreadReason.STATISTIC)
    return rows.statistic.kept(statistic).or_else(said) if statistic.any() else said
