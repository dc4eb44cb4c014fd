"""Ions in equivalents: sums, what is missing, and the water's type."""

from collections.abc import Mapping
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from .conversions import basis_factor
from .intervals import Behaviour, behaves
from .masses import equivalent_weight
from .tables import Array, V, arrays, restored, rows


@cache
def equivalent_weights() -> dict[str, float]:
    """Equivalent weight of each ion of `ions.csv`, on the basis that its analyte is given in [mg/meq].

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, Table 9 (the ions); CIAAW atomic weights.
    """
    return {
        row["analyte"]: equivalent_weight(row["ion"], int(row["charge"])) * basis_factor(row["ion"], row["basis"])
        for row in rows("ions")
    }


@behaves(Behaviour(rising=("value",)))
def ion_milliequivalents(value: V | float, analyte: str) -> V:
    """Equivalents of an ion given on its analyte's usual basis (nitrate as N, alkalinity as CaCO3).

    Parameters
    ----------
    value : float or array
        Concentration on the basis of `ions.csv` [mg/L].
    analyte : str
        Key of the analyte.

    Returns
    -------
    float or array
        Equivalents, without sign [meq/L].

    Raises
    ------
    ValueError
        Where the table has no such ion.
    """
    if analyte not in equivalent_weights():
        raise ValueError(f"no ion known for {analyte!r}")
    (given,) = arrays(value)
    return restored(given / equivalent_weights()[analyte])


def _equivalents(given: Mapping[str, ArrayLike]) -> Array:
    """Sum of the equivalents of several ions."""
    weights = equivalent_weights()
    return np.asarray(sum(np.asarray(value, float) / weights[analyte] for analyte, value in given.items()))


@behaves(
    Behaviour(
        rising=(
            "calcium",
            "magnesium",
            "sodium",
            "potassium",
            "ammonia",
            "iron",
            "manganese",
            "strontium",
            "barium",
            "lithium",
        ),
        falling=("ph",),
    )
)
def cation_sum(
    *,
    calcium: V | float,
    magnesium: V | float,
    sodium: V | float,
    potassium: V | float,
    ammonia: V | float = 0.0,
    iron: V | float = 0.0,
    manganese: V | float = 0.0,
    strontium: V | float = 0.0,
    barium: V | float = 0.0,
    lithium: V | float = 0.0,
    ph: V | float = np.inf,
) -> V:
    """Sum of the cations.

    Parameters
    ----------
    calcium, magnesium, sodium, potassium : float or array
        The major cations, as such [mg/L].
    ammonia : float or array
        Ammonia as N, counted as ammonium [mg/L].
    iron, manganese : float or array
        Dissolved iron and manganese, counted with two charges [mg/L].
    strontium, barium, lithium : float or array
        As such [mg/L].
    ph : float or array
        pH, for the hydrogen ion of an acid water; left out where not given [1].

    Returns
    -------
    float or array
        Cations [meq/L].

    Notes
    -----
    A cation that was not measured makes the sum a lower bound, not a smaller sum: give `bounds` the interval from
    nought to infinity for it.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.1.
    """
    given = {
        "calcium": calcium,
        "magnesium": magnesium,
        "sodium": sodium,
        "potassium": potassium,
        "ammonia": ammonia,
        "iron": iron,
        "manganese": manganese,
        "strontium": strontium,
        "barium": barium,
        "lithium": lithium,
    }
    (acidity,) = arrays(ph)
    return restored(_equivalents(given) + 10.0 ** (3.0 - acidity))


@behaves(Behaviour(rising=("alkalinity", "sulfate", "chloride", "nitrate", "nitrite", "fluoride", "bromide")))
def anion_sum(
    *,
    alkalinity: V | float,
    sulfate: V | float,
    chloride: V | float,
    nitrate: V | float = 0.0,
    nitrite: V | float = 0.0,
    fluoride: V | float = 0.0,
    bromide: V | float = 0.0,
) -> V:
    """Sum of the anions.

    Parameters
    ----------
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].
    sulfate, chloride, fluoride, bromide : float or array
        As such (sulfate as SO4) [mg/L].
    nitrate, nitrite : float or array
        As N [mg/L].

    Returns
    -------
    float or array
        Anions [meq/L].

    Notes
    -----
    Alkalinity stands for every anion that the titration finds: bicarbonate, carbonate, hydroxide, and what silicate,
    borate and phosphate bear of it. For an anion that was not measured see `cation_sum`.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.1.
    """
    given = {
        "alkalinity": alkalinity,
        "sulfate": sulfate,
        "chloride": chloride,
        "nitrate": nitrate,
        "nitrite": nitrite,
        "fluoride": fluoride,
        "bromide": bromide,
    }
    return restored(_equivalents(given))


