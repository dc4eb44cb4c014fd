"""The results frame against limits: the door for many samples, and the steps that both doors share."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import Any

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem import schema
from wellchem.errors import FrameError
from wellchem.limits.amounts import SampleIndex, worked_out
from wellchem.limits.conditions import Setting, settle
from wellchem.limits.observed import REASONS, Coded, Floats, ResultColumns, observe
from wellchem.limits.prepare import FIRST_DAY, LAST_DAY, Prepared, days, prepare
from wellchem.limits.rows import LimitTable, own_tables, table_of
from wellchem.limits.verdicts import Decision, Situation, pick
from wellchem.models.codes import Role, SamplingPoint
from wellchem.models.household import Household
from wellchem.vocabulary import Vocabulary, bundled

COLLECTED = "collected"
# The household's water; quality control is never compared.
COMPARED_ROLES = (Role.ROUTINE, Role.DUPLICATE, Role.PREDICTED)
# A code not yet given, and how many sets of reasons there is room for at first.
_NEW, _SETS = -2, 64
_NEEDED = ("sample", "analyte", "censoring", "low", "high")

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
    own = own_tables(limits)
    named = {table.authority for table in own}
    return (*(table_of(authority) for authority in dict.fromkeys(authorities) if authority not in named), *own)


def compare(
    results: pd.DataFrame,
    authorities: Iterable[str] = ("us-epa",),
    on: date | str | None = None,
    household: Household | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
    vocabulary: Vocabulary | None = None,
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
    vocabulary : Vocabulary or None
        The vocabulary that the results were read with, where it was extended by analytes.

    Returns
    -------
    frame of comparisons (wellchem.schema)
        Rows of results in their order, then rows of amounts worked out from several results.

    Raises
    ------
    FrameError
        Where the frame lacks a column, holds words that the schema or the vocabulary does not have, or is not in
        canonical units.
    UnknownAuthority
        Where the limits of an authority are not known.
    """
    schema.check(results, "results", _NEEDED)
    schema.check(results, "results", [name for name in _USED if name in results])
    prepared = prepare(tables(authorities, limits), vocabulary or bundled())
    sample, keys = _codes(results["sample"])
    if (sample < 0).any():
        raise FrameError("column sample of the results frame has missing values: each result needs its sample's key")
    columns = ResultColumns(
        sample=sample,
        analyte=_known(_coded(results["analyte"]), prepared),
        censoring=_coded(results["censoring"]),
        low=_floats(results["low"]),
        high=_floats(results["high"]),
        uncertainty=_floats(results["uncertainty"]) if "uncertainty" in results else None,
        **{name: _coded(results[name]) for name in _TEXTS if name in results},
    )
    rows = _household_rows(results)
    samples = _samples(results, sample[rows], len(keys), rows)
    decisions = run(columns, rows, samples, prepared, on, household)
    made = _Comparisons(decisions, samples.count)
    for decision in decisions:
        made.fill(decision)
    return made.frame(keys)


_TEXTS = ("fraction", "qualifiers", "assumptions", "unit", "basis", "measured")
_USED = ("role", "point", "collected", "uncertainty", *_TEXTS)


def run(
    columns: ResultColumns,
    rows: Ints,
    samples: SampleColumns,
    prepared: Prepared,
    on: date | str | None,
    household: Household | None,
) -> tuple[Decision, Decision]:
    """From columns to what decides the results, and what decides the amounts worked out from them."""
    today = days(date.today(), 0)
    if isinstance(on, str) and on != COLLECTED:
        raise ValueError(f"on={on!r} is not a date, {COLLECTED!r} or None")
    if on == COLLECTED:
        not_dated = samples.collected == FIRST_DAY
        day = np.where(not_dated, today, samples.collected)
    else:
        not_dated = np.zeros(samples.count, dtype=bool)
        day = np.full(samples.count, days(on if isinstance(on, date) else None, today))
    day = day.astype(np.int32)
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
    amounts = worked_out(index, prepared)
    situation = Situation(day, not_dated, settle(prepared.conditions, setting), today)
    return Decision(results, prepared, situation), Decision(amounts, prepared, situation)


