"""One sample against limits, as models: the door that an interpretation uses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from functools import lru_cache
from math import inf, isnan

import numpy as np

from wellchem.limits.citing import in_force, model
from wellchem.limits.comparing import COMPARED_ROLES, SampleColumns, reasons_text, run, tables
from wellchem.limits.observed import Coded, ResultColumns
from wellchem.limits.prepare import FIRST_DAY, FRACTIONS, Amount, Prepared, days, prepare
from wellchem.limits.rows import LimitRow, LimitTable
from wellchem.limits.verdicts import Decision, Pairs
from wellchem.models.base import Interval
from wellchem.models.codes import Censoring, LimitKind, Reason, SamplingPoint, Verdict
from wellchem.models.household import Household
from wellchem.models.limits import Comparison
from wellchem.models.sample import Result, Sample
from wellchem.vocabulary import Vocabulary, bundled

VERDICTS = tuple(Verdict)


def compare_sample(
    sample: Sample,
    authorities: Iterable[str] = ("us-epa",),
    on: date | str | None = None,
    household: Household | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
    vocabulary: Vocabulary | None = None,
) -> tuple[Comparison, ...]:
    """Compare one sample with the limits of authorities.

    Takes and raises what `compare` does; the comparisons come with their limits, citations, the indices of the results
    that they rest on, and what is already enacted for later. Quality control gives none.
    """
    if sample.role not in COMPARED_ROLES:
        return ()
    prepared = prepare(tables(authorities, limits), vocabulary or bundled())
    results = sample.results
    samples = SampleColumns(
        count=1,
        collected=np.array([days(sample.collected, FIRST_DAY)]),
        point=np.array([tuple(SamplingPoint).index(sample.point) if sample.point else -1], dtype=np.int8),
    )
    rows = np.arange(len(results))
    decisions = run(_columns(results), rows, samples, prepared, on, household)
    compared_on = date.fromordinal(date(1970, 1, 1).toordinal() + int(decisions[0].situation.day[0]))
    resting = _Resting(results, prepared)
    return tuple(
        made
        for decision in decisions
        for pairs in decision.pairs()
        for made in _comparisons(decision, pairs, resting, compared_on)
    )


def _columns(results: Sequence[Result]) -> ResultColumns:
    def coded(values: Iterable[str | None]) -> Coded:
        words: dict[str, int] = {}
        codes = [-1 if value is None else words.setdefault(value, len(words)) for value in values]
        return Coded(np.array(codes, dtype=np.int32), tuple(words))

    def floats(values: Iterable[float | None]) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
        return np.array([np.nan if value is None else value for value in values], dtype=np.float64)

    return ResultColumns(
        sample=np.zeros(len(results), dtype=np.int32),
        analyte=coded(result.analyte for result in results),
        censoring=coded(result.censoring for result in results),
        low=floats(result.low for result in results),
        high=floats(result.high for result in results),
        fraction=coded(result.fraction for result in results),
        uncertainty=floats(result.uncertainty for result in results),
        qualifiers=coded(";".join(result.qualifiers) or None for result in results),
        assumptions=coded(";".join(sorted(map(str, result.assumptions))) or None for result in results),
        unit=coded(result.unit for result in results),
        basis=coded(result.basis for result in results),
        measured=coded(result.measured for result in results),
    )


def _comparisons(decision: Decision, pairs: Pairs, resting: _Resting, on: date) -> Iterator[Comparison]:
    observed, prepared = decision.observed, decision.prepared
    table_of = {table.authority: table for table in prepared.tables}
    columns = (pairs.row, pairs.entry, pairs.verdict, pairs.near, pairs.low, pairs.high, pairs.reasons, pairs.settled)
    for row, entry, verdict, near, low, high, bits, settled in zip(*(part.tolist() for part in columns), strict=True):
        limit = prepared.limits[prepared.limit[entry]]
        table = table_of[limit.authority]
        position, fraction = int(observed.position[row]), int(observed.fraction[row])
        text = reasons_text(observed.details[observed.detail[row]], bits)
        maximum = limit.canonical_maximum
        amount = None if isnan(high) else Interval(low=low, high=high)
        yield Comparison(
            analyte=prepared.analytes[prepared.shown[entry]],
            fraction=FRACTIONS[fraction] if fraction >= 0 else None,
            verdict=VERDICTS[verdict],
            near=near,
            ratio=Interval(low=low / maximum, high=high / maximum) if amount and maximum else None,
            amount=amount,
            unit=limit.canonical_unit,
            limit=model(limit, table),
            on=on,
            date_known=Reason.DATE_UNKNOWN not in text,
            condition_settled=settled,
            reasons=tuple(text.split(";")) if text else (),
            later=later(limit, table, on),
            results=(position,) if position >= 0 else resting.of(int(observed.code[row])),
        )


class _Resting:
    """Which results an amount rests on: those of its members, or those that a member is derived from."""

    def __init__(self, results: Sequence[Result], prepared: Prepared) -> None:
        self.places: dict[str, list[int]] = {}
        for place, result in enumerate(results):
            if result.censoring is not Censoring.NOT_REPORTED:
                self.places.setdefault(result.analyte, []).append(place)
        self.prepared = prepared
        self.groups = {amount.code: amount for amount in prepared.groups}
        self.derived: dict[int, list[Amount]] = {}
        for amount in prepared.derived:
            self.derived.setdefault(amount.code, []).append(amount)

    def of(self, code: int) -> tuple[int, ...]:
        if code in self.groups:
            return tuple(sorted({place for term in self.groups[code].terms for place in self._member(term.code)}))
        return self._derived(code)

    def _member(self, code: int) -> tuple[int, ...]:
        return tuple(self.places.get(self.prepared.analytes[code], ())) or self._derived(code)

    def _derived(self, code: int) -> tuple[int, ...]:
        for amount in self.derived.get(code, ()):
            names = (self.prepared.analytes[term.code] for term in amount.terms)
            if found := sorted({place for name in names for place in self.places.get(name, ())}):
                return tuple(found)
        return ()


@lru_cache(maxsize=1 << 14)
def later(row: LimitRow, table: LimitTable, on: date) -> str:
    """What the same authority has already enacted for later and is stricter: "from 2036-01-12: 0.005 mg/L (...)"."""
    coming = [
        other
        for other in table.rows
        if other.starts is not None
        and other.starts > on
        and other.in_plain_comparison
        and (other.analyte, other.applies_when, other.fraction) == (row.analyte, row.applies_when, row.fraction)
        and (other.kind == row.kind or _first_of_its_kind(other, table, on))
        and _stricter(other, row)
    ]
    return "; ".join(
        f"from {other.starts}: {_bounds(other)} ({other.term})"
        for other in sorted(coming, key=lambda o: (o.starts, o.id))
    )


def _first_of_its_kind(coming: LimitRow, table: LimitTable, on: date) -> bool:
    """A health limit where the authority has none in force yet is news beside its goal too."""
    return coming.kind is LimitKind.HEALTH and not any(
        row.analyte == coming.analyte and row.kind is coming.kind and row.in_plain_comparison and in_force(row, on)
        for row in table.rows
    )


def _stricter(coming: LimitRow, row: LimitRow) -> bool:
    """Stricter than a limit of its own kind; a first limit of another kind is always news."""
    if coming.kind != row.kind:
        return True
    lower = (inf if coming.canonical_maximum is None else coming.canonical_maximum) < (
        inf if row.canonical_maximum is None else row.canonical_maximum
    )
    higher = (-inf if coming.canonical_minimum is None else coming.canonical_minimum) > (
        -inf if row.canonical_minimum is None else row.canonical_minimum
    )
    return lower or higher


def _bounds(row: LimitRow) -> str:
    low = "" if row.minimum is None else np.format_float_positional(row.minimum, trim="-")
    high = "" if row.maximum is None else np.format_float_positional(row.maximum, trim="-")
    number = f"{low} to {high}" if low and high else f"at least {low}" if low else high
    form = f" as {row.basis}" if row.basis else ""
    return f"{number} {row.unit}{form}" if row.unit != "1" else number
