"""Printed values to numbers: each distinct text is read once, plain numbers all together."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Censoring
from wellchem.vocabulary import Bound, Vocabulary

Floats = NDArray[np.float64]

CENSORING = tuple(Censoring)
NONE, LEFT, RIGHT, INTERVAL, PRESENT, ABSENT, NOT_REPORTED = range(len(CENSORING))
BOUNDS = (None, Bound.DETECTION, Bound.REPORTING)
_PLAIN = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?").fullmatch
_GROUPED = re.compile(r"[-+]?[1-9]\d{0,2}(?:([.,])\d{3})+").fullmatch


@dataclass(frozen=True, eq=False)
class Numbers:
    """Meanings of distinct texts, one entry a text: the number, how it is censored, what else the cell says.

    `readable` is False where the text is no value at all. `unit`, `qualifiers` and `note` are texts, empty where none.
    """

    readable: NDArray[np.bool_]
    number: Floats
    censoring: NDArray[np.int8]
    low: Floats
    high: Floats
    uncertainty: Floats
    bound: NDArray[np.int8]
    unit: NDArray[Any]
    qualifiers: NDArray[Any]
    note: NDArray[Any]


def decimal_of(vocabulary: Vocabulary, texts: Sequence[str], otherwise: str | None) -> tuple[str | None, bool]:
    """The decimal sign of a table's texts and whether it had to be supposed.

    None where the texts contradict each other: then each text must show its own.
    """
    if not any("," in text for text in texts):
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
    made = Numbers(
        np.zeros(count, bool),
        np.full(count, np.nan),
        np.zeros(count, np.int8),
        np.full(count, np.nan),
        np.full(count, np.nan),
        np.full(count, np.nan),
        np.zeros(count, np.int8),
        np.full(count, "", object),
        np.full(count, "", object),
        np.full(count, "", object),
    )
    plain = np.zeros(count, bool)
    if decimal == ".":
        plain = np.fromiter((_PLAIN(text) is not None for text in texts), bool, count)
        if plain.any():
            values = texts[plain].astype(np.float64)
            for array in (made.number, made.low, made.high):
                array[plain] = values
            made.readable[plain] = True
    for place in np.flatnonzero(~plain):
        _read(vocabulary, made, int(place), str(texts[place]), decimal, presence)
    return made


def _read(vocabulary: Vocabulary, made: Numbers, place: int, text: str, decimal: str | None, presence: bool) -> None:
    found = vocabulary.value(text, decimal=decimal, presence=presence)
    if found is None:
        return
    made.readable[place] = True
    made.censoring[place] = CENSORING.index(found.censoring)
    made.bound[place] = BOUNDS.index(found.bound)
    for array, value in (
        (made.number, found.number),
        (made.low, found.low),
        (made.high, found.high),
        (made.uncertainty, found.uncertainty),
    ):
        if value is not None:
            array[place] = value
    made.unit[place] = found.unit_text
    made.qualifiers[place] = ";".join(found.qualifiers)
    made.note[place] = found.note