@lru_cache(4096)
def reasons_text(detail: str, bits: int) -> str:
    """Reasons as codes joined by ;."""
    words = [str(reason) for place, reason in enumerate(REASONS) if bits >> place & 1]
    return ";".join([detail, *words] if detail else words)


def _codes(series: pd.Series) -> tuple[NDArray[np.integer], pd.Index]:
    """Codes and words of a column, categorical or plain."""
    if isinstance(series.dtype, pd.CategoricalDtype):
        return np.asarray(series.cat.codes), series.cat.categories
    codes, words = pd.factorize(series)
    return codes, pd.Index(words)


def _coded(series: pd.Series) -> Coded:
    codes, words = _codes(series)
    return Coded(codes, [str(word) for word in words])


def _known(analyte: Coded, prepared: Prepared) -> Coded:
    """The column itself. A key that is misspelt must not pass for an analyte without limits."""
    used = np.unique(analyte.codes).tolist()
    if unknown := [word for code, word in enumerate(analyte.words) if word not in prepared.codes and code in used]:
        near = {word: ", ".join(prepared.vocabulary.suggest(word)) for word in unknown}
        told = "; ".join(f"{word!r}" + (f" (nearest: {near[word]})" if near[word] else "") for word in unknown)
        raise FrameError(
            f"analytes that the vocabulary does not have: {told}. "
            "Where they were read with a vocabulary of your own, pass it on with vocabulary=."
        )
    return analyte


def _floats(series: pd.Series) -> Floats:
    return series.to_numpy(dtype=np.float64, na_value=np.nan)


def _household_rows(results: pd.DataFrame) -> Ints:
    """Rows of the household's water; a missing role is taken for routine."""
    if "role" not in results:
        return np.arange(len(results))
    kept = _coded(results["role"]).translate(lambda word: int(word in COMPARED_ROLES), missing=1)
    return np.flatnonzero(kept)


def _samples(results: pd.DataFrame, of_row: NDArray[np.integer], count: int, rows: Ints) -> SampleColumns:
    collected = np.full(count, FIRST_DAY, dtype=np.int64)
    point = np.full(count, -1, dtype=np.int8)
    if "collected" in results and not results["collected"].isna().all():
        day = results["collected"].to_numpy(dtype="datetime64[D]")[rows]
        said = ~np.isnat(day)
        earliest = np.full(count, LAST_DAY, dtype=np.int64)
        np.minimum.at(earliest, of_row[said], day[said].astype(np.int64))
        collected = np.where(earliest < LAST_DAY, earliest, collected)
    if "point" in results:
        places: Mapping[str, int] = {str(word): place for place, word in enumerate(SamplingPoint)}
        code = _coded(results["point"]).translate(places.get)[rows]
        point[of_row[code >= 0]] = code[code >= 0]
    return SampleColumns(count, collected, point)


