"""The results frame against limits: the door for many samples, and the steps that both doors share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem import schema
from wellchem.errors import FrameError
from wellchem.limits.amounts import SampleIndex, worked_out
from wellchem.limits.conditions import Setting, settle
from wellchem.limits.observed import REASONS, Coded, Floats, Observed, ResultColumns, observe
from wellchem.limits.prepare import FIRST_DAY, Prepared, days, prepare
from wellchem.limits.rows import LimitTable, table_of
from wellchem.limits.verdicts import Pairs, Situation, decide
from wellchem.models.codes import Role, SamplingPoint
from wellchem.models.household import Household

COLLECTED = "collected"
# The household's water; quality control is never compared.
COMPARED_ROLES = (Role.ROUTINE, Role.DUPLICATE, Role.PREDICTED)
_NEEDED = ("sample", "analyte", "censoring", "low", "high")
_EPOCH = date(1970, 1, 1)

Ints = NDArray[np.int64]


@dataclass(frozen=True)
class SampleColumns:
    """What is known of each sample, by its code."""

    count: int
    collected: Ints  # days since 1970-01-01, FIRST_DAY where not said
    point: NDArray[np.int8]  # index into SamplingPoint, or -1


def tables(authorities: Iterable[str], limits: LimitTable | Iterable[LimitTable] | None) -> tuple[LimitTable, ...]:
    """The bundled limits of the authorities, and those passed in."""
    if isinstance(authorities, str):
        authorities = (authorities,)
    own = () if limits is None else (limits,) if isinstance(limits, LimitTable) else tuple(limits)
    named = {table.authority for table in own}
    return (*(table_of(authority) for authority in dict.fromkeys(authorities) if authority not in named), *own)


def compare(
    results: pd.DataFrame,
    authorities: Iterable[str] = ("us-epa",),
    on: date | str | None = None,
    household: Household | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
) -> pd.DataFrame:
    """Compare results with the limits of authorities: a row per amount and limit in force.

    Parameters
    ----------
    results : frame of results (wellchem.schema)
        `sample`, `analyte`, `censoring`, `low` and `high` are needed; what else is there is used.
    authorities : names of authorities
        As `wellchem.limits.authorities()` lists them, or the name of limits passed in.
    on : date, "collected" or None
        The day whose law is meant: one day, each sample's day of collection, or today (None). A sample without a day
        of collection is compared as of today, and its rows say so (`not_dated`).
    household : Household or None
        What settles conditions of limits that the report does not settle.
    limits : LimitTable or several, or None
        Limits of your own (`wellchem.limits.load`), compared besides the authorities'.

    Returns
    -------
    frame of comparisons (wellchem.schema)
        Rows of results in their order, then rows of amounts worked out from several results.

    Raises
    ------
    FrameError
        Where the frame lacks a column or is not in canonical units.
    UnknownAuthority
        Where the limits of an authority are not known.
    """
    schema.check(results, "results", _NEEDED)
    prepared = prepare(tables(authorities, limits))
    sample = _coded(results["sample"])
    if (sample.codes < 0).any():
        raise FrameError("column sample of the results frame has missing values: each result needs its sample's key")
    columns = ResultColumns(
        sample=sample.codes,
        analyte=_coded(results["analyte"]),
        censoring=_coded(results["censoring"]),
        low=_floats(results["low"]),
        high=_floats(results["high"]),
        uncertainty=_floats(results["uncertainty"]) if "uncertainty" in results else None,
        **{name: _coded(results[name]) for name in _TEXTS if name in results},
    )
    rows = _household_rows(results)
    samples = _samples(results, sample, rows)
    observed, pairs, situation = run(columns, rows, samples, prepared, on, household)
    return _frame(observed, pairs, situation, prepared, sample, results["sample"])


_TEXTS = ("fraction", "qualifiers", "assumptions", "unit", "basis", "measured")


def run(
    columns: ResultColumns,
    rows: Ints,
    samples: SampleColumns,
    prepared: Prepared,
    on: date | str | None,
    household: Household | None,
) -> tuple[Observed, Pairs, Situation]:
    """From columns to verdicts, for one sample as for a million."""
    today = days(date.today(), 0)
    if isinstance(on, str) and on != COLLECTED:
        raise ValueError(f"on={on!r} is not a date, {COLLECTED!r} or None")
    if on == COLLECTED:
        not_dated = samples.collected == FIRST_DAY
        day = np.where(not_dated, today, samples.collected)
    else:
        not_dated = np.zeros(samples.count, dtype=bool)
        day = np.full(samples.count, days(on if isinstance(on, date) else None, today))
    results = observe(columns, rows, prepared)
    index = SampleIndex(results, prepared)
    setting = Setting(
        samples=samples.count,
        bounds=lambda analyte: index.dense(prepared.codes[analyte], samples.count),
        day=day,
        collected=samples.collected,
        point=samples.point,
        household=household or Household(),
    )
    observed = worked_out(results, index, prepared)
    situation = Situation(day, not_dated, settle(prepared.conditions, setting), today)
    return observed, decide(observed, prepared, situation), situation


def reasons_text(detail: str, bits: int) -> str:
    """Reasons as codes joined by ;."""
    words = [str(reason) for place, reason in enumerate(REASONS) if bits >> place & 1]
    return ";".join([detail, *words] if detail else words)


def _coded(series: pd.Series) -> Coded:
    """Codes and words of a column, categorical or plain."""
    if isinstance(series.dtype, pd.CategoricalDtype):
        return Coded(np.asarray(series.cat.codes), [str(word) for word in series.cat.categories])
    codes, words = pd.factorize(series)
    return Coded(codes, [str(word) for word in words])


def _floats(series: pd.Series) -> Floats:
    return series.to_numpy(dtype=np.float64, na_value=np.nan)


def _household_rows(results: pd.DataFrame) -> Ints:
    """Rows of the household's water; a missing role is taken for routine."""
    if "role" not in results:
        return np.arange(len(results))
    kept = _coded(results["role"]).translate(lambda word: int(word in COMPARED_ROLES), missing=1)
    return np.flatnonzero(kept)


