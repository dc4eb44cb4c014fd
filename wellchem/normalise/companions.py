"""Rows that print something beside a result (`Gross alpha counting error`) go to that result of the same sample."""

from __future__ import annotations

import numpy as np

from wellchem.normalise.meanings import Meanings
from wellchem.normalise.numbers import Floats
from wellchem.reading.rows import PrintedRows
from wellchem.vocabulary import Companion


def joined_companions(
    meanings: Meanings, rows: PrintedRows, number: Floats, uncertainty: Floats, reporting: Floats, detection: Floats
) -> dict[int, int | None]:
    """Row of the result that each such row belongs to, None where there is none; its number is put beside the result.

    `number` is in canonical units; `uncertainty`, `reporting` and `detection` are filled in place.
    """
    beside = np.array([one.name is not None and one.name.companion is not None for one in meanings.each], bool)
    if not beside.any():
        return {}
    targets = {
        Companion.UNCERTAINTY: uncertainty,
        Companion.DETECTION_LIMIT: detection,
        Companion.REPORTING_LIMIT: reporting,
    }
    rows_beside = np.flatnonzero(beside[meanings.group])
    wanted = {meanings.each[meanings.group[row]].analyte for row in rows_beside}
    main = np.array([one.analyte in wanted and not beside[place] for place, one in enumerate(meanings.each)], bool)
    mains: dict[tuple[int, str, object], int] = {}
    for row in np.flatnonzero(main[meanings.group]):
        one = meanings.each[meanings.group[row]]
        mains.setdefault((int(rows.sample[row]), one.analyte, one.fraction), int(row))
    joined: dict[int, int | None] = {}
    for row in rows_beside:
        one = meanings.each[meanings.group[row]]
        found = mains.get((int(rows.sample[row]), one.analyte, one.fraction))
        target = targets.get(one.name.companion) if one.name and one.name.companion else None
        if found is None or target is None or one.problem is not None or np.isnan(number[row]):
            joined[int(row)] = None
        else:
            target[found] = number[row]
            joined[int(row)] = found
    return joined
