"""Printed values to numbers: each distinct text is read once, plain numbers all together."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Censoring
from wellchem.reading.arrow_texts import ArrowTexts
from wellchem.reading.rows import Coded, any_holds, concatenated, few
from wellchem.vocabulary import Bound, Vocabulary

Floats = NDArray[np.float64]

CENSORING = tuple(Censoring)
NONE, LEFT, RIGHT, INTERVAL, PRESENT, ABSENT, NOT_REPORTED = range(len(CENSORING))
BOUNDS = (None, Bound.DETECTION, Bound.REPORTING)
_PLAIN = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)").fullmatch
_MANY = 10_000
_FIGURES = b"0123456789."
_GROUPED = re.compile(r"[-+]?[1-9]\d{0,2}(?:([.,])\d{3})+").fullmatch


@dataclass(frozen=True, eq=False)
class Numbers:
    """Meanings of distinct texts, one entry a text: the number, how it is censored, what else the cell says.

    `readable` is False where the text is no value at all; `reporting` and `detection` are limits in the cell itself.
    `unit`, `basis`, `measured`, `qualifiers` and `note` are texts; most cells have none.
    """

    readable: NDArray[np.bool_]
    number: Floats
    censoring: NDArray[np.int8]
    low: Floats
    high: Floats
    uncertainty: Floats
    bound: NDArray[np.int8]
    reporting: Floats
    detection: Floats
    unit: Coded
    basis: Coded
    measured: Coded
    qualifiers: Coded
    note: Coded

    def noted(self, *words: str) -> NDArray[np.bool_]:
        """Texts of which one of these is noted."""
        return self.note.lookup(np.array([str(text) in words for text in self.note.texts], bool), False)


def stacked(parts: Sequence[Numbers]) -> Numbers:
    """Numbers of several lots of texts, one after the other."""
    made: dict[str, Any] = {}
    for name in Numbers.__dataclass_fields__:
        pieces = [getattr(part, name) for part in parts]
        made[name] = concatenated(pieces) if isinstance(pieces[0], Coded) else np.concatenate(pieces)
    return Numbers(**made)


def plain_numbers(texts: NDArray[Any], letters: bytes = _FIGURES + b"+-") -> Floats:
    """Texts that are a number and nothing else, made of these letters; NaN for every other text.

    All together: the letters of all texts are looked up at once, and a text without any other letter is a number to
    Python exactly where it is one here.
    """
    made = np.full(len(texts), np.nan)
    if not len(texts):
        return made
    if isinstance(texts, ArrowTexts):
        together, starts = texts.letters()
    else:
        together = np.frombuffer(("\0".join(texts) + "\0").encode("utf-8", "surrogatepass"), np.uint8)
        ends = np.flatnonzero(together == 0)
        if len(ends) != len(texts):  # a text that holds the sign that parts them here
            return np.array([float(text) if _PLAIN(text) else np.nan for text in texts], np.float64)
        starts = np.concatenate(([0], ends[:-1] + 1))
    other = np.ones(256, bool)
    other[np.frombuffer(letters + b"\0", np.uint8)] = False
    candidates = np.flatnonzero(~np.logical_or.reduceat(other[together], starts))
    chosen = texts[candidates]
    try:
        made[candidates] = _floats(chosen)
    except ValueError:
        made[candidates] = [float(text) if _PLAIN(text) else np.nan for text in chosen]
    return made


def _floats(texts: NDArray[Any]) -> Floats:
    """Texts as numbers; of many of them pyarrow, where it is installed, makes the same in a third of numpy's time.

    Raises ValueError where one is no number.
    """
    if isinstance(texts, ArrowTexts):
        return texts.floats()
    if len(texts) > _MANY:
        try:
            import pyarrow as pa
        except ImportError:
            pass
        else:
            return ArrowTexts(pa.array(texts, pa.string())).floats()
    return texts.astype(np.float64)


def decimal_of(vocabulary: Vocabulary, texts: NDArray[Any], otherwise: str | None) -> tuple[str | None, bool]:
    """The decimal sign of a table's texts and whether it had to be supposed.

    None where the texts contradict each other: then each text must show its own.
    """
    if not any_holds(texts, ","):
        return ".", False
    points = commas = 0
    for text in texts:
        point, comma = vocabulary.decimal_votes(text)
        points += point
        commas += comma
    if points and commas:
        return None, False
    if points or commas:
        return (".", False) if points else (",", False)
    return otherwise or ".", True


def ambiguous(text: str) -> bool:
    """Whether a number reads differently with a decimal comma: `1,234`."""
    return _GROUPED(text.strip("<> ")) is not None


def numbers_of(vocabulary: Vocabulary, texts: NDArray[Any], decimal: str | None, presence: bool) -> Numbers:
    """What each distinct text says. `presence` lets the letters P and A mean present and absent."""
    count = len(texts)
    number = plain_numbers(texts) if decimal == "." else np.full(count, np.nan)
    readable = ~np.isnan(number)
    censoring = np.zeros(count, np.int8)
    low, high = number.copy(), number.copy()
    if decimal == ".":
        for sign, kind in vocabulary.compared.items():
            mine = np.flatnonzero(~readable)
            mine = mine[[str(text).startswith(sign) for text in texts[mine]]]
            bare = np.array([str(text)[len(sign) :].lstrip(" ") for text in texts[mine]], object)
            bounds = plain_numbers(bare, _FIGURES)
            mine, bounds = mine[~np.isnan(bounds)], bounds[~np.isnan(bounds)]
            number[mine], readable[mine], censoring[mine] = bounds, True, CENSORING.index(kind)
            low[mine], high[mine] = (0.0, bounds) if kind is Censoring.LEFT else (bounds, np.inf)
    uncertainty, bound = np.full(count, np.nan), np.zeros(count, np.int8)
    reporting, detection = np.full(count, np.nan), np.full(count, np.nan)
    unit: dict[int, str] = {}
    basis: dict[int, str] = {}
    measured: dict[int, str] = {}
    qualifiers: dict[int, str] = {}
    note: dict[int, str] = {}
    for place in np.flatnonzero(~readable).tolist():
        found = vocabulary.value(str(texts[place]), decimal=decimal, presence=presence)
        if found is None:
            continue
        readable[place] = True
        censoring[place] = CENSORING.index(found.censoring)
        bound[place] = BOUNDS.index(found.bound)
        for array, value in (
            (number, found.number),
            (low, found.low),
            (high, found.high),
            (uncertainty, found.uncertainty),
            (reporting, found.reporting_limit),
            (detection, found.detection_limit),
        ):
            if value is not None:
                array[place] = value
        for texts_of_kind, text in (
            (unit, found.unit_text),
            (basis, found.basis),
            (measured, str(found.measured or "")),
            (qualifiers, ";".join(found.qualifiers)),
            (note, found.note),
        ):
            if text:
                texts_of_kind[place] = text
    return Numbers(
        readable,
        number,
        censoring,
        low,
        high,
        uncertainty,
        bound,
        reporting,
        detection,
        few(count, unit),
        few(count, basis),
        few(count, measured),
        few(count, qualifiers),
        few(count, note),
    )
