"""Printed limits of detection and of reporting, and uncertainties, in canonical units."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellchem.normalise.meanings import Meanings
from wellchem.normalise.numbers import Floats, Numbers, decimal_of, numbers_of
from wellchem.reading.combinations import grouped
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
        inside = texts.reworded(numbers.unit)
        unit = inside.or_else(units)
        printed = texts.lookup(numbers.number, np.nan)
        if not (unit.codes >= 0).any():
            return self.meanings.canonical(printed)
        factor, offset = self._limit_factor(unit)
        return printed * factor + offset

    def inside(self, beside: Floats, inside: Floats, which: NDArray[np.int64]) -> Floats:
        """Limits of a column, else those printed in the value's own cell (`inside`, by distinct value, in its unit)."""
        if np.isnan(inside).all():
            return beside
        return np.where(np.isnan(beside), self.meanings.canonical(inside[which]), beside)

    def spread(self, texts: Coded, inside: Floats, which: NDArray[np.int64], number: Floats) -> Floats:
        """Uncertainties: of the value's own cell (`inside`, by distinct value), else of their column.

        Those in per cent are of the result, whose `number` is in canonical units.
        """
        count = len(texts)
        own = ~np.isnan(inside)
        if not own.any() and not (texts.codes >= 0).any():
            return np.full(count, np.nan)
        numbers = self._numbers(texts)
        unit = texts.reworded(numbers.unit)
        share = numbers.unit.lookup(np.array([text == "%" for text in numbers.unit.texts], bool), False)
        shares = texts.lookup(share, False)
        printed = np.abs(texts.lookup(numbers.number, np.nan))
        beside = printed * np.where(shares, np.abs(number) / 100.0, self._limit_factor(unit.kept(~shares))[0])
        return np.where(own[which], inside[which] * self.meanings.floats(lambda one: one.unit.factor), beside)

    def _numbers(self, texts: Coded) -> Numbers:
        signs = set(self.decimals.values())
        decimal = signs.pop() if len(signs) == 1 else None
        if decimal == ".":
            decimal = decimal_of(self.vocabulary, texts.texts, ".")[0]
        return numbers_of(self.vocabulary, texts.texts, decimal, presence=False)

    def _limit_factor(self, unit: Coded) -> tuple[Floats, Floats]:
        """Factor and offset of each row's limit, whose unit stands in a column of its own; NaN where it fits not."""
        group, firsts = grouped(unit, within=self.meanings.group)
        factors, offsets = np.empty(len(firsts)), np.empty(len(firsts))
        for place, row in enumerate(firsts.tolist()):
            meaning, printed = self.meanings.each[self.meanings.group[row]], unit[row]
            found = meaning.unit
            if printed and meaning.name is not None:
                found = self.vocabulary.unit(printed, meaning.analyte, meaning.name)
            broken = found.problem is not None
            factors[place], offsets[place] = (np.nan, np.nan) if broken else (found.factor, found.offset)
        return factors[group], offsets[group]
