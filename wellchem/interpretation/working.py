"""How amounts are worked out from several results: once per table, with their bounds, where there is what it takes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import wraps
from typing import TypeVar

import numpy as np

from wellchem import chemistry
from wellchem.interpretation.table import Bools, Floats, Table

Ends = tuple[Floats, Floats]


@dataclass(frozen=True, eq=False)
class Amount:
    """Bounds by sample, NaN where it cannot be worked out, and the analytes that went into it."""

    low: Floats
    high: Floats
    inputs: tuple[str, ...]
    taken: tuple[str, ...] = ()

    @property
    def known(self) -> Bools:
        """Where there are bounds."""
        return ~np.isnan(self.low) & ~np.isnan(self.high)


_T = TypeVar("_T")


def once_per_table(function: Callable[[Table], _T]) -> Callable[[Table], _T]:
    """Works an amount out once per table; what it gives is not to be changed."""

    @wraps(function)
    def kept(table: Table) -> _T:
        if function.__name__ not in table.worked:
            table.worked[function.__name__] = function(table)
        made: _T = table.worked[function.__name__]  # type: ignore[assignment]
        return made

    return kept


def worked_out(function: Callable[..., object], given: Mapping[str, Ends], inputs: tuple[str, ...]) -> Amount:
    """A function of the chemistry room over the bounds of its arguments, for the samples that have them all."""
    size = len(next(iter(given.values()))[0])
    low_end, high_end = np.full(size, np.nan), np.full(size, np.nan)
    whole = np.ones(size, dtype=bool)
    exact = np.ones(size, dtype=bool)
    for low, high in given.values():
        whole &= low <= high  # not where either is NaN
        if not whole.any():
            return Amount(low_end, high_end, inputs)
        exact &= low == high
    exact &= whole
    if exact.any():
        some = slice(None) if exact.all() else exact
        low_end[some] = high_end[some] = function(**{name: low[some] for name, (low, _) in given.items()})
    if (rest := whole & ~exact).any():
        some = slice(None) if rest.all() else rest
        ends = chemistry.bounds(function, {name: (low[some], high[some]) for name, (low, high) in given.items()})
        low_end[some], high_end[some] = ends
    return Amount(low_end, high_end, inputs)


def has(table: Table, *analytes: str) -> bool:
    """Whether any sample may have all of these; alkalinity and calcium may come from other results."""
    return all(any(map(table.holds, _INSTEAD.get(analyte, (analyte,)))) for analyte in analytes)


_INSTEAD = {"total_alkalinity": ("total_alkalinity", "bicarbonate"), "any_calcium": ("calcium", "calcium_hardness")}


def unknown(table: Table, inputs: tuple[str, ...], taken: tuple[str, ...] = ()) -> Amount:
    """An amount that no sample has."""
    return Amount(np.full(table.size, np.nan), np.full(table.size, np.nan), inputs, taken)
