"""The one statement of every frame: its columns, their types and fixed categories, an empty frame, JSON Schemas.

Text columns are categoricals (dictionary-coded). `sample` is a text key, unique over all files of one reading, so that
frames split on it can be worked piece by piece and put together again.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property
from importlib import import_module
from typing import TYPE_CHECKING, Any

import pandas as pd

from wellchem.errors import FrameError
from wellchem.models.codes import (
    Censoring,
    Certainty,
    CheckStatus,
    Fraction,
    LimitKind,
    Measured,
    ProblemKind,
    Role,
    SamplingPoint,
    UnreadReason,
    Urgency,
    Verdict,
)

if TYPE_CHECKING:
    from wellchem.models.sample import Sample

VERSION = "1.0"


@dataclass(frozen=True)
class Column:
    """One column: its name, its kind (`text`, `float`, `int`, `bool`, `time`), its fixed categories, its meaning."""

    name: str
    kind: str
    meaning: str
    categories: type[StrEnum] | None = None

    def empty(self, length: int = 0) -> pd.Series:
        """A series of this column's type, all missing (False for `bool`)."""
        if self.kind == "text":
            return pd.Series(pd.Categorical([None] * length, dtype=self.dtype), name=self.name)
        if self.kind == "bool":
            return pd.Series([False] * length, dtype=bool, name=self.name)
        return pd.Series([None] * length, dtype=self.dtype, name=self.name)

    @cached_property
    def dtype(self) -> Any:
        """The pandas type; for open text a categorical of whatever strings there are."""
        if self.kind == "text":
            words = [member.value for member in self.categories] if self.categories else []
            return pd.CategoricalDtype(pd.Index(words, dtype="str"))
        return {"float": "float64", "int": "Int32", "bool": "bool", "time": "datetime64[s]"}[self.kind]


def _text(name: str, meaning: str, categories: type[StrEnum] | None = None) -> Column:
    return Column(name, "text", meaning, categories)


def _float(name: str, meaning: str) -> Column:
    return Column(name, "float", meaning)


_KEY = _text("sample", "key of the sample, unique over all files of one reading")
_PLACE = (
    _text("source", "file, stream or name of the source"),
    Column("page", "int", "page, from 1"),
    _text("sheet", "sheet of a workbook"),
    Column("row", "int", "row of the source or of the page's grid, from 1"),
    Column("column", "int", "column of the source or of the page's grid, from 1"),
)

FRAMES: dict[str, tuple[Column, ...]] = {
    "results": (
        _KEY,
        _text("sample_id", "the laboratory's or the household's name of the sample"),
        _text("site", "well or site"),
        _text("point", "sampling point", SamplingPoint),
        Column("collected", "time", "date and time of collection; midnight where no time is printed"),
        _text("role", "routine water, quality control or prediction", Role),
        _text("analyte", "key of the analyte in the vocabulary"),
        _text("fraction", "fraction as printed, or missing", Fraction),
        _text("basis", "chemical form that the number counts"),
        _text("censoring", "how the printed value bounds the true one", Censoring),
        _float("value", "the number, or the bound itself where censored"),
        _float("low", "low end; missing where nothing is known"),
        _float("high", "high end; infinite for an open bound, missing where nothing is known"),
        _text("unit", "canonical unit"),
        _float("uncertainty", "printed uncertainty, in the canonical unit"),
        _float("reporting_limit", "reporting or quantification limit, in the canonical unit"),
        _float("detection_limit", "detection limit, in the canonical unit"),
        _text("qualifiers", "qualifiers as codes joined by ;"),
        _text("method", "method as printed"),
        _text("measured", "in the field or in the laboratory", Measured),
        _text("assumptions", "what was supposed: sorted code=value joined by ;"),
        _text("printed_name", "name as printed"),
        _text("printed_value", "value as printed"),
        _text("printed_unit", "unit as printed"),
        *_PLACE,
    ),
    "samples": (
        _KEY,
        _text("sample_id", "name of the sample"),
        _text("site", "well or site"),
        _text("point", "sampling point", SamplingPoint),
        _text("role", "routine water, quality control or prediction", Role),
        Column("collected", "time", "collection"),
        Column("collected_timed", "bool", "whether the time of collection was printed with its date"),
        Column("received", "time", "receipt by the laboratory"),
        Column("analysed", "time", "analysis"),
        _text("laboratory", "name of the laboratory"),
        _text("preserved", "preservation as printed"),
        _text("matrix", "matrix as printed"),
        _float("latitude", "degrees north"),
        _float("longitude", "degrees east"),
        _float("well_depth", "m"),
        _text("aquifer", "aquifer as printed"),
        _text("source", "file, stream or name of the source"),
    ),
    "unread": (
        _text("reason", "why it did not become a result", UnreadReason),
        _text("text", "what was printed"),
        _text("detail", "what exactly was wrong"),
        _text("suggestions", "nearest known names joined by ;"),
        *_PLACE,
    ),
    "failed": (
        _text("source", "file that could not be read"),
        _text("error", "kind of error"),
        _text("message", "what was wrong and what to do"),
    ),
    "comparisons": (
        _KEY,
        _text("analyte", "analyte of the limit"),
        _text("fraction", "fraction of the result", Fraction),
        _text("authority", "authority of the limit"),
        _text("limit", "id of the limit, for wellchem.limits.lookup and citations"),
        _text("kind", "what the limit protects", LimitKind),
        _text("verdict", "above, below, within, undecided", Verdict),
        Column("near", "bool", "decided within 80-100 % of a health limit, or uncertainty spans it"),
        _float("low", "low end of what was compared, in the canonical unit"),
        _float("high", "high end"),
        _float("minimum", "the limit's minimum, in the canonical unit"),
        _float("maximum", "the limit's maximum, in the canonical unit"),
        _float("ratio_low", "low end divided by the maximum"),
        _float("ratio_high", "high end divided by the maximum"),
        _text("reasons", "why undecided, and notes, as codes joined by ;"),
        Column("settled", "bool", "whether the limit's condition is settled; where not, the row decides nothing"),
        Column("on", "time", "the date compared with"),
        Column("result", "int", "position of the result in the results frame; missing for groups"),
    ),
    "checks": (
        _KEY,
        _text("code", "check"),
        _text("status", "outcome", CheckStatus),
        _float("low", "low end of the figure that decides"),
        _float("high", "high end"),
        _text("unit", "unit of the figure"),
        _text("text", "what was found"),
    ),
    "problems": (
        _KEY,
        _text("code", "problem"),
        _text("kind", "what it touches", ProblemKind),
        _text("certainty", "how sure", Certainty),
        _text("urgency", "how soon", Urgency),
        _text("evidence", "analytes and limits it rests on, joined by ;"),
    ),
}


