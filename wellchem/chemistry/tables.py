"""The room's reference tables, read once each, and the array convention that all its functions share.

Every function of the room is elementwise: it takes floats or arrays (lists and Series too), broadcasts them
and gives a float where every argument is a number, an array otherwise. NaN in is NaN out.
"""

import csv
from functools import cache
from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

from wellchem.reference import folder

Array = NDArray[np.float64]

# Arguments are annotated `V | float` and results `V`: floats give a float, any array gives an array.
V = TypeVar("V", float, Array)


@cache
def rows(name: str) -> tuple[dict[str, str], ...]:
    """Rows of `reference_limits/chemistry/<name>.csv`, as printed text per column."""
    with (folder() / "chemistry" / f"{name}.csv").open(encoding="utf-8", newline="") as lines:
        return tuple(csv.DictReader(lines))


def arrays(*values: ArrayLike) -> list[Array]:
    """Arguments as float arrays, not yet broadcast."""
    return [np.asarray(value, dtype=np.float64) for value in values]


def restored(result: ArrayLike) -> V:  # type: ignore[type-var]
    """A float where the result has no dimension, else the array: the caller's annotation says which."""
    value = np.asarray(result, dtype=np.float64)
    return value if value.ndim else float(value)  # type: ignore[return-value]
