"""Values of printed rows: the decimal sign of each table, the number of each distinct text, the unit in its cell."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.normalise.numbers import NOT_REPORTED, Numbers, ambiguous, decimal_of, numbers_of, stacked
from wellchem.reading.rows import Coded, PrintedRows, few, texts_of
from wellchem.reading.tables import Reading
from wellchem.vocabulary import Vocabulary

_SHORT = 5  # letters of a word that only a row of organisms makes a value of ("A", "Yes", "Nein")


def decimals_of(reading: Reading, vocabulary: Vocabulary) -> tuple[dict[int, str | None], NDArray[np.bool_]]:
    """The decimal sign of each table, and the rows for whose number it had to be supposed."""
    rows = reading.rows
    printed = ~rows.native & (rows.value.codes >= 0)
    tables = [int(table) for table in np.flatnonzero(np.bincount(rows.table))]
    found: dict[int, str | None] = {}
    unsure: list[int] = []
    for table in tables:
        if len(tables) > 1 or rows.native.any():
            texts = rows.value.texts[_used(rows.value, printed & (rows.table == table))]
        else:
            texts = rows.value.texts
        sign, supposed = decimal_of(vocabulary, texts, None)
        found[table] = sign
        if supposed:
            unsure.append(int(table))
    if unsure:
        sure = {sign for table, sign in found.items() if table not in unsure and sign and _has_sign(reading, table)}
        usual = sure.pop() if len(sure) == 1 else "," if reading.source.delimiter == ";" else "."
        found.update(dict.fromkeys(unsure, usual))
    flagged = np.zeros(len(rows), bool)
    if unsure:
        odd = np.array([ambiguous(str(text)) for text in rows.value.texts], bool)
        flagged = rows.value.lookup(odd, False) & np.isin(rows.table, unsure) & printed
    return found, flagged


def _used(column: Coded, rows: NDArray[np.bool_]) -> NDArray[np.int64]:
    """Codes of the texts that some rows have, in order."""
    return np.flatnonzero(np.bincount(column.codes[rows & (column.codes >= 0)], minlength=len(column.texts)))


def _has_sign(reading: Reading, table: int) -> bool:
    rows = reading.rows
    used = _used(rows.value, rows.table == table)
    return any("." in text or "," in text for text in (str(rows.value.texts[code]) for code in used[:500]))


def values_of(
    vocabulary: Vocabulary, rows: PrintedRows, decimals: dict[int, str | None], legend: Mapping[str, str]
) -> tuple[Numbers, NDArray[np.int64]]:
    """Meanings of the distinct values and which of them each row has; an empty cell is the last one.

    One text means one thing for each decimal sign and, for the letters P and A, for each kind of row. What the report's
    legend says of an abbreviation comes before its usual meaning.
    """
    values = rows.value.or_else(rows.presence)
    texts = _by_legend(vocabulary, values.texts, legend)
    signs = sorted({sign or "" for sign in decimals.values()} | {"."})
    if len(signs) == 1:
        numbers = _with_empty(numbers_of(vocabulary, texts, ".", presence=False))
        which = np.where(values.codes >= 0, values.codes, len(texts)).astype(np.int64)
    else:
        parts = [numbers_of(vocabulary, texts, sign or None, presence=False) for sign in signs]
        numbers = _with_empty(stacked(parts))
        sign_of = {table: signs.index(sign or "") for table, sign in decimals.items()}
        block = np.array([sign_of.get(table, 0) for table in range(max(sign_of, default=0) + 1)] or [0])[rows.table]
        block = np.where(rows.native, signs.index("."), block)
        which = np.where(values.codes >= 0, values.codes + block * len(texts), len(texts) * len(signs)).astype(np.int64)
    unnumbered = np.flatnonzero(np.isnan(numbers.number[: len(texts)])).tolist()
    none = numbers.noted("none")
    short = {code: str(texts[code]).strip() for code in unnumbered}
    letters = [code for code, text in short.items() if none[code] or len(text) <= _SHORT]
    if letters:
        special = numbers_of(vocabulary, texts[letters], ".", presence=True)
        base = len(numbers.number)
        numbers = stacked([numbers, special])
        places = {code: base + place for place, code in enumerate(letters)}
        counted = _presence_rows(vocabulary, rows)
        for code, place in places.items():
            which[(values.codes == code) & counted] = place
    return _without_brackets(vocabulary, rows, numbers, which)


def _by_legend(vocabulary: Vocabulary, texts: NDArray[Any], legend: Mapping[str, str]) -> NDArray[Any]:
    """The texts with words for the abbreviations that a legend explains by a word for a value ("n.b.", "ND")."""
    words: dict[str, str] = {}
    for code, meaning in legend.items():
        usual, plain = vocabulary.value(code), re.split(r"[(,;]", meaning)[0].strip(" .")
        told = vocabulary.value(plain)
        if usual is not None and told is not None and usual.number is None and told.number is None:
            words[_spelled(code)] = plain
    if not words:
        return texts
    return texts_of([words.get(_spelled(str(text)), str(text)) for text in texts])


def _without_brackets(
    vocabulary: Vocabulary, rows: PrintedRows, numbers: Numbers, which: NDArray[np.int64]
) -> tuple[Numbers, NDArray[np.int64]]:
    """`ND (0.3)` without its number in tables where a number in brackets stands behind results too.

    What these are is not printed: limits of law as well as of the laboratory.
    """
    behind = numbers.noted("number_behind")
    if not behind.any():
        return numbers, which
    told = np.isin(rows.table, np.unique(rows.table[behind[which]])) & numbers.noted("bracketed_bound")[which]
    bare = numbers_of(vocabulary, texts_of(["ND"]), ".", presence=False)
    return stacked([numbers, bare]), np.where(told, len(numbers.number), which)


def _spelled(code: str) -> str:
    return code.casefold().replace(" ", "")


def _presence_rows(vocabulary: Vocabulary, rows: PrintedRows) -> NDArray[np.bool_]:
    """Rows of organisms, where a letter can mean present or absent."""
    counted = np.zeros(len(rows.name.texts), bool)
    for code, text in enumerate(rows.name.texts):
        found = vocabulary.name(str(text))
        counted[code] = found is not None and vocabulary.analytes[found.analyte].quantity == "count"
    return rows.name.lookup(counted, False)


def _with_empty(numbers: Numbers) -> Numbers:
    """The same, with a last entry for an empty cell."""
    nothing = np.array([np.nan])
    empty = Numbers(
        np.array([False]), nothing, np.array([NOT_REPORTED], np.int8), nothing, nothing, nothing, np.zeros(1, np.int8),
        nothing, nothing,
        *(few(1, {}) for _ in range(5)),
    )  # fmt: skip
    return stacked([numbers, empty])


def in_cell(inside: Coded, beside: Coded, which: NDArray[np.int64]) -> Coded:
    """What each row prints of its unit, form or place: in the value's own cell before the column, header or note."""
    return inside.take(which).or_else(beside) if len(inside.texts) else beside
