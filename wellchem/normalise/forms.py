"""A form that is not printed, and that other results of the sample rule out."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from wellchem.normalise.meanings import Meaning, Meanings
from wellchem.normalise.numbers import NONE, Numbers
from wellchem.reading.rows import PrintedRows
from wellchem.vocabulary import Vocabulary

_WHOLE, _FORM = "total_alkalinity", "CaCO3"
_ROUNDED = 1.03  # how far rounding may lift a part above the whole


def with_forms(
    vocabulary: Vocabulary, meanings: Meanings, rows: PrintedRows, numbers: Numbers, which: NDArray[np.int64]
) -> Meanings:
    """Parts of the alkalinity supposed to be as CaCO3, one of which exceeds the whole of its sample, are as the ions.

    One sample decides for the report: a laboratory prints one form.
    """
    supposed = [place for place, one in enumerate(meanings.each) if f"basis={_FORM}" in one.unit.assumptions]
    parts = [place for place in supposed if meanings.each[place].analyte != _WHOLE]
    if not parts:
        return meanings
    amount = meanings.canonical(np.where((numbers.censoring == NONE)[which], numbers.number[which], np.nan))
    whole = meanings.flags(lambda one: one.analyte == _WHOLE) & ~np.isnan(amount)
    wholes = np.full(int(rows.sample.max()) + 1, np.nan)
    np.fmax.at(wholes, rows.sample[whole], amount[whole])
    ratios = [_as_supposed(vocabulary, one) if place in parts else np.nan for place, one in enumerate(meanings.each)]
    excess = amount / np.array(ratios)[meanings.group] > wholes[rows.sample] * _ROUNDED
    if not excess.any():
        return meanings
    each = list(meanings.each)
    for place in parts:
        each[place] = _as_ion(vocabulary, each[place])
    return Meanings(meanings.group, each)


def _as_supposed(vocabulary: Vocabulary, one: Meaning) -> float:
    """Milligrams in the canonical form per milligram of the supposed one."""
    assert one.name is not None
    return vocabulary.unit("mg/L", one.analyte, replace(one.name, basis=_FORM)).factor


def _as_ion(vocabulary: Vocabulary, one: Meaning) -> Meaning:
    """The same meaning with the canonical form supposed, unit for unit."""
    assert one.name is not None
    form = one.unit.basis
    assumptions = tuple(f"basis={form}" if code == f"basis={_FORM}" else code for code in one.unit.assumptions)
    factor = one.unit.factor / _as_supposed(vocabulary, one)
    return replace(
        one, name=replace(one.name, basis=form), unit=replace(one.unit, factor=factor, assumptions=assumptions)
    )