def missing_ions(**given: ArrayLike) -> str | np.ndarray[tuple[int, ...], np.dtype[np.str_]]:
    """Major ions without which a balance cannot be judged.

    Parameters
    ----------
    **given : float or array
        Concentrations by analyte key; NaN, or not given, is missing [mg/L].

    Returns
    -------
    str or array of str
        The keys that are missing, sorted, between semicolons; empty where the analysis is complete.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.1 (the eight major ions).
    """
    major = sorted(row["analyte"] for row in rows("ions") if row["major"] == "yes")
    columns = np.broadcast_arrays(*(np.asarray(given.get(analyte, np.nan), float) for analyte in major))
    absent = np.isnan(np.stack(columns, axis=-1))
    # Each water's set of missing ions is one of few: name each set once.
    sets, which = np.unique(absent.reshape(-1, len(major)), axis=0, return_inverse=True)
    names = np.array([";".join(np.array(major)[flags]) for flags in sets])
    result = names[which.reshape(-1)].reshape(absent.shape[:-1])
    return result if result.ndim else str(result)


@behaves(Behaviour(rising=("anions",), falling=("cations",)))
def sodium_by_difference(*, cations: V | float, anions: V | float) -> V:
    """Sodium and potassium as what the other cations lack of the anions, as older analyses report them.

    Parameters
    ----------
    cations : float or array
        Sum of the cations without sodium and potassium [meq/L].
    anions : float or array
        Sum of the anions [meq/L].

    Returns
    -------
    float or array
        Sodium plus potassium as Na; negative where the other cations exceed the anions, which shows an error of the
        analysis [mg/L].

    Notes
    -----
    It takes every error of the analysis for sodium, and the balance no longer checks anything: nothing in this package
    supposes it unasked.

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, section on sodium plus potassium (memory).
    """
    positive, negative = arrays(cations, anions)
    return restored((negative - positive) * equivalent_weights()["sodium"])


_CATION_NAMES = np.array(["calcium", "magnesium", "sodium"])
_ANION_NAMES = np.array(["bicarbonate", "sulfate", "chloride"])
_DOMINANT = 0.5  # share of the equivalents, WSP 2254
_IMPORTANT = 0.2  # share that names a mixed water; common practice, no source


def _type_of(shares: Array, names: np.ndarray[tuple[int], np.dtype[np.str_]]) -> list[str]:
    """Name per row of shares: the one ion with half or more, or all important ones, the largest first."""
    order = np.argsort(-shares, axis=-1, kind="stable")
    ranked = np.take_along_axis(shares, order, axis=-1)
    last = np.where(ranked[:, 0] >= _DOMINANT, 1, (ranked >= _IMPORTANT).sum(axis=-1))
    known = ~np.isnan(shares).any(axis=-1)
    codes = np.column_stack([order, np.where(known, last, 0)])
    distinct, which = np.unique(codes, axis=0, return_inverse=True)
    labels = ["-".join(names[row[: row[-1]]]) for row in distinct]
    return [labels[code] for code in which.reshape(-1)]


def water_type(
    *,
    calcium: ArrayLike,
    magnesium: ArrayLike,
    sodium: ArrayLike,
    potassium: ArrayLike,
    alkalinity: ArrayLike,
    sulfate: ArrayLike,
    chloride: ArrayLike,
) -> str | np.ndarray[tuple[int, ...], np.dtype[np.str_]]:
    """Water type (hydrochemical facies), such as `calcium bicarbonate` or `calcium-magnesium bicarbonate-sulfate`.

    Parameters
    ----------
    calcium, magnesium, sodium, potassium, sulfate, chloride : float or array
        As such (sulfate as SO4) [mg/L].
    alkalinity : float or array
        Total alkalinity as CaCO3, called bicarbonate [mg/L].

    Returns
    -------
    str or array of str
        Cations, a space, anions; empty where an ion is missing or there is none.

    Notes
    -----
    An ion with half or more of its side's equivalents names the side; without one the water is mixed and every ion
    with a fifth or more is named, the largest first (the half is from [1]_, the fifth common practice, no source).
    Potassium is counted with sodium.

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, p. 166 (memory); Back, USGS PP 498-A, 1966.
    """
    sides = (
        [{"calcium": calcium}, {"magnesium": magnesium}, {"sodium": sodium, "potassium": potassium}],
        [{"alkalinity": alkalinity}, {"sulfate": sulfate}, {"chloride": chloride}],
    )
    columns = np.broadcast_arrays(*(_equivalents(ion) for side in sides for ion in side))
    amounts = np.stack(columns, axis=-1).reshape(-1, 6)
    with np.errstate(invalid="ignore", divide="ignore"):
        cations = amounts[:, :3] / amounts[:, :3].sum(axis=-1, keepdims=True)
        anions = amounts[:, 3:] / amounts[:, 3:].sum(axis=-1, keepdims=True)
    pairs = zip(_type_of(cations, _CATION_NAMES), _type_of(anions, _ANION_NAMES), strict=True)
    names = np.array([f"{cation} {anion}" if cation and anion else "" for cation, anion in pairs])
    result = names.reshape(columns[0].shape)
    return result if result.ndim else str(result)