def columns(frame: str) -> tuple[Column, ...]:
    """Columns of one of the frames, in order. Raises KeyError for an unknown frame."""
    return FRAMES[frame]


def empty(frame: str) -> pd.DataFrame:
    """An empty frame with the columns and types that the schema states."""
    return pd.DataFrame({column.name: column.empty() for column in FRAMES[frame]})


def conform(frame: str, data: dict[str, Any], length: int) -> pd.DataFrame:
    """A frame of the schema from arrays or series by column; what is not given is missing.

    Raises FrameError for a column that the schema does not have.
    """
    known = {column.name for column in FRAMES[frame]}
    if extra := sorted(set(data) - known):
        raise FrameError(f"the {frame} frame has no column {', '.join(extra)}")
    made: dict[str, Any] = {}
    for column in FRAMES[frame]:
        given = data.get(column.name)
        if given is None:
            made[column.name] = column.empty(length)
        elif column.kind == "text" and column.categories is None:
            made[column.name] = (
                given if isinstance(getattr(given, "dtype", None), pd.CategoricalDtype) else pd.Categorical(given)
            )
        else:
            made[column.name] = pd.Series(given, copy=False).astype(column.dtype).array
    return pd.DataFrame(made, copy=False)


def check(data: pd.DataFrame, frame: str, needed: Iterable[str] | None = None) -> pd.DataFrame:
    """The frame itself, where it has the needed columns (default: all) in usable types. Raises FrameError otherwise.

    Plain text columns are taken as they are: a frame that came back from CSV or Parquet is welcome.
    """
    if not isinstance(data, pd.DataFrame):
        raise FrameError(
            f"a frame of {frame} is needed, not {type(data).__name__}: `report.to_frame()` is one, and so is "
            "`wellchem.schema.results_frame([sample])`"
        )
    stated = {column.name: column for column in FRAMES[frame]}
    wanted = list(stated) if needed is None else list(needed)
    if missing := [name for name in wanted if name not in data.columns]:
        raise FrameError(f"the {frame} frame lacks the column {', '.join(missing)}")
    for name in wanted:
        column, series = stated[name], data[name]
        numeric = pd.api.types.is_numeric_dtype(series.dtype) or bool(series.isna().all())
        if column.kind in ("float", "int") and not numeric:
            raise FrameError(f"column {name} of the {frame} frame holds {series.dtype}, not numbers")
        if column.kind == "time" and not (
            pd.api.types.is_datetime64_any_dtype(series.dtype) or bool(series.isna().all())
        ):
            raise FrameError(f"column {name} of the {frame} frame holds {series.dtype}, not dates")
        if column.categories is not None:
            known = {member.value for member in column.categories}
            seen = series.cat.categories if isinstance(series.dtype, pd.CategoricalDtype) else series.dropna().unique()
            if unknown := sorted({str(word) for word in seen} - known):
                raise FrameError(
                    f"column {name} of the {frame} frame holds {', '.join(unknown)}, not one of {sorted(known)}"
                )
    return data


def results_frame(samples: Sequence[Sample]) -> pd.DataFrame:
    """The results frame of samples, in order."""
    rows = [(sample, result) for sample in samples for result in sample.results]
    data: dict[str, list[Any]] = {column.name: [] for column in FRAMES["results"]}
    plain = ("analyte", "fraction", "basis", "censoring", "value", "low", "high", "unit", "uncertainty")
    more = ("reporting_limit", "detection_limit", "method", "measured")
    for sample, result in rows:
        data["sample"].append(sample.key)
        data["sample_id"].append(sample.id or None)
        for name in ("site", "point", "collected", "role"):
            data[name].append(getattr(sample, name))
        for name in (*plain, *more):
            data[name].append(getattr(result, name))
        data["qualifiers"].append(";".join(result.qualifiers) or None)
        data["assumptions"].append(";".join(sorted(map(str, result.assumptions))) or None)
        for name in ("name", "value", "unit"):
            data[f"printed_{name}"].append(getattr(result.printed, name) or None)
        for name in ("source", "page", "sheet", "row", "column"):
            data[name].append(getattr(result.origin, name) if result.origin else None)
    data["collected"] = list(pd.to_datetime(pd.Series(data["collected"], dtype="object")))
    return conform("results", data, len(rows))


def json_schemas() -> dict[str, Any]:
    """JSON Schemas of the models that the library writes: Report, Interpretation, Sample, Limit, Household."""
    places = {
        "Report": "sample",
        "Sample": "sample",
        "Interpretation": "finding",
        "Limit": "limits",
        "Household": "household",
    }
    generator = import_module("wellchem.models.base").WrittenSchema
    return {
        name: getattr(import_module(f"wellchem.models.{module}"), name).model_json_schema(schema_generator=generator)
        for name, module in places.items()
    }