class _Comparisons:
    """The columns of the comparisons frame, filled chunk by chunk; text columns are codes, no text is made per row."""

    def __init__(self, decisions: Sequence[Decision], samples: int) -> None:
        self.prepared = prepared = decisions[0].prepared
        self.per = np.where(prepared.maximum > 0, prepared.maximum, np.nan)
        # What a column takes from the limit's entry and from the amount's row, already in its type.
        self.of_entry: dict[str, NDArray[Any]] = {
            "analyte": prepared.shown.astype(_code_type(len(prepared.analytes))),
            "limit": prepared.limit.astype(_code_type(len(prepared.limits))),
            "authority": prepared.authority.astype(_code_type(len(prepared.tables))),
            "kind": prepared.kind,
            "minimum": prepared.minimum,
            "maximum": prepared.maximum,
        }
        types: dict[str, Any] = {name: source.dtype for name, source in self.of_entry.items()}
        types |= {"sample": _code_type(samples), "on": "datetime64[s]", "fraction": np.int8, "result": np.int32}
        types |= {"verdict": np.int8, "near": bool, "settled": bool, "reasons": np.int16}
        types |= dict.fromkeys(("low", "high", "ratio_low", "ratio_high"), np.float64)
        most = sum(decision.most for decision in decisions)
        self.made = {name: np.empty(most, dtype=kind) for name, kind in types.items()}
        self.filled = 0
        self.reasons: dict[str, int] = {}

    def fill(self, decision: Decision) -> None:
        """Write what one decision gives."""
        observed = decision.observed
        of_row: dict[str, NDArray[Any]] = {
            "sample": observed.sample.astype(self.made["sample"].dtype),
            "on": decision.day.astype("datetime64[D]").astype("datetime64[s]"),
            "fraction": observed.fraction,
            "result": observed.position.astype(np.int32),
        }
        words = _ReasonWords(observed.details, self.reasons)
        for pairs in decision.pairs():
            place = slice(self.filled, self.filled + len(pairs.row))
            made = {name: column[place] for name, column in self.made.items()}
            for sources, at in ((self.of_entry, pairs.entry), (of_row, pairs.row)):
                for name, source in sources.items():
                    source.take(at, out=made[name], mode="clip")
            for name in ("verdict", "near", "settled", "low", "high"):
                made[name][:] = getattr(pairs, name)
            per = pick(self.per, pairs.entry)
            np.divide(pairs.low, per, out=made["ratio_low"])
            np.divide(pairs.high, per, out=made["ratio_high"])
            codes = words.codes(pick(observed.detail, pairs.row), pairs.reasons)
            if len(self.reasons) > np.iinfo(self.made["reasons"].dtype).max:
                self.made["reasons"] = self.made["reasons"].astype(np.int32)
            self.made["reasons"][place] = codes
            self.filled = place.stop

    def frame(self, keys: pd.Index) -> pd.DataFrame:
        """The frame, with the samples' keys as the results have them."""
        prepared, made = self.prepared, {name: part[: self.filled] for name, part in self.made.items()}
        words: dict[str, pd.Index] = {
            "sample": keys,
            "analyte": pd.Index(prepared.analytes),
            "authority": pd.Index([table.authority for table in prepared.tables]),
            "limit": pd.Index([row.id for row in prepared.limits]),
            "reasons": pd.Index(list(self.reasons), dtype="str"),
        }
        data: dict[str, Any] = dict(made)
        for column in schema.columns("comparisons"):
            if column.kind == "text":
                stated = pd.CategoricalDtype(words[column.name]) if column.name in words else column.dtype
                data[column.name] = pd.Categorical.from_codes(made[column.name], dtype=stated, validate=False)
        data["result"] = pd.arrays.IntegerArray(made["result"], made["result"] < 0)
        return schema.conform("comparisons", data, self.filled)


class _ReasonWords:
    """Codes of reasons: each distinct set of them is worded once, when it is first met."""

    def __init__(self, details: Sequence[str], known: dict[str, int]) -> None:
        self.details = details
        self.known = known  # the code of each text, over all decisions
        self.place = np.full(1 << len(REASONS), _NEW, dtype=np.int32)  # of each set of reasons in the table's rows
        self.sets: list[int] = []
        self.table = np.full((_SETS, len(details)), _NEW, dtype=np.int32)

    def codes(self, detail: NDArray[np.int32], bits: NDArray[np.int32]) -> NDArray[np.int32]:
        """The code of each pair's reasons; -1 where there are none."""
        for new in np.unique(bits[pick(self.place, bits) == _NEW]).tolist():
            self.place[new] = len(self.sets)
            self.sets.append(new)
        if len(self.sets) > len(self.table):
            more = np.full((len(self.sets), len(self.details)), _NEW, dtype=np.int32)
            self.table = np.concatenate([self.table, more])
        at = pick(self.place, bits) * np.int32(len(self.details)) + detail
        flat = self.table.reshape(-1)
        for new in np.unique(at[pick(flat, at) == _NEW]).tolist():
            row, place = divmod(new, len(self.details))
            text = reasons_text(self.details[place], self.sets[row])
            flat[new] = self.known.setdefault(text, len(self.known)) if text else -1
        return pick(flat, at)


def _code_type(words: int) -> type[np.integer]:
    """The type in which pandas keeps the codes of so many categories."""
    return np.int8 if words < 1 << 7 else np.int16 if words < 1 << 15 else np.int32
