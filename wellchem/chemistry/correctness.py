"""Whether an analysis can be right: the charge balance and the other checks of Standard Methods 1030 E."""

from typing import NamedTuple

import numpy as np

from .intervals import Behaviour, behaves
from .tables import V, arrays, restored, rows


@behaves(Behaviour(rising=("cations",), falling=("anions",), least=-100.0, greatest=100.0))
@np.errstate(divide="ignore", invalid="ignore")
def charge_balance(*, cations: V | float, anions: V | float) -> V:
    """Cation-anion balance, as a percentage of the sum of both.

    Parameters
    ----------
    cations, anions : float or array
        Sums of the cations and of the anions [meq/L].

    Returns
    -------
    float or array
        Difference over sum, positive where cations prevail [%].

    Notes
    -----
    Others divide by half the sum (DVWK) or by the cations alone: the same water then has up to twice the percentage.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.1.
    """
    positive, negative = arrays(cations, anions)
    return restored(100.0 * (positive - negative) / (positive + negative))


@behaves(Behaviour(rising=("cations",), falling=("anions",), least=-200.0, greatest=200.0))
@np.errstate(divide="ignore", invalid="ignore")
def charge_balance_of_mean(*, cations: V | float, anions: V | float) -> V:
    """Ion balance as DVWK has it, as a percentage of the mean of both sums: twice `charge_balance`.

    Parameters
    ----------
    cations, anions : float or array
        Sums of the cations and of the anions [meq/L].

    Returns
    -------
    float or array
        Difference over mean, positive where cations prevail [%].

    References
    ----------
    .. [1] DVWK Schriften 128, 1992.
    """
    positive, negative = arrays(cations, anions)
    return restored(200.0 * (positive - negative) / (positive + negative))


@behaves(Behaviour(breaks=(("anions", (3.0, 10.0, 800.0)),), least=0.0))
def permitted_charge_difference(*, cations: V | float, anions: V | float, criterion: str = "SM 1030 E") -> V:
    """Difference between cations and anions up to which an analysis is acceptable.

    Parameters
    ----------
    cations, anions : float or array
        Sums of the cations and of the anions [meq/L].
    criterion : str
        Key of `balance_criteria.csv`: `SM 1030 E` or `DVWK 128`.

    Returns
    -------
    float or array
        Permitted difference, NaN beyond the criterion's range [meq/L].

    Raises
    ------
    ValueError
        Where the table has no such criterion.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.1: 0.2 meq/L up to 3 meq/L of anions, 2 % of the sum to 10, 5 % to 800.
    .. [2] DVWK Schriften 128, 1992: 5 % of the mean up to 2 meq/L in all, 2 % above.
    """
    table = [row for row in rows("balance_criteria") if row["criterion"] == criterion]
    if not table:
        raise ValueError(f"no criterion {criterion!r} of the charge balance is known")
    positive, negative = arrays(cations, anions)
    total = positive + negative
    permitted = np.full(np.shape(total), np.nan)
    share = {"meq/L": np.ones_like(total), "% of sum": total / 100.0, "% of mean": total / 200.0}
    for row in reversed(table):
        chosen = negative if row["selector"] == "anions" else total
        reached = chosen <= float(row["up_to"] or np.inf)
        permitted = np.where(reached, float(row["limit"]) * share[row["unit"]], permitted)
    return restored(np.where((positive < 0.0) | (negative < 0.0), np.nan, permitted))


@behaves(Behaviour(breaks=(("anions", (3.0, 10.0, 800.0)),), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def charge_imbalance(*, cations: V | float, anions: V | float, criterion: str = "SM 1030 E") -> V:
    """Difference between cations and anions over the permitted one: acceptable up to 1.

    Parameters
    ----------
    cations, anions, criterion
        As in `permitted_charge_difference` [meq/L].

    Returns
    -------
    float or array
        Difference over permitted difference, without sign; NaN beyond the criterion's range [1].

    References
    ----------
    .. [1] As `permitted_charge_difference`.
    """
    positive, negative = arrays(cations, anions)
    permitted = permitted_charge_difference(cations=positive, anions=negative, criterion=criterion)
    return restored(np.abs(positive - negative) / permitted)


class Acceptance(NamedTuple):
    """Range in which a check passes, ends included."""

    minimum: float
    maximum: float


def acceptance(check: str) -> Acceptance:
    """Range that Standard Methods gives for a ratio of measured and calculated values [1].

    Parameters
    ----------
    check : str
        Key of `acceptance.csv`.

    Raises
    ------
    ValueError
        Where the table has no such check.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.2 to E.5.
    """
    for row in rows("acceptance"):
        if row["check"] == check:
            return Acceptance(float(row["minimum"]), float(row["maximum"]))
    raise ValueError(f"no acceptance range for {check!r}")


@behaves(Behaviour(rising=("measured",), falling=("calculated",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def dissolved_solids_ratio(*, measured: V | float, calculated: V | float) -> V:
    """Measured over calculated dissolved solids; `acceptance("measured_over_calculated_solids")` is its range.

    Parameters
    ----------
    measured : float or array
        Dissolved solids dried at 180 °C [mg/L].
    calculated : float or array
        Dissolved solids calculated from the ions [mg/L].

    Returns
    -------
    float or array
        Ratio [1].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.2.
    """
    found, expected = arrays(measured, calculated)
    return restored(found / expected)


@behaves(Behaviour(rising=("ion_sum",), falling=("conductance",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def ion_conductance_ratio(*, ion_sum: V | float, conductance: V | float) -> V:
    """Hundred times an ion sum over conductance; `acceptance("ion_sum_x100_over_conductance")` is its range.

    Parameters
    ----------
    ion_sum : float or array
        Sum of the cations, or of the anions [meq/L].
    conductance : float or array
        Specific conductance at 25 °C [µS/cm].

    Returns
    -------
    float or array
        Ratio [1].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.4.
    """
    equivalents, measured = arrays(ion_sum, conductance)
    return restored(100.0 * equivalents / measured)


@behaves(Behaviour(rising=("dissolved_solids",), falling=("conductance",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def dissolved_solids_conductance_ratio(*, dissolved_solids: V | float, conductance: V | float) -> V:
    """Dissolved solids over conductance; `acceptance` has its range for measured and for calculated solids.

    Parameters
    ----------
    dissolved_solids : float or array
        Dissolved solids [mg/L].
    conductance : float or array
        Specific conductance at 25 °C [µS/cm].

    Returns
    -------
    float or array
        Ratio [(mg/L)/(µS/cm)].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.3 and E.5.
    """
    solids, measured = arrays(dissolved_solids, conductance)
    return restored(solids / measured)


@behaves(Behaviour(dipped=("first", "second"), least=0.0, greatest=200.0))
@np.errstate(divide="ignore", invalid="ignore")
def relative_percent_difference(*, first: V | float, second: V | float) -> V:
    """Relative percent difference of a duplicate pair.

    Parameters
    ----------
    first, second : float or array
        The two results [one unit].

    Returns
    -------
    float or array
        Size of the difference over the mean [%].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1020 B; USGS WRI 02-4045, 2002, Table 4.
    """
    one, other = arrays(first, second)
    return restored(200.0 * np.abs(one - other) / (one + other))
