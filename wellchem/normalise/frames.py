"""What was understood of a reading, as the frames of wellchem.schema."""

from __future__ import annotations

from typing import Any, cast

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem import schema
from wellchem.normalise.heads import ROLES
from wellchem.normalise.meanings import Meanings
from wellchem.normalise.numbers import CENSORING
from wellchem.normalise.reasons import BESIDE, OK, REASONS
from wellchem.normalise.results import UNREAD, Normalised
from wellchem.reading.arrow_texts import ArrowTexts
from wellchem.reading.combinations import grouped
from wellchem.reading.grid import Grid
from wellchem.reading.rows import Coded, PrintedRows, concatenated, of, texts_of


def results_frame(made: Normalised) -> pd.DataFrame:
    """The results frame, quality control with its role, in the order of the source."""
    rows = made.reading.rows
    keep = _in_order(rows, made.reason == OK)
    heads, sample = made.heads, rows.sample[keep]
    key, pairs = _pairs(made, keep)
    meanings = Meanings(made.meanings.group[keep], made.meanings.each)
    data: dict[str, Any] = {
        "sample": pd.Categorical.from_codes(key, categories=_keys(made, pairs)),
        "sample_id": _categorical(heads.printed.sample_id.take(sample)),
        "site": _categorical(heads.printed.site.take(sample)),
        "point": _fixed("point", heads.point.take(sample)),
        "collected": heads.collected[sample],
        "role": _codes("role", made.role[keep], ROLES),
        "analyte": _categorical(meanings.texts(lambda one: one.analyte)),
        "fraction": _fixed("fraction", meanings.texts(lambda one: one.fraction)),
        "basis": _categorical(meanings.texts(lambda one: one.unit.basis)),
        "censoring": _codes("censoring", made.bounds.censoring[keep], CENSORING),
        "value": made.bounds.value[keep],
        "low": made.bounds.low[keep],
        "high": made.bounds.high[keep],
        "unit": _categorical(meanings.texts(lambda one: one.unit.unit)),
        "uncertainty": made.uncertainty[keep],
        "reporting_limit": made.reporting[keep],
        "detection_limit": made.detection[keep],
        "qualifiers": _categorical(made.qualifiers.take(keep)),
        "method": _categorical(rows.method.take(keep)),
        "measured": _fixed("measured", meanings.texts(lambda one: one.measured)),
        "assumptions": _categorical(made.assumptions.take(keep)),
        "printed_name": _categorical(rows.name.take(keep)),
        "printed_value": _categorical(rows.value.or_else(rows.presence).take(keep)),
        "printed_unit": _categorical(made.printed_unit.take(keep)),
        **_places(made, rows.grid[keep], rows.row[keep], rows.column[keep]),
    }
    return schema.conform("results", data, len(sample))


def _in_order(rows: PrintedRows, mask: NDArray[np.bool_]) -> Any:
    """An index of these rows in the order of the source; the whole, uncopied, where that is all of them."""
    if len(rows) and (rows.grid == rows.grid[0]).all() and (rows.row[1:] > rows.row[:-1]).all():
        return slice(None) if mask.all() else np.flatnonzero(mask)
    keep = np.flatnonzero(mask)
    return keep[np.lexsort((rows.column[keep], rows.row[keep], rows.grid[keep]))]


def samples_frame(made: Normalised) -> pd.DataFrame:
    """The samples frame: every sample that a result belongs to."""
    keep = np.flatnonzero(made.outcome != UNREAD)
    _, pairs = _pairs(made, keep)
    numbers, roles = pairs // len(ROLES), pairs % len(ROLES)
    heads = made.heads
    data: dict[str, Any] = {
        "sample": pd.Categorical.from_codes(np.arange(len(pairs)), categories=_keys(made, pairs)),
        "role": _codes("role", roles.astype(np.int8), ROLES),
        "point": _fixed("point", heads.point.take(numbers)),
        "collected_timed": heads.collected_timed[numbers],
        "source": pd.Categorical([made.reading.source.name] * len(numbers)),
    }
    for name in ("sample_id", "site", "laboratory", "preserved", "matrix", "aquifer"):
        data[name] = _categorical(getattr(heads.printed, name).take(numbers))
    for name in ("collected", "received", "analysed", "latitude", "longitude", "well_depth"):
        data[name] = getattr(heads, name)[numbers]
    return schema.conform("samples", data, len(numbers))


