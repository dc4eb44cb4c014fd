"""Effects of everything that stands beside the values of printed rows."""

from __future__ import annotations

import re
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Censoring
from wellchem.normalise.effects import Effect, Effects, Marks
from wellchem.normalise.numbers import LEFT, Floats, Numbers
from wellchem.reading.combinations import grouped
from wellchem.reading.rows import Coded, constant, of
from wellchem.reading.tables import Reading
from wellchem.vocabulary import Consequence, Vocabulary

# A number with a unit of concentration.
_LIMIT = re.compile(r"(?<![\w.])\d+(?:[.,]\d+)?\s*[^\W\d]\w*\s?/\s?\w+")


_NOTED = {
    "confluent": Effects(codes=("CG",)),
    "invalid": Effects(codes=("CG",)),
    "number_behind": Effects(assumptions=("value=before_brackets",)),
}


@dataclass(frozen=True, eq=False)
class RowMarks:
    effect: NDArray[np.int32]
    codes: Coded
    assumptions: Coded
    number: Floats


def limit_of_report(vocabulary: Vocabulary, reading: Reading, numbers: Numbers, which: NDArray[np.int64]) -> Coded:
    """The printed reporting limits; for a non-detect without any number, what the report's legend says of it."""
    rows = reading.rows
    for code, meaning in reading.legend.items():
        found = vocabulary.qualifier(code, legend=reading.legend)
        value = vocabulary.value(code)
        undetected = found is not None and found.consequence is Consequence.NOT_DETECTED
        limit = _LIMIT.search(meaning)
        if limit and (undetected or (value is not None and value.censoring is Censoring.LEFT)):
            bare = ((numbers.censoring == LEFT) & np.isnan(numbers.number))[which] & (rows.detection_limit.codes < 0)
            return rows.reporting_limit.or_else(constant(limit[0], len(rows)).kept(bare))
    return rows.reporting_limit


def marks_of(vocabulary: Vocabulary, reading: Reading, numbers: Numbers, which: NDArray[np.int64]) -> RowMarks:
    """Effects of everything that stands beside the values, each distinct combination once."""
    rows = reading.rows
    marks = Marks(vocabulary, reading.legend)
    inside = numbers.qualifiers.take(which)
    note = numbers.note.kept(numbers.noted("confluent", "invalid", "number_behind")).take(which)
    group, firsts = grouped(
        inside, note, rows.qualifier, rows.remark, rows.flag, rows.condition, rows.status, rows.standard
    )
    found: list[Effects] = []
    for row in firsts.tolist():
        parts = [marks.qualifier(code) for code in inside[row].split(";") if code]
        standard = rows.standard[row]
        parts += [marks.qualifier(rows.qualifier[row], f"{standard}_qualifier")] if rows.qualifier[row] else []
        parts += [marks.qualifier(rows.remark[row], f"{standard}_remark")] if rows.remark[row] else []
        parts += [marks.flag(rows.flag[row])] if rows.flag[row] else []
        parts += [marks.condition(rows.condition[row])] if rows.condition[row] else []
        parts += [Effects(Effect.REJECTED, ("R",))] if vocabulary.is_rejected(rows.status[row]) else []
        parts += [_NOTED[note[row]]] if note[row] else []
        effect = Effect.NOTHING
        for part in parts:
            effect |= part.effect
        number = next((part.number for part in parts if part.number is not None), None)
        codes = tuple(sorted({code for part in parts for code in part.codes}))
        found.append(Effects(effect, codes, tuple(a for part in parts for a in part.assumptions), number))
    return RowMarks(
        np.array([int(one.effect) for one in found], np.int32)[group] if found else np.zeros(len(rows), np.int32),
        of([";".join(one.codes) for one in found]).take(group),
        of([";".join(dict.fromkeys(one.assumptions)) for one in found]).take(group),
        np.array([np.nan if one.number is None else one.number for one in found], np.float64)[group],
    )
