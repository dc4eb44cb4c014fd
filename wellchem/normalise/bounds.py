"""A printed number and what stands beside it, to a censored interval: the conventions of reading, elementwise.

Concentrations: `<x` and `x U` are [0, x]; a non-detect without a number is bounded by the reporting limit, else by the
detection limit; an estimate (J) is between the limits that are printed; B makes the number an upper bound, E a lower
one. Counts are whole organisms in the volume examined, so that `<1` is none found. An activity is bounded by its
uncertainty and may be negative; flagged not detected, its high end is at least the detectable concentration.
No analysis measures a concentration of exactly zero: beside a printed limit, `0` says that nothing was found above it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from wellchem.normalise.effects import Effect
from wellchem.normalise.numbers import (
    ABSENT,
    INTERVAL,
    LEFT,
    NONE,
    NOT_REPORTED,
    PRESENT,
    RIGHT,
    Floats,
)

# What had to be supposed to bound a non-detect; 0 is nothing.
SUPPOSED = ("", "bound=detection_limit", "bound=none_found", "bound=printed_value", "bound=limit_of_zero")
_NOTHING, _BY_DETECTION, _NONE_FOUND, _BY_VALUE, _OF_ZERO = range(len(SUPPOSED))
# The smallest count of the ten-tube most-probable-number test is printed as <1.1 where no tube is positive
# (Standard Methods 9221 C, table for ten 10-mL tubes): none found in 100 mL.
_TEN_TUBES = 1.1


@dataclass(frozen=True, eq=False)
class Evidence:
    """What a row prints, in canonical units; NaN where it prints nothing.

    `per_100_ml` tells counts of at least 100 mL, `probable` those that are most probable numbers and need not be whole.
    """

    number: Floats
    censoring: NDArray[np.int8]
    low: Floats
    high: Floats
    uncertainty: Floats
    bound: NDArray[np.int8]
    effect: NDArray[np.int32]
    reporting: Floats
    detection: Floats
    count: NDArray[np.bool_]
    activity: NDArray[np.bool_]
    signed: NDArray[np.bool_]
    per_100_ml: NDArray[np.bool_]
    probable: NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class Bounded:
    """The result: censoring, the number (the bound itself where censored), its bounds, what was supposed."""

    censoring: NDArray[np.int8]
    value: Floats
    low: Floats
    high: Floats
    supposed: NDArray[np.int8]


def bounded(given: Evidence) -> Bounded:
    """Censoring and bounds of every row."""
    given = _signed(_without_unquantified(given))
    effect, number = given.effect, given.number
    censoring = given.censoring.copy()
    value, low, high = number.copy(), given.low.copy(), given.high.copy()
    supposed = np.zeros(len(number), np.int8)

    def has(*flags: Effect) -> NDArray[np.bool_]:
        wanted = np.int32(sum(int(flag) for flag in flags))
        made: NDArray[np.bool_] = (effect & wanted) != 0
        return made

    plain = censoring == NONE
    printed = ~np.isnan(number)
    quantified = plain & printed & ~given.activity
    floor = np.where(given.signed, -np.inf, 0.0)

    # Marks that say less, more, or not detected, beside a number that does not say it itself.
    not_detected = has(Effect.NOT_DETECTED)
    less = has(Effect.LESS_THAN) | (not_detected & ~given.activity)
    unnumbered = (censoring == NOT_REPORTED) & (less | not_detected)
    absent = ~given.count & ~printed & ((censoring == ABSENT) | has(Effect.ABSENT))  # not found is below a limit
    limited = np.fmax(given.reporting, given.detection) > 0
    zero = quantified & ~given.count & ~given.signed & (number == 0) & limited
    to_left = (plain & printed & less) | (censoring == LEFT) | unnumbered | absent | zero
    more = plain & printed & has(Effect.GREATER_THAN, Effect.LOWER_BOUND, Effect.TOO_NUMEROUS) & ~to_left
    upper = quantified & has(Effect.UPPER_BOUND) & ~to_left & ~more
    between = quantified & has(Effect.BETWEEN_LIMITS, Effect.ESTIMATED) & ~to_left & ~more

    _estimates(given, between & ~upper, censoring, low, high)
    censoring[upper] = INTERVAL
    low[upper], high[upper] = floor[upper], np.fmax(number, np.where(between, given.reporting, np.nan))[upper]
    censoring[more], low[more], high[more] = RIGHT, number[more], np.inf
    _activities(
        given, plain & printed & given.activity & ~to_left & ~more, not_detected, low, high, supposed, censoring
    )
    _left(given, to_left, floor, censoring, value, low, high, supposed)
    supposed[zero & ~less] = _OF_ZERO
    _organisms(given, censoring, value, low, high, supposed)
    censoring[has(Effect.PRESENT) & ~printed & (censoring == NOT_REPORTED)] = PRESENT  # not quantified
    _found_without_number(given, has(Effect.TOO_NUMEROUS) & ~printed, floor, censoring, low, high)
    _limits_without_number(given, has(Effect.BETWEEN_LIMITS) & ~printed & ~to_left, censoring, low, high)

    gone = has(Effect.REJECTED, Effect.NOT_REPORTED) & ~(has(Effect.NOT_REPORTED) & printed & ~has(Effect.REJECTED))
    censoring[gone] = NOT_REPORTED
    gone |= censoring == NOT_REPORTED
    value[gone] = low[gone] = high[gone] = np.nan
    return Bounded(censoring, value, low, high, supposed)


def _without_unquantified(given: Evidence) -> Evidence:
    """A number beside a mark that says "present, not quantified" (a zero, say) measures nothing."""
    rows = ((given.effect & int(Effect.UNQUANTIFIED)) != 0) & (given.censoring == NONE)
    if not rows.any():
        return given
    number, low, high = (np.where(rows, np.nan, array) for array in (given.number, given.low, given.high))
    censoring = np.where(rows, NOT_REPORTED, given.censoring).astype(np.int8)
    return replace(given, number=number, low=low, high=high, censoring=censoring)


def _signed(given: Evidence) -> Evidence:
    """A minus sign that stands in a column of its own belongs to the number beside it."""
    rows = ((given.effect & int(Effect.NEGATIVE)) != 0) & (given.censoring == NONE)
    if not rows.any():
        return given
    number, low, high = (np.where(rows, -array, array) for array in (given.number, given.low, given.high))
    return replace(given, number=number, low=low, high=high)


def _estimates(
    given: Evidence, rows: NDArray[np.bool_], censoring: NDArray[np.int8], low: Floats, high: Floats
) -> None:
    """J: detected, between the detection and the reporting limit where they are printed and the number lies there."""
    under = rows & (given.reporting >= given.number)
    bottom = np.where(given.detection <= given.number, given.detection, 0.0)
    censoring[under] = INTERVAL
    low[under], high[under] = bottom[under], given.reporting[under]


def _activities(
    given: Evidence,
    rows: NDArray[np.bool_],
    not_detected: NDArray[np.bool_],
    low: Floats,
    high: Floats,
    supposed: NDArray[np.int8],
    censoring: NDArray[np.int8],
) -> None:
    """A measured activity and its uncertainty; not detected, it reaches at least the detectable concentration."""
    if not rows.any():
        return
    spread = np.where(np.isnan(given.uncertainty), 0.0, given.uncertainty)
    low[rows], high[rows] = (given.number - spread)[rows], (given.number + spread)[rows]
    flagged = rows & not_detected
    high[flagged] = np.fmax(high, given.detection)[flagged]
    bare = flagged & np.isnan(given.uncertainty)
    low[bare] = np.minimum(given.number, 0.0)[bare]
    alone = bare & np.isnan(given.detection)
    censoring[alone], high[alone], supposed[alone] = LEFT, np.maximum(given.number, 0.0)[alone], _BY_VALUE


def _left(
    given: Evidence,
    rows: NDArray[np.bool_],
    floor: Floats,
    censoring: NDArray[np.int8],
    value: Floats,
    low: Floats,
    high: Floats,
    supposed: NDArray[np.int8],
) -> None:
    """Not detected, or less than: by its own number, else by the reporting limit, else by the detection limit."""
    at = np.flatnonzero(rows)
    number, reporting, detection = given.number[at], given.reporting[at], given.detection[at]
    effect, bound, signed = given.effect[at], given.bound[at], given.signed[at]
    own = (number > 0) | (signed & ~np.isnan(number))
    flagged = (effect & int(Effect.FLAGGED)) != 0
    # What an instrument shows below its detection limit is no bound.
    own &= ~(flagged & (given.censoring[at] == NONE) & (number < np.fmax(detection, 0.0)))
    by_detection = (bound == 1) | ((effect & int(Effect.BELOW_DETECTION)) != 0)
    by_reporting = (bound == 2) | ((effect & int(Effect.BELOW_REPORTING)) != 0)
    reporting = np.where(reporting > 0, reporting, np.nan)
    detection = np.where(detection > 0, detection, np.nan)
    limit = np.where(np.isnan(reporting), detection, reporting)
    assumed = np.isnan(reporting) & ~np.isnan(detection) & ~by_detection
    limit = np.where(by_detection & ~np.isnan(detection), detection, limit)
    limit = np.where(by_reporting, reporting, limit)
    top = np.where(own, number, limit)
    censoring[at] = LEFT
    value[at], low[at], high[at] = top, np.where((top < 0) & ~signed, -np.inf, floor[at]), top
    supposed[at[~own & assumed & ~by_reporting]] = _BY_DETECTION


def _organisms(
    given: Evidence,
    censoring: NDArray[np.int8],
    value: Floats,
    low: Floats,
    high: Floats,
    supposed: NDArray[np.int8],
) -> None:
    """Counts: whole organisms; `<1` is none found, `<2` is none or one; present is one or more."""
    effect, count = given.effect, given.count
    if not count.any():
        return
    bare = count & np.isnan(given.number)
    present = bare & ((effect & int(Effect.PRESENT)) != 0)
    absent = bare & ((effect & int(Effect.ABSENT)) != 0)
    many = bare & ((effect & int(Effect.TOO_NUMEROUS)) != 0)
    censoring[present], censoring[absent], censoring[many] = PRESENT, ABSENT, RIGHT
    found = count & ((censoring == PRESENT) | ((censoring == RIGHT) & np.isnan(value)))
    low[found], high[found] = np.where(np.isnan(low), 1.0, np.maximum(low, 1.0))[found], np.inf
    none = count & (censoring == ABSENT)
    low[none], high[none] = 0.0, 0.0
    unbounded = count & (censoring == LEFT) & np.isnan(high)
    censoring[unbounded], low[unbounded], high[unbounded], supposed[unbounded] = ABSENT, 0.0, 0.0, _NONE_FOUND
    less = count & (censoring == LEFT) & given.per_100_ml
    none_found = high <= np.where(given.probable, _TEN_TUBES + 1e-9, 1.0)
    whole = np.where(given.probable, high, np.ceil(np.where(less, high, 1.0)) - 1.0)
    high[less] = np.where(none_found, 0.0, whole)[less]


def _found_without_number(
    given: Evidence, above: NDArray[np.bool_], floor: Floats, censoring: NDArray[np.int8], low: Floats, high: Floats
) -> None:
    """Found, and how much is not printed: whatever is possible; above the quantifiable range, at least its limit."""
    above = ~given.count & (above | ((censoring == RIGHT) & np.isnan(given.number)))
    censoring[above] = RIGHT
    low[above], high[above] = np.where(np.isnan(given.reporting), floor, given.reporting)[above], np.inf
    found = ~given.count & (censoring == PRESENT)
    low[found] = floor[found]


def _limits_without_number(
    given: Evidence, rows: NDArray[np.bool_], censoring: NDArray[np.int8], low: Floats, high: Floats
) -> None:
    """Detected and not quantified: between the limits, as far as they are printed."""
    censoring[rows] = INTERVAL
    low[rows] = np.where(np.isnan(given.detection), 0.0, given.detection)[rows]
    high[rows] = given.reporting[rows]