def unread_frame(made: Normalised, suggest: dict[str, tuple[str, ...]]) -> pd.DataFrame:
    """The unread frame: rows of tables first, then what stood outside every table. `suggest` gives nearest names."""
    rows = made.reading.rows
    keep = np.flatnonzero((made.reason != OK) & (made.reason != BESIDE))
    loose = made.reading.loose
    names = rows.name.take(keep)
    parts = (names, rows.value.or_else(rows.presence).take(keep), made.printed_unit.take(keep))
    group, firsts = grouped(*parts)
    columns = [part.take(firsts).plain() for part in parts]
    printed = [" ".join(filter(None, row)) for row in zip(*columns, strict=True)]
    near = Coded(names.codes, texts_of([";".join(suggest.get(str(name), ())) for name in names.texts]))
    known = _dtype("unread", "reason").categories
    number = known.get_indexer([str(reason) for reason in REASONS]).astype(np.int8)
    beside = known.get_indexer([str(one.reason) for one in loose]).astype(np.int8)
    data: dict[str, Any] = {
        "reason": pd.Categorical.from_codes(
            np.concatenate([number[made.reason[keep]], beside]), dtype=_dtype("unread", "reason")
        ),
        "text": _categorical(_with(of(printed).take(group), [one.text for one in loose])),
        "detail": _categorical(_with(made.detail.take(keep), [one.detail for one in loose])),
        "suggestions": _categorical(_with(near, [""] * len(loose))),
        **_places(
            made,
            np.concatenate([rows.grid[keep], np.array([one.grid for one in loose], np.int32)]),
            np.concatenate([rows.row[keep], np.array([one.row for one in loose], np.int32)]),
            np.concatenate([rows.column[keep], np.array([one.column for one in loose], np.int32)]),
        ),
    }
    return schema.conform("unread", data, len(keep) + len(loose))


def _with(column: Coded, more: list[str]) -> Coded:
    """A column and further texts after it, over the texts that are used."""
    return (concatenated([column, of(more)]) if more else column).compact()


def _pairs(made: Normalised, keep: Any) -> tuple[NDArray[np.int32], NDArray[np.int64]]:
    """Which of the pairs of a sample and a role each row has, and those pairs in the order of the samples."""
    pair = made.reading.rows.sample[keep].astype(np.int64) * len(ROLES) + made.role[keep]
    pairs = np.flatnonzero(np.bincount(pair))
    place = np.zeros(int(pairs[-1]) + 1 if len(pairs) else 0, np.int32)
    place[pairs] = np.arange(len(pairs), dtype=np.int32)
    return place[pair], pairs


def _keys(made: Normalised, pairs: NDArray[np.int64]) -> Any:
    """Keys of samples, one for each role that a sample's results have; its own role is not said."""
    samples, roles = pairs // len(ROLES), pairs % len(ROLES)
    keys: Any = f"{made.reading.source.name}#" + cast(Any, pd.array(samples + 1).astype("str"))
    for odd in np.flatnonzero(made.heads.role[samples] != roles).tolist():
        keys[odd] = f"{keys[odd]}/{ROLES[roles[odd]]}"
    return _distinct(keys)


def _categorical(column: Coded) -> pd.Categorical:
    codes, texts = column.codes, column.texts
    if not column.distinct:
        place: dict[str, int] = {}
        to = [place.setdefault(text, len(place)) if text else -1 for text in texts]
        codes, texts = np.array([*to, -1], np.int32).take(codes), texts_of(place)
    return pd.Categorical.from_codes(codes, categories=_distinct(texts))


def _distinct(texts: Any) -> Any:
    """Categories that are known to differ: pandas would hash every text again, which costs more than all else of it."""
    held = pd.array(texts.held, dtype="str") if isinstance(texts, ArrowTexts) else texts
    categories: Any = pd.Index(held, dtype="str")
    categories._cache["is_unique"] = True
    return categories


def _dtype(frame: str, name: str) -> Any:
    return next(column for column in schema.columns(frame) if column.name == name).dtype


def _fixed(name: str, column: Coded) -> pd.Categorical:
    dtype = _dtype("results", name)
    to = np.array([dtype.categories.get_loc(str(text)) if str(text) else -1 for text in column.texts] + [-1], np.int8)
    return pd.Categorical.from_codes(to.take(column.codes), dtype=dtype)


def _codes(name: str, codes: NDArray[np.int8], words: tuple[Any, ...]) -> pd.Categorical:
    dtype = _dtype("results", name)
    to = np.array([dtype.categories.get_loc(str(word)) for word in words], np.int8)
    return pd.Categorical.from_codes(to.take(codes), dtype=dtype)


def _places(
    made: Normalised, grids: NDArray[np.int32], rows: NDArray[np.int32], columns: NDArray[np.int32]
) -> dict[str, Any]:
    """Source, page, sheet, row and column of cells, counted as the source counts them."""
    every: tuple[Grid, ...] = made.reading.source.grids
    count = len(grids)

    def counted(numbers: list[NDArray[np.int32]], at: NDArray[np.int32]) -> Any:
        starts = np.cumsum([0, *map(len, numbers)])
        found = np.concatenate(numbers).take(starts.take(grids) + at) if count else np.empty(0, np.int32)
        return pd.arrays.IntegerArray(found, np.zeros(count, bool))

    pages = np.array([grid.page or 0 for grid in every] or [0], np.int32).take(grids)
    sheets = of([grid.sheet or "" for grid in every] or [""]).take(grids)
    return {
        "source": pd.Categorical.from_codes(
            np.zeros(count, np.int8), categories=pd.Index([made.reading.source.name], dtype="str")
        ),
        "page": pd.arrays.IntegerArray(pages, pages == 0),
        "sheet": _categorical(sheets),
        "row": counted([grid.rows for grid in every], rows),
        "column": counted([grid.columns_at for grid in every], columns),
    }
