"""Results that a report prints twice, in a summary of what was found and again in its full table, are one result."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache

import numpy as np
from numpy.typing import NDArray

from wellchem.normalise.bounds import Bounded
from wellchem.normalise.meanings import Meanings
from wellchem.reading.rows import PrintedRows

_UNIT_BEHIND = re.compile(r"^(?P<name>.*\S)\s*[(\[](?P<unit>[^()\[\]]+/[^()\[\]]+)[)\]]$")


def repeated(rows: PrintedRows, good: NDArray[np.bool_]) -> dict[int, int]:
    """For rows that say again what another table says of the same sample, letter by letter: the row that stays.

    The row with more beside its value stays. `good` are the rows that are results. Two methods are two results, and two
    tables that differ on anything they both say of the sample are two measurements: then nothing of them is a repeat.
    """
    if int(rows.table.max(initial=0)) == int(rows.table.min(initial=0)):
        return {}
    beside = (rows.reporting_limit, rows.detection_limit, rows.method, rows.qualifier)
    seen: dict[tuple[object, ...], int] = {}
    found: dict[int, int] = {}
    said = (rows.value, rows.fraction, rows.basis, rows.measured, rows.quality_control)
    named = _named(rows)
    worth = sum((coded.codes >= 0).astype(np.int8) for coded in beside)
    order = np.flatnonzero(good & (rows.value.codes >= 0))
    agree = _agreement(rows, order)
    for row in order[np.argsort(-np.asarray(worth)[order], kind="stable")].tolist():
        key = (int(rows.sample[row]), *named(row), *(coded[row] for coded in said))
        first = seen.setdefault(key, row)
        methods = {rows.method[first], rows.method[row]} - {""}
        sample, tables = int(rows.sample[row]), (int(rows.table[first]), int(rows.table[row]))
        if tables[0] != tables[1] and len(methods) < 2 and agree(sample, *tables):
            found[row] = first
    return found


def quoted(rows: Iterable[int], good: NDArray[np.bool_], meanings: Meanings, bounds: Bounded) -> dict[int, int]:
    """For results that a letter's sentences tell, the row of a table that says the same, of whichever sample."""
    told = [row for row in rows if good[row]]
    if not told:
        return {}
    analytes = [one.analyte for one in meanings.each]

    def key(row: int) -> tuple[object, ...]:
        value = bounds.value[row]
        number = None if np.isnan(value) else float(f"{value:.4g}")
        return analytes[meanings.group[row]], int(bounds.censoring[row]), number

    wanted = {key(row) for row in told}
    tables: dict[tuple[object, ...], int] = {}
    for row in np.setdiff1d(np.flatnonzero(good), told).tolist():
        if (mine := key(row)) in wanted:
            tables.setdefault(mine, row)
    return {row: tables[mine] for row in told if (mine := key(row)) in tables}


def _named(rows: PrintedRows) -> Callable[[int], tuple[str, str]]:
    """Name and unit of a row; a heading may print the unit in brackets behind the name ("Iron (mg/L)")."""

    @cache
    def parted(name: str, unit: str) -> tuple[str, str]:
        found = None if unit else _UNIT_BEHIND.match(name)
        return (found["name"], found["unit"]) if found else (name, unit)

    return lambda row: parted(rows.name[row], rows.unit[row])


def _agreement(rows: PrintedRows, order: NDArray[np.intp]) -> Callable[[int, int, int], bool]:
    """Whether two tables have a value in common for everything that both say of a sample."""
    said = (rows.fraction, rows.basis, rows.measured, rows.quality_control)
    named = _named(rows)
    values: dict[tuple[int, int], dict[tuple[str, ...], set[str]]] = {}
    for row in order.tolist():
        table = values.setdefault((int(rows.sample[row]), int(rows.table[row])), {})
        table.setdefault((named(row)[0], *(coded[row] for coded in said)), set()).add(rows.value[row])

    @cache
    def agree(sample: int, first: int, second: int) -> bool:
        one, other = values[sample, first], values[sample, second]
        return all(one[key] & other[key] for key in one.keys() & other.keys())

    return agree
