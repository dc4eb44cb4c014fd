"""A unit that is not printed, and that the samples' own numbers rule out.

Water is electrically neutral, so that equivalents add up where milligrams do not; and no trace element weighs more than
the salts of its water.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from wellchem.normalise.meanings import Meaning, Meanings
from wellchem.normalise.numbers import NONE, Floats, Numbers
from wellchem.reading.rows import PrintedRows
from wellchem.vocabulary import Vocabulary

_SUPPOSED = "unit=mg/L"
_WHOLE, _PARTS = "total_alkalinity", ("bicarbonate", "carbonate", "hydroxide")
_SAMPLES = 3  # that must agree
_FEW = 3  # cations and anions at least, of a sample that can be weighed
_BALANCED, _OFF = 0.05, 0.15  # differences of the sums, as a share of both, that are small and that are not
_AMONG_EQUIVALENTS = "no unit is printed; the ions beside it are in equivalents"
_TOO_MUCH = "no unit is printed; as mg/L some of these elements would outweigh the salts of their water"


def with_units(
    vocabulary: Vocabulary, meanings: Meanings, rows: PrintedRows, numbers: Numbers, which: NDArray[np.int64]
) -> Meanings:
    """Ions in equivalents where their sums say so, and trace elements without a unit where milligrams cannot be."""
    supposed = np.array([_SUPPOSED in one.unit.assumptions for one in meanings.each], bool)
    if not supposed.any() or not len(rows):
        return meanings
    printed = np.where((numbers.censoring == NONE)[which], numbers.number[which], np.nan)
    each = list(meanings.each)
    charge = np.array([_charge(vocabulary, one) if mine else 0 for one, mine in zip(each, supposed, strict=True)])
    if not charge.any():
        return meanings
    sample = rows.sample
    if _in_equivalents(vocabulary, meanings, charge, printed, sample):
        for place in np.flatnonzero(supposed).tolist():
            one = each[place]
            each[place] = _as_equivalents(vocabulary, one) if charge[place] else _open(one, _AMONG_EQUIVALENTS)
        return Meanings(meanings.group, each)
    traces = np.array([vocabulary.analytes[one.analyte].group == "metal" if one.analyte else False for one in each])
    heaviest = _per_sample(np.fmax, printed, (traces & supposed)[meanings.group], sample)
    salts = (charge != 0) & ~traces
    weight = _per_sample(np.add, printed, salts[meanings.group], sample)
    known = _per_sample(np.add, np.ones(len(printed)), salts[meanings.group] & ~np.isnan(printed), sample)
    if int(((heaviest > weight) & (known >= 2 * _FEW)).sum()) >= _SAMPLES:
        for place in np.flatnonzero(traces & supposed).tolist():
            each[place] = _open(each[place], _TOO_MUCH)
    return Meanings(meanings.group, each)


def _charge(vocabulary: Vocabulary, one: Meaning) -> int:
    """Sign of an ion that can be printed in equivalents, 0 for all else."""
    if not one.analyte or vocabulary.unit("meq/L", one.analyte, one.name).problem is not None:
        return 0
    return -1 if one.analyte == _WHOLE else int(np.sign(vocabulary.analytes[one.analyte].charge or 0))


def _in_equivalents(
    vocabulary: Vocabulary, meanings: Meanings, charge: NDArray[np.int64], printed: Floats, sample: NDArray[np.int32]
) -> bool:
    """Whether the numbers as printed balance in most samples, and as milligrams do not."""
    weight = np.array(
        [
            one.unit.factor / vocabulary.unit("meq/L", one.analyte, one.name).factor if sign else np.nan
            for one, sign in zip(meanings.each, charge, strict=True)
        ]
    )
    sign = charge[meanings.group]
    parts = np.array([one.analyte in _PARTS for one in meanings.each], bool)[meanings.group] & ~np.isnan(printed)
    in_parts = _per_sample(np.add, np.ones(len(printed)), parts, sample)[sample] > 0
    whole = np.array([one.analyte == _WHOLE for one in meanings.each], bool)[meanings.group]
    counted = (sign != 0) & ~np.isnan(printed) & ~(whole & in_parts)
    enough = np.ones(int(sample.max()) + 1, bool)
    for side in (1, -1):
        enough &= _per_sample(np.add, np.ones(len(printed)), counted & (sign == side), sample) >= _FEW
    if int(enough.sum()) < _SAMPLES:
        return False

    def off(amount: Floats) -> float:
        up, down = (_per_sample(np.add, amount, counted & (sign == side), sample)[enough] for side in (1, -1))
        return float(np.median(np.abs(up - down) / np.maximum(up + down, 1e-12)))

    return off(printed) <= _BALANCED and off(printed * weight[meanings.group]) >= _OFF


def _per_sample(gather: np.ufunc, amount: Floats, mask: NDArray[np.bool_], sample: NDArray[np.int32]) -> Floats:
    """Numbers of the rows of a mask, gathered for each sample; what is not printed counts nothing."""
    mine = mask & ~np.isnan(amount)
    made = np.zeros(int(sample.max()) + 1)
    gather.at(made, sample[mine], amount[mine])
    return made


def _open(one: Meaning, detail: str) -> Meaning:
    """The same meaning, for which no unit may be supposed."""
    return replace(one, unit_open=True, detail=detail)


def _as_equivalents(vocabulary: Vocabulary, one: Meaning) -> Meaning:
    """The same meaning in milliequivalents, which is supposed."""
    unit = vocabulary.unit("meq/L", one.analyte, one.name)
    return replace(one, unit=replace(unit, assumptions=(*unit.assumptions, "unit=meq/L")))
