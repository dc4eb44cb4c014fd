"""Results as arrays of codes and bounds, with what the report says of each that bears on a verdict.

Both doors, the frame's and the sample's, give their columns here; nothing below knows which it was.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from wellchem.errors import FrameError
from wellchem.limits.prepare import FRACTIONS, TOLERANCE, Prepared
from wellchem.limits.relations import usual_units
from wellchem.models.codes import Censoring, Measured, Reason
from wellchem.vocabulary import Vocabulary

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]

# Qualifier codes that act on a verdict; what the others mean is already in the bounds.
REJECTED, HOLDING_TIME, INVALID = "R", "H", "CG"
ESTIMATED, NOT_DETECTED = "J", "U"
# Below this many per 100 mL none were found: `<1`, and the `<1.1` of ten tubes of 10 mL (Standard Methods 9221 C).
NONE_FOUND_BELOW = 1.1

REASONS = tuple(Reason)
BIT = {reason: np.int32(1 << place) for place, reason in enumerate(REASONS)}
# With any of these a result decides nothing.
BLOCKING = BIT[Reason.REJECTED] | BIT[Reason.INVALID_SAMPLE] | BIT[Reason.NO_BOUNDS] | BIT[Reason.UNIT_MISSING]


@dataclass(frozen=True)
class Coded:
    """A column of text: codes into words, -1 where missing."""

    codes: NDArray[np.integer]
    words: Sequence[str]

    def translate(self, codes_of: Callable[[str], int | None], missing: int = -1) -> NDArray[np.int32]:
        """Another code for each row, worked out once for each word; `missing` where there is none."""
        table = [missing if (code := codes_of(word)) is None else code for word in self.words]
        coded: NDArray[np.int32] = np.array([*table, missing], dtype=np.int32)[self.codes]
        return coded


@dataclass(frozen=True)
class ResultColumns:
    """The columns of results that a comparison reads; a column that is not given is all missing."""

    sample: NDArray[np.integer]  # code of the sample, from 0
    analyte: Coded
    censoring: Coded
    low: Floats
    high: Floats
    fraction: Coded | None = None
    uncertainty: Floats | None = None
    qualifiers: Coded | None = None
    assumptions: Coded | None = None
    unit: Coded | None = None
    basis: Coded | None = None
    measured: Coded | None = None


@dataclass(frozen=True)
class Observed:
    """Amounts to be compared, a row each: results in their order, or what is worked out from them."""

    position: NDArray[np.int64]  # of the result, or -1
    sample: NDArray[np.intp]
    code: NDArray[np.int32]  # what it is an amount of, as in Prepared
    low: Floats
    high: Floats
    open_low: Flags  # the true value is above `low`, not equal to it
    open_high: Flags
    fraction: NDArray[np.int8]
    uncertainty: Floats
    reasons: NDArray[np.int32]  # bits of BIT
    detail: NDArray[np.int32]  # index into details
    rank: NDArray[np.int8]  # of two results for one analyte, the lower is taken into sums
    decided_only: Flags  # not told where it decides nothing
    details: tuple[str, ...] = ("",)

    def take(self, places: NDArray[np.intp]) -> Observed:
        """Some of the rows."""
        names = [name for name in Observed.__dataclass_fields__ if name != "details"]
        return Observed(**{name: getattr(self, name)[places] for name in names}, details=self.details)

    @property
    def usable(self) -> Flags:
        """Rows that say something of the amount."""
        usable: Flags = (self.reasons & BLOCKING) == 0
        return usable


def joined(parts: Sequence[Observed], details: tuple[str, ...]) -> Observed:
    """The rows of all parts."""
    names = [name for name in Observed.__dataclass_fields__ if name != "details"]
    return Observed(
        **{name: np.concatenate([getattr(part, name) for part in parts]) for name in names}, details=details
    )


def observe(columns: ResultColumns, rows: NDArray[np.int64], prepared: Prepared) -> Observed:
    """The results at `rows` that meet a limit or that an amount or a condition needs.

    Raises FrameError where a result is not in its analyte's canonical unit and basis.
    """
    needed = prepared.indexed | (np.diff(prepared.start) > 0)
    code = columns.analyte.translate(prepared.codes.get)
    reported = columns.censoring.translate(lambda word: 0 if word == Censoring.NOT_REPORTED else 1, missing=1) == 1
    if columns.qualifiers is not None:
        # What was rejected or could not be read was asked for: it is told that it decides nothing.
        reported |= columns.qualifiers.translate(_spoiled, missing=0).astype(bool)
    rows = rows[(np.append(needed, False)[code[rows]]) & reported[rows]]
    code = code[rows]
    _check_units(columns, rows, code, prepared)

    censoring = columns.censoring.translate({str(word): place for place, word in enumerate(Censoring)}.get)[rows]
    low, high = columns.low[rows], columns.high[rows]
    counts = prepared.counts[code]
    left, right = _is(censoring, Censoring.LEFT), _is(censoring, Censoring.RIGHT)
    present, absent = _is(censoring, Censoring.PRESENT) & counts, _is(censoring, Censoring.ABSENT) & counts
    high = np.where((right | present) & np.isnan(high), np.inf, high)
    # Whole organisms: at least one where any are said to be present, none below one.
    low = np.where((present | (right & counts)) & ~(low > 0), 1.0, low)
    none_found = absent | (left & counts & (high <= NONE_FOUND_BELOW * (1 + TOLERANCE)))
    low[none_found], high[none_found] = 0.0, 0.0

    reasons = np.zeros(len(rows), dtype=np.int32)
    reasons[np.isnan(high) | (low > high)] |= BIT[Reason.NO_BOUNDS]
    low = np.where(np.isnan(low) & ~np.isnan(high), np.where(left & ~prepared.signed[code], 0.0, -np.inf), low)
    open_low = right
    if columns.qualifiers is not None:
        # An estimate below the reporting limit is a detection: there is more than nothing.
        detected = columns.qualifiers.translate(_detected, missing=0)[rows].astype(bool)
        open_low = right | (detected & ~left & (low == 0) & (high > 0))
        reasons |= columns.qualifiers.translate(_qualifier_bits, missing=0)[rows]
    # Organisms that were seen were seen, however the rest of the plate looked.
    reasons[present] &= ~BIT[Reason.INVALID_SAMPLE]
    if columns.unit is not None:
        unmeasured = columns.unit.codes[rows] < 0
        reasons[unmeasured & prepared.dimensioned[code]] |= BIT[Reason.UNIT_MISSING]
    if columns.assumptions is not None:
        low, high = _other_forms(columns.assumptions, rows, code, low, high, reasons, prepared)

    fraction = _translated(columns.fraction, rows, {str(word): place for place, word in enumerate(FRACTIONS)})
    field = _translated(columns.measured, rows, {str(Measured.FIELD): 0})
    partial = np.isin(fraction, PARTS)
    rank = 2 * partial + ((field != 0) & (code == prepared.codes["ph"]))
    return Observed(
        position=rows,
        sample=columns.sample[rows].astype(np.intp),
        code=code,
        low=low,
        high=high,
        open_low=open_low,
        open_high=left,
        fraction=fraction,
        uncertainty=np.full(len(rows), np.nan) if columns.uncertainty is None else columns.uncertainty[rows],
        reasons=reasons,
        detail=np.zeros(len(rows), dtype=np.int32),
        rank=rank.astype(np.int8),
        decided_only=np.zeros(len(rows), dtype=bool),
    )


PARTS = [FRACTIONS.index(fraction) for fraction in FRACTIONS if fraction in ("dissolved", "suspended", "free")]


def _is(censoring: NDArray[np.int32], word: Censoring) -> Flags:
    return np.asarray(censoring == list(Censoring).index(word))


def _translated(column: Coded | None, rows: NDArray[np.int64], codes: dict[str, int]) -> NDArray[np.int8]:
    if column is None:
        return np.full(len(rows), -1, dtype=np.int8)
    return column.translate(codes.get)[rows].astype(np.int8)


def _detected(word: str) -> int:
    codes = word.split(";")
    return int(ESTIMATED in codes and NOT_DETECTED not in codes)


def _spoiled(word: str) -> int:
    return int(not {REJECTED, INVALID}.isdisjoint(word.split(";")))


def _qualifier_bits(word: str) -> int:
    codes = word.split(";")
    bits = BIT[Reason.REJECTED] if REJECTED in codes else 0
    bits |= BIT[Reason.HOLDING_TIME] if HOLDING_TIME in codes else 0
    return int(bits | (BIT[Reason.INVALID_SAMPLE] if INVALID in codes else 0))


def _check_units(columns: ResultColumns, rows: NDArray[np.int64], code: NDArray[np.int32], prepared: Prepared) -> None:
    """Refuse results that are not canonical: each distinct pair of analyte and word is looked at once."""
    faults = []
    for name, column in (("unit", columns.unit), ("basis", columns.basis)):
        if column is None:
            continue
        words = len(column.words) + 1
        seen = np.zeros(len(prepared.analytes) * words, dtype=bool)
        seen[code.astype(np.int64) * words + (column.codes[rows] + 1)] = True
        for pair in np.flatnonzero(seen).tolist():
            analyte, word = prepared.analytes[pair // words], pair % words - 1
            known = prepared.vocabulary.analytes[analyte]
            allowed = (known.unit,) if name == "unit" else (known.basis, known.form)
            if word >= 0 and column.words[word] not in allowed:
                faults.append(f"{analyte} has the {name} {column.words[word]!r}, not {allowed[0]!r}")
    if faults:
        raise FrameError(f"results must be in the canonical unit and basis: {'; '.join(faults)}")


def _other_forms(
    assumptions: Coded,
    rows: NDArray[np.int64],
    code: NDArray[np.int32],
    low: Floats,
    high: Floats,
    reasons: NDArray[np.int32],
    prepared: Prepared,
) -> tuple[Floats, Floats]:
    """Bounds widened to what they would be in the other usual units and forms, where those were only supposed.

    A verdict on the widened bounds is the verdict in every usual form; where these differ it is undecided.
    """
    bits = assumptions.translate(_assumption_bits, missing=0)[rows]
    at = np.flatnonzero(bits)
    if not len(at):
        return low, high
    reasons[at] |= bits[at]
    words = len(assumptions.words)
    pairs, inverse = np.unique(code[at].astype(np.int64) * words + assumptions.codes[rows[at]], return_inverse=True)
    factors = np.array(
        [_factors(prepared.analytes[p // words], assumptions.words[p % words], prepared.vocabulary) for p in pairs]
    )
    least, most = factors[inverse].T
    low, high = low.copy(), high.copy()
    low[at] *= np.where(low[at] < 0, most, least)
    high[at] *= np.where(high[at] < 0, least, most)
    return low, high


def _assumption_bits(word: str) -> int:
    names = {part.partition("=")[0] for part in word.split(";")}
    bits = BIT[Reason.UNIT_ASSUMED] if "unit" in names else 0
    return int(bits | (BIT[Reason.BASIS_ASSUMED] if "basis" in names else 0))


@lru_cache(maxsize=1 << 12)
def _factors(analyte: str, assumptions: str, vocabulary: Vocabulary) -> tuple[float, float]:
    """Least and most of what the number would be in another usual form, as a multiple of what it is taken for."""
    given = dict(part.split("=", 1) for part in assumptions.split(";") if "=" in part)
    known = vocabulary.analytes[analyte]
    least = most = 1.0
    usual = {
        "unit": usual_units().get(analyte) or usual_units().get(known.group, ()),
        "basis": vocabulary.usual_forms(analyte),
    }
    for supposed, printed in (("unit", "{}"), ("basis", f"{known.unit} as {{}}")):
        if supposed in given:
            taken, *others = (
                vocabulary.unit(printed.format(word), analyte) for word in (given[supposed], *usual[supposed])
            )
            ratios = [] if taken.problem else [one.factor / taken.factor for one in others if not one.problem]
            least, most = least * min([1.0, *ratios]), most * max([1.0, *ratios])
    return least, most
