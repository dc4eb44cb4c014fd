"""Most probable numbers from tubes, wells and their positives."""

from collections.abc import Sequence
from math import exp, expm1, inf, log
from typing import NamedTuple

from .tables import rows


class Count(NamedTuple):
    """A most probable number with its bounds: a table's end (`<2.2`, `>16`) is a bound and no number [1/(100 mL)]."""

    low: float
    high: float


def tabulated_mpn(table: str, positives: int) -> Count:
    """Most probable number as the published table prints it.

    Parameters
    ----------
    table : str
        Key of `mpn.csv`, such as `ten tubes of 10 mL`.
    positives : int
        Positive tubes [1].

    Returns
    -------
    Count
        The number twice, or the bound that none or all positive give [1/(100 mL)].

    Raises
    ------
    ValueError
        Where the table has no such row.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 9221 C (memory).
    """
    for row in rows("mpn"):
        if row["table"] == table and int(row["positives"]) == positives:
            number = float(row["mpn"])
            return Count(0.0 if row["bound"] == "below" else number, inf if row["bound"] == "above" else number)
    raise ValueError(f"no most probable number for {positives} positives of {table!r}")


def most_probable_number(volumes: Sequence[float], portions: Sequence[int], positives: Sequence[int]) -> float:
    """Most probable number of organisms, by maximum likelihood.

    Parameters
    ----------
    volumes : sequence of float
        Volume of sample in each portion, per dilution [mL].
    portions : sequence of int
        Portions examined per dilution [1].
    positives : sequence of int
        Positive portions per dilution [1].

    Returns
    -------
    float
        Most probable number: nought where none is positive, infinite where all are [1/(100 mL)].

    Raises
    ------
    ValueError
        Where the three differ in length, or a dilution has more positives than portions.

    Notes
    -----
    The printed tables are rounded, and for a few combinations differ by some per cent. A tray of wells of two sizes has
    a printed table of its own, which nominal volumes do not give (2081 where it prints 2419.6): use the table.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 9221 C; Cochran, Biometrics 6, 105-116, 1950 (memory).
    """
    if not len(volumes) == len(portions) == len(positives):
        raise ValueError("volumes, portions and positives must be given for the same dilutions")
    if any(not 0 <= found <= tried for found, tried in zip(positives, portions, strict=True)):
        raise ValueError("a dilution cannot have more positive portions than portions")
    if not any(positives):
        return 0.0
    if list(positives) == list(portions):
        return inf
    total = sum(volume * tried for volume, tried in zip(volumes, portions, strict=True))

    def excess(number: float) -> float:
        """Slope of the likelihood at a number per mL: falls steadily, nought at the most probable one."""
        return (
            sum(
                found * volume / -expm1(-number * volume)
                for volume, found in zip(volumes, positives, strict=True)
                if found
            )
            - total
        )

    low, high = 1e-12 / max(volumes), 700.0 / min(volumes)
    for _ in range(200):
        middle = exp((log(low) + log(high)) / 2.0)
        low, high = (middle, high) if excess(middle) > 0.0 else (low, middle)
    return 100.0 * low
