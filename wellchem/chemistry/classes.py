"""Published classes of a computed value, such as the hardness classes of the U.S. Geological Survey."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .tables import Array, rows

Names = np.ndarray[tuple[int, ...], np.dtype[np.str_]]


@cache
def _scheme(scheme: str) -> tuple[Array, Names]:
    """Where each class begins, ascending, and the names, the first of them for what lies below all."""
    table = [row for row in rows("classes") if row["scheme"] == scheme]
    if not table:
        raise ValueError(f"no classes are known by the name {scheme!r}")
    begins = np.array([float(row["minimum"] or -np.inf) for row in table])
    included = np.array([row["minimum_included"] == "yes" for row in table])
    # A class that does not include its minimum begins at the next number above it.
    return np.where(included, begins, np.nextafter(begins, np.inf)), np.array(["", *(r["class"] for r in table)])


def classify(scheme: str, value: ArrayLike) -> str | Names:
    """Class in which a value falls.

    Parameters
    ----------
    scheme : str
        Key of `classes.csv`, such as `hardness USGS` or `Ryznar`; the row gives the unit that it is in.
    value : float or array
        Value of the quantity, in the scheme's unit.

    Returns
    -------
    str or array of str
        The document's name of the class; empty for NaN and for what lies below the first class.

    Raises
    ------
    ValueError
        Where the table has no such scheme.

    Notes
    -----
    Classes of one quantity differ between documents: 150 mg/L is hard to one and soft to moderately hard to another.

    References
    ----------
    .. [1] `reference_limits/chemistry/classes.csv`, source per row.
    """
    begins, names = _scheme(scheme)
    given = np.asarray(value, float)
    result = names[np.where(np.isnan(given), 0, np.searchsorted(begins, given, side="right"))]
    return result if result.ndim else str(result)
