"""Results that a report prints twice, in a summary of what was found and again in its full table, are one result."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.rows import PrintedRows


def repeated(rows: PrintedRows, good: NDArray[np.bool_]) -> dict[int, int]:
    """For rows that say again what another table says of the same sample, letter by letter: the row that stays.

    The row with more beside its value stays. `good` are the rows that are results. Two methods are two results.
    """
    if int(rows.table.max(initial=0)) == int(rows.table.min(initial=0)):
        return {}
    beside = (rows.reporting_limit, rows.detection_limit, rows.method, rows.qualifier)
    seen: dict[tuple[object, ...], int] = {}
    found: dict[int, int] = {}
    said = (rows.name, rows.value, rows.unit, rows.fraction, rows.basis, rows.measured, rows.quality_control)
    worth = sum((coded.codes >= 0).astype(np.int8) for coded in beside)
    order = np.flatnonzero(good & (rows.value.codes >= 0))
    for row in order[np.argsort(-np.asarray(worth)[order], kind="stable")].tolist():
        key = (int(rows.sample[row]), *(coded[row] for coded in said))
        first = seen.setdefault(key, row)
        methods = {rows.method[first], rows.method[row]} - {""}
        if rows.table[first] != rows.table[row] and len(methods) < 2:
            found[row] = first
    return found
