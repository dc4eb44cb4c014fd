"""One printed name, one value, one unit at a time: the same vocabulary and conventions as for a report."""

from __future__ import annotations

from typing import Any

import numpy as np

from wellchem.errors import UnitError, UnknownAnalyte, ValueUnread
from wellchem.models.codes import UnreadReason
from wellchem.models.sample import Sample
from wellchem.normalise.frames import results_frame
from wellchem.normalise.models import samples_of
from wellchem.normalise.reasons import OK, REASONS
from wellchem.normalise.results import normalised
from wellchem.reading.grid import Grid, Source, encode
from wellchem.reading.ledger import Ledger
from wellchem.reading.rows import (
    HEAD_FIELDS,
    TEXT_FIELDS,
    PrintedRows,
    SampleHeads,
    constant,
    of,
)
from wellchem.reading.tables import Reading
from wellchem.vocabulary import NameMeaning, Vocabulary, bundled

_ERRORS = {
    UnreadReason.UNKNOWN_UNIT: UnitError,
    UnreadReason.UNIT_NOT_OF_ANALYTE: UnitError,
    UnreadReason.UNKNOWN_NAME: UnknownAnalyte,
    UnreadReason.NO_NAME: UnknownAnalyte,
}


def convert(value: float, unit: str, to: str, *, analyte: str, vocabulary: Vocabulary | None = None) -> float:
    """`value` in another unit of the same analyte: `convert(12.6, "gpg", "mg/L", analyte="total_hardness")`.

    `unit` and `to` are printed units, with their chemical form where they have one ("mg/L as N"). Raises
    UnknownAnalyte where `analyte` is no key or name of the vocabulary, UnitError where a unit cannot be its unit.
    """
    words = vocabulary or bundled()
    name = _analyte(words, analyte)
    source, target = (words.unit(text, name.analyte, name) for text in (unit, to))
    for text, meaning in ((unit, source), (to, target)):
        if meaning.problem is not None:
            raise UnitError(f"{text!r} for {name.analyte}: {meaning.detail or meaning.problem}")
    return (value * source.factor + source.offset - target.offset) / target.factor


def resolve(name: str, *, code_list: str | None = None, vocabulary: Vocabulary | None = None) -> NameMeaning:
    """What a printed name means: `resolve("NO3-N")` is nitrate, as N. Raises UnknownAnalyte with the nearest names."""
    return _known(vocabulary or bundled(), name, code_list)


def _known(words: Vocabulary, name: str, code_list: str | None) -> NameMeaning:
    found = words.name(name, code_list=code_list)
    if found is None:
        near = words.suggest(name)
        hint = f" Nearest known names: {', '.join(near)}." if near else ""
        raise UnknownAnalyte(f"{name!r} is not a known name of an analyte.{hint}")
    return found


def _analyte(words: Vocabulary, analyte: str) -> NameMeaning:
    if analyte in words.analytes:
        return NameMeaning(analyte)
    return _known(words, analyte, None)


def sample_from_values(values: dict[str, Any], vocabulary: Vocabulary | None = None, **about: Any) -> Sample:
    """A sample from printed names and values, through the same rooms as a report (see Sample.from_values)."""
    words = vocabulary or bundled()
    texts = [_text(value) for value in values.values()]
    native = np.array([isinstance(value, int | float) for value in values.values()], bool)
    reading = _reading(list(values), texts, native)
    made = normalised(reading, words)
    for row, (name, text) in enumerate(zip(values, texts, strict=True)):
        if made.reason[row] == OK:
            continue
        reason = REASONS[made.reason[row]]
        if reason in (UnreadReason.UNKNOWN_NAME, UnreadReason.NO_NAME):
            _known(words, name, None)
        why = made.detail[row] or str(reason).replace("_", " ")
        raise _ERRORS.get(reason, ValueUnread)(f"{name} {text}: {why}")
    sample = samples_of(made, results_frame(made))[0] if values else Sample(key="values#1", source="values")
    return sample.model_validate({**dict(sample), "source": "values", **about})


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, float):
        return f"{value!r}"
    return str(value).strip()


def _reading(names: list[str], texts: list[str], native: np.ndarray[Any, np.dtype[np.bool_]]) -> Reading:
    """A reading of two columns: names and values."""
    count = len(names)
    grid = Grid(
        (encode(names), encode(texts)), count, np.arange(1, count + 1, dtype=np.int32), np.array([1, 2], np.int32)
    )
    source = Source("values", "values", (grid,))
    rows = PrintedRows(
        **{**{field: constant("", count) for field in TEXT_FIELDS}, "name": of(names), "value": of(texts)},
        native=native,
        sample=np.zeros(count, np.int32),
        table=np.zeros(count, np.int32),
        grid=np.zeros(count, np.int32),
        row=np.arange(count, dtype=np.int32),
        column=np.ones(count, np.int32),
    )
    heads = SampleHeads(**{field: constant("", 1) for field in HEAD_FIELDS}, section=np.zeros(1, np.int32))
    return Reading(source, rows, heads, {}, (), (), Ledger(source.grids))


__all__ = ["convert", "resolve", "sample_from_values"]
