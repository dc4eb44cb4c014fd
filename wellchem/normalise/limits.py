"""Printed limits of detection and of reporting, and uncertainties, in canonical units."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.normalise.meanings import Meanings
from wellchem.normalise.numbers import Floats, Numbers, decimal_of, numbers_of
from wellchem.reading.rows import Coded
from wellchem.vocabulary import Vocabulary


@dataclass(frozen=True, eq=False)
class Limits:
    """Reads limits of detection and reporting into canonical units."""

    vocabulary: Vocabulary
    meanings: Meanings
    decimals: dict[int, str | None]

    def read(self, texts: Coded, units: Coded) -> Floats:
        """Numbers of the limits, NaN where none is printed or its unit is not understood."""
        count = len(texts)
        if not (texts.codes >= 0).any():
            return np.full(count, np.nan)
        numbers = self._numbers(texts)
        inside = Coded(np.append(numbers.unit.codes, -1)[texts.codes].astype(np.int32), numbers.unit.texts)
        unit = inside.or_else(units)
        factor, offset = self._limit_factor(unit)
        return np.append(numbers.number, np.nan)[texts.codes] * factor + offset

    def inside(self, beside: Floats, inside: Floats, which: NDArray[np.int64]) -> Floats:
        """Limits of a column, else those printed in the value's own cell (`inside`, by distinct value, in its unit)."""
        if np.isnan(inside).all():
            return beside
        factor, offset = (
            self.meanings.floats(lambda one: one.unit.factor),
            self.meanings.floats(lambda one: one.unit.offset),
        )
        return np.where(np.isnan(beside), inside[which] * factor + offset, beside)

    def spread(self, texts: Coded, inside: Floats, which: NDArray[np.int64]) -> Floats:
        """Uncertainties: of the value's own cell (`inside`, by distinct value), else of their column."""
        count = len(texts)
        own = ~np.isnan(inside)
        if not own.any() and not (texts.codes >= 0).any():
            return np.full(count, np.nan)
        beside = np.abs(np.append(self._numbers(texts).number, np.nan)[texts.codes])
        return np.where(own[which], inside[which], beside) * self.meanings.floats(lambda one: one.unit.factor)

    def _numbers(self, texts: Coded) -> Numbers:
        signs = set(self.decimals.values())
        decimal = signs.pop() if len(signs) == 1 else None
        if decimal == ".":
            decimal = decimal_of(self.vocabulary, texts.texts, ".")[0]
        return numbers_of(self.vocabulary, texts.texts, decimal, presence=False)

    def _limit_factor(self, unit: Coded) -> tuple[Floats, Floats]:
        factor = self.meanings.floats(lambda one: one.unit.factor)
        offset = self.meanings.floats(lambda one: one.unit.offset)
        has = unit.codes >= 0
        if not has.any():
            return factor, offset
        pair = self.meanings.group * (len(unit.texts) + 1) + unit.codes + 1
        group, uniques = pd.factorize(pair)
        factors, offsets = np.empty(len(uniques)), np.empty(len(uniques))
        for place, key in enumerate(uniques):
            meaning = self.meanings.each[int(key) // (len(unit.texts) + 1)]
            code = int(key) % (len(unit.texts) + 1) - 1
            found = meaning.unit
            if code >= 0 and meaning.name is not None:
                found = self.vocabulary.unit(str(unit.texts[code]), meaning.analyte, meaning.name)
            broken = found.problem is not None
            factors[place], offsets[place] = (np.nan, np.nan) if broken else (found.factor, found.offset)
        return factors[group], offsets[group]
