"""Texts beside values as they are to be read: units apart from values, flags the other way round."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.rows import Coded, of
from wellchem.reading.tables.cells import Cells, Kind


def are_units(cells: Cells, coded: Coded) -> NDArray[np.bool_]:
    """For each text, and for none, whether it is a unit and nothing else."""
    kinds = [cells.lexicon.kind(str(text)) for text in coded.texts]
    return np.array([bool(kind & Kind.UNIT) and not kind & Kind.VALUE for kind in kinds] + [False])


def apart(cells: Cells, value: Coded, unit: Coded) -> tuple[Coded, Coded]:
    """Values and units, where a number slipped into the unit's cell beside an empty one ("0.247 mg/L")."""
    empty = value.codes < 0
    if not empty.any():
        return value, unit
    held = [cells.lexicon.vocabulary.value(str(text)) for text in unit.texts]
    both = np.array([one is not None and one.number is not None and bool(one.unit_text) for one in held] + [False])
    slipped = empty & both[unit.codes]
    return (value.or_else(unit.kept(slipped)), unit.kept(~slipped)) if slipped.any() else (value, unit)


def inverted(flags: Coded) -> Coded:
    """Flags of a column that asks whether the analyte was *not* detected, as words of detection."""
    made = of(["ND" if str(text).casefold() in ("true", "t", "yes", "y", "1") else "" for text in flags.texts])
    return flags.reworded(made)


def not_reportable(flags: Coded) -> Coded:
    """The answers of a column that asks whether a result is the one to report, as words of its status."""
    made = of(["not reportable" if str(t).casefold() in ("false", "f", "no", "n", "0") else "" for t in flags.texts])
    return flags.reworded(made)