def _samples(results: pd.DataFrame, sample: Coded, rows: Ints) -> SampleColumns:
    count = len(sample.words)
    collected = np.full(count, FIRST_DAY, dtype=np.int64)
    point = np.full(count, -1, dtype=np.int8)
    of_row = sample.codes[rows]
    if "collected" in results and not results["collected"].isna().all():
        day = results["collected"].to_numpy(dtype="datetime64[D]")[rows]
        said = ~np.isnat(day)
        latest = np.full(count, np.iinfo(np.int64).max)
        np.minimum.at(latest, of_row[said], day[said].astype(np.int64))
        collected = np.where(latest < np.iinfo(np.int64).max, latest, collected)
    if "point" in results:
        places: Mapping[str, int] = {str(word): place for place, word in enumerate(SamplingPoint)}
        code = _coded(results["point"]).translate(places.get)[rows]
        point[of_row[code >= 0]] = code[code >= 0]
    return SampleColumns(count, collected, point)


def _frame(
    observed: Observed, pairs: Pairs, situation: Situation, prepared: Prepared, sample: Coded, keys: pd.Series
) -> pd.DataFrame:
    """The comparisons frame; every text column is made of codes, no text is written per row."""
    sample_type = keys.dtype if isinstance(keys.dtype, pd.CategoricalDtype) else None
    words = sample.words if sample_type is None else sample_type.categories
    of_row = observed.sample[pairs.row]
    limit = prepared.limit[pairs.entry]
    position = observed.position[pairs.row]
    maximum = prepared.maximum[pairs.entry]
    per = np.where(maximum > 0, maximum, np.nan)
    bits = len(REASONS)
    code, distinct = pd.factorize((observed.detail[pairs.row].astype(np.int64) << bits) | pairs.reasons)
    said = [reasons_text(observed.details[word >> bits], int(word) & ((1 << bits) - 1)) for word in distinct]
    texts = sorted({text for text in said if text})
    places = np.array([texts.index(text) if text else -1 for text in said], dtype=np.int32)
    data: dict[str, Any] = {
        "sample": pd.Categorical.from_codes(of_row, pd.Index(words)),
        "analyte": pd.Categorical.from_codes(prepared.shown[pairs.entry], pd.Index(prepared.analytes)),
        "fraction": _fixed(observed.fraction[pairs.row], "fraction"),
        "authority": pd.Categorical.from_codes(
            prepared.authority[pairs.entry], pd.Index([table.authority for table in prepared.tables])
        ),
        "limit": pd.Categorical.from_codes(limit, pd.Index([row.id for row in prepared.limits])),
        "kind": _fixed(prepared.kind[pairs.entry], "kind"),
        "verdict": _fixed(pairs.verdict, "verdict"),
        "near": pairs.near,
        "low": pairs.low,
        "high": pairs.high,
        "minimum": prepared.minimum[pairs.entry],
        "maximum": maximum,
        "ratio_low": pairs.low / per,
        "ratio_high": pairs.high / per,
        "reasons": pd.Categorical.from_codes(places[code], pd.Index(texts)),
        "settled": pairs.settled,
        "on": situation.day[of_row].astype("datetime64[D]").astype("datetime64[s]"),
        "result": pd.arrays.IntegerArray(position.astype(np.int32), position < 0),
    }
    return schema.conform("comparisons", data, len(pairs.row))


def _fixed(codes: NDArray[np.int8], column: str) -> pd.Categorical:
    """A column of fixed categories from codes in the order of their enumeration."""
    (stated,) = [one for one in schema.columns("comparisons") if one.name == column]
    return pd.Categorical.from_codes(codes, dtype=stated.dtype)
