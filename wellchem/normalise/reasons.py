"""Why a printed row is no result."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import UnreadReason
from wellchem.normalise.effects import Effect
from wellchem.normalise.heads import Heads
from wellchem.normalise.meanings import Meanings
from wellchem.normalise.numbers import NOT_REPORTED, Floats, Numbers
from wellchem.reading.rows import PrintedRows

REASONS = tuple(UnreadReason)
OK = -1
BESIDE = len(REASONS)  # no reason: the row became part of another row's result
_NAMELESS = (UnreadReason.UNKNOWN_NAME, UnreadReason.NO_NAME)
_STATED = int(
    Effect.NOT_DETECTED
    | Effect.LESS_THAN
    | Effect.BETWEEN_LIMITS
    | Effect.PRESENT
    | Effect.ABSENT
    | Effect.TOO_NUMEROUS
    | Effect.NOT_REPORTED
    | Effect.REJECTED
)


def reasons_of(
    rows: PrintedRows,
    heads: Heads,
    meanings: Meanings,
    numbers: Numbers,
    which: NDArray[np.int64],
    effect: NDArray[np.int32],
    censoring: NDArray[np.int8],
    number: Floats,
    value: Floats,
) -> NDArray[np.int8]:
    """Index into REASONS, OK where the row is a result; the first reason that holds stands.

    `censoring` and `value` are the final ones of each row, `number` is what it prints, in canonical units.
    """
    reason = np.full(len(rows), OK, np.int8)

    def because(why: UnreadReason, mask: NDArray[np.bool_]) -> None:
        if mask.any():
            reason[mask & (reason == OK)] = REASONS.index(why)

    def noted(note: str, why: UnreadReason) -> None:
        texts = numbers.noted(note)
        if texts.any():
            because(why, texts[which])

    if not heads.water.all():
        because(UnreadReason.NOT_WATER, ~heads.water[rows.sample])
    problem = np.array([REASONS.index(one.problem) if one.problem else OK for one in meanings.each], np.int8)
    nameless = np.array([one.problem in _NAMELESS or not one.analyte for one in meanings.each], bool)
    if nameless.any():
        first = nameless[meanings.group] & (reason == OK)
        reason[first] = problem[meanings.group][first]
    if (rows.statistic.codes >= 0).any():
        because(UnreadReason.STATISTIC, rows.statistic.codes >= 0)
    noted("range", UnreadReason.STATISTIC)
    empty = (rows.value.codes < 0) & (rows.presence.codes < 0)
    blank = empty | (numbers.noted("blank") & (numbers.censoring == NOT_REPORTED))[which]
    if blank.any():
        because(UnreadReason.NO_VALUE, blank & ((effect & _STATED) == 0))
    unreadable = ~numbers.readable[which] & ~empty
    if unreadable.any():
        formulas = np.zeros(len(rows), bool)
        odd = np.flatnonzero(unreadable)
        values = rows.value.take(odd).compact()
        formulas[odd] = np.array([*(text.startswith("=") for text in values.texts), False], bool)[values.codes]
        because(UnreadReason.FORMULA_WITHOUT_VALUE, formulas)
        because(UnreadReason.UNREADABLE_VALUE, unreadable)
    noted("ambiguous_decimal", UnreadReason.UNREADABLE_VALUE)
    if (problem != OK).any():
        valued = (reason == OK) & (problem != OK)[meanings.group] & (censoring != NOT_REPORTED)
        reason[valued] = problem[meanings.group][valued]
    unit_open = np.array([one.unit_open for one in meanings.each], bool)
    if unit_open.any():
        because(UnreadReason.UNKNOWN_UNIT, unit_open[meanings.group] & ~np.isnan(number))
    least = meanings.floats(lambda one: one.possible[0] - 1e-9)
    most = meanings.floats(lambda one: one.possible[1] + 1e-9)
    because(UnreadReason.IMPOSSIBLE_VALUE, (value < least) | (value > most))
    return reason
